using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>The members of a description that a remedy changed. A remedy is made from the description, so that what it left alone is the same record.</summary>
internal static class ChangedMembers
{
    private static readonly (string Pointer, Func<RackDescription, object?> Of)[] Members =
    [
        ("/cabinet", static r => r.Cabinet), ("/items", static r => r.Items), ("/supplies", static r => r.Supplies), ("/pdus", static r => r.Pdus),
        ("/connections", static r => r.Connections), ("/cooling", static r => r.Cooling), ("/earthing", static r => r.Earthing), ("/site", static r => r.Site),
    ];

    /// <summary>Pointers of the members that differ.</summary>
    /// <param name="before">The description.</param>
    /// <param name="after">The description with the remedy.</param>
    public static string[] Of(RackDescription before, RackDescription after) =>
        [.. Members.Where(m => !ReferenceEquals(m.Of(before), m.Of(after))).Select(m => m.Pointer)];

    /// <summary>Whether a rule reads one of them.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="changed">Their pointers.</param>
    public static bool AreReadBy(RuleDescriptor rule, string[] changed) =>
        rule.Needs.Any(n => changed.Any(c => n.StartsWith(c, StringComparison.Ordinal) && (n.Length == c.Length || n[c.Length] == '/')));
}
