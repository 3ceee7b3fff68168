using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

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
