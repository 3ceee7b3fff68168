using System.Text.Json.Serialization;
using RackCheck.Model.Json;

namespace RackCheck.Model;

/// <summary>From which end the units of the cabinet are counted.</summary>
[JsonConverter(typeof(NamedEnumConverter<UnitNumbering>))]
public enum UnitNumbering
{
    /// <summary>Unit 1 is the lowest.</summary>
    BottomUp,

    /// <summary>Unit 1 is the highest.</summary>
    TopDown,
}

/// <summary>How a cabinet door is made.</summary>
[JsonConverter(typeof(NamedEnumConverter<DoorStyle>))]
public enum DoorStyle
{
    /// <summary>No door: the side is open.</summary>
    None,

    /// <summary>Sheet steel without openings.</summary>
    Solid,

    /// <summary>Glass in a frame; for air it is closed.</summary>
    Glazed,

    /// <summary>Perforated sheet that lets air through.</summary>
    Perforated,
}

/// <summary>How the roof of the cabinet is made.</summary>
[JsonConverter(typeof(NamedEnumConverter<RoofStyle>))]
public enum RoofStyle
{
    /// <summary>Closed sheet.</summary>
    Solid,

    /// <summary>With openings for air.</summary>
    Vented,
}

/// <summary>What the cabinet stands on.</summary>
[JsonConverter(typeof(NamedEnumConverter<BaseStyle>))]
public enum BaseStyle
{
    /// <summary>Swivel castors.</summary>
    Castors,

    /// <summary>Levelling feet.</summary>
    Feet,

    /// <summary>A closed plinth.</summary>
    Plinth,

    /// <summary>Bolted to the floor.</summary>
    Bolted,
}

/// <summary>Holes of the mounting uprights.</summary>
[JsonConverter(typeof(NamedEnumConverter<UprightHole>))]
public enum UprightHole
{
    /// <summary>Square, 9.5 mm, for cage nuts.</summary>
    Square,

    /// <summary>Round, plain.</summary>
    Round,

    /// <summary>Round with a thread cut in.</summary>
    Threaded,
}

/// <summary>How the cabinet stands among walls and neighbours; decides which faces shed heat.</summary>
[JsonConverter(typeof(NamedEnumConverter<Placement>))]
public enum Placement
{
    /// <summary>Free on all sides.</summary>
    Free,

    /// <summary>Its back to a wall.</summary>
    Wall,

    /// <summary>End of a row, back free.</summary>
    RowEnd,

    /// <summary>End of a row, back to a wall.</summary>
    RowEndWall,

    /// <summary>Middle of a row, back free.</summary>
    RowMiddle,

    /// <summary>Middle of a row, back to a wall.</summary>
    RowMiddleWall,

    /// <summary>Middle of a row, back to a wall, roof covered.</summary>
    RowMiddleWallCovered,
}

/// <summary>What kind of equipment an item is.</summary>
[JsonConverter(typeof(NamedEnumConverter<ItemCategory>))]
public enum ItemCategory
{
    /// <summary>Industrial or desktop computer.</summary>
    Computer,

    /// <summary>Server.</summary>
    Server,

    /// <summary>Measuring or test instrument.</summary>
    Instrument,

    /// <summary>Switch, router, patch panel.</summary>
    Network,

    /// <summary>Screen.</summary>
    Display,

    /// <summary>Drawer with keyboard and pointing device.</summary>
    KeyboardDrawer,

    /// <summary>Keyboard, video and mouse switch.</summary>
    KvmSwitch,

    /// <summary>Uninterruptible power supply.</summary>
    Ups,

    /// <summary>Shelf that things stand on.</summary>
    Shelf,

    /// <summary>Tray of fans.</summary>
    FanTray,

    /// <summary>Plate that closes open units; it has no body behind the mounting plane.</summary>
    BlankingPanel,

    /// <summary>Guide for cables.</summary>
    CableManager,

    /// <summary>Air conditioner in rack units.</summary>
    AirConditioner,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Which mounting plane an item hangs on.</summary>
[JsonConverter(typeof(NamedEnumConverter<Face>))]
public enum Face
{
    /// <summary>The front uprights.</summary>
    Front,

