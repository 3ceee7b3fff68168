using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>What has to be there before the next can be worked out. What lacks is added stage by stage: a shelf more moves what hangs beside it.</summary>
internal enum Stage
{
    Shelves,
    Rails,
    Outlets,
    Earth,
    Cords,
    Blanking,
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
    public required Item Item { get; set; }

    public required Piece Piece { get; init; }

    public Piece? Rails { get; set; }

    public Piece? Lead { get; set; }

    /// <summary>Whether it has to hang on rails that are sold on their own.</summary>
    public bool NeedsRails { get; init; }

    /// <summary>The sort of rails that it takes; null for either.</summary>
    public SupportStyle? RailStyle { get; init; }

    public string Id => Item.Id;

    public int HeightU => Item.HeightU ?? 0;

    public bool IsPanel => Item.Category == ItemCategory.BlankingPanel;

    public bool IsShelf => Item.Category == ItemCategory.Shelf;

    /// <summary>Whether it hangs on runners, or may.</summary>
    public bool MayRun => NeedsRails ? (Item.Support?.Style is SupportStyle.Slides or SupportStyle.Runners ? Item.Support.Style : RailStyle) != SupportStyle.Slides
        : Item.Support?.Style == SupportStyle.Runners;

    /// <summary>Whether it rises out of its units on runners, so that no other set stands right on it.</summary>
    public bool Creeps => MayRun && !(Item.Body?.HeightMm + (Item.Support?.ThicknessMm ?? Allowances.RunnerThicknessMm) <= RackGeometry.ApertureMm(HeightU));
}

/// <summary>A distribution unit of a bay.</summary>
internal sealed class BayUnit
{
    public required DistributionUnit Unit { get; set; }

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

    public Stock Stock => stock;

    public Cabinet Cabinet { get; set; } = cabinet;

    public required Piece CabinetPiece { get; init; }

    public List<BayItem> Items { get; } = [];

    public List<BayUnit> Units { get; } = [];

    public List<Supply> Supplies { get; } = [.. request.Supplies ?? []];

    /// <summary>Whether the supplies are the caller's, not assumed.</summary>
    public bool HasGivenSupplies { get; } = request.Supplies is { Count: > 0 };

    public Cooling? Cooling { get; set; }

    /// <summary>What was fitted to the cabinet, by its place in the rack.</summary>
    public Dictionary<string, Piece> CabinetParts { get; } = new(StringComparer.Ordinal);

    public List<Lack> Lacks { get; } = [];

    public List<UnmetNeed> Unmet { get; } = [];

    public List<Assumption> Assumptions { get; } = [];

    /// <summary>Cords without an outlet, and redundant items on one supply: what distribution units would have to mend.</summary>
    public int OutletsShort { get; set; }

    public Region? Region => request.Site?.Region;

    public double OpeningMm => Cabinet.Uprights?.OpeningMm ?? RackGeometry.OpeningMm;

    public double? SpacingMm => Cabinet.Uprights?.SpacingMm;

    /// <summary>The facts of the rack once it is mounted and wired: leads, cords, panels and fixings change none of those that they ask for.</summary>
    public RackSurvey Wired => wired ??= new RackSurvey(Describe());

    /// <summary>Things that take room and found none.</summary>
    public IEnumerable<BayItem> NotPlaced => Items.Where(i => i is { HeightU: > 0, Item.Position: null });

    /// <summary>An id that no other thing of the rack has.</summary>
    public string IdFor(Product product)
    {
        // An id is as long as a part number at most, and ends in a number.
        const int Longest = 58;
        var stem = product.PartNumber.Length <= Longest ? product.PartNumber : product.PartNumber[..Longest];
        ids[stem] = ids.GetValueOrDefault(stem) + 1;
        return FormattableString.Invariant($"{stem}-{ids[stem]}");
    }

    /// <summary>The rack as it stands.</summary>
    public RackDescription Describe() => new()
    {
        Reference = request.Reference,
        Cabinet = Cabinet,
        Items = [.. Items.Select(i => i.Item)],
        Supplies = [.. Supplies],
        DistributionUnits = [.. Units.Select(u => u.Unit)],
        Cooling = Cooling,
        Earthing = request.Earthing,
        Site = request.Site,
        Policy = request.Policy,
        Acceptances = request.Acceptances,
    };
}
