using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>Plugs and sockets, named as in their standards.</summary>
[JsonConverter(typeof(NamedEnumConverter<ConnectorCode>))]
public enum ConnectorCode
{
    /// <summary>IEC 60320 C13, connector on a cord or outlet on a PDU.</summary>
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

    /// <summary>NEMA L5-20, locking, line and neutral, 120 V.</summary>
    [JsonStringEnumMemberName("NEMAL5-20")] NemaL520,

    /// <summary>NEMA L5-30, locking, line and neutral, 120 V.</summary>
    [JsonStringEnumMemberName("NEMAL5-30")] NemaL530,

    /// <summary>NEMA L6-20, locking.</summary>
    [JsonStringEnumMemberName("NEMAL6-20")] NemaL620,

    /// <summary>NEMA L6-30, locking.</summary>
    [JsonStringEnumMemberName("NEMAL6-30")] NemaL630,

    /// <summary>NEMA L14-30, locking, two lines and neutral.</summary>
    [JsonStringEnumMemberName("NEMAL14-30")] NemaL1430,

    /// <summary>NEMA L15-30, locking, three phases.</summary>
    [JsonStringEnumMemberName("NEMAL15-30")] NemaL1530,

    /// <summary>NEMA L21-20, locking, three phases and neutral.</summary>
    [JsonStringEnumMemberName("NEMAL21-20")] NemaL2120,

    /// <summary>NEMA L21-30, locking, three phases and neutral.</summary>
    [JsonStringEnumMemberName("NEMAL21-30")] NemaL2130,

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

    /// <summary>Hard-wired, no plug or socket.</summary>
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

/// <summary>Line conductor of a three-phase system, or two of them for a load from line to line.</summary>
[JsonConverter(typeof(NamedEnumConverter<Phase>))]
public enum Phase
{
    /// <summary>First line.</summary>
    [JsonStringEnumMemberName("L1")] L1,

    /// <summary>Second line.</summary>
    [JsonStringEnumMemberName("L2")] L2,

    /// <summary>Third line.</summary>
    [JsonStringEnumMemberName("L3")] L3,

    /// <summary>From the first line to the second.</summary>
    [JsonStringEnumMemberName("L1-L2")] L1L2,

    /// <summary>From the second line to the third.</summary>
    [JsonStringEnumMemberName("L2-L3")] L2L3,

    /// <summary>From the third line to the first.</summary>
    [JsonStringEnumMemberName("L3-L1")] L3L1,
}

/// <summary>How a PDU is mounted.</summary>
[JsonConverter(typeof(NamedEnumConverter<PduMounting>))]
public enum PduMounting
{
    /// <summary>Vertical, behind the rear uprights. Occupies no U position.</summary>
    Vertical,

    /// <summary>Horizontal, in one U position.</summary>
    Horizontal,
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

/// <summary>Type of battery cells.</summary>
[JsonConverter(typeof(NamedEnumConverter<BatteryType>))]
public enum BatteryType
{
    /// <summary>Valve-regulated lead-acid.</summary>
    Vrla,

    /// <summary>Vented lead-acid.</summary>
    Vented,

    /// <summary>Lithium.</summary>
    Lithium,
}
