using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Rules.Layout;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Request, offered products and rule limits of one basket.</summary>
internal sealed class BasketContext
{
    private static readonly RackChecker NoSupportRule = RuleChecks.Only<NoSupport>();

    private readonly ILookup<ProductKind, Product> offered;
    private readonly Dictionary<(int?, ItemCategory?, Body?, double?), bool> tooMuchForPanel = [];

    /// <summary>Sorts the offered products.</summary>
    /// <param name="request">The basket.</param>
    /// <param name="offered">The offered products.</param>
    /// <param name="seeksLowestCost">Whether the cheapest of what suits is chosen.</param>
    public BasketContext(BasketRequest request, IReadOnlyList<Product> offered, bool seeksLowestCost = false)
    {
        (Request, SeeksLowestCost) = (request, seeksLowestCost);
        Rules = new RuleChecks(request.Policy);
        Limits = new LimitsInForce(request.Policy);
        Product[] pdus = [.. offered.Where(p => p.Kind == ProductKind.Pdu)];
        HasPduPrices = Array.TrueForAll(pdus, p => p.Price is not null && p.Currency == pdus[0].Currency);
        this.offered = offered.Order(seeksLowestCost ? OfferOrder.Cheapest : OfferOrder.Instance).ToLookup(p => p.Kind);
    }

    /// <summary>The basket.</summary>
    public BasketRequest Request { get; }

    /// <summary>Whether the cheapest of what suits is chosen.</summary>
    public bool SeeksLowestCost { get; }

    /// <summary>Whether all PDUs on offer have prices in one currency.</summary>
    public bool HasPduPrices { get; }

    /// <summary>
    /// Whether vertical PDUs are chosen where the cabinet has channels for them, as proposals are compared by their free height. A shop sells no larger PDU
    /// than the order needs.
    /// </summary>
    public bool KeepsHeightFree { get; init; }

    /// <summary>Rule limits.</summary>
    public RuleChecks Rules { get; }

    /// <summary>The limits that several rooms go by, as the policy sets them.</summary>
    public LimitsInForce Limits { get; }

    /// <summary>Whether a further outlet was tried without effect. Missing outlets are then reported as unmet instead of proposed.</summary>
    public bool OutletsGivenUp { get; set; }

    /// <summary>Kind of parts of the order that are not fitted to the cabinet, as the rack is sound without; null for none.</summary>
    public ProductKind? Leaves { get; set; }

    /// <summary>Number of supplies that are assumed for other cabinets. Those of this one get other names.</summary>
    public int OtherSupplies { get; init; }

    /// <summary>Loading of the given supplies by other cabinets, percent, by supply id; null without other cabinets.</summary>
    public IReadOnlyDictionary<string, double>? LoadsElsewhere { get; init; }

    /// <summary>Whether the layout is to have the lowest centre of gravity found.</summary>
    public bool SeeksLowest { get; init; }

    /// <summary>Lowest U positions found for items, by id; other items go where there is room. Null before any were found.</summary>
    public IReadOnlyDictionary<string, int?>? Positions { get; set; }

    /// <summary>Ids of own equipment that brings slides or runners of its own if none on offer suit.</summary>
    public IReadOnlySet<string>? HasRails { get; init; }

    /// <summary>Ids of own equipment to be mounted on the rear uprights.</summary>
    public IReadOnlySet<string>? AtRear { get; init; }

    /// <summary>PDUs, connections, fans and air conditioner that are there already.</summary>
    public RackDescription? Given { get; init; }

    /// <summary>
    /// Whether items are to be fed from a UPS, by id; those not named are as far as it has power. Null to leave the cords to the check.
    /// </summary>
    public IReadOnlyDictionary<string, bool>? OnUps { get; set; }

    /// <summary>Ids of items that the customer wants to switch off and on remotely, wherever the rack is.</summary>
    public HashSet<string> Switched { get; init; } = new(StringComparer.Ordinal);

    /// <summary>Ids of items that stand by to be brought up.</summary>
    public HashSet<string> Spares { get; init; } = new(StringComparer.Ordinal);

