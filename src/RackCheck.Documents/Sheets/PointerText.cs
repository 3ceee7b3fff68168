using System.Globalization;
using System.Text.RegularExpressions;
using RackCheck.Documents.Drawings;
using RackCheck.Model;

namespace RackCheck.Documents.Sheets;

/// <summary>Pointers into a description, for a reader who does not see the JSON: "front projection of gauge-pc and wave-pc".</summary>
internal static partial class PointerText
{
    /// <summary>The members that pointers lead to, alike ones together.</summary>
    /// <param name="pointers">JSON Pointers.</param>
    /// <param name="posted">The description.</param>
    /// <returns>The text.</returns>
    public static string Of(IReadOnlyList<string> pointers, RackDescription posted)
    {
        var parts = pointers.Select(p => Split(p, posted)).GroupBy(p => p.Member, StringComparer.Ordinal).Select(g =>
        {
            string[] owners = [.. g.Select(p => p.Owner).OfType<string>().Select(SheetContext.Name)];
            return owners.Length == 0 ? g.Key : $"{g.Key} of {Lists.Short(owners)}";
        });
        return Lists.Short([.. parts]);
    }

    private static (string Member, string? Owner) Split(string pointer, RackDescription posted)
    {
        var steps = pointer.Split('/', 4, StringSplitOptions.None);
        if (steps is ["", var list, var number, ..] && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var index))
        {
            var owner = list switch
            {
                "items" => posted.Items.ElementAtOrDefault(index)?.Id,
                "pdus" => posted.Pdus?.ElementAtOrDefault(index)?.Id,
                "supplies" => posted.Supplies?.ElementAtOrDefault(index)?.Id,
                _ => null,
            };
            if (owner is not null)
            {
                return (steps.Length > 3 ? Words(steps[3]) : list == "pdus" ? "depth and height" : list, owner);
            }
        }

        return (Words(pointer.TrimStart('/')), null);
    }

    // "cabinet frontDoor depthMm" is "cabinet front door depth": units stand beside the value.
    private static string Words(string path) => TextFit.Clean(Twice().Replace(string.Join(' ', path.Split('/').Select(Name)), "$1"));

    private static string Name(string member)
    {
        var stem = Unit().Replace(member, "");
        var quantity = stem == "rated" ? Quantities.FirstOrDefault(q => member == "rated" + q.Unit).Name : null;
        return quantity ?? Capital().Replace(stem, static m => " " + m.Value.ToLowerInvariant());
    }

    private static readonly (string Unit, string Name)[] Quantities =
        [("W", "rated power"), ("Va", "rated apparent power"), ("A", "rated current"), ("Kg", "rated load")];

    [GeneratedRegex("(Mm2|Cm2|M2|M3h|KnM2|Kn|Mm|Kg|Va|Ma|Ms|Pa|Percent|Ah|W|A|C|K|V|M)$")]
    private static partial Regex Unit();

    // "power power factor".
    [GeneratedRegex(@"\b(\w+) \1\b")]
    private static partial Regex Twice();

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Capital();
}
