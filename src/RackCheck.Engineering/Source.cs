namespace RackCheck.Engineering;

/// <summary>Where a formula, table or limit comes from.</summary>
/// <param name="Key">Short name that findings and tables cite, unique.</param>
/// <param name="Text">Title, clause and what is taken from it.</param>
/// <param name="Standing">How far it was seen.</param>
public sealed record Source(string Key, string Text, SourceStanding Standing);

/// <summary>How far a source was seen. No standard was read in full text for this service.</summary>
public enum SourceStanding
{
    /// <summary>A published page that quotes the source was seen.</summary>
    SecondarySource,

    /// <summary>Value from memory of the source named; read the standard before relying on it.</summary>
    ValueFromMemory,

    /// <summary>Common practice, no source.</summary>
    CommonPractice,

    /// <summary>Follows from geometry or arithmetic alone.</summary>
    Derived,
}

/// <summary>The sources that the service cites, one home for all of them.</summary>
public static class Sources
{
    /// <summary>Unit, hole pattern, panel and opening of the 482.6 mm series.</summary>
    public static Source Iec60297 { get; } = new(
        "IEC 60297-3-100",
        "IEC 60297-3-100, mechanical structures of the 482.6 mm (19 in) series: unit of 44.45 mm, panel height n x 44.45 - 0.8 mm, hole pattern, clear opening of at least 450 mm.",
        SourceStanding.ValueFromMemory);

    /// <summary>Unit and hole pattern in inches.</summary>
    public static Source Eia310 { get; } = new(
        "EIA-310",
        "EIA-310, cabinets, racks, panels and associated equipment: unit of 1.75 in, vertical hole pattern 0.625 / 0.625 / 0.5 in, panel 1/32 in under n x 1.75 in.",
        SourceStanding.SecondarySource);

    /// <summary>Cabinet sizes on the market and the depth that doors take.</summary>
    public static Source CabinetSizePractice { get; } = new(
        "practice: cabinet sizes",
        "Common practice, no source: cabinets are sold 600 and 800 mm wide and 600, 800, 1000 and 1200 mm deep, overall; two doors take about 50 mm of the depth together.",
        SourceStanding.CommonPractice);

    /// <summary>Room before and behind equipment.</summary>
    public static Source ClearancePractice { get; } = new(
        "practice: clearances",
        "Common practice, no source: handles and front cables stand out about 40 mm; mains and data cables need about 75 mm behind a body, a body with neither about 25 mm; a cable-management arm needs about 100 mm.",
        SourceStanding.CommonPractice);

    /// <summary>Runners, slides and what a front panel can carry.</summary>
    public static Source SupportPractice { get; } = new(
        "practice: supports",
        "Common practice, no source: a fixed angle runner lifts its unit by about 2 mm, so leave a free unit after every two to three sets; a slide is about 9.5 mm thick, so a chassis on slides is at most about 431 mm wide; a unit over 3U, over 12 kg or deeper than 400 mm needs more than its front panel.",
        SourceStanding.CommonPractice);

    /// <summary>Recirculation through open units.</summary>
    public static Source BlankingPractice { get; } = new(
        "practice: blanking",
        "Common practice, no source: where the air path is front to rear, close every open front unit with a blanking panel, else exhaust air comes back to the inlets.",
        SourceStanding.CommonPractice);

    /// <summary>Free units kept for growth.</summary>
    public static Source ReservePractice { get; } = new(
        "practice: reserve",
        "Common practice, no source: keep a tenth or more of the units free at hand-over for later equipment.",
        SourceStanding.CommonPractice);

    /// <summary>Things standing on shelves.</summary>
    public static Source ShelfPractice { get; } = new(
        "practice: shelves",
        "Common practice, no source: a shelf between uprights can use its opening less about 10 mm; what stands on it may neither hang over its depth nor reach into the next unit taken above.",
        SourceStanding.CommonPractice);

    /// <summary>Follows from the description alone.</summary>
    public static Source Geometry { get; } = new(
        "geometry",
        "Follows from the geometry of the description alone: two bodies cannot take the same space, and nothing reaches through a closed door.",
        SourceStanding.Derived);

    /// <summary>Follows from the request alone.</summary>
    public static Source Bookkeeping { get; } = new(
        "bookkeeping",
        "Follows from the request alone: what is said once about the rack has to agree with the rest of it.",
        SourceStanding.Derived);
}