    /// <summary>Whether the hosts have a console that is used remotely. Without one a host at a remote site is switched off and on.</summary>
    public bool HasRemoteConsole { get; init; }

    /// <summary>
    /// Whether a cord is to get a switched outlet. What the catalogue says can be used remotely needs none where somebody can reach the rack.
    /// </summary>
    public bool WantsSwitchedOutlet(Cord cord) => Request.Site?.Remote == true
        ? cord.NeedsSwitchedOutlet || Spares.Contains(cord.Item.Id)
            || (!HasRemoteConsole && cord.Item.Category is ItemCategory.Computer or ItemCategory.Server)
        : cord.NeedsSwitchedOutlet && Switched.Contains(cord.Item.Id);

    /// <summary>Positions that own equipment must keep, by its id, as the request counts them.</summary>
    public IReadOnlyDictionary<string, Position>? Kept { get; init; }

    /// <summary>PDUs that are there already, in a cabinet, with positions counted from its bottom.</summary>
    /// <param name="heightU">Height of the cabinet, U.</param>
    public IEnumerable<Pdu> GivenPdus(int heightU) =>
        (Given?.Pdus ?? []).Select(u => Given!.UnitNumbering == UnitNumbering.TopDown ? UnitNumbers.Turned(u, heightU) : u);

    /// <summary>Offered products of a kind.</summary>
    /// <returns>The products: where several suit alike, the first is chosen.</returns>
    public IEnumerable<Product> Offered(ProductKind kind) => offered[kind];

    /// <summary>Whether a product needs separate rails: its data asks for them, or a rule does not let its front panel carry it.</summary>
    public bool NeedsRails(Product product)
    {
        if (product is not { Kind: ProductKind.Equipment or ProductKind.FanTray, Item: { HeightU: > 0 } item } || BringsSupport(product))
        {
            return false;
        }

        if (item.Support?.Style is SupportStyle.Slides or SupportStyle.Runners)
        {
            return true;
        }

        var key = (item.HeightU, item.Category, item.Body, item.MassKg);
        if (!tooMuchForPanel.TryGetValue(key, out var needs))
        {
            tooMuchForPanel[key] = needs = IsTooMuchForPanel(item);
        }

        return needs;
    }

    /// <summary>The position that a product must keep, counted from the bottom; null if it may go anywhere.</summary>
    /// <param name="product">The product.</param>
    /// <param name="heightU">Height of the cabinet, U.</param>
    public Position? KeptPosition(Product product, int heightU) =>
        OwnEquipment.IdOf(product.PartNumber) is not { } id || Kept?.GetValueOrDefault(id) is not { } kept ? null
        : Given?.UnitNumbering == UnitNumbering.TopDown ? UnitNumbers.Turned(kept, heightU) : kept;

    /// <summary>Whether a product brings slides or runners of its own if none on offer suit.</summary>
    public bool BringsRails(Product product) => OwnEquipment.IdOf(product.PartNumber) is { } id && HasRails?.Contains(id) == true;

    /// <summary>Type of rails that a product takes; null for either type.</summary>
    /// <returns>Slides or runners.</returns>
    public static SupportStyle? RailStyle(Product product) => product.Item switch
    {
        { Support.Style: SupportStyle.Slides or SupportStyle.Runners } item => item.Support.Style,
        { Category: ItemCategory.KeyboardDrawer } => SupportStyle.Slides,
        _ => null,
    };

    /// <summary>Whether a product includes its support. A load rating shows that it does.</summary>
    public static bool BringsSupport(Product product) => product.Item is { Support: { RatedKg: not null } or { Style: SupportStyle.Shelf } };

    // The rule applies the limits for front-panel mounting, including the policy.
    private bool IsTooMuchForPanel(ProductItem item) => NoSupportRule.Find(ResolvedRack.Plain(new RackDescription
    {
        Cabinet = new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 1000 },
        Items =
        [
            new Item
            {
                Id = "item",
                HeightU = item.HeightU,
                Category = item.Category,
                Body = item.Body,
                MassKg = item.MassKg,
                Support = new Support { Style = SupportStyle.Panel },
            },
        ],
        Policy = Request.Policy,
    })).Findings.Count > 0;
}
