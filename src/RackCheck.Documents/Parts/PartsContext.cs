using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;

namespace RackCheck.Documents.Parts;

/// <summary>A rack whose parts are listed, and the products on offer.</summary>
internal sealed class PartsContext
{
    private readonly ILookup<ProductKind, Product> offered;
    private readonly Dictionary<string, Product> products = new(StringComparer.Ordinal);

    public PartsContext(ResolvedRack rack, RackSurvey survey, CheckReport report, IEnumerable<Product> offered)
    {
        (Survey, Report) = (survey, report);
        this.offered = offered.Order(OfferOrder.Instance).ToLookup(p => p.Kind);
        foreach (var part in rack.Parts)
        {
            if (part.Product is { } product)
            {
                products[part.Pointer] = product;
            }
        }
    }

    public RackSurvey Survey { get; }

    public CheckReport Report { get; }

    /// <summary>Lines so far.</summary>
    public List<PartLine> Lines { get; } = [];

    /// <summary>What the list leaves out.</summary>
    public List<string> Notes { get; } = [];

    public RackDescription Rack => Survey.Description;

    /// <summary>Id of a rule.</summary>
    public static string Rule<TRule>()
        where TRule : RuleBase => RuleSet.Default.All.OfType<TRule>().Single().Descriptor.Id;

    /// <summary>Products on offer of a kind, the preferred first.</summary>
    public IEnumerable<Product> Offered(ProductKind kind) => offered[kind];

    /// <summary>The product of an item or a PDU; null if the catalogue has none for it.</summary>
    public Product? ProductOf(MountedItem item) => products.GetValueOrDefault(item.Pointer);

    /// <summary>Adds a line, or a line for each product where several packs make the quantity.</summary>
    /// <param name="line">The line, without part number.</param>
    /// <param name="alike">Products that suit and differ in pack size only.</param>
    public void Add(PartLine line, IEnumerable<Product> alike)
    {
        Product[] sizes = [.. alike];
        if (sizes.Length == 0 || line.Quantity == 0 || line.Included)
        {
            Lines.Add(line);
            return;
        }

        var left = line.Quantity;
        foreach (var (product, units) in Packs.Choose(sizes, line.Quantity))
        {
            var pieces = (int)Math.Min(left, units * (product.Pieces ?? 1));
            left -= pieces;
            Lines.Add(line with { Quantity = pieces, PartNumber = product.PartNumber, OrderQuantity = (int)units });
        }
    }

    /// <summary>Adds a line without a product on offer.</summary>
    public void Add(PartLine line) => Lines.Add(line);

    /// <summary>Adds a line of parts that the rack as described has, one for each part number.</summary>
    /// <param name="line">The line, without part number and quantity.</param>
    /// <param name="items">The items that are the parts.</param>
    public void AddGiven(PartLine line, IEnumerable<MountedItem> items)
    {
        foreach (var alike in items.GroupBy(i => i.Item!.PartNumber, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Lines.Add(line with
            {
                Quantity = alike.Count(),
                Items = Ids(alike),
                PartNumber = alike.Key,
                OrderQuantity = alike.Key is null ? null : alike.Count(),
            });
        }
    }

    /// <summary>Ids in the order of a rack, each once.</summary>
    public static IReadOnlyList<string> Ids(IEnumerable<MountedItem> items) => [.. items.Select(i => i.Id).Distinct().Order(IdOrder.Instance)];
}
