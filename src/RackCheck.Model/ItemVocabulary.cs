using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>Kind of equipment.</summary>
[JsonConverter(typeof(NamedEnumConverter<ItemCategory>))]
public enum ItemCategory
{
    /// <summary>Industrial or desktop computer.</summary>
    Computer,

    /// <summary>Server.</summary>
    Server,

    /// <summary>Measuring or test instrument.</summary>
    Instrument,

    /// <summary>Network switch, router or patch panel.</summary>
    Network,

    /// <summary>Display screen.</summary>
    Display,

    /// <summary>Console drawer with keyboard and pointing device.</summary>
    KeyboardDrawer,

    /// <summary>Keyboard, video and mouse (KVM) switch.</summary>
    KvmSwitch,

    /// <summary>Uninterruptible power supply (UPS).</summary>
    Ups,

    /// <summary>Batteries, as a tray of their own.</summary>
    Battery,

    /// <summary>Shelf for items that are not rack-mounted.</summary>
    Shelf,

    /// <summary>Fan tray.</summary>
    FanTray,

    /// <summary>Panel that closes open U positions. It has no body behind the mounting plane.</summary>
    BlankingPanel,

    /// <summary>Cable manager.</summary>
    CableManager,

    /// <summary>Rack-mounted air conditioner.</summary>
    AirConditioner,

    /// <summary>Any other equipment.</summary>
    Other,
}

/// <summary>Mounting plane of an item.</summary>
[JsonConverter(typeof(NamedEnumConverter<Face>))]
public enum Face
{
    /// <summary>The front uprights.</summary>
    Front,

    /// <summary>The rear uprights.</summary>
    Rear,
}

/// <summary>Support of an item.</summary>
[JsonConverter(typeof(NamedEnumConverter<SupportStyle>))]
public enum SupportStyle
{
    /// <summary>Front-panel mounted only.</summary>
    Panel,

    /// <summary>Telescopic slide rails.</summary>
    Slides,

    /// <summary>Fixed chassis runners (angles) under both sides.</summary>
    Runners,

    /// <summary>A shelf of its own.</summary>
    Shelf,
}

/// <summary>How an item is fastened to the uprights.</summary>
[JsonConverter(typeof(NamedEnumConverter<Fixing>))]
public enum Fixing
{
    /// <summary>Cage nuts, for square holes.</summary>
    CageNut,

    /// <summary>Clip nuts, for plain round holes.</summary>
    ClipNut,

    /// <summary>Screws, directly into threaded holes.</summary>
    Screw,
}

/// <summary>Airflow direction of an item's own fans.</summary>
[JsonConverter(typeof(NamedEnumConverter<AirflowDirection>))]
public enum AirflowDirection
{
    /// <summary>Inlet at the front, outlet at the rear.</summary>
    FrontToRear,

    /// <summary>Inlet at the rear, outlet at the front.</summary>
    RearToFront,

    /// <summary>Side to side.</summary>
    Side,

    /// <summary>Bottom to top.</summary>
    Upward,

    /// <summary>No fans.</summary>
    None,
}
