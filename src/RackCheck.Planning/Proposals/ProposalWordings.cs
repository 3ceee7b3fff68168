using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Proposals;

/// <summary>Texts of proposals: what alternatives gain and give up, the requirements in conflict, and the change that would help.</summary>
public static class ProposalWordings
{
    /// <summary>Caution of an answer whose search ended at the limit of work.</summary>
    public static readonly WordedText CutShort = new(
        "caution.proposal-cut-short",
        "The search ended at the limit of work for one request: not all cabinets and parts were tried. A thorough search or fewer items may find more.");

    /// <summary>Caution of an answer to a request that names cabinets without sizes which the catalogue does not have either.</summary>
    internal static readonly WordingChoice UnknownCabinets = new(
        "caution.unknown-cabinets",
        "{partNumbers:all} [one:is no cabinet of the catalogue and has no size of its own: it was|"
        + "are no cabinets of the catalogue and have no sizes of their own: they were] left out of the choice.");

    /// <summary>Given up while the catalogue is unavailable.</summary>
    public static readonly WordedText NoCatalogue = new(
        "given-up.no-catalogue", "The product catalogue is unavailable, so that no product is on offer.");

    /// <summary>A part that is needed and not on offer; the reason follows.</summary>
    internal static readonly MessageWording NotOnOffer = new("given-up.not-on-offer", "{need} is not on offer.");

    /// <summary>Servers, computers and network equipment that the UPSs of the rack do not feed.</summary>
    internal static readonly WordingChoice NotOnUps = new(
        "given-up.not-on-ups", LineWordings.NotOnUps);

    /// <summary>Why a cabinet is added.</summary>
    internal static readonly WordedText Cabinet = new("line.chosen-cabinet", "The cabinet of this rack.");

    /// <summary>Uprights of a new cabinet, at another place than the catalogue has them.</summary>
    internal static readonly MessageWording SetUprights = new(
        "assumption.set-uprights", "the catalogue has {value} mm for this cabinet: set its uprights before mounting");

    /// <summary>Positions of a patch field.</summary>
    internal static readonly MessageWording FieldPositions = new("assumed-value.patch-field", "U{fromU} to U{toU}");

    /// <summary>Why equipment for patching is together.</summary>
    internal static readonly WordedText PatchField = new(
        "assumption.patch-field",
        "patch panels, cable managers and switches are mounted next to each other for short patch cords; the centre of gravity is as low as that allows");

    /// <summary>Another height of the cabinet.</summary>
    internal static readonly MessageWording Height = new("trade-off.height", "Cabinet height {value:exact} U instead of {other:exact} U.");

    /// <summary>Another depth of the cabinet.</summary>
    internal static readonly MessageWording Depth = new("trade-off.depth", "Cabinet depth {value:exact} mm instead of {other:exact} mm.");

    /// <summary>Another width of the cabinet.</summary>
    internal static readonly MessageWording Width = new("trade-off.width", "Cabinet width {value:exact} mm instead of {other:exact} mm.");

    /// <summary>Another height of the highest of several cabinets.</summary>
    internal static readonly MessageWording HighestCabinet = new("trade-off.highest-cabinet", "Highest cabinet {value:exact} U instead of {other:exact} U.");

    /// <summary>Another depth of the deepest of several cabinets.</summary>
    internal static readonly MessageWording DeepestCabinet = new("trade-off.deepest-cabinet", "Deepest cabinet {value:exact} mm instead of {other:exact} mm.");

    /// <summary>Another width of several cabinets side by side.</summary>
    internal static readonly MessageWording RowWidth = new("trade-off.row-width", "Row width {value:exact} mm instead of {other:exact} mm.");

    /// <summary>Another verdict on the products.</summary>
    internal static readonly MessageWording Verdict = new("trade-off.verdict", "Product verdict {value} instead of {other}.");

    /// <summary>Another number of supplies.</summary>
    internal static readonly MessageWording SupplyCount = new("trade-off.supplies", "Electrical supplies {value:exact} instead of {other:exact}.");

    /// <summary>Another load of the most loaded supply or PDU.</summary>
    internal static readonly MessageWording Loading = new(
        "trade-off.loading", "Loading of the most loaded supply or PDU {value:exact} % instead of {other:exact} %.");

