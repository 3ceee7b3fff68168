using RackCheck.Model;

namespace RackCheck.Survey.Assumed;

/// <summary>What assumed values are based on.</summary>
public static class Bases
{
    /// <summary>Common practice, no source.</summary>
    public static readonly WordedText Practice = new("assumption.practice", "common practice, no source");

    /// <summary>Slides extend the body by its full depth; common practice, no source.</summary>
    public static readonly WordedText SlideLength = new("assumption.slide-length", "slides extend the body by its full depth; common practice, no source");

    /// <summary>Default: feet at the corners; common practice, no source.</summary>
    public static readonly WordedText Feet = new("assumption.feet", "default: feet at the corners; common practice, no source");

    /// <summary>From the frame, behind the door, to the line of feet, usual for this base; common practice, no source.</summary>
    public static readonly WordedText Inset = new(
        "assumption.inset", "from the frame, behind the door, to the line of feet, usual for this base; common practice, no source");

    /// <summary>Default: ratings of IEC connectors, and no breaker share for continuous loads.</summary>
    public static readonly WordedText ConnectorRatings = new(
        "assumption.connector-ratings", "default: ratings of IEC connectors, and no breaker share for continuous loads");

    /// <summary>Usual for a power supply with power factor correction; common practice, no source.</summary>
    public static readonly WordedText PowerFactor = new(
        "assumption.power-factor", "usual for a power supply with power factor correction; common practice, no source");

    /// <summary>The losses of the UPS, which its supply carries in addition to its load, are missing and not counted.</summary>
    public static readonly WordedText UpsLosses = new(
        "assumption.ups-losses", "the losses of the UPS, which its supply carries in addition to its load, are missing and not counted");

    /// <summary>Outlet groups are fed from several lines.</summary>
    public static readonly WordedText ThreePhases = new("assumption.three-phases", "outlet groups are fed from several lines");

    /// <summary>No outlet group is fed from L2 or L3.</summary>
    public static readonly WordedText OnePhase = new("assumption.one-phase", "no outlet group is fed from L2 or L3");

    /// <summary>A supply is rated by its breaker; common practice, no source.</summary>
    public static readonly WordedText BreakerRating = new("assumption.breaker-rating", "a supply is rated by its breaker; common practice, no source");

    /// <summary>Default: no RCD.</summary>
    public static readonly WordedText NoRcd = new("assumption.no-rcd", "default: no RCD");

    /// <summary>The reference temperature of the cable table.</summary>
    public static readonly WordedText CableTemperature = new("assumption.cable-temperature", "the reference temperature of the cable table");

    /// <summary>The earth conductor of the cable and of the cords of its PDUs: IEC 60364-5-54 table 54.2; value from memory.</summary>
    public static readonly WordedText CableEarth = new(
        "assumption.cable-earth", "the earth conductor of the cable and of the cords of its PDUs: IEC 60364-5-54 table 54.2; value from memory");

    /// <summary>The lowest of a public TN-S supply, 0.8 ohm; common practice, no source.</summary>
    public static readonly WordedText LoopImpedance = new(
        "assumption.loop-impedance", "the lowest of a public TN-S supply, 0.8 ohm; common practice, no source");

    /// <summary>One for each PDU connected to the supply; the description has no member for the number.</summary>
    public static readonly WordedText SocketPerPdu = new(
        "assumption.socket-per-pdu", "one for each PDU connected to the supply; the description has no member for the number");

    /// <summary>Default: the first pair of lines.</summary>
    public static readonly WordedText FirstPair = new("assumption.first-pair", "default: the first pair of lines");

    /// <summary>Default: the first line.</summary>
    public static readonly WordedText FirstLine = new("assumption.first-line", "default: the first line");

    /// <summary>The uprights are movable: the minimum setback on their hole pitch that suits every item.</summary>
    public static readonly WordedText MovableUprights = new(
        "assumption.movable-uprights", "the uprights are movable: the minimum setback on their hole pitch that suits every item");

