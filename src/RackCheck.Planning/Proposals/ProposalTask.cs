using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Proposals;

/// <summary>A request prepared for building: its equipment as a stock.</summary>
internal sealed class ProposalTask
{
    private readonly HashSet<string> ownIds;

    /// <summary>Prepares a request.</summary>
    /// <param name="request">The request.</param>
    /// <param name="found">Products of its part numbers.</param>
    /// <param name="offered">Products on offer.</param>
    /// <param name="placement">Place of the cabinet in a row; null for a cabinet alone.</param>
    /// <param name="otherSupplies">Number of supplies assumed for other cabinets of the row.</param>
    /// <param name="loadsElsewhere">Loading of the given supplies by other cabinets of the row, percent, by supply id; null without others.</param>
    /// <param name="ordered">What a basket orders besides the equipment; null without a basket.</param>
    public ProposalTask(
        ProposalRequest request,
        IReadOnlyDictionary<string, Product> found,
        IReadOnlyList<Product> offered,
        Placement? placement = null,
        int otherSupplies = 0,
        IReadOnlyDictionary<string, double>? loadsElsewhere = null,
        OrderedParts? ordered = null)
    {
        var products = new Dictionary<string, Product>(StringComparer.Ordinal);
        foreach (var product in offered.Concat(found.Values))
        {
            products[product.PartNumber] = product;
        }

        (Request, Products, Offered) = (request, products, offered);
        IsThorough = request.Effort == SearchEffort.Thorough;
        Budget = IsBasket ? new SearchBudget(SearchBudget.Basket) : SearchBudget.Of(IsThorough);
        Ordered = ordered ?? OrderedParts.None;
        Items = ResolvedRack.Of(request.In(new Cabinet()), products).Description.Items;
        Product[] own = [.. Items.Where(i => i.HeightU is not null).Select(i => OwnEquipment.ProductOf(i, products.GetValueOrDefault(i.PartNumber ?? "")))];
        Stock = new Stock(own.Select(p => (p, 1L)).Concat(Ordered.Parts));
        var keep = (request.Keep ?? []).ToHashSet(StringComparer.Ordinal);
        Context = new BasketContext(
            new BasketRequest
            {
                Reference = request.Reference,
                Lines = [],
                Options = new BasketOptions
                {
                    Fixing = Ordered.Fixing,
                    Placement = request.Cabinets?.Any(c => c.Placement is not null) == true ? null : placement,
                },
                Supplies = request.Supplies,
                Earthing = request.Earthing,
                Site = request.Site,
                Policy = request.Policy,
                Acceptances = request.Acceptances,
                SignOffs = request.SignOffs,
                AsOf = request.AsOf,
            },
            offered,
            request.Prefer == CabinetPreference.LowestCost)
        {
            SeeksLowest = true,
            KeepsHeightFree = !IsBasket,
            OtherSupplies = otherSupplies,
            LoadsElsewhere = loadsElsewhere,
            Given = new RackDescription
            {
                UnitNumbering = request.UnitNumbering, Items = [], Pdus = request.Pdus, Connections = request.Connections, Cooling = request.Cooling,
            },
            HasRails = request.Items
                .Where(i => i is { PartNumber: null, Support.Style: SupportStyle.Slides or SupportStyle.Runners })
                .Select(i => i.Id)
                .ToHashSet(StringComparer.Ordinal),
            HasRemoteConsole = Items.Any(i => i.RemoteAccess == true),
            AtRear = request.Items.Where(i => i.Position?.Face == Face.Rear).Select(i => i.Id).ToHashSet(StringComparer.Ordinal),
            Switched =
            [
                .. Ordered.Switched,
                .. request.Items.Where(i => i.RemotePowerCycle == true && products.GetValueOrDefault(i.PartNumber ?? "")?.Item?.RemotePowerCycle != true)
                    .Select(i => i.Id),
            ],
            Spares = request.Items.Where(i => i.Spare == true).Select(i => i.Id).ToHashSet(StringComparer.Ordinal),
            Kept = request.Items.Where(i => keep.Contains(i.Id)).ToDictionary(i => i.Id, i => i.Position!, StringComparer.Ordinal),
        };
        ownIds = Items.Select(i => i.Id).ToHashSet(StringComparer.Ordinal);
        Standing =
        [
            .. Context.Kept!.Keys, .. (request.Connections ?? []).Select(c => c.Item).Where(ownIds.Contains),
            .. request.Items.Where(i => i.Ups?.Feeds is { Count: > 0 }).Select(i => i.Id),
        ];
        ItemsU = Items.Where(i => !Context.AtRear.Contains(i.Id)).Sum(i => i.HeightU ?? 0);
    }

    /// <summary>The request.</summary>
    public ProposalRequest Request { get; }

    /// <summary>Products of the request and on offer, by part number.</summary>
    public IReadOnlyDictionary<string, Product> Products { get; }

    /// <summary>Products on offer.</summary>
    public IReadOnlyList<Product> Offered { get; }