    /// <summary>The rear uprights.</summary>
    Rear,
}

/// <summary>What carries an item.</summary>
[JsonConverter(typeof(NamedEnumConverter<SupportStyle>))]
public enum SupportStyle
{
    /// <summary>Its front panel alone.</summary>
    Panel,

    /// <summary>Telescopic slides.</summary>
    Slides,

    /// <summary>Fixed angle runners under its sides.</summary>
    Runners,

    /// <summary>A shelf of its own.</summary>
    Shelf,
}

/// <summary>How an item is fastened to the uprights.</summary>
[JsonConverter(typeof(NamedEnumConverter<Fixing>))]
public enum Fixing
{
    /// <summary>Cage nuts; they need square holes.</summary>
    CageNut,

    /// <summary>Clip-on nuts over the edge of a round hole.</summary>
    ClipNut,

    /// <summary>Screws straight into threaded holes.</summary>
    Screw,
}

/// <summary>Where an item's own fans take and leave air.</summary>
[JsonConverter(typeof(NamedEnumConverter<AirflowDirection>))]
public enum AirflowDirection
{
    /// <summary>In at the front, out at the rear.</summary>
    FrontToRear,

    /// <summary>In at the rear, out at the front.</summary>
    RearToFront,

    /// <summary>From side to side.</summary>
    Side,

    /// <summary>From below to above.</summary>
    Upward,

    /// <summary>No fans.</summary>
    None,
}

/// <summary>Plugs and sockets, by the names that their standards give them.</summary>
[JsonConverter(typeof(NamedEnumConverter<ConnectorCode>))]
public enum ConnectorCode
{
    /// <summary>IEC 60320 C13, socket on a cord or unit.</summary>
    [JsonStringEnumMemberName("C13")] C13,

    /// <summary>IEC 60320 C14, plug for C13 and C15.</summary>
    [JsonStringEnumMemberName("C14")] C14,

    /// <summary>IEC 60320 C15, socket for hot conditions.</summary>
    [JsonStringEnumMemberName("C15")] C15,

    /// <summary>IEC 60320 C16, plug for C15.</summary>
    [JsonStringEnumMemberName("C16")] C16,

    /// <summary>IEC 60320 C19, socket.</summary>
    [JsonStringEnumMemberName("C19")] C19,

    /// <summary>IEC 60320 C20, plug for C19.</summary>
    [JsonStringEnumMemberName("C20")] C20,

    /// <summary>BS 1363 plug and socket.</summary>
    [JsonStringEnumMemberName("BS1363")] Bs1363,

    /// <summary>CEE 7/3 socket.</summary>
    [JsonStringEnumMemberName("CEE7/3")] Cee73,

    /// <summary>CEE 7/4 plug.</summary>
    [JsonStringEnumMemberName("CEE7/4")] Cee74,

    /// <summary>CEE 7/7 plug.</summary>
    [JsonStringEnumMemberName("CEE7/7")] Cee77,

    /// <summary>NEMA 5-15.</summary>
    [JsonStringEnumMemberName("NEMA5-15")] Nema515,

    /// <summary>NEMA 5-20.</summary>
    [JsonStringEnumMemberName("NEMA5-20")] Nema520,

    /// <summary>NEMA L6-20, locking.</summary>
    [JsonStringEnumMemberName("NEMAL6-20")] NemaL620,

    /// <summary>NEMA L6-30, locking.</summary>
    [JsonStringEnumMemberName("NEMAL6-30")] NemaL630,

    /// <summary>IEC 60309, 16 A, single phase.</summary>
    [JsonStringEnumMemberName("IEC60309-16A-1P")] Iec60309A16P1,

    /// <summary>IEC 60309, 16 A, three phases.</summary>
    [JsonStringEnumMemberName("IEC60309-16A-3P")] Iec60309A16P3,

    /// <summary>IEC 60309, 32 A, single phase.</summary>
    [JsonStringEnumMemberName("IEC60309-32A-1P")] Iec60309A32P1,

    /// <summary>IEC 60309, 32 A, three phases.</summary>
    [JsonStringEnumMemberName("IEC60309-32A-3P")] Iec60309A32P3,

    /// <summary>IEC 60309, 63 A, single phase.</summary>
    [JsonStringEnumMemberName("IEC60309-63A-1P")] Iec60309A63P1,

