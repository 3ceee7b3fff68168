using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>What a proposal makes smallest first.</summary>
[JsonConverter(typeof(NamedEnumConverter<CabinetPreference>))]
public enum CabinetPreference
{
    /// <summary>The height, then the depth, then the width.</summary>
    LowestHeight,

    /// <summary>The floor area, then the height.</summary>
    SmallestFootprint,

    /// <summary>
    /// The sum of the prices of what the proposal adds, the cabinet included, then the height. A rack with a part without a price comes after those with none.
    /// </summary>
    LowestCost,
}

/// <summary>How long a proposal is searched for.</summary>
[JsonConverter(typeof(NamedEnumConverter<SearchEffort>))]
public enum SearchEffort
{
    /// <summary>An answer at once: a rack without an open error, and how far it is proven to be the best.</summary>
    Quick,

    /// <summary>The search goes on until the proof or for up to 30 seconds.</summary>
    Thorough,
}

/// <summary>Quantity that a proposal makes small or large.</summary>
[JsonConverter(typeof(NamedEnumConverter<ObjectiveName>))]
public enum ObjectiveName
{
    /// <summary>Number of cabinets.</summary>
    Cabinets,

    /// <summary>Height of the cabinet, U.</summary>
    Height,

    /// <summary>Depth of the cabinet, mm.</summary>
    Depth,

    /// <summary>Width of the cabinet, mm.</summary>
    Width,

    /// <summary>
    /// Sum of the prices of the added lines, in the currency of the catalogue: where lowest-cost is preferred and all of them have a price in one currency.
    /// </summary>
    Cost,

    /// <summary>
    /// Number of shelves, pairs of slides or runners, KVM switches, roof fans and PDUs added. Cabinets, blanking panels, fixings, parts for earthing,
    /// cords, leads and cable-management arms are not counted.
    /// </summary>
    AddedParts,

    /// <summary>
    /// Height of the equipment's centre of gravity above the bottom of U1, mm. Where an assumption says that patch panels, cable managers and switches are next
    /// to each other, the bound is that of the layouts with them so.
    /// </summary>
    CentreOfGravity,

    /// <summary>Free height, U; blanking panels count as free.</summary>
    FreeU,
}

/// <summary>Equipment without a rack: the service chooses the cabinet, the positions and the parts.</summary>
public sealed record ProposalRequest
{
    /// <summary>Caller's reference, returned unchanged.</summary>
    [StringLength(64)]
    public string? Reference { get; init; }

    /// <summary>End of the cabinets from which U positions are counted, those of the proposed racks too. Default bottom-up.</summary>
    [AbsentMeansDefault]
    public UnitNumbering? UnitNumbering { get; init; }

    /// <summary>Equipment, with part numbers of the catalogue or with its own data. Positions are ignored, except of items in <c>keep</c>.</summary>
    [Length(1, 200)]
    public required IReadOnlyList<Item> Items { get; init; }

    /// <summary>Cabinets to choose from. Default: the cabinets on offer in the catalogue.</summary>
    [Length(1, 32)]
    public IReadOnlyList<Cabinet>? Cabinets { get; init; }

    /// <summary>Ids of items that keep their position.</summary>
    [MaxLength(200)]
    public IReadOnlyList<string>? Keep { get; init; }

    /// <summary>Free height for later equipment, percent of the height that the equipment takes. Default: 0.</summary>
    [Range(0d, 400d)]
    [AbsentMeansDefault]
    public double? GrowthPercent { get; init; }

    /// <summary>What the cabinet has to be smallest in. Default: lowest-height.</summary>
    [AbsentMeansDefault]
    public CabinetPreference? Prefer { get; init; }

    /// <summary>Items that stay in one cabinet.</summary>
    [MaxLength(50)]
    public IReadOnlyList<ItemGroup>? Groups { get; init; }

    /// <summary>Maximum number of cabinets. Default: 4.</summary>
    [Range(1, 6)]
    [AbsentMeansDefault]
    public int? MaxCabinets { get; init; }

