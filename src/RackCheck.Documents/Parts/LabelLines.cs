using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>Labels of items and PDUs, of both ends of each cord, and of outlets.</summary>
public static class LabelLines
{
    /// <summary>Maximum number of labels of outlets without a cord.</summary>
    public const int MostFreeOutlets = 1_000;

    /// <summary>Adds the lines: one for each text.</summary>
    internal static void List(PartsContext context)
    {
        var survey = context.Survey;
        foreach (var item in survey.Items)
        {
            Add(context, "Label of an item", survey.Cabinet.Place(item), 1, "Name and place of the item.", [item.Id], null);
        }

        foreach (var unit in survey.Power.Units)
        {
            Add(context, "Label of a PDU", $"PDU {unit.Id}, supply {unit.Supply.Id}", 1, "Name of the PDU and its supply.", null, [unit.Id]);
        }

        var sets = Sets(survey.Power);
        var outlets = Numbered(sets);
        foreach (var cord in survey.Power.Cords)
        {
            var end = cord.Group is { } group ? outlets.GetValueOrDefault(cord) ?? Invariant($"{group.Unit.Id}/{group.Id}") : "no outlet";
            var pdus = cord.Group is { } fed ? new[] { fed.Unit.Id } : null;
            Add(context, "Label of a cord", $"{CordName(cord)} > {end}", 2, "One at each end of the cord.", [cord.Item.Id], pdus);
            if (outlets.TryGetValue(cord, out var outlet))
            {
                Add(context, "Label of an outlet", $"{outlet} > {CordName(cord)}", 1, "Outlet with its cord.", [cord.Item.Id], pdus);
            }
        }

        FreeOutlets(context, sets);
    }

    private static string CordName(Cord cord) => cord.Siblings > 1 ? Invariant($"{cord.Item.Id} cord {cord.Plug + 1}") : cord.Item.Id;

    private static Dictionary<Cord, string> Numbered(List<OutletsOfSet> sets)
    {
        var names = new Dictionary<Cord, string>();
        foreach (var (group, set, first, cords) in sets)
        {
            for (var i = 0; i < cords.Length; i++)
            {
                names[cords[i]] = Name(group, set, first + i);
            }
        }

        return names;
    }

    private static void FreeOutlets(PartsContext context, List<OutletsOfSet> sets)
    {
        var (left, omitted) = (MostFreeOutlets, 0);
        foreach (var (group, set, first, cords) in sets)
        {
            var free = Math.Max(0, set.Count - cords.Length);
            var listed = Math.Min(free, left);
            for (var i = 0; i < listed; i++)
            {
                Add(context, "Label of an outlet", Name(group, set, first + cords.Length + i), 1, "Outlet without a cord.", null, [group.Unit.Id]);
            }

            (left, omitted) = (left - listed, omitted + free - listed);
        }

        if (omitted > 0)
        {
            context.Notes.Add(Invariant($"{omitted} outlets without a cord have no label line; the list has at most {MostFreeOutlets} of them."));
        }
    }

    // The outlets of a group are numbered through; each cord takes the first free one of its kind.
    private static List<OutletsOfSet> Sets(PowerTree power)
    {
        var connected = power.Cords.Where(c => c is { Group: not null, Socket: not null }).ToLookup(c => c.Group!);
        List<OutletsOfSet> sets = [];
        foreach (var group in power.Groups)
        {
            var (first, open) = (1, connected[group].ToList());
            foreach (var set in group.Source.Outlets)
            {
                Cord[] cords = [.. open.Where(c => c.Socket == set.Socket && c.Switched == IsSwitched(group, set)).Take(set.Count)];
                open.RemoveAll(cords.Contains);
                sets.Add(new OutletsOfSet(group, set, first, cords));
                first += set.Count;
            }
        }

        return sets;
    }

    private static bool IsSwitched(GroupNode group, OutletSet set) => set.Switched ?? group.Unit.Source.RemoteSwitched ?? false;

    private static string Name(GroupNode group, OutletSet set, int number) =>
        Invariant($"{group.Unit.Id}/{group.Id}/{number} {PlugFit.Of(set.Socket).Code}");

    private static void Add(
        PartsContext context, string description, string text, int quantity, string why, IReadOnlyList<string>? items, IReadOnlyList<string>? pdus) =>
        context.Add(new PartLine
        {
            Kind = PartKind.Label, Description = description, Quantity = quantity, Unit = PartUnit.Piece, Why = why, Items = items, Pdus = pdus,
            Included = false, Data = new PartData { Text = text },
        });

    // The outlets of one kind in a group, the number of the first, and the cords in them.
    private sealed record OutletsOfSet(GroupNode Group, OutletSet Set, int First, Cord[] Cords);
}