    /// <summary>Another temperature of the air.</summary>
    internal static readonly MessageWording HottestInlet = new(
        "trade-off.hottest-inlet", "Highest inlet air temperature {value:exact} C instead of {other:exact} C.");

    /// <summary>Another number of outlets left.</summary>
    internal static readonly MessageWording FreeOutlets = new("trade-off.free-outlets", "Free outlets {value:exact} instead of {other:exact}.");

    /// <summary>Another sum of prices.</summary>
    internal static readonly MessageWording Cost = new("trade-off.cost", "Total price {value:exact} {currency} instead of {other:exact} {currency}.");

    /// <summary>Another free height.</summary>
    internal static readonly MessageWording FreeHeight = new("trade-off.free-height", "Free height {value:exact} U instead of {other:exact} U.");

    /// <summary>Another number of warnings.</summary>
    internal static readonly MessageWording Warnings = new("trade-off.warnings", "Open warnings {value:exact} instead of {other:exact}.");

    /// <summary>Another number of parts.</summary>
    internal static readonly MessageWording AddedUnits = new("trade-off.added-units", "Units to order {value:exact} instead of {other:exact}.");

    /// <summary>A part without a height.</summary>
    internal static readonly MessageWording NoHeight = new(
        "conflict.no-height", "{item} has no height, and the catalogue has no height for {partNumber}.");

    /// <summary>What helps against parts without a height.</summary>
    internal static readonly WordedText StateHeight = new("relax.no-height", "State heightU of these items, or use part numbers of the catalogue.");

    /// <summary>No cabinet to choose from.</summary>
    internal static readonly WordedText NoCabinet = new("conflict.no-cabinet", "No cabinet with height, width and depth is allowed.");

    /// <summary>What helps without a cabinet.</summary>
    internal static readonly WordedText StateCabinet = new("relax.no-cabinet", "State a cabinet with heightU, widthMm and depthMm.");

    /// <summary>Items without a position.</summary>
    internal static readonly MessageWording NoPosition = new("conflict.no-position", "There is no position for {items}.");

    /// <summary>No room for growth.</summary>
    internal static readonly MessageWording NoGrowth = new(
        "conflict.no-growth", "The equipment with its shelves and PDUs takes {usedU} U; with room for growth it needs {neededU} U of {heightU} U.");

    /// <summary>One item that is too high for all cabinets.</summary>
    internal static readonly MessageWording ItemTooHigh = new(
        "conflict.item-too-high", "{item} takes {heightU} U; the highest cabinet allowed has {highestU} U.");

    /// <summary>Items that together are too high for the only cabinet.</summary>
    internal static readonly WordingChoice TooHighForOne = new(
        "conflict.too-high-for-one",
        "{items} together take {takenU} U[added: and the parts that they need {addedU} U][growth:, {growthU} U with room for growth]; "
        + "the highest cabinet allowed has {highestU} U.");

    /// <summary>Items that together are too high for several cabinets.</summary>
    internal static readonly WordingChoice TooHigh = new(
        "conflict.too-high",
        "{items} together take {takenU} U[growth:, {growthU} U with room for growth]; {cabinets} of the highest cabinets allowed have {highestU} U.");

    /// <summary>What helps against an item that is too high.</summary>
    internal static readonly MessageWording HigherForItem = new(
        "relax.item-too-high", "Allow a cabinet of at least {neededU} U, or leave {item} out.");

    /// <summary>What helps against a lack of height.</summary>
    internal static readonly MessageWording Higher = new("relax.too-high", "Allow a cabinet of at least {neededU} U, or more cabinets.");

    /// <summary>What helps against a lack of height in several cabinets.</summary>
    internal static readonly MessageWording HigherEach = new(
        "relax.too-high-for-several", "Allow {cabinets} cabinets of at least {neededU} U each, or more cabinets.");

    /// <summary>What helps where no cabinet is high enough.</summary>
    internal static readonly WordedText FewerItems = new("relax.too-high-for-any", "Allow more cabinets, or leave items out: no cabinet is as high as needed.");

    /// <summary>Height to keep free.</summary>
    internal static readonly MessageWording Growth = new(
        "conflict.growth", "{growthPercent:exact} % of the height that the equipment takes stays free.");

    /// <summary>Less height to keep free.</summary>
    internal static readonly WordedText LessGrowth = new("relax.growth", "Leave less height free for later equipment.");