    /// <summary>Items with the data of their part numbers.</summary>
    public IReadOnlyList<Item> Items { get; }

    /// <summary>Ids of the items that are in the cabinet of what is there already: those kept or connected, and a UPS that feeds its PDUs.</summary>
    public HashSet<string> Standing { get; }

    /// <summary>The equipment.</summary>
    public Stock Stock { get; }

    /// <summary>What building a rack needs.</summary>
    public BasketContext Context { get; }

    /// <summary>Height of the equipment alone on the front, U.</summary>
    public int ItemsU { get; }

    /// <summary>Whether it is a basket, which a customer waits for.</summary>
    public bool IsBasket => !ReferenceEquals(Ordered, OrderedParts.None);

    /// <summary>Whether the search ends early: a customer waits for a basket, and a rack of a row is one of several.</summary>
    public bool IsBrief => IsBasket || IsOfRow;

    /// <summary>Whether it is a part of a request, for one cabinet of a row.</summary>
    public bool IsOfRow { get; init; }

    /// <summary>What a basket orders besides the equipment.</summary>
    public OrderedParts Ordered { get; }

    /// <summary>The work that is left for the request.</summary>
    public SearchBudget Budget { get; init; }

    /// <summary>The layouts solved so far for the request.</summary>
    public SolvedLayouts Layouts { get; init; } = new();

    /// <summary>Cabinets in which a rack is known to be of no use, though nothing is proven; null if none are.</summary>
    public Func<CabinetOffer, bool>? PassesOver { get; init; }

    /// <summary>Whether only to find out if there is a rack: the first without an open error is enough.</summary>
    public bool IsTest { get; init; }

    /// <summary>Whether the search goes on to the proof.</summary>
    public bool IsThorough { get; }

    /// <summary>Deterministic time that the solver has for the layouts of one search.</summary>
    public double Work => IsThorough ? 15 : IsBrief ? 0.1 : 0.4;

    /// <summary>
    /// Errors of a rack, items that its UPSs pass over, idle PDUs, and warnings: the smaller the better. An order says itself what its UPSs feed, as do given
    /// cords, and which PDUs it has.
    /// </summary>
    public (int Errors, int PassedOver, bool IsIdle, int Warnings) FaultsOf(Trial trial)
    {
        var (errors, warnings) = trial.Faults;
        var isChosen = !IsBasket && Request.Connections is null;
        var passed = isChosen ? UpsFeeds.PassedOver(trial.Resolved.Description, trial.Found.Assignment ?? []) : 0;
        return (errors, passed, !IsBasket && trial.HasIdleUnit, warnings);
    }

    /// <summary>
    /// Whether the uprights of a cabinet may be set elsewhere: those of the customer's own, and of a new one before anything is mounted. A shop sells its
    /// cabinets as they are set.
    /// </summary>
    /// <param name="partNumber">Part number of the cabinet; null for one of the customer's own.</param>
    public bool MaySetUprights(string? partNumber) => partNumber is null || (!IsBasket && !IsBegun);

    /// <summary>Whether a cabinet of the request is there already and need not be ordered.</summary>
    /// <param name="offer">The cabinet.</param>
    public bool IsThere(CabinetOffer offer) => offer.Index is not null && (offer.Order is null || IsBasket || IsBegun);

    /// <summary>What a cabinet costs at least: nothing where it is there, infinite where it is added and has no price.</summary>
    /// <param name="offer">The cabinet.</param>
    public double LeastCostOf(CabinetOffer offer) => IsThere(offer) ? 0 : offer.Order!.Price ?? double.PositiveInfinity;

    // What is kept or given is mounted.
    private bool IsBegun => Standing.Count > 0 || Request.Pdus is { Count: > 0 };

    /// <summary>Whether an item belongs to the request.</summary>
    public bool IsOwn(string id) => ownIds.Contains(id);

    /// <summary>Height that a cabinet needs for equipment that takes a height, with room for growth.</summary>
    public int WithGrowth(int usedU) => usedU + GrowthU(usedU);

    /// <summary>Whether a rack leaves the height free that the request wants free.</summary>
    public bool HasRoomToGrow(Trial trial) => GrowthU(trial.UsedU) is 0 || GrowthU(trial.UsedU) <= trial.FreeU;

    private int GrowthU(int usedU) => (int)Math.Ceiling(usedU * (Request.GrowthPercent ?? 0) / 100);

    /// <summary>Whether a rack keeps what has to stay and holds the whole equipment.</summary>
    public bool IsKeptIn(RackDescription rack)
    {
        var placed = rack.Items.ToDictionary(i => i.Id, StringComparer.Ordinal);
        return Items.All(i => placed.ContainsKey(i.Id))
            && Context.Kept!.All(k => placed[k.Key].Position is { } now && now.U == k.Value.U && (now.Face ?? Face.Front) == (k.Value.Face ?? Face.Front));
    }
}
