using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>End of the cabinet from which U positions are counted.</summary>
[JsonConverter(typeof(NamedEnumConverter<UnitNumbering>))]
public enum UnitNumbering
{
    /// <summary>U1 is the lowest position.</summary>
    BottomUp,

    /// <summary>U1 is the highest position.</summary>
    TopDown,
}

/// <summary>Construction of a cabinet door.</summary>
[JsonConverter(typeof(NamedEnumConverter<DoorStyle>))]
public enum DoorStyle
{
    /// <summary>No door: the face is open.</summary>
    None,

    /// <summary>Solid sheet steel, no openings.</summary>
    Solid,

    /// <summary>Glass in a frame. No airflow.</summary>
    Glazed,

    /// <summary>Perforated sheet, open to airflow.</summary>
    Perforated,
}

/// <summary>Construction of the cabinet roof.</summary>
[JsonConverter(typeof(NamedEnumConverter<RoofStyle>))]
public enum RoofStyle
{
    /// <summary>Solid sheet, no openings.</summary>
    Solid,

    /// <summary>With ventilation openings.</summary>
    Vented,
}

/// <summary>Type of cabinet base.</summary>
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

    /// <summary>Hung on a wall.</summary>
    Wall,
}

/// <summary>Hole type of the mounting uprights.</summary>
[JsonConverter(typeof(NamedEnumConverter<UprightHole>))]
public enum UprightHole
{
    /// <summary>Square holes, 9.5 mm, for cage nuts.</summary>
    Square,

    /// <summary>Plain round holes.</summary>
    Round,

    /// <summary>Threaded round holes.</summary>
    Threaded,
}

/// <summary>Placement of the cabinet relative to walls and adjacent cabinets. Determines which faces dissipate heat.</summary>
[JsonConverter(typeof(NamedEnumConverter<Placement>))]
public enum Placement
{
    /// <summary>Free-standing, all sides exposed.</summary>
    Free,

    /// <summary>Rear against a wall.</summary>
    Wall,

    /// <summary>End of a row, rear exposed.</summary>
    RowEnd,

    /// <summary>End of a row, rear against a wall.</summary>
    RowEndWall,

    /// <summary>Middle of a row, rear exposed.</summary>
    RowMiddle,

    /// <summary>Middle of a row, rear against a wall.</summary>
    RowMiddleWall,

    /// <summary>Middle of a row, rear against a wall, roof covered.</summary>
    RowMiddleWallCovered,
}
