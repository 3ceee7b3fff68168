using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

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
