namespace RackCheck.Engineering;

/// <content>Air, cooling and degrees of protection.</content>
public static partial class Sources
{
    /// <summary>Pressure by altitude.</summary>
    public static Source Iso2533 { get; } = new(
        "ISO 2533",
        "ISO 2533, standard atmosphere: pressure by altitude from 101325 Pa, 288.15 K and 6.5 K/km. Pages seen give the constants without the clause.",
        SourceStanding.ValueFromMemory);

    /// <summary>Saturation pressure and dew point.</summary>
    public static Source Wmo8 { get; } = new(
        "WMO-No. 8",
        "WMO-No. 8, guide to instruments and methods of observation, annex 4.B: saturation pressure by Magnus with 6.112 hPa, 17.62 and 243.12 C, over water.",
        SourceStanding.SecondarySource);

    /// <summary>Constants of air.</summary>
    public static Source AshraeFundamentals { get; } = new(
        "ASHRAE Fundamentals",
        "ASHRAE Handbook, Fundamentals, chapter 1, psychrometrics: gas constant 287.05 J/(kg K), 0.378 for vapour, heat capacity 1006 J/(kg K).",
        SourceStanding.ValueFromMemory);

    /// <summary>Loss of perforated plates.</summary>
    public static Source Idelchik { get; } = new(
        "Idelchik",
        "Idelchik, Handbook of Hydraulic Resistance, 3rd edition, diagram 8-1: thin perforated plate, exponent 0.375. A page seen gives it for the sharp-edged orifice, diagram 4-14; the older edition has 0.5.",
        SourceStanding.ValueFromMemory);

    /// <summary>Loss of an opening.</summary>
    public static Source SharpOrifice { get; } = new(
        "sharp-edged orifice",
        "Discharge coefficient of a sharp-edged opening, 0.6 of its area at the full velocity of the pressure.",
        SourceStanding.ValueFromMemory);

    /// <summary>Fans in parallel and at other densities.</summary>
    public static Source FanLaws { get; } = new(
        "fan laws",
        "Laws of fans: flows in parallel add at equal pressure; at the same speed the volume stays and the pressure goes with the density, which data sheets give for 1.2 kg/m3.",
        SourceStanding.ValueFromMemory);

    /// <summary>Fans without a curve.</summary>
    public static Source InstalledFanPractice { get; } = new(
        "practice: installed fans",
        "A fan whose curve is not known moves about 60 % of its free flow once it is built in.",
        SourceStanding.CommonPractice);

    /// <summary>Doors and the plate formula.</summary>
    public static Source DoorLossPractice { get; } = new(
        "practice: door losses",
        "Holes of cabinet doors work at Reynolds numbers far under those of the plate formula and in thick sheet: the loss is about 30 % either way.",
        SourceStanding.CommonPractice);

    /// <summary>Surface of closed cabinets that sheds heat.</summary>
    public static Source Iec60890 { get; } = new(
        "IEC TR 60890",
        "IEC TR 60890 (VDE 0660 part 507), temperature rise in enclosures by calculation: effective surface for seven placements. Pages seen give the seven formulae; the factors of the faces follow from them.",
        SourceStanding.SecondarySource);

    /// <summary>Closed cabinets without a fan inside.</summary>
    public static Source StillCabinet { get; } = new(
        "IEC TR 60890 example",
        "IEC TR 60890, worked example of a cabinet without openings: overall about 3.4 W/(m2 K), rise at the top 1.44 times that half way up.",
        SourceStanding.ValueFromMemory);

    /// <summary>Heat transfer of sheet steel.</summary>
    public static Source SheetSteel { get; } = new(
        "sheet steel",
        "Manuals of drives and enclosures: painted sheet steel passes 5.5 W/(m2 K) with the air inside stirred; 4 to 6 are in print.",
        SourceStanding.SecondarySource);

    /// <summary>Heat transfer from the air to the wall.</summary>
    public static Source InnerFilmPractice { get; } = new(
        "practice: inner film",
        "From the air inside to the wall of a cabinet pass 5 to 10 W/(m2 K); 8 is taken.",
        SourceStanding.CommonPractice);

    /// <summary>Capacity of air conditioners in hotter rooms.</summary>
    public static Source CoolerDeratingPractice { get; } = new(
        "practice: cooler derating",
        "An air conditioner loses one to two percent of its capacity for each kelvin that the room is hotter than it was rated for; two are taken, straight, up to 20 K.",
        SourceStanding.CommonPractice);

    /// <summary>Temperature of the air that equipment takes in.</summary>
    public static Source AshraeTc99 { get; } = new(
        "ASHRAE TC 9.9",
        "ASHRAE TC 9.9, thermal guidelines for data processing environments, 5th edition: recommended range, classes A1 to A4, and their fall with the altitude. A page seen gives the classes; the 900 m are from memory.",
        SourceStanding.ValueFromMemory);

    /// <summary>Degrees of protection.</summary>
    public static Source Iec60529 { get; } = new(
        "IEC 60529",
        "IEC 60529, degrees of protection provided by enclosures (IP code): probes of the first digit, and which second digits include which.",
        SourceStanding.ValueFromMemory);

    /// <summary>Order in which cabinets are cooled, and what goes with each way.</summary>
    public static Source CoolingPractice { get; } = new(
        "practice: cooling",
        "Cabinets are cooled by perforated doors, then fans, then air from the floor, and by an air conditioner last; one fan to spare; a split air conditioner needs an outside wall for its pipes.",
        SourceStanding.CommonPractice);

    /// <summary>Ways in which equipment breathes.</summary>
    public static Source BreathingPractice { get; } = new(
        "practice: breathing",
        "What breathes from front to rear needs open doors at both ends; neighbours that breathe opposite ways take in each other's hot air, and so does what breathes from side to side in a cabinet narrower than 800 mm.",
        SourceStanding.CommonPractice);

    /// <summary>Degree of protection of openings.</summary>
    public static Source OpeningIpPractice { get; } = new(
        "practice: openings and IP",
        "A usual perforated door or open vent is IP20 unless its own rating says otherwise; fans and intakes with filters go up to IP54 by their own rating.",
        SourceStanding.CommonPractice);
}
