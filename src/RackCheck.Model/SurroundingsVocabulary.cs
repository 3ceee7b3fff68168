using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>Mounting style of an air conditioner.</summary>
[JsonConverter(typeof(NamedEnumConverter<AirConditionerStyle>))]
public enum AirConditionerStyle
{
    /// <summary>Mounted on a side panel or door.</summary>
    Wall,

    /// <summary>Mounted on the roof.</summary>
    Roof,

    /// <summary>Split: indoor and outdoor units connected by pipes.</summary>
    Split,
}

/// <summary>Part of the cabinet that can be bonded to protective earth.</summary>
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