    /// <summary>Default: side panels are fitted.</summary>
    public static readonly WordedText SidePanels = new("assumption.side-panels", "default: side panels are fitted");

    /// <summary>The roof has fans.</summary>
    public static readonly WordedText FanRoof = new("assumption.fan-roof", "the roof has fans");

    /// <summary>Minimum opening of IEC 60297-3-100.</summary>
    public static readonly WordedText LeastOpening = new("assumption.least-opening", "minimum opening of IEC 60297-3-100");

    /// <summary>Default: earthed through its cord only; common practice, no source.</summary>
    public static readonly WordedText CordEarth = new("assumption.cord-earth", "default: earthed through its cord only; common practice, no source");

    /// <summary>Default: a door is fitted; common practice, no source.</summary>
    public static readonly WordedText UsualDoor = new("assumption.usual-door", "default: a door is fitted; common practice, no source");

    /// <summary>An item on a shelf takes the position of the shelf.</summary>
    public static readonly WordedText OnShelfPosition = new("assumption.on-shelf-position", "an item on a shelf takes the position of the shelf");

    /// <summary>An item on a shelf stands behind the mounting plane.</summary>
    public static readonly WordedText OnShelfFront = new("assumption.on-shelf-front", "an item on a shelf stands behind the mounting plane");

    /// <summary>Handles and front cables; common practice, no source.</summary>
    public static readonly WordedText Handles = new("assumption.handles", "handles and front cables; common practice, no source");

    /// <summary>Mains and data cables; common practice, no source.</summary>
    public static readonly WordedText RearCables = new("assumption.rear-cables", "mains and data cables; common practice, no source");

    /// <summary>Neither plugs nor cables given; common practice, no source.</summary>
    public static readonly WordedText NoCables = new("assumption.no-cables", "neither plugs nor cables given; common practice, no source");

    /// <summary>A console drawer comes with its slides inside its width; common practice, no source.</summary>
    public static readonly WordedText DrawerSlides = new(
        "assumption.drawer-slides", "a console drawer comes with its slides inside its width; common practice, no source");

    /// <summary>A horizontal PDU takes 1 U and this depth behind its plane; common practice, no source.</summary>
    public static readonly WordedText HorizontalPdu = new(
        "assumption.horizontal-pdu", "a horizontal PDU takes 1 U and this depth behind its plane; common practice, no source");

    /// <summary>Base, mounting space and 100 mm for roof and floor; common practice, no source.</summary>
    public static readonly WordedText CabinetHeight = new(
        "assumption.cabinet-height", "base, mounting space and 100 mm for roof and floor; common practice, no source");

    /// <summary>Base and mounting space together are higher than the height given.</summary>
    public static readonly WordedText HeightOverGiven = new(
        "assumption.height-over-given", "base and mounting space together are higher than the height given");

    /// <summary>Usual for this base, as far as the overall height leaves space; common practice, no source.</summary>
    public static readonly WordedText BaseHeight = new(
        "assumption.base-height", "usual for this base, as far as the overall height leaves space; common practice, no source");

    /// <summary>The warmest ordinary room; common practice, no source.</summary>
    public static readonly WordedText WarmRoom = new("assumption.warm-room", "the warmest ordinary room; common practice, no source");

    /// <summary>Default: density of dry air.</summary>
    public static readonly WordedText DryAir = new("assumption.dry-air", "default: density of dry air");

    /// <summary>Default: sea level; common practice, no source.</summary>
    public static readonly WordedText SeaLevel = new("assumption.sea-level", "default: sea level; common practice, no source");

    /// <summary>Usual for a perforated door or an open vent; common practice, no source.</summary>
    public static readonly WordedText PerforatedIp = new("assumption.perforated-ip", "usual for a perforated door or an open vent; common practice, no source");

    /// <summary>Usual for rack PDUs; common practice, no source.</summary>
    public static readonly WordedText PduTemperature = new("assumption.pdu-temperature", "usual for rack PDUs; common practice, no source");

