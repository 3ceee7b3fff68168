using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Stages of completing a basket, in order. Missing parts are added stage by stage, since a further shelf moves other items.</summary>
internal enum Stage
{
    /// <summary>Shelves for items that are not rack-mountable.</summary>
    Shelves,

    /// <summary>Slides and runners.</summary>
    Rails,

    /// <summary>KVM switch.</summary>
    Consoles,

    /// <summary>Roof fans.</summary>
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

    /// <summary>Cable arms and KVM leads.</summary>
    Accessories,
}

/// <summary>A missing line: pieces that the rack needs.</summary>
/// <param name="Stage">Stage that needs them.</param>
/// <param name="Product">An offered product.</param>
/// <param name="OrderUnits">Number of order units.</param>
/// <param name="Reason">Reason, worded for the customer.</param>
internal sealed record MissingPiece(Stage Stage, Product Product, long OrderUnits, WordedText Reason);

/// <summary>An item of a rack and the pieces that it consists of.</summary>
internal sealed class BuildItem
{
    /// <summary>The item in its present state.</summary>
    public required Item Item { get; set; }

    /// <summary>Its piece of the stock.</summary>
    public required Piece Piece { get; init; }

    /// <summary>The position that it must keep; null if it may go anywhere.</summary>
    public Position? Kept { get; init; }

    /// <summary>The face on which it is mounted.</summary>
    public Face Face { get; init; }

    /// <summary>Its separate rails, if any.</summary>
    public Piece? Rails { get; set; }

    /// <summary>Its earth lead.</summary>
    public Piece? Lead { get; set; }

    /// <summary>Inlets whose cord has another plug, by the index of the plug; null if none has.</summary>
    public IReadOnlyDictionary<int, ConnectorCode>? Inlets { get; set; }

    /// <summary>Its cable-management arm.</summary>
    public Piece? CableArm { get; set; }

    /// <summary>Whether it needs separate rails.</summary>
    public bool NeedsRails { get; init; }

    /// <summary>Type of rails that it takes; null for either type.</summary>
    public SupportStyle? RailStyle { get; init; }

    /// <summary>Its id.</summary>
    public string Id => Item.Id;

    /// <summary>Height in U; 0 for an item on a shelf.</summary>
    public int HeightU => Item.HeightU ?? 0;

    /// <summary>Whether it is a shelf.</summary>
    public bool IsShelf => Item.Category == ItemCategory.Shelf;

    /// <summary>Whether it is or may be supported by runners.</summary>
    public bool MayRun => NeedsRails
        ? (Item.Support?.Style is SupportStyle.Slides or SupportStyle.Runners ? Item.Support.Style : RailStyle) != SupportStyle.Slides
        : Item.Support?.Style == SupportStyle.Runners;

    /// <summary>Whether runners raise it beyond its U positions, so that the item above cannot be directly adjacent.</summary>
    public bool Creeps => MayRun && !(Item.Body?.HeightMm + (Item.Support?.ThicknessMm ?? Allowances.RunnerThicknessMm) <= RackGeometry.ApertureMm(HeightU));

    /// <summary>A copy in the same state.</summary>
    public BuildItem Copy() => (BuildItem)MemberwiseClone();
}

/// <summary>A PDU of a rack.</summary>
internal sealed class BuildPdu
{
    /// <summary>The PDU in its present state.</summary>
    public required Pdu Unit { get; set; }

    /// <summary>Its piece of the stock.</summary>
    public required Piece Piece { get; init; }

    /// <summary>Its outlet groups, if the PDU in its present state has only the outlets that chosen cords take; null otherwise.</summary>
    public IReadOnlyList<OutletGroup>? AllGroups { get; private set; }

    /// <summary>The PDU with all its outlets.</summary>
    public Pdu Whole => AllGroups is null ? Unit : Unit with { Groups = AllGroups };

    /// <summary>Leaves it only the outlets that chosen cords take, so that no others are assigned to it.</summary>
    /// <param name="taken">The outlets; none for a PDU that feeds nothing.</param>
    public void Keep(IReadOnlyList<OutletGroup> taken) => (AllGroups, Unit) = (Unit.Groups, Unit with { Groups = taken });

    /// <summary>A copy in the same state.</summary>
    public BuildPdu Copy() => (BuildPdu)MemberwiseClone();
}

/// <summary>A rack under construction, built from a stock step by step.</summary>
internal sealed class RackBuild(Stock stock, BasketRequest request, Cabinet cabinet)
{
    private RackSurvey? wired;
    private readonly Dictionary<string, int> ids = new(StringComparer.Ordinal);

    /// <summary>The stock; pieces in the rack count as used.</summary>
    public Stock Stock => stock;

    /// <summary>The cabinet with the parts fitted to it.</summary>
    public Cabinet Cabinet { get; set; } = cabinet;

    /// <summary>Piece of the stock that is the cabinet.</summary>
    public required Piece CabinetPiece { get; init; }

    /// <summary>Items, in description order.</summary>
    public List<BuildItem> Items { get; } = [];

    /// <summary>PDUs, in description order.</summary>
    public List<BuildPdu> Units { get; } = [];

    /// <summary>Supplies, specified or assumed.</summary>
    public List<Supply> Supplies { get; } = [.. request.Supplies ?? []];

    /// <summary>Whether the request specifies the supplies.</summary>
    public bool HasGivenSupplies { get; } = request.Supplies is { Count: > 0 };

    /// <summary>Connections given with the PDUs, or chosen for what a UPS feeds.</summary>
    public IReadOnlyList<Connection>? Connections { get; set; }

    /// <summary>Fans and air conditioner.</summary>
    public Cooling? Cooling { get; set; }

