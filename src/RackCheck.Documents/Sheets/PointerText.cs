using System.Globalization;
using RackCheck.Documents.Drawings;
using RackCheck.Model;

namespace RackCheck.Documents.Sheets;

/// <summary>Pointers into a description, for a reader who does not see the JSON: "frontProjectionMm of gauge-pc and wave-pc".</summary>
internal static class PointerText
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
                return (steps.Length > 3 ? Words(steps[3]) : list, owner);
            }
        }

        return (Words(pointer.TrimStart('/')), null);
    }

    private static string Words(string path) => TextFit.Clean(path.Replace('/', ' '));
}
