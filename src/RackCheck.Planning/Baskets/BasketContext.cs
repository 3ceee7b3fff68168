using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Survey.Limits;

namespace RackCheck.Planning.Baskets;

/// <summary>What every plan of one basket goes by.</summary>
internal sealed class BasketContext
{
    private readonly ILookup<ProductKind, Product> offered;
    private readonly HashSet<string> needRails;

    /// <summary>Sorts what is on offer, and finds what needs rails.</summary>
    /// <param name="request">The basket.</param>
    /// <param name="products">All products that a rack of it may have.</param>
    /// <param name="offered">Those on offer.</param>
    public BasketContext(BasketRequest request, IEnumerable<Product> products, IReadOnlyList<Product> offered)
    {
        Request = request;
        Rules = new RuleChecks(request.Policy);
        Limits = new LimitsInForce(request.Policy);
        this.offered = offered.OrderBy(p => p.PartNumber, StringComparer.Ordinal).ToLookup(p => p.Kind);
        needRails = FindWhatNeedsRails(products, request.Policy);
    }

    /// <summary>The basket.</summary>
    public BasketRequest Request { get; }

    /// <summary>Limits of the rules.</summary>
    public RuleChecks Rules { get; }

    /// <summary>The limits that several rooms go by, as the policy sets them.</summary>
    public LimitsInForce Limits { get; }

    /// <summary>Whether an outlet more was tried and did not help: then what is short is said instead of proposed.</summary>
    public bool OutletsGivenUp { get; set; }

    /// <summary>What is on offer of a kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>The products, by part number.</returns>
    public IEnumerable<Product> Offered(ProductKind kind) => offered[kind];

    /// <summary>Whether a product hangs on rails that are sold on their own, by its own word or because a rule does not let its front panel carry it.</summary>
    /// <param name="product">The product.</param>
    /// <returns>Whether it does.</returns>
    public bool NeedsRails(Product product) => needRails.Contains(product.PartNumber);

    /// <summary>The rails that a product takes; null for either sort.</summary>
    /// <param name="product">The product.</param>
    /// <returns>Slides or runners.</returns>
    public static SupportStyle? RailStyle(Product product) => product.Item switch
    {
        { Support.Style: SupportStyle.Slides or SupportStyle.Runners } item => item.Support.Style,
        { Category: ItemCategory.KeyboardDrawer } => SupportStyle.Slides,
        _ => null,
    };

    /// <summary>Whether a product brings what carries it: a rating says that it is there.</summary>
    /// <param name="product">The product.</param>
    /// <returns>Whether it does.</returns>
    public static bool BringsSupport(Product product) => product.Item is { Support: { RatedKg: not null } or { Style: SupportStyle.Shelf } };

    private static HashSet<string> FindWhatNeedsRails(IEnumerable<Product> products, Policy? policy)
    {
        Product[] mounted = [.. products.Where(p => p is { Kind: ProductKind.Equipment or ProductKind.FanTray, Item.HeightU: > 0 } && !BringsSupport(p))];
        var found = mounted.Where(p => p.Item!.Support?.Style is SupportStyle.Slides or SupportStyle.Runners).Select(p => p.PartNumber).ToHashSet(StringComparer.Ordinal);
        if (mounted.Length > 0)
        {
            // The rule knows what a front panel carries, and by what policy.
            var report = RuleChecks.Only<NoSupport>().Check(new RackDescription
            {
                Cabinet = new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 1000 },
                Items =
                [
                    .. mounted.Select(p => new Item
                    {
                        Id = p.PartNumber, HeightU = p.Item!.HeightU, Category = p.Item.Category, Body = p.Item.Body, MassKg = p.Item.MassKg, Support = new Support { Style = SupportStyle.Panel },
                    }),
                ],
                Policy = policy,
            });
            found.UnionWith(report.Findings.Select(f => f.MessageData["item"].Text!));
        }

        return found;
    }
}
