using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>
/// The cords of a rack in the numbered outlets of its PDUs: outlets of a group are numbered through, and each cord takes the first free one, in the order
/// of their items.
/// </summary>
internal sealed class OutletPlan
{
    private readonly Dictionary<Cord, string> names = [];

    public OutletPlan(PowerTree power)
    {
        var connected = InOrder(power.Cords).Where(c => c is { Group: not null, Socket: not null }).ToLookup(c => c.Group!);
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

        Sets = sets;
        foreach (var set in sets)
        {
            for (var i = 0; i < set.Cords.Count; i++)
            {
                names[set.Cords[i]] = set.NameOf(i);
            }
        }
    }

    /// <summary>Outlets of one kind in a group, in the order of the request.</summary>
    public IReadOnlyList<OutletsOfSet> Sets { get; }

    /// <summary>Name of the outlet of a cord, as "pdu-a/g1/3 C13"; null if it takes none.</summary>
    public string? OutletOf(Cord cord) => names.GetValueOrDefault(cord);

    /// <summary>Where a cord ends: its outlet, else its group, else "no outlet".</summary>
    public string EndOf(Cord cord) => OutletOf(cord) ?? (cord.Group is { } group ? Invariant($"{group.Unit.Id}/{group.Id}") : "no outlet");

    /// <summary>Cords in the order in which people read them: by item, 2 before 10, then by plug.</summary>
    public static IEnumerable<Cord> InOrder(IEnumerable<Cord> cords) => cords.OrderBy(c => c.Item.Id, IdOrder.Instance).ThenBy(c => c.Plug);

    /// <summary>Name of a cord: that of its item, with a number where it has several.</summary>
    public static string NameOf(Cord cord) => cord.Siblings > 1 ? Invariant($"{cord.Item.Id} cord {cord.Plug + 1}") : cord.Item.Id;

    private static bool IsSwitched(GroupNode group, OutletSet set) => set.Switched ?? group.Unit.Source.RemoteSwitched ?? false;
}

/// <summary>The outlets of one kind in a group, and the cords in them.</summary>
/// <param name="Group">The group.</param>
/// <param name="Set">The outlets.</param>
/// <param name="First">Number of the first outlet.</param>
/// <param name="Cords">Cords in the first outlets.</param>
internal sealed record OutletsOfSet(GroupNode Group, OutletSet Set, int First, IReadOnlyList<Cord> Cords)
{
    /// <summary>Name of an outlet.</summary>
    /// <param name="index">Its index in the set, from 0.</param>
    public string NameOf(int index) => Invariant($"{Group.Unit.Id}/{Group.Id}/{First + index} {PlugFit.Of(Set.Socket).Code}");
}
