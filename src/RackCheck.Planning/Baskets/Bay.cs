using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>What has to be there before the next can be worked out. What lacks is added stage by stage: a shelf more moves what hangs beside it.</summary>
internal enum Stage
{
    /// <summary>Shelves for what is no 19-inch unit.</summary>
    Shelves,

    /// <summary>Slides and runners.</summary>
    Rails,

    /// <summary>A switch for keyboard, video and mouse.</summary>
    Consoles,

    /// <summary>Fans in the roof.</summary>
    Cooling,

    /// <summary>PDUs.</summary>
    Outlets,

    /// <summary>Earth bar and leads.</summary>
    Earth,

    /// <summary>Mains cords.</summary>
    Cords,

    /// <summary>Blanking panels.</summary>
    Blanking,

    /// <summary>Nuts and screws.</summary>
    Fixings,
}

/// <summary>Pieces that a bay lacks.</summary>
/// <param name="Stage">What they are for.</param>
/// <param name="Product">A product on offer.</param>
/// <param name="OrderUnits">Order units of it.</param>
/// <param name="Reason">Why, in the customer's words.</param>
internal sealed record Lack(Stage Stage, Product Product, long OrderUnits, string Reason);

/// <summary>An item of a bay, with the pieces that it is made of.</summary>
internal sealed class BayItem
{
    /// <summary>The item as it stands.</summary>
    public required Item Item { get; set; }

    /// <summary>The piece that it is.</summary>
    public required Piece Piece { get; init; }

    /// <summary>The rails that it hangs on, where they are sold on their own.</summary>
    public Piece? Rails { get; set; }

    /// <summary>Its earth lead.</summary>
    public Piece? Lead { get; set; }

    /// <summary>Whether it has to hang on rails that are sold on their own.</summary>
    public bool NeedsRails { get; init; }

    /// <summary>The sort of rails that it takes; null for either.</summary>
    public SupportStyle? RailStyle { get; init; }

    /// <summary>Its id.</summary>
    public string Id => Item.Id;

    /// <summary>Units that it takes; 0 for what stands on a shelf.</summary>
    public int HeightU => Item.HeightU ?? 0;

    /// <summary>Whether it is a shelf.</summary>
    public bool IsShelf => Item.Category == ItemCategory.Shelf;

    /// <summary>Whether it hangs on runners, or may.</summary>
    public bool MayRun => NeedsRails ? (Item.Support?.Style is SupportStyle.Slides or SupportStyle.Runners ? Item.Support.Style : RailStyle) != SupportStyle.Slides
        : Item.Support?.Style == SupportStyle.Runners;

    /// <summary>Whether it rises out of its units on runners, so that no other set stands right on it.</summary>
    public bool Creeps => MayRun && !(Item.Body?.HeightMm + (Item.Support?.ThicknessMm ?? Allowances.RunnerThicknessMm) <= RackGeometry.ApertureMm(HeightU));
}

/// <summary>A PDU of a bay.</summary>
internal sealed class BayUnit
{
    /// <summary>The unit as it stands.</summary>
    public required Pdu Unit { get; set; }

    /// <summary>The piece that it is.</summary>
    public required Piece Piece { get; init; }
}

/// <summary>A rack as it is put together from a stock, step by step.</summary>
/// <param name="stock">The stock that it takes its pieces from.</param>
/// <param name="request">The basket.</param>
/// <param name="cabinet">The cabinet.</param>
internal sealed class Bay(Stock stock, BasketRequest request, Cabinet cabinet)
{
    private RackSurvey? wired;
    private readonly Dictionary<string, int> ids = new(StringComparer.Ordinal);

    /// <summary>The stock; what the rack took of it counts as used.</summary>
    public Stock Stock => stock;

    /// <summary>The cabinet with what was fitted to it.</summary>
    public Cabinet Cabinet { get; set; } = cabinet;

    /// <summary>The piece that the cabinet is.</summary>
    public required Piece CabinetPiece { get; init; }

    /// <summary>Items, in the order of the description.</summary>
    public List<BayItem> Items { get; } = [];

    /// <summary>PDUs, in the order of the description.</summary>
    public List<BayUnit> Units { get; } = [];

    /// <summary>Supplies, given or assumed.</summary>
    public List<Supply> Supplies { get; } = [.. request.Supplies ?? []];

    /// <summary>Whether the supplies are the caller's, not assumed.</summary>
    public bool HasGivenSupplies { get; } = request.Supplies is { Count: > 0 };

    /// <summary>Fans and cooler.</summary>
    public Cooling? Cooling { get; set; }

    /// <summary>What was fitted to the cabinet, by its place in the rack.</summary>
    public Dictionary<string, Piece> CabinetParts { get; } = new(StringComparer.Ordinal);

    /// <summary>What lacks and is on offer.</summary>
    public List<Lack> Lacks { get; } = [];

    /// <summary>What lacks and is not on offer.</summary>
    public List<UnmetNeed> Unmet { get; } = [];

    /// <summary>What was assumed.</summary>
    public List<Assumption> Assumptions { get; } = [];

    /// <summary>Cords without an outlet, and redundant items on one supply: what PDUs would have to mend.</summary>
    public int OutletsShort { get; set; }

    /// <summary>The region; null where not told.</summary>
    public Region? Region => request.Site?.Region;

    /// <summary>Clear opening between the uprights, mm.</summary>
    public double OpeningMm => Cabinet.Uprights?.OpeningMm ?? RackGeometry.OpeningMm;

    /// <summary>Front to rear uprights, mm; null where not known.</summary>
    public double? SpacingMm => Cabinet.Uprights?.SpacingMm;

    /// <summary>The facts of the rack once it is mounted and wired: leads, cords, panels and fixings change none of those that they ask for.</summary>
    public RackSurvey Wired => wired ??= new RackSurvey(Describe());

    /// <summary>Things that take room and found none.</summary>
    public IEnumerable<BayItem> NotPlaced => Items.Where(i => i is { HeightU: > 0, Item.Position: null });

    /// <summary>An id that no other thing of the rack has.</summary>
    /// <param name="product">The product that the thing is one of.</param>
    /// <returns>The id.</returns>
    public string IdFor(Product product)
    {
        // An id is as long as a part number at most, and ends in a number.
        const int Longest = 58;
        var stem = product.PartNumber.Length <= Longest ? product.PartNumber : product.PartNumber[..Longest];
        ids[stem] = ids.GetValueOrDefault(stem) + 1;
        return FormattableString.Invariant($"{stem}-{ids[stem]}");
    }

    /// <summary>The rack as it stands.</summary>
    /// <returns>Its description.</returns>
    public RackDescription Describe() => new()
    {
        Reference = request.Reference,
        Cabinet = Cabinet,
        Items = [.. Items.Select(i => i.Item)],
        Supplies = [.. Supplies],
        Pdus = [.. Units.Select(u => u.Unit)],
        Cooling = Cooling,
        Earthing = request.Earthing,
        Site = request.Site,
        Policy = request.Policy,
        Acceptances = request.Acceptances,
    };
}
