using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Patch panels, cable managers and the switches that they serve, one above the other as the trade mounts them for short patch cords: a switch, a manager and
/// its panels, then the next switch.
/// </summary>
internal static class PatchField
{
    private enum Part
    {
        Panel,
        Manager,
        Switch,
    }

    /// <summary>The groups of a field, each a switch with its managers and panels, from the lowest up.</summary>
    /// <param name="items">The items that may be part of it, mounted on the front.</param>
    /// <returns>Indices of the items of each group, from the lowest up; empty without two of panel, manager and switch.</returns>
    /// <remarks>
    /// Which panel serves which switch is not known: like panels are shared evenly, in their order. Fewer panels of a kind than switches, as for the cables
    /// from other cabinets, are on top. Without a switch managers take its place.
    /// </remarks>
    public static IReadOnlyList<IReadOnlyList<int>> GroupsOf(IReadOnlyList<Item> items)
    {
        var parts = items.Index().Select(i => (i.Index, Part: PartOf(i.Item))).Where(i => i.Part is not null).ToLookup(i => i.Part!.Value, i => i.Index);
        if (parts.Count < 2)
        {
            return [];
        }

        var isSwitched = parts[Part.Switch].Any();
        int[] centres = [.. parts[isSwitched ? Part.Switch : Part.Manager]];
        List<int>[] panels = [.. centres.Select(_ => new List<int>())];
        List<int> above = [];
        var kinds = parts[Part.Panel].GroupBy(p => KindOf(items[p])).ToArray();
        var isAnyShared = Array.Exists(kinds, k => k.Count() >= centres.Length);
        foreach (var kind in kinds)
        {
            if (isAnyShared && kind.Count() < centres.Length)
            {
                above.AddRange(kind);
            }
            else
            {
                Share([.. kind], panels);
            }
        }

        List<int>[] managers = [.. centres.Select(_ => new List<int>())];
        Share(isSwitched ? [.. parts[Part.Manager]] : [], managers);
        var groups = centres.Select((centre, k) => GroupOf(centre, panels[k], managers[k])).ToArray();
        groups[^1] = [.. groups[^1], .. above];
        return groups;
    }

    private static Part? PartOf(Item item) => item.Category switch
    {
        ItemCategory.CableManager => Part.Manager,
        ItemCategory.Network => IsPanel(item) ? Part.Panel : Part.Switch,
        _ => null,
    };

    // A panel of which everything is given takes no power and moves no air.
    private static bool IsPanel(Item item) => PassiveEquipment.IsPassive(item)
        || item is
        {
            Power: { Plugs: null or { Count: 0 }, RatedW: null or 0 }, Ups: null, HeatW: null or 0, Airflow: null or { Direction: AirflowDirection.None },
        };

    private static (int?, double?, Body?) KindOf(Item item) => (item.HeightU, item.MassKg, item.Body);

    // As many to each, the rest to those with the fewest, the first of them first; in order, so that like parts are numbered from the bottom up.
    private static void Share(IReadOnlyList<int> all, List<int>[] groups)
    {
        var further = groups.Index().OrderBy(g => g.Item.Count).Take(all.Count % groups.Length).Select(g => g.Index).ToHashSet();
        var next = 0;
        foreach (var (k, group) in groups.Index())
        {
            var count = (all.Count / groups.Length) + (further.Contains(k) ? 1 : 0);
            group.AddRange(all.Skip(next).Take(count));
            next += count;
        }
    }

    // A manager is between panels and switch. With two, or none, the switch is in the middle of its panels.
    private static List<int> GroupOf(int centre, List<int> panels, List<int> managers)
    {
        var below = panels.Count > 1 && managers.Count != 1 ? panels.Count / 2 : 0;
        var lower = below > 0 ? managers.Take(1).ToArray() : [];
        int[] rest = [.. managers.Skip(lower.Length)];
        return [.. panels.Take(below), .. lower, centre, .. rest.Take(1), .. panels.Skip(below), .. rest.Skip(1)];
    }
}