    /// <summary>An item that keeps its position.</summary>
    internal static readonly MessageWording Keep = new("conflict.keep", "{item} stays at U{u}.");

    /// <summary>An item that may move.</summary>
    internal static readonly MessageWording Move = new("relax.keep", "Let {item} move.");

    /// <summary>Items of one cabinet.</summary>
    internal static readonly MessageWording Group = new("conflict.group", "The items of group {group} stay in one cabinet.");

    /// <summary>Items of several cabinets.</summary>
    internal static readonly MessageWording Divide = new("relax.group", "Divide group {group}.");

    /// <summary>Degree of protection of the site.</summary>
    internal static readonly MessageWording RequiredIp = new("conflict.required-ip", "The site requires {ipCode}.");

    /// <summary>Another site.</summary>
    internal static readonly WordedText LowerIp = new("relax.required-ip", "Place the rack where a lower IP code suffices.");

    /// <summary>Temperature of the room.</summary>
    internal static readonly MessageWording Ambient = new("conflict.ambient", "The room has up to {ambientC:exact} C.");

    /// <summary>A cooler room.</summary>
    internal static readonly WordedText CoolRoom = new("relax.ambient", "Cool the room.");

    /// <summary>Run time of the UPS.</summary>
    internal static readonly MessageWording UpsMinutes = new("conflict.ups-minutes", "The UPS runs for {minutes:exact} minutes.");

    /// <summary>A shorter run time.</summary>
    internal static readonly WordedText ShorterRun = new("relax.ups-minutes", "Ask for a shorter run time.");

    /// <summary>A door or hatch on the delivery route.</summary>
    internal static readonly MessageWording Opening = new(
        "conflict.opening", "The rack passes an opening {widthMm} mm wide and {heightMm} mm high.");

    /// <summary>A corner of the delivery route.</summary>
    internal static readonly MessageWording Corridor = new(
        "conflict.corridor", "The rack turns from a corridor {widthMm} mm wide into one of {intoMm} mm.");

    /// <summary>A ramp on the delivery route.</summary>
    internal static readonly MessageWording Ramp = new("conflict.ramp", "The rack goes over a ramp of {slopePercent} %.");

    /// <summary>The lift on the delivery route.</summary>
    internal static readonly WordedText Lift = new("conflict.lift", "The rack goes into the lift.");

    /// <summary>Another delivery route.</summary>
    internal static readonly WordedText OtherRoute = new("relax.delivery", "Deliver by another route.");

    /// <summary>What the floor carries.</summary>
    internal static readonly WordedText Floor = new("conflict.floor", "The floor carries no more than is given.");

    /// <summary>Another floor.</summary>
    internal static readonly WordedText StrongerFloor = new("relax.floor", "Place the rack on a floor that carries more.");

    /// <summary>The supplies.</summary>
    internal static readonly WordingChoice Supplies = new(
        "conflict.supplies",
        "[one:Only supply {supplies} ({ratedA:exact} A, {voltageV:exact} V) feeds|Only supplies {supplies} of the request feed] the racks.");

    /// <summary>Other supplies.</summary>
    internal static readonly WordedText OtherSupplies = new("relax.supplies", "Provide further or other supplies.");

    /// <summary>The cabinets to choose from.</summary>
    internal static readonly WordingChoice Cabinets = new(
        "conflict.cabinets", "Only the [one:cabinet of the request is|{cabinets} cabinets of the request are] allowed.");

    /// <summary>Other cabinets.</summary>
    internal static readonly WordedText LargerCabinet = new("relax.cabinets", "Allow a larger cabinet.");

    /// <summary>Number of cabinets.</summary>
    internal static readonly WordingChoice MaxCabinets = new(
        "conflict.max-cabinets", "There [one:is at most 1 cabinet|are at most {cabinets} cabinets].");

    /// <summary>More cabinets.</summary>
    internal static readonly WordedText MoreCabinets = new("relax.max-cabinets", "Allow one cabinet more.");

    /// <summary>An item to mount.</summary>
    internal static readonly WordingChoice Mounted = new(
        "conflict.item", "{item} is to be mounted: [height:{heightU:exact} U|{partNumber}].");

    /// <summary>An item fewer.</summary>
    internal static readonly MessageWording LeaveOut = new("relax.item", "Leave {item} out.");
}
