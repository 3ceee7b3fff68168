namespace RackCheck.Engineering;

/// <content>Air, cooling and degrees of protection.</content>
public static partial class Sources
{
    /// <summary>Air pressure by altitude.</summary>
    public static Source Iso2533 { get; } = new(
        "ISO 2533",
        "ISO 2533, standard atmosphere: pressure by altitude, based on 101325 Pa, 288.15 K and 6.5 K/km. The pages seen quote the constants without " +
            "the clause.",
        SourceStanding.ValueFromMemory);

    /// <summary>Saturation pressure and dew point.</summary>
    public static Source Wmo8 { get; } = new(
        "WMO-No. 8",
        "WMO-No. 8, guide to instruments and methods of observation, annex 4.B: saturation vapour pressure over water by the Magnus formula with " +
            "6.112 hPa, 17.62 and 243.12 C.",
        SourceStanding.SecondarySource);

    /// <summary>Constants of air.</summary>
    public static Source AshraeFundamentals { get; } = new(
        "ASHRAE Fundamentals",
        "ASHRAE Handbook, Fundamentals, chapter 1, psychrometrics: gas constant 287.05 J/(kg K), vapour factor 0.378, specific heat capacity 1006 J/(kg K).",
        SourceStanding.ValueFromMemory);

    /// <summary>Pressure drop of perforated plates.</summary>
    public static Source Idelchik { get; } = new(
        "Idelchik",
        "Idelchik, Handbook of Hydraulic Resistance, 3rd edition, diagram 8-1: thin perforated plate, exponent 0.375. The page seen quotes it for the" +
            " sharp-edged orifice, diagram 4-14; the older edition has 0.5.",
        SourceStanding.ValueFromMemory);

    /// <summary>Pressure drop of an opening.</summary>
    public static Source SharpOrifice { get; } = new(
        "sharp-edged orifice",
        "Discharge coefficient 0.6 of a sharp-edged opening.",
        SourceStanding.ValueFromMemory);

    /// <summary>Fans in parallel and at other densities.</summary>
    public static Source FanLaws { get; } = new(
        "fan laws",
        "Fan laws: flows of parallel fans add at equal pressure. At constant speed the volume flow stays the same and the pressure is proportional to" +
            " the density. Data sheets refer to 1.2 kg/m3.",
        SourceStanding.ValueFromMemory);

    /// <summary>Fans without a curve.</summary>
    public static Source InstalledFanPractice { get; } = new(
        "practice: installed fans",
        "A fan without a known curve delivers about 60 % of its free-air flow when installed.",
        SourceStanding.CommonPractice);

    /// <summary>Accuracy of the plate formula for doors.</summary>
    public static Source DoorLossPractice { get; } = new(
        "practice: door losses",
        "Perforated cabinet doors work far below the Reynolds number of the plate formula and are thicker. The calculated pressure drop is accurate " +
            "to about +-30 %.",
        SourceStanding.CommonPractice);

    /// <summary>Effective surface of closed cabinets.</summary>
    public static Source Iec60890 { get; } = new(
        "IEC TR 60890",
        "IEC TR 60890 (VDE 0660 part 507), temperature rise in enclosures by calculation: effective cooling surface for seven placements. The pages " +
            "seen quote the seven formulae; the factors of the faces are derived from them.",
        SourceStanding.SecondarySource);

    /// <summary>Closed cabinets without an internal fan.</summary>
    public static Source StillCabinet { get; } = new(
        "IEC TR 60890 example",
        "IEC TR 60890, worked example of a cabinet without openings: overall heat transfer about 3.4 W/(m2 K); temperature rise at the top 1.44 times" +
            " the rise at mid-height.",
        SourceStanding.ValueFromMemory);

    /// <summary>Heat transfer of sheet steel.</summary>
    public static Source SheetSteel { get; } = new(
        "sheet steel",
        "Manuals of drives and enclosures: heat transfer of painted sheet steel with circulated internal air 5.5 W/(m2 K); published values 4 to 6.",
        SourceStanding.SecondarySource);

    /// <summary>Heat transfer from the internal air to the wall.</summary>
    public static Source InnerFilmPractice { get; } = new(
        "practice: inner film",
        "Heat transfer coefficient from the internal air to the cabinet wall: 5 to 10 W/(m2 K); 8 is used.",
        SourceStanding.CommonPractice);