    /// <summary>Default for air that the rack's own fans, the floor or natural draught move; common practice, no source.</summary>
    public static readonly WordedText FanRise = new(
        "assumption.fan-rise", "default for air that the rack's own fans, the floor or natural draught move; common practice, no source");

    /// <summary>Width less 100 mm, times the height of the mounting space; common practice, no source.</summary>
    public static readonly WordedText DoorArea = new(
        "assumption.door-area", "width less 100 mm, times the height of the mounting space; common practice, no source");

    /// <summary>The mat covers the opening; common practice, no source.</summary>
    public static readonly WordedText MatArea = new("assumption.mat-area", "the mat covers the opening; common practice, no source");

    /// <summary>Default: free-standing.</summary>
    public static readonly WordedText FreeStanding = new("assumption.free-standing", "default: free-standing");

    /// <summary>Default: closed roof.</summary>
    public static readonly WordedText ClosedRoof = new("assumption.closed-roof", "default: closed roof");

    /// <summary>Usual for cabinets; common practice, no source.</summary>
    public static readonly WordedText CoolerSetpoint = new("assumption.cooler-setpoint", "usual for cabinets; common practice, no source");

    /// <summary>Capacities are usually rated at 35 C inside and outside; value from memory of EN 14511.</summary>
    public static readonly WordedText CoolerRating = new(
        "assumption.cooler-rating", "capacities are usually rated at 35 C inside and outside; value from memory of EN 14511");

    /// <summary>A pallet no larger than the cabinet.</summary>
    public static readonly WordedText PalletSide = new("assumption.pallet-side", "a pallet no larger than the cabinet");

    /// <summary>The EUR pallet has 20 to 25 kg.</summary>
    public static readonly WordedText PalletMass = new("assumption.pallet-mass", "the EUR pallet has 20 to 25 kg");

    private static readonly MessageWording Catalogue = new("assumption.catalogue", "from the catalogue: {members:exact}");

    private static readonly MessageWording OwnFans = new(
        "assumption.own-fans", "items without a stated airflow move the air that gives a rise of {riseK:exact} K; common practice, no source");

    private static readonly MessageWording MatLoss = new(
        "assumption.mat-loss", "at {velocityMS:exact} m/s before the mat is changed, {cleanPa:exact} Pa when clean; common practice, no source");

    private static readonly MessageWording Installed = new(
        "assumption.installed-fan",
        "a fan without a curve delivers {sharePercent:exact} % of its free flow of {freeFlowM3h:exact} m3/h once installed; common practice, no source");

    /// <summary>Members that the catalogue supplies.</summary>
    /// <param name="members">Their names.</param>
    public static WordedText FromCatalogue(IEnumerable<string> members) => new(Catalogue, ("members", Scalar.Ids(members)));

    /// <summary>Fans that suit the heat of their items.</summary>
    /// <param name="riseK">Rise of the air, K.</param>
    public static WordedText FittingFans(double riseK) => new(OwnFans, ("riseK", riseK));

    /// <summary>Pressure drop of a filter mat.</summary>
    /// <param name="velocityMS">Face velocity, m/s.</param>
    /// <param name="cleanPa">Pressure drop when clean, Pa.</param>
    public static WordedText FilterLoss(double velocityMS, double cleanPa) =>
        new(MatLoss, ("velocityMS", velocityMS), ("cleanPa", Quantities.RoundTo(cleanPa, 0)));

    /// <summary>Airflow of a fan without a curve.</summary>
    /// <param name="sharePercent">Share of its free flow, percent.</param>
    /// <param name="freeFlowM3h">Its free flow, m3/h.</param>
    public static WordedText InstalledFlow(double sharePercent, double freeFlowM3h) =>
        new(Installed, ("sharePercent", sharePercent), ("freeFlowM3h", freeFlowM3h));

    /// <summary>Wordings of the bases of values; those of ranges belong to their facts.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } = [.. MessageWording.DeclaredIn(typeof(Bases))];
}