    /// <summary>How long to search. Default: quick.</summary>
    [AbsentMeansDefault]
    public SearchEffort? Effort { get; init; }

    /// <summary>Electrical supplies. Default: assumed for the region, one for each PDU.</summary>
    [MaxLength(16)]
    public IReadOnlyList<Supply>? Supplies { get; init; }

    /// <summary>
    /// PDUs that are there already. They stay; the service adds what is missing. Of several cabinets they are in that of the items that are kept or connected.
    /// </summary>
    [MaxLength(32)]
    public IReadOnlyList<Pdu>? Pdus { get; init; }

    /// <summary>Connections of items to these PDUs; these items stay in one cabinet. Default: the service assigns the cords.</summary>
    [MaxLength(2000)]
    public IReadOnlyList<Connection>? Connections { get; init; }

    /// <summary>
    /// Fans and air conditioner that are there already, in the cabinet of the PDUs that are. They stay; the service adds what is missing.
    /// </summary>
    public Cooling? Cooling { get; init; }

    /// <summary>Earthing.</summary>
    public Earthing? Earthing { get; init; }

    /// <summary>Installation site.</summary>
    public Site? Site { get; init; }

    /// <summary>Caller's severities and limits.</summary>
    public Policy? Policy { get; init; }

    /// <summary>Accepted findings.</summary>
    [MaxLength(200)]
    public IReadOnlyList<Acceptance>? Acceptances { get; init; }

    /// <summary>Sign-offs by qualified persons.</summary>
    [MaxLength(200)]
    public IReadOnlyList<SignOff>? SignOffs { get; init; }

    /// <summary>Time of the request, RFC 3339. Acceptances expire against it.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    public string? AsOf { get; init; }

    /// <summary>The request as the description of a rack with a cabinet.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <returns>The description; members that only a proposal has are absent.</returns>
    public RackDescription In(Cabinet cabinet) => new()
    {
        Reference = Reference,
        UnitNumbering = UnitNumbering,
        Cabinet = cabinet,
        Items = Items,
        Supplies = Supplies,
        Pdus = Pdus,
        Connections = Connections,
        Cooling = Cooling,
        Earthing = Earthing,
        Site = Site,
        Policy = Policy,
        Acceptances = Acceptances,
        SignOffs = SignOffs,
        AsOf = AsOf,
    };
}

/// <summary>Items that stay in one cabinet.</summary>
public sealed record ItemGroup
{
    /// <summary>Unique id of the group.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Ids of its items.</summary>
    [Length(1, 200)]
    public required IReadOnlyList<string> Items { get; init; }
}

/// <summary>Proposed racks, or what prevents one.</summary>
public sealed record ProposalAnswer
{
    /// <summary>Caller's reference.</summary>
    public string? Reference { get; init; }

    /// <summary>Up to three racks, the preferred one first; empty if there is none without an open error.</summary>
    public required IReadOnlyList<ProposedRack> Alternatives { get; init; }

    /// <summary>What prevents a rack; absent if there is one.</summary>
    public ProposalConflict? Conflict { get; init; }

    /// <summary>How long was searched.</summary>
    public required SearchEffort Effort { get; init; }

    /// <summary>What a reader of the answer should know, as that the search ended at its limit of work.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Key and values of each caution, in the same order, for translation.</summary>
    public required IReadOnlyList<TextKey> CautionKeys { get; init; }
}

/// <summary>A rack and the report on it.</summary>
public sealed record CheckedRack
{
    /// <summary>The rack, ready to post to a check.</summary>
    public required RackDescription Rack { get; init; }

    /// <summary>The report on that rack. That of a proposal has no open error.</summary>
    public required CheckReport Report { get; init; }
}

/// <summary>A proposed rack, or several racks that divide the equipment.</summary>
public sealed record ProposedRack
{
    /// <summary>The rack, ready to post to a check; absent if there are several.</summary>
    public RackDescription? Rack { get; init; }

    /// <summary>The report on that rack. It has no open error. Absent if there are several racks.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>Several racks, in the order of their row; absent if there is one. A supply with the same id feeds all of them.</summary>
    public IReadOnlyList<CheckedRack>? Racks { get; init; }