    /// <summary>Parts fitted to the cabinet, by pointer into the description.</summary>
    public Dictionary<string, Piece> CabinetParts { get; } = new(StringComparer.Ordinal);

    /// <summary>Missing parts that are on offer.</summary>
    public List<MissingPiece> MissingPieces { get; } = [];

    /// <summary>Missing parts that are not on offer.</summary>
    public List<OpenNeed> Unmet { get; } = [];

    /// <summary>Assumptions made.</summary>
    public List<Assumption> Assumptions { get; } = [];

    /// <summary>Weighted number of cords without an outlet and of dual-corded items on one supply. Further PDUs reduce it.</summary>
    public int OutletsShort { get; set; }

    /// <summary>The site; null if not specified.</summary>
    public Site? Site => request.Site;

    /// <summary>The region; null if not specified.</summary>
    public Region? Region => request.Site?.Region;

    /// <summary>Number of supplies assumed for other cabinets.</summary>
    public int OtherSupplies { get; init; }

    /// <summary>Loading of the given supplies by other cabinets, percent, by supply id; null without other cabinets.</summary>
    public IReadOnlyDictionary<string, double>? LoadsElsewhere { get; init; }

    /// <summary>Clear opening between the uprights, mm.</summary>
    public double OpeningMm => Cabinet.Uprights?.OpeningMm ?? RackGeometry.OpeningMm;

    /// <summary>Front to rear upright spacing, mm; null if unknown.</summary>
    public double? SpacingMm => Cabinet.Uprights?.SpacingMm;

    /// <summary>A copy in the same state, to go on with another stock: of what is used in the rack it has as much.</summary>
    /// <param name="other">The other stock, which is copied too.</param>
    public RackBuild CopyWith(Stock other)
    {
        var own = other.With([]);
        own.UseLike(stock);
        var copy = new RackBuild(own, request, Cabinet)
        {
            CabinetPiece = CabinetPiece,
            Connections = Connections,
            Cooling = Cooling,
            OutletsShort = OutletsShort,
            OtherSupplies = OtherSupplies,
            LoadsElsewhere = LoadsElsewhere,
        };
        copy.wired = wired;
        copy.Items.AddRange(Items.Select(i => i.Copy()));
        copy.Units.AddRange(Units.Select(u => u.Copy()));
        copy.MissingPieces.AddRange(MissingPieces);
        copy.Unmet.AddRange(Unmet);
        copy.Assumptions.AddRange(Assumptions);
        copy.Supplies.Clear();
        copy.Supplies.AddRange(Supplies);
        foreach (var (stem, number) in ids)
        {
            copy.ids[stem] = number;
        }

        foreach (var (pointer, piece) in CabinetParts)
        {
            copy.CabinetParts[pointer] = piece;
        }

        return copy;
    }

    /// <summary>Survey of the rack, mounted and wired. Leads, cords, panels and fixings do not change the values read from it.</summary>
    public RackSurvey Wired => wired ??= RackSurvey.Lazily(Describe());

    /// <summary>The inlet of a cord that has another plug; null for one whose plug belongs to it.</summary>
    public ConnectorCode? InletOf(Cord cord) =>
        Items.Find(i => i.Id == cord.Item.Id)?.Inlets is { } inlets && inlets.TryGetValue(cord.Plug, out var inlet) ? inlet : null;

    /// <summary>Has the survey made anew, as cords have other plugs.</summary>
    public void Rewire() => wired = null;

    /// <summary>Rack-mountable items without a position.</summary>
    public IEnumerable<BuildItem> NotPlaced => Items.Where(i => i is { HeightU: > 0, Item.Position: null });

    /// <summary>Horizontal PDUs without a position.</summary>
    public IEnumerable<BuildPdu> UnitsToPlace => Units.Where(u => u.Unit is { Mounting: PduMounting.Horizontal, Position: null });

    /// <summary>The id of a piece: the part number and a number. It is at most as long as a part number.</summary>
    /// <param name="partNumber">The part number.</param>
    /// <param name="number">The number of the piece, from 1.</param>
    public static string IdOf(string partNumber, int number)
    {
        const int Longest = 58;
        return FormattableString.Invariant($"{(partNumber.Length <= Longest ? partNumber : partNumber[..Longest])}-{number}");
    }

    /// <summary>A unique id within the rack.</summary>
    public string IdFor(Product product)
    {
        if (OwnEquipment.IdOf(product.PartNumber) is { } own)
        {
            return own;
        }

        string id;
        do
        {
            // Part numbers that begin alike share their numbers.
            var stem = IdOf(product.PartNumber, 0);
            ids[stem] = ids.GetValueOrDefault(stem) + 1;
            id = IdOf(product.PartNumber, ids[stem]);
        }
        while (stock.Find(OwnEquipment.KeyOf(id)) is not null || Units.Exists(u => u.Unit.Id == id));
        return id;
    }

    /// <summary>The connections of the rack: where some are chosen, those of all cords, as the others are assigned to what is left.</summary>
    public IReadOnlyList<Connection>? AllConnections => Units.Exists(u => u.AllGroups is not null) ? Wired.Power.Figures?.Assignment : Connections;

    /// <summary>Description of the rack in its present state.</summary>
    public RackDescription Describe() => new()
    {
        Reference = request.Reference,
        Cabinet = Cabinet,
        Items = [.. Items.Select(i => i.Item)],
        Supplies = [.. Supplies],
        Pdus = [.. Units.Select(u => u.Unit)],
        Connections = Connections,
        Cooling = Cooling,
        Earthing = request.Earthing,
        Site = request.Site,
        Policy = request.Policy,
        Acceptances = request.Acceptances,
        SignOffs = request.SignOffs,
        AsOf = request.AsOf,
    };
}
