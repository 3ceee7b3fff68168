using RackCheck.Model;
using RackCheck.Planning.Comparisons;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>A rack to draw: its description, its report and its facts.</summary>
public sealed record DrawnRack
{
    /// <summary>The description as posted.</summary>
    public required RackDescription Posted { get; init; }

    /// <summary>The report of its check.</summary>
    public required CheckReport Report { get; init; }

    /// <summary>Its facts; null if essential data is missing.</summary>
    public RackSurvey? Survey { get; init; }

    /// <summary>Pointers to the essential data that is missing.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>A word on which of several racks it is; null for one rack.</summary>
    public string? Caption { get; init; }

    /// <summary>What changed, by the id of the item or PDU.</summary>
    public IReadOnlyDictionary<string, ItemChange> Changes { get; init; } = new Dictionary<string, ItemChange>();

    /// <summary>Checks a rack, without remedies, to draw it.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="checker">Checks it.</param>
    /// <param name="cancellation">Stops the check.</param>
    /// <returns>The rack with its report.</returns>
    public static DrawnRack Of(ResolvedRack rack, RackChecker checker, CancellationToken cancellation = default) =>
        Of(rack, checker.Recheck(rack, cancellation));

    /// <summary>A rack to draw with a report that is there already.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="report">Its report.</param>
    public static DrawnRack Of(ResolvedRack rack, CheckReport report)
    {
        var missing = rack.IsLookedUp ? rack.Missing() : [];
        return new DrawnRack { Posted = rack.Posted, Report = report, Survey = missing.Count == 0 ? RackSurvey.Lazily(rack) : null, Missing = missing };
    }

    /// <summary>Marks what came, went and moved from one rack to the other.</summary>
    /// <param name="before">The first rack.</param>
    /// <param name="after">The second rack.</param>
    /// <returns>Both, with captions.</returns>
    public static IReadOnlyList<DrawnRack> Compare(DrawnRack before, DrawnRack after)
    {
        var answer = RackComparison.Of(new ComparedRack(before.Report, before.Posted, null), new ComparedRack(after.Report, after.Posted, null));
        var (first, second) = (new Dictionary<string, ItemChange>(StringComparer.Ordinal), new Dictionary<string, ItemChange>(StringComparer.Ordinal));
        foreach (var move in answer.Positions!)
        {
            first[move.Id] = new ItemChange(ChangeKind.Moved, "moves to " + Place(move.After));
            second[move.Id] = new ItemChange(ChangeKind.Moved, "moved from " + Place(move.Before));
        }

        foreach (var id in answer.Content!.Removed)
        {
            first[id] = new ItemChange(ChangeKind.Went, "goes");
        }

        foreach (var id in answer.Content.Added)
        {
            second[id] = new ItemChange(ChangeKind.Came, "new");
        }

        foreach (var changed in answer.Content.Changed)
        {
            second.TryAdd(changed.Id, new ItemChange(ChangeKind.Changed, "changed"));
        }

        return [before with { Caption = "Before", Changes = first }, after with { Caption = "After", Changes = second }];
    }

    private static string Place(Position? position) =>
        position is null ? "no place" : FormattableString.Invariant($"U{position.U}") + (position.Face == Face.Rear ? " rear" : "");
}

/// <summary>What happened to an item from one rack to the other.</summary>
/// <param name="Kind">Kind of change.</param>
/// <param name="Words">The change, in words.</param>
public sealed record ItemChange(ChangeKind Kind, string Words);

/// <summary>Kinds of changes.</summary>
public enum ChangeKind
{
    /// <summary>Only in the second rack.</summary>
    Came,

    /// <summary>Only in the first rack.</summary>
    Went,

    /// <summary>In another position.</summary>
    Moved,

    /// <summary>With other data.</summary>
    Changed,
}