    /// <summary>What is better, compared with the first alternative; for the first, compared with the second.</summary>
    public required IReadOnlyList<string> Gained { get; init; }

    /// <summary>Key and values of each text of <c>gained</c>, in the same order, for translation.</summary>
    public required IReadOnlyList<TextKey> GainedKeys { get; init; }

    /// <summary>What is worse, compared with the first alternative; for the first, compared with the second.</summary>
    public required IReadOnlyList<string> GivenUp { get; init; }

    /// <summary>Key and values of each text of <c>givenUp</c>, in the same order, for translation.</summary>
    public required IReadOnlyList<TextKey> GivenUpKeys { get; init; }

    /// <summary>Parts to order besides the equipment of the request.</summary>
    public required IReadOnlyList<AddedLine> AddedLines { get; init; }

    /// <summary>Sum of the prices of these parts. Absent where one has no price, or they are in several currencies.</summary>
    public double? Cost { get; init; }

    /// <summary>Currency of the cost.</summary>
    public string? Currency { get; init; }

    /// <summary>Quantities that the proposal makes small or large, the most important first.</summary>
    public required IReadOnlyList<ObjectiveValue> Objective { get; init; }

    /// <summary>Assumptions made in choosing parts.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }
}

/// <summary>A part that a proposal adds.</summary>
public sealed record AddedLine
{
    /// <summary>Part number.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Product name.</summary>
    public required string Name { get; init; }

    /// <summary>Order units.</summary>
    public required int Quantity { get; init; }

    /// <summary>Price of one order unit, if the catalogue has one.</summary>
    public double? Price { get; init; }

    /// <summary>Currency of the price.</summary>
    public string? Currency { get; init; }

    /// <summary>What it is needed for.</summary>
    public required string Why { get; init; }

    /// <summary>Key of the wording of <c>why</c>, stable. Keys of several sentences are joined by plus signs.</summary>
    public required string WhyKey { get; init; }

    /// <summary>The values in <c>why</c>, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> WhyData { get; init; }
}

/// <summary>One quantity of a proposal.</summary>
public sealed record ObjectiveValue
{
    /// <summary>The quantity.</summary>
    public required ObjectiveName Name { get; init; }

    /// <summary>Its value in this rack.</summary>
    public required double Value { get; init; }

    /// <summary>
    /// The best value that any rack could have with all preceding quantities unchanged and no more open warnings of the product, of which fewer come first.
    /// </summary>
    public required double Bound { get; init; }

    /// <summary>Whether no rack can be better: the value equals the bound.</summary>
    public required bool Proven { get; init; }
}

/// <summary>Requirements that no rack meets together.</summary>
public sealed record ProposalConflict
{
    /// <summary>The requirements: the smallest set that the search found. A longer search can find a smaller one.</summary>
    public required IReadOnlyList<ConflictingRequirement> Requirements { get; init; }

    /// <summary>Whether the search found racks without each one of the requirements; false where its work did not suffice to try all.</summary>
    public required bool Proven { get; init; }

    /// <summary>The errors of the best rack that was tried, with what they concern.</summary>
    public IReadOnlyList<ConflictingRequirement>? Reasons { get; init; }

    /// <summary>A change that would help; absent if none is known.</summary>
    public string? Relax { get; init; }

    /// <summary>Key of the wording of the change, for translation. GET /v1/reference/wordings has the template in English.</summary>
    public string? RelaxKey { get; init; }

    /// <summary>The values in the change, by name.</summary>
    public IReadOnlyDictionary<string, Scalar>? RelaxData { get; init; }
}

/// <summary>A requirement in conflict.</summary>
public sealed record ConflictingRequirement
{
    /// <summary>JSON pointers (RFC 6901) into the request.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>The requirement.</summary>
    public required string Message { get; init; }

    /// <summary>
    /// Key of the wording, for translation. GET /v1/reference/wordings has the template in English; of a finding, the page of its rule has it.
    /// </summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the message, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }
}
