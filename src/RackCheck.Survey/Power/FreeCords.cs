using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey.Power;

/// <summary>A cord that the service places.</summary>
/// <param name="Demand">Its power demand.</param>
/// <param name="IsSpread">Whether its item is redundant and fed from several supplies.</param>
/// <param name="Kind">Number of its kind; cords of one kind fit the same outlets.</param>
/// <param name="Ups">
/// The UPS whose only cord it is, where an outlet suits it on a supply that its PDUs are described on; null for others. It stays on such a supply.
/// </param>
internal readonly record struct FreeCord(Cord Source, CordDemand Demand, bool IsSpread, int Kind, UpsNode? Ups);

/// <summary>
/// The cords that the service places and the outlets that suit each. The order of placing is: fewest suitable outlets first, then the largest, then
/// by id and plug.
/// </summary>
internal sealed class FreeCords
{
    private readonly FreeCord[] cords;
    private readonly bool[] fits;
    private readonly int pools;

    public FreeCords(PowerTree tree, OutletPool[] pools)
    {
        this.pools = pools.Length;
        var kinds = new List<Kind>(4);
        var made = new List<bool>(4 * pools.Length);
        var order = new List<Place>(tree.Cords.Length);
        for (var i = 0; i < tree.Cords.Length; i++)
        {
            var cord = tree.Cords[i];
            if (cord.Connection is not null)
            {
                continue;
            }

            var kind = IndexOf(kinds, cord);
            if (kind == kinds.Count)
            {
                kinds.Add(new Kind(cord.Code, cord.Item.Item!.Power!.VoltageV, UpsItem(cord), AddFits(made, cord, pools)));
            }

            order.Add(new Place(kinds[kind].Choices, cord.WorstVoltAmperes, i, kind));
        }

        order.Sort();
        fits = [.. made];
        cords = new FreeCord[order.Count];
        for (var i = 0; i < cords.Length; i++)
        {
            var cord = tree.Cords[order[i].Index];
            cords[i] = new FreeCord(
                cord, CordDemand.Of(cord), tree.Supplies.Length > 1 && cord.IsRedundant && cord.Siblings > 1, order[i].Kind, UpsOf(tree, cord, pools));
        }
    }

    public int Count => cords.Length;

    /// <summary>Whether any item is redundant and can be fed from several supplies.</summary>
    public bool AnySpread => Array.Exists(cords, c => c.IsSpread);

    public ref readonly FreeCord this[int cord] => ref cords[cord];

    /// <summary>Whether a cord fits the outlets of a pool.</summary>
    public bool Fits(int cord, int pool) => fits[(cords[cord].Kind * pools) + pool];

    private static MountedItem? UpsItem(Cord cord) => cord.Item.Item!.Ups is null ? null : cord.Item;

    private static UpsNode? UpsOf(PowerTree tree, Cord cord, OutletPool[] pools) =>
        cord is { Siblings: 1, Item.Item.Ups: not null } && Array.Find(tree.Ups, u => ReferenceEquals(u.Item, cord.Item)) is { } ups
            && Array.Exists(pools, p => p.Free > 0 && ups.IsDescribedOn(p.Group.Unit.Supply) && p.Takes(cord))
            ? ups
            : null;

    // The place of its kind, or behind the last if it is new.
    private static int IndexOf(List<Kind> kinds, Cord cord)
    {
        var (voltage, ups, kind) = (cord.Item.Item!.Power!.VoltageV, UpsItem(cord), 0);
        while (kind < kinds.Count
            && (kinds[kind].Code != cord.Code || kinds[kind].VoltageV != voltage || !ReferenceEquals(kinds[kind].Ups, ups)))
        {
            kind++;
        }

        return kind;
    }

    private static int AddFits(List<bool> fits, Cord cord, OutletPool[] pools)
    {
        var choices = 0;
        foreach (var pool in pools)
        {
            var fitsIn = pool.Takes(cord);
            fits.Add(fitsIn);
            choices += fitsIn ? 1 : 0;
        }

        return choices;
    }

    private readonly record struct Kind(ConnectorCode Code, double? VoltageV, MountedItem? Ups, int Choices);

    private readonly record struct Place(int Choices, double VoltAmperes, int Index, int Kind) : IComparable<Place>
    {
        public int CompareTo(Place other)
        {
            var by = Choices.CompareTo(other.Choices);
            by = by != 0 ? by : other.VoltAmperes.CompareTo(VoltAmperes);
            return by != 0 ? by : Index.CompareTo(other.Index);
        }
    }
}