    /// <summary>Derating of air conditioners at higher ambient temperatures.</summary>
    public static Source CoolerDeratingPractice { get; } = new(
        "practice: cooler derating",
        "An air conditioner loses 1 to 2 % of its capacity for each kelvin above its rated ambient temperature. A linear derating of 1.5 % per " +
            "kelvin is used, up to 20 K.",
        SourceStanding.CommonPractice);

    /// <summary>Inlet air temperature of equipment.</summary>
    public static Source AshraeTc99 { get; } = new(
        "ASHRAE TC 9.9",
        "ASHRAE TC 9.9, thermal guidelines for data processing environments, 5th edition: recommended range, classes A1 to A4 and their derating with" +
            " altitude. The page seen quotes the classes; the 900 m are a value from memory.",
        SourceStanding.ValueFromMemory);

    /// <summary>Degrees of protection.</summary>
    public static Source Iec60529 { get; } = new(
        "IEC 60529",
        "IEC 60529, degrees of protection provided by enclosures (IP code): access probes of the first digit, and which second digits include others.",
        SourceStanding.ValueFromMemory);

    /// <summary>Temperature rise of air through equipment and racks.</summary>
    public static Source AirRisePractice { get; } = new(
        "practice: air rise",
        "Servers are built for a rise of 12 to 20 K through the equipment; above 25 K its fans are too weak or blocked. Racks with fans of their own or " +
            "air from the floor are designed for 15 K.",
        SourceStanding.CommonPractice);

    /// <summary>Pressure drop of filter mats.</summary>
    public static Source FilterPractice { get; } = new(
        "practice: filter mats",
        "A coarse filter mat loses about 40 Pa at a face velocity of 0.5 m/s when clean, and is changed at twice that. The flow in the mat is laminar: the " +
            "loss is proportional to the flow.",
        SourceStanding.CommonPractice);

    /// <summary>Natural draught through a vented roof.</summary>
    public static Source StackEffect { get; } = new(
        "stack effect",
        "Natural draught between two openings: V = Cd A sqrt(2 g H dT/T), with the smaller opening A and the height H from the middle of the heat to the " +
            "upper opening. An estimate.",
        SourceStanding.ValueFromMemory);

    /// <summary>Temperature of the air around PDUs.</summary>
    public static Source HotAislePractice { get; } = new(
        "practice: air at the PDUs",
        "PDUs behind the equipment are in its exhaust air. Where their data sheet does not state it, they are rated for 60 C.",
        SourceStanding.CommonPractice);

    /// <summary>Ventilation of batteries.</summary>
    public static Source Iec62485 { get; } = new(
        "IEC 62485-2",
        "IEC 62485-2, safety requirements for stationary batteries: ventilation Q = 0.05 n I C/1000 m3/h with I in mA/Ah (valve-regulated 1 float, 8 boost; " +
            "vented 5 and 20), and free openings of 28 Q cm2 for inlet and outlet.",
        SourceStanding.ValueFromMemory);

    /// <summary>Preferred order of cooling methods.</summary>
    public static Source CoolingPractice { get; } = new(
        "practice: cooling",
        "Preferred order of cooling methods: perforated doors, fans, raised-floor air, air conditioner. Fans have N+1 redundancy. A split air " +
            "conditioner needs an outside wall for its pipes.",
        SourceStanding.CommonPractice);

    /// <summary>Airflow directions of equipment.</summary>
    public static Source AirflowPractice { get; } = new(
        "practice: airflow direction",
        "Airflow front to rear needs perforated or open doors at both ends. Adjacent items with opposite airflow take in each other's exhaust air, " +
            "and so do items with side airflow in a cabinet narrower than 800 mm.",
        SourceStanding.CommonPractice);

    /// <summary>Degree of protection of openings.</summary>
    public static Source OpeningIpPractice { get; } = new(
        "practice: openings and IP",
        "A standard perforated door or open vent is IP20 unless its own rating states otherwise. Fans and air intakes with filters reach up to IP54, " +
            "according to their own rating.",
        SourceStanding.CommonPractice);
}
