using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

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