    /// <summary>IEC 60309, 63 A, three phases.</summary>
    [JsonStringEnumMemberName("IEC60309-63A-3P")] Iec60309A63P3,

    /// <summary>Wired without plug and socket.</summary>
    [JsonStringEnumMemberName("hardwired")] Hardwired,
}

/// <summary>Instantaneous trip curve of a circuit breaker, IEC 60898-1.</summary>
[JsonConverter(typeof(NamedEnumConverter<BreakerCurve>))]
public enum BreakerCurve
{
    /// <summary>3 to 5 times the rated current.</summary>
    [JsonStringEnumMemberName("B")] B,

    /// <summary>5 to 10 times the rated current.</summary>
    [JsonStringEnumMemberName("C")] C,

    /// <summary>10 to 20 times the rated current.</summary>
    [JsonStringEnumMemberName("D")] D,
}

/// <summary>Line conductor of a three-phase system.</summary>
[JsonConverter(typeof(NamedEnumConverter<Phase>))]
public enum Phase
{
    /// <summary>First line.</summary>
    [JsonStringEnumMemberName("L1")] L1,

    /// <summary>Second line.</summary>
    [JsonStringEnumMemberName("L2")] L2,

    /// <summary>Third line.</summary>
    [JsonStringEnumMemberName("L3")] L3,
}

/// <summary>How a distribution unit is mounted.</summary>
[JsonConverter(typeof(NamedEnumConverter<UnitMounting>))]
public enum UnitMounting
{
    /// <summary>Upright behind the rear uprights; takes no units.</summary>
    Vertical,

    /// <summary>In one unit of the rack.</summary>
    Horizontal,
}

/// <summary>Where an air conditioner sits.</summary>
[JsonConverter(typeof(NamedEnumConverter<AirConditionerStyle>))]
public enum AirConditionerStyle
{
    /// <summary>On a side wall or door.</summary>
    Wall,

    /// <summary>On the roof.</summary>
    Roof,

    /// <summary>Inner and outer unit joined by pipes.</summary>
    Split,
}

/// <summary>Part of the cabinet that is joined to protective earth.</summary>
[JsonConverter(typeof(NamedEnumConverter<BondedPart>))]
public enum BondedPart
{
    /// <summary>The frame.</summary>
    Frame,

    /// <summary>The front door.</summary>
    FrontDoor,

    /// <summary>The rear door.</summary>
    RearDoor,

    /// <summary>The side panels.</summary>
    SidePanels,

    /// <summary>The roof.</summary>
    Roof,

    /// <summary>The base.</summary>
    Base,
}

/// <summary>Which local wiring practice applies.</summary>
[JsonConverter(typeof(NamedEnumConverter<Region>))]
public enum Region
{
    /// <summary>United Kingdom.</summary>
    [JsonStringEnumMemberName("uk")] Uk,

    /// <summary>Continental Europe.</summary>
    [JsonStringEnumMemberName("eu")] Eu,

    /// <summary>North America.</summary>
    [JsonStringEnumMemberName("na")] Na,
}

/// <summary>How grave a finding is.</summary>
[JsonConverter(typeof(NamedEnumConverter<Severity>))]
public enum Severity
{
    /// <summary>The rack cannot be built, closed, run or delivered as described.</summary>
    Error,

    /// <summary>An engineer should look at it.</summary>
    Warning,

    /// <summary>It could be better.</summary>
    Advice,
}

/// <summary>The severity that a caller's policy gives to a rule.</summary>
[JsonConverter(typeof(NamedEnumConverter<PolicySeverity>))]
public enum PolicySeverity
{
    /// <summary>Every finding of the rule is an error.</summary>
    Error,

    /// <summary>Every finding of the rule is a warning.</summary>
    Warning,

    /// <summary>Every finding of the rule is advice.</summary>
    Advice,

    /// <summary>The rule is not run.</summary>
    Off,
}

/// <summary>What may be done with the order.</summary>
[JsonConverter(typeof(NamedEnumConverter<Verdict>))]
public enum Verdict
{
    /// <summary>No open error or warning, and no safety rule left unassessed.</summary>
    Release,

    /// <summary>An open warning, or a safety rule that could not be assessed: an engineer looks at it.</summary>
    Review,

    /// <summary>An open error.</summary>
    Hold,
}
