using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Proposals;

/// <summary>A request prepared for building: its equipment as a stock.</summary>
internal sealed class ProposalTask
{
    /// <summary>Prepares a request.</summary>
    public ProposalTask(ProposalRequest request, IReadOnlyDictionary<string, Product> found, IReadOnlyList<Product> offered)
    {
        var products = new Dictionary<string, Product>(StringComparer.Ordinal);
        foreach (var product in offered.Concat(found.Values))
        {
            products[product.PartNumber] = product;
        }

        (Request, Products) = (request, products);
        Items = ResolvedRack.Of(request.In(new Cabinet()), products).Description.Items;
        Product[] own = [.. Items.Where(i => i.HeightU is not null).Select(i => OwnEquipment.ProductOf(i, products.GetValueOrDefault(i.PartNumber ?? "")))];
        Stock = new Stock(own.Select(p => (p, 1L)));
        var keep = (request.Keep ?? []).ToHashSet(StringComparer.Ordinal);
        Context = new BasketContext(
            new BasketRequest
            {
                Reference = request.Reference,
                Lines = [],
                Supplies = request.Supplies,
                Earthing = request.Earthing,
                Site = request.Site,
                Policy = request.Policy,
                Acceptances = request.Acceptances,
                SignOffs = request.SignOffs,
                AsOf = request.AsOf,
            },
            own.Concat(offered),
            offered)
        {
            SeeksLowest = true,
            Kept = request.Items.Where(i => keep.Contains(i.Id)).ToDictionary(i => i.Id, i => i.Position!, StringComparer.Ordinal),
        };
        ItemsU = Items.Where(i => Context.Kept.GetValueOrDefault(i.Id)?.Face != Face.Rear).Sum(i => i.HeightU ?? 0);
    }

    /// <summary>The request.</summary>
    public ProposalRequest Request { get; }

    /// <summary>Products of the request and on offer, by part number.</summary>
    public IReadOnlyDictionary<string, Product> Products { get; }

    /// <summary>Items with the data of their part numbers.</summary>
    public IReadOnlyList<Item> Items { get; }

    /// <summary>The equipment.</summary>
    public Stock Stock { get; }

    /// <summary>What building a rack needs.</summary>
    public BasketContext Context { get; }

    /// <summary>Height of the equipment alone on the front, U.</summary>
    public int ItemsU { get; }

    /// <summary>Height that a cabinet needs for equipment that takes a height, with room for growth.</summary>
    public int WithGrowth(int usedU) => usedU + (int)Math.Ceiling(usedU * (Request.GrowthPercent ?? 0) / 100);

    /// <summary>Whether a rack keeps what has to stay and holds the whole equipment.</summary>
    public bool IsKeptIn(RackDescription rack)
    {
        var placed = rack.Items.ToDictionary(i => i.Id, StringComparer.Ordinal);
        return Items.All(i => placed.ContainsKey(i.Id))
            && Context.Kept!.All(k => placed[k.Key].Position is { } now && now.U == k.Value.U && (now.Face ?? Face.Front) == (k.Value.Face ?? Face.Front));
    }
}
