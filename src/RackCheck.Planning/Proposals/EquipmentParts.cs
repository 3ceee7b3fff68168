using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Equipment in the parts that it can be divided in: what has to stay where it is, groups, and otherwise single items, of which those that share a shelf
/// stay together.
/// </summary>
internal sealed class EquipmentParts
{
    // A drawer.
    private const long MostLowU = 2;

    private readonly Mounting[] mountings;

    private EquipmentParts(IReadOnlyList<IReadOnlyList<Item>> items, Mounting[] mountings)
    {
        (Items, this.mountings) = (items, mountings);
        HeightsU = [.. items.Select(p => mountings.Min(m => m.HeightOf(p)))];
    }

    /// <summary>The items of each part.</summary>
    public IReadOnlyList<IReadOnlyList<Item>> Items { get; }

    /// <summary>
    /// What each part takes on the front, U; what stands on a shelf counts with the first item on it. The least over the depths on offer, as slides that suit
    /// one depth do not suit another.
    /// </summary>
    public IReadOnlyList<long> HeightsU { get; }

    /// <summary>Number of parts.</summary>
    public int Count => Items.Count;

    /// <summary>Finds the parts of a request.</summary>
    /// <param name="task">The request.</param>
    /// <param name="offers">The cabinets.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <param name="together">Ids of items that stay together besides; null for none.</param>
    public static EquipmentParts Of(
        ProposalTask task, CabinetOffer[] offers, CancellationToken cancellation, IReadOnlySet<string>? together = null)
    {
        task.Context.Positions = null;
        var mountings = offers.GroupBy(o => o.DepthMm)
            .Select(depth => Mounted(task, depth.MaxBy(o => o.HeightU)!, cancellation))
            .OrderBy(m => m.HeightsU.Values.Sum())
            .ToArray();
        return new EquipmentParts(PartsOf(task, mountings[0].ShelfOf, together), mountings);
    }

    /// <summary>What parts take on the front of a cabinet, U.</summary>
    /// <param name="members">Their indices.</param>
    /// <param name="offer">The cabinet, of those that the parts were found for.</param>
    public long HeightIn(IEnumerable<int> members, CabinetOffer offer)
    {
        var mounting = Array.Find(mountings, m => m.DepthMm == offer.DepthMm)!;
        return members.Sum(p => mounting.HeightOf(Items[p]));
    }

    /// <summary>Mass of a part, rounded up, g.</summary>
    /// <param name="part">Its index.</param>
    public long GramsOf(int part) => (long)Math.Ceiling(1000 * Items[part].Sum(i => i.MassKg ?? 0));

    /// <summary>Ports of a KVM switch; none of a part with anything else.</summary>
    /// <param name="part">Its index.</param>
    public int PortsOf(int part) => Items[part] is [{ KvmPorts: > 0 and var ports }] ? ports : 0;

    /// <summary>The keyboard drawers and displays of a part, by category.</summary>
    /// <param name="part">Its index.</param>
    public IEnumerable<ItemCategory> ConsolesOf(int part) =>
        Items[part].Select(i => i.Category).OfType<ItemCategory>().Where(c => c is ItemCategory.KeyboardDrawer or ItemCategory.Display);

    /// <summary>Whether a part is a console without a host of its own, and low: a display on a shelf is divided by its height as other equipment is.</summary>
    /// <param name="part">Its index.</param>
    public bool IsLowConsole(int part) => HeightsU[part] <= MostLowU && HostsOf(part) == 0 && ConsolesOf(part).Any();

    /// <summary>Number of items of a part that need a KVM port.</summary>
    /// <param name="part">Its index.</param>
    public int HostsOf(int part) => Items[part].Count(Consoles.IsHost);

    // Shelves that are ordered go where they are needed, so each part is mounted on those that it needs.
    private static Mounting Mounted(ProposalTask task, CabinetOffer offer, CancellationToken cancellation)
    {
        var stock = task.Stock.Without(p => p.Kind == ProductKind.Shelf && OwnEquipment.IdOf(p.PartNumber) is null).With([(offer.Product, 1)]);
        var build = BasketCompletion.Mount(task.Context, stock, offer.Product, cancellation).RackBuild;
        var claims = LayoutModel.ClaimsOf(build);
        var own = build.Items.Where(i => task.IsOwn(i.Id)).ToArray();
        return new Mounting(
            offer.DepthMm,
            own.Where(i => !task.Context.AtRear!.Contains(i.Id))
                .Select(i => (i.Id, Carrier: i.Item.OnShelf ?? i.Id))
                .DistinctBy(i => i.Carrier)
                .ToDictionary(i => i.Id, i => claims.GetValueOrDefault(i.Carrier), StringComparer.Ordinal),
            own.Where(i => i.Item.OnShelf is not null).ToDictionary(i => i.Id, i => i.Item.OnShelf!, StringComparer.Ordinal));
    }

    private static List<IReadOnlyList<Item>> PartsOf(ProposalTask task, Dictionary<string, string> shelfOf, IReadOnlySet<string>? together)
    {
        var groups = (task.Request.Groups ?? [])
            .SelectMany(g => g.Items.Select(item => (Item: item, g.Id)))
            .ToDictionary(p => p.Item, p => "\n" + p.Id, StringComparer.Ordinal);
        var keptGroups = task.Standing.Select(k => groups.GetValueOrDefault(k)).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return
        [
            .. task.Items.GroupBy(i =>
            {
                var group = groups.GetValueOrDefault(i.Id);
                return task.Standing.Contains(i.Id) || (group is not null && keptGroups.Contains(group)) ? "\n"
                    : together?.Contains(i.Id) == true ? "\n+" : group ?? (shelfOf.TryGetValue(i.Id, out var shelf) ? "\n\n" + shelf : i.Id);
            }).Select(g => g.ToArray()),
        ];
    }

    // Heights of the items that stand for a carrier, and shelves of items, by id.
    private sealed record Mounting(double DepthMm, Dictionary<string, long> HeightsU, Dictionary<string, string> ShelfOf)
    {
        public long HeightOf(IReadOnlyList<Item> part) => part.Sum(i => HeightsU.GetValueOrDefault(i.Id));
    }
}
