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
public static partial class Sources
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
        "Cabinets are sold 600 and 800 mm wide and 600, 800, 1000 and 1200 mm deep, overall; two doors take about 50 mm of the depth together.",
        SourceStanding.CommonPractice);

    /// <summary>Room before and behind equipment.</summary>
    public static Source ClearancePractice { get; } = new(
        "practice: clearances",
        "Handles and front cables stand out about 40 mm; mains and data cables need about 75 mm behind a body, a body with neither about 25 mm; a cable-management arm needs about 100 mm.",
        SourceStanding.CommonPractice);

    /// <summary>Runners, slides and what a front panel can carry.</summary>
    public static Source SupportPractice { get; } = new(
        "practice: supports",
        "A fixed angle runner lifts its unit by about 2 mm, so leave a free unit after every two to three sets; a slide is about 9.5 mm thick, so a chassis on slides is at most about 431 mm wide; a unit over 3U, over 12 kg or deeper than 400 mm needs more than its front panel.",
        SourceStanding.CommonPractice);

    /// <summary>Recirculation through open units.</summary>
    public static Source BlankingPractice { get; } = new(
        "practice: blanking",
        "Where the air path is front to rear, close every open front unit with a blanking panel, else exhaust air comes back to the inlets.",
        SourceStanding.CommonPractice);

    /// <summary>Free units kept for growth.</summary>
    public static Source ReservePractice { get; } = new(
        "practice: reserve",
        "Keep a tenth or more of the units free at hand-over for later equipment.",
        SourceStanding.CommonPractice);

    /// <summary>Things standing on shelves.</summary>
    public static Source ShelfPractice { get; } = new(
        "practice: shelves",
        "A shelf between uprights can use its opening less about 10 mm; what stands on it may neither hang over its depth nor reach into the next unit taken above.",
        SourceStanding.CommonPractice);

    /// <summary>Appliance couplers: ratings, and what goes into what.</summary>
    public static Source Iec60320 { get; } = new(
        "IEC 60320-1",
        "IEC 60320-1, appliance couplers: C13 to C16 10 A, C19 and C20 16 A; in North America 15 A and 20 A. That a C14 also goes into a C15 is a value from memory.",
        SourceStanding.SecondarySource);

    /// <summary>British plug and socket.</summary>
    public static Source Bs1363 { get; } = new(
        "BS 1363",
        "BS 1363, 13 A plugs, socket-outlets and adaptors: the rating.",
        SourceStanding.ValueFromMemory);

    /// <summary>Continental plugs and sockets.</summary>
    public static Source Cee7 { get; } = new(
        "CEE 7",
        "CEE 7, plugs and socket-outlets for household and similar purposes, standard sheets 3, 4 and 7: 16 A, and that plugs 4 and 7 go into socket 3.",
        SourceStanding.ValueFromMemory);

    /// <summary>North American plugs and sockets.</summary>
    public static Source NemaWd6 { get; } = new(
        "NEMA WD 6",
        "NEMA WD 6, wiring devices, dimensions: 5-15 15 A, 5-20 20 A, L6-20 20 A, L6-30 30 A, and that a plug 5-15 also goes into a socket 5-20.",
        SourceStanding.ValueFromMemory);

    /// <summary>Industrial plugs and sockets.</summary>
    public static Source Iec60309 { get; } = new(
        "IEC 60309-2",
        "IEC 60309-2, plugs, socket-outlets and couplers for industrial purposes, series I: 16, 32 and 63 A.",
        SourceStanding.ValueFromMemory);

    /// <summary>Instantaneous trip of circuit breakers.</summary>
    public static Source Iec60898 { get; } = new(
        "IEC 60898-1",
        "IEC 60898-1, circuit-breakers for household and similar installations: instantaneous trip at 3 to 5 (B), 5 to 10 (C), 10 to 20 (D) times the rated current.",
        SourceStanding.SecondarySource);

    /// <summary>Continuous load on a breaker in North America.</summary>
    public static Source Nec210 { get; } = new(
        "NEC 210.20(A)",
        "NEC (NFPA 70) 210.20(A), overcurrent protection of branch circuits: rated at least 125 % of the continuous load, so that load is at most 80 % of the breaker.",
        SourceStanding.SecondarySource);

    /// <summary>Capacity of cables.</summary>
    public static Source Bs7671Capacity { get; } = new(
        "BS 7671 table 4D2A",
        "BS 7671 appendix 4 table 4D2A, two-core copper cable, 70 C thermoplastic: current-carrying capacity by reference method C (clipped direct), two loaded conductors and three.",
        SourceStanding.ValueFromMemory);

    /// <summary>Voltage drop of cables.</summary>
    public static Source Bs7671Drop { get; } = new(
        "BS 7671 table 4D2B",
        "BS 7671 appendix 4 table 4D2B, two-core copper cable, 70 C thermoplastic: voltage drop, mV/A/m.",
        SourceStanding.SecondarySource);

    /// <summary>Resistance of copper conductors.</summary>
    public static Source Iec60228 { get; } = new(
        "IEC 60228",
        "IEC 60228, conductors of insulated cables, class 2: greatest resistance at 20 C. The nominal sections past 16 mm2 are values from memory.",
        SourceStanding.SecondarySource);

    /// <summary>Resistivity of copper.</summary>
    public static Source Iec60028 { get; } = new(
        "IEC 60028",
        "IEC 60028, standard of resistance for copper (100 % IACS): 1/58 ohm mm2/m at 20 C.",
        SourceStanding.SecondarySource);

    /// <summary>Section of protective conductors.</summary>
    public static Source Iec60364Earthing { get; } = new(
        "IEC 60364-5-54",
        "IEC 60364-5-54, earthing arrangements and protective conductors: least section by the line conductor (table 54.2), outside a cable (543.1), and adiabatic with k 143 and 115.",
        SourceStanding.SecondarySource);

    /// <summary>High protective conductor current.</summary>
    public static Source Bs7671ProtectiveCurrent { get; } = new(
        "BS 7671 543.7",
        "BS 7671 543.7, high protective conductor currents: over 3.5 mA a permanent or industrial connection and a label, over 10 mA high-integrity earthing, as by a single conductor of 10 mm2 or a second conductor (543.7.1.203); IEC 60364-5-54 543.7 likewise.",
        SourceStanding.ValueFromMemory);

    /// <summary>Standing leakage through an RCD.</summary>
    public static Source Bs7671Rcd { get; } = new(
        "BS 7671 531.3.2",
        "BS 7671 531.3.2, unwanted tripping of RCDs: standing leakage at most 30 % of the rated residual current. A page seen gives the share without the clause.",
        SourceStanding.ValueFromMemory);

    /// <summary>Ratings of RCDs.</summary>
    public static Source Iec61008 { get; } = new(
        "IEC 61008-1",
        "IEC 61008-1, residual current operated circuit-breakers: preferred rated residual currents, of which 30, 100, 300 and 500 mA are taken; 30 mA and less count as protection of people.",
        SourceStanding.ValueFromMemory);

    /// <summary>Resistance of an earth path.</summary>
    public static Source Iec60950EarthTest { get; } = new(
        "IEC 60950-1",
        "IEC 60950-1, safety of information technology equipment, test of protective bonding on circuits up to 16 A: at most 0.1 ohm. Its successor IEC 62368-1 likewise (value from memory).",
        SourceStanding.SecondarySource);

    /// <summary>Power factor and share of a PDU.</summary>
    public static Source LoadingPractice { get; } = new(
        "practice: loading",
        "A power supply whose power factor is not given has about 0.95; a PDU is planned for 80 % of its rating.",
        SourceStanding.CommonPractice);

    /// <summary>Protection of conductors against overload.</summary>
    public static Source Iec60364Overload { get; } = new(
        "IEC 60364-4-43 433.1",
        "IEC 60364-4-43 433.1, coordination between conductors and overload protective devices: design current <= rated current of the device <= capacity of the conductor.",
        SourceStanding.ValueFromMemory);

    /// <summary>Greatest voltage drop.</summary>
    public static Source Bs7671DropLimit { get; } = new(
        "BS 7671 appendix 4, 6.4",
        "BS 7671 appendix 4 section 6.4, voltage drop in consumers' installations: 3 % for lighting, 5 % for other uses. The lower one serves as early warning here, which is common practice.",
        SourceStanding.SecondarySource);

    /// <summary>Outlets that are switched on one after the other.</summary>
    public static Source SequencingPractice { get; } = new(
        "practice: sequencing",
        "What comes on together after a break adds up its inrush; outlets that are switched from afar are switched on one after the other.",
        SourceStanding.CommonPractice);

    /// <summary>How even the lines of three phases are kept.</summary>
    public static Source BalancePractice { get; } = new(
        "practice: phase balance",
        "Loads are spread so that the worst of three lines is within about a fifth of their mean; a supply whose worst line is under a tenth of its rating is left alone.",
        SourceStanding.CommonPractice);

    /// <summary>Mains voltages that serve each other.</summary>
    public static Source VoltagePractice { get; } = new(
        "practice: mains voltages",
        "Equipment for one of 200 to 240 V runs on any of them, equipment for 120 V does not, nor the other way about: a voltage serves within 0.8 to 1.25 times.",
        SourceStanding.CommonPractice);

    /// <summary>Two supplies for redundant equipment.</summary>
    public static Source RedundancyPractice { get; } = new(
        "practice: redundant cords",
        "The cords of redundant equipment hang on different supplies, each carries its share, and with one supply lost the others carry all.",
        SourceStanding.CommonPractice);

    /// <summary>Run time of a battery at another load.</summary>
    public static Source Peukert { get; } = new(
        "Peukert",
        "Peukert's law with exponent 1.15 for valve-regulated lead-acid batteries: run time t = t1 (P1/P)^1.15 from a time t1 given at a load P1. About +-30 % at run times of minutes.",
        SourceStanding.ValueFromMemory);

    /// <summary>Way of an earth lead.</summary>
    public static Source EarthRoutePractice { get; } = new(
        "practice: earth leads",
        "The earth bar is at the foot of the cabinet, behind; a lead goes down beside the uprights and keeps some slack, and on slides as much more as they pull out.",
        SourceStanding.CommonPractice);

    /// <summary>Parts of a cabinet that are joined to earth.</summary>
    public static Source BondingPractice { get; } = new(
        "practice: bonding",
        "One terminal of the earth bar for each stud, for the frame, each door, the side panels, a roof that bears fans, and the main conductor; one spare.",
        SourceStanding.CommonPractice);

    /// <summary>Static stability: tilt.</summary>
    public static Source Iec62368Tilt { get; } = new(
        "IEC 62368-1 8.6 tilt",
        "IEC 62368-1 clause 8.6, static stability: equipment does not fall when tilted by 10 degrees in any direction.",
        SourceStanding.ValueFromMemory);

    /// <summary>Static stability: push.</summary>
    public static Source Iec62368Push { get; } = new(
        "IEC 62368-1 8.6 push",
        "IEC 62368-1 clause 8.6, static stability: a horizontal push of 13 % of the weight, at most 250 N, at up to 1.5 m does not tip it. IEC 60950-1 4.1 asked 20 %, 250 N, 2 m (value from memory).",
        SourceStanding.SecondarySource);

    /// <summary>Tipping.</summary>
    public static Source Statics { get; } = new(
        "statics",
        "Follows from the laws of the lever alone: a body falls where the moments that overturn it about an edge pass those that hold it.",
        SourceStanding.Derived);

    /// <summary>Support on castors.</summary>
    public static Source CastorPractice { get; } = new(
        "practice: castors",
        "A castor swivelled inward moves the support on its side in by about 30 mm.",
        SourceStanding.CommonPractice);

    /// <summary>Equipment pulled out of the front.</summary>
    public static Source PulledOutPractice { get; } = new(
        "practice: pulled-out equipment",
        "With one item pulled out fully, the moment that holds the cabinet is at least 1.25 times the one that overturns it.",
        SourceStanding.CommonPractice);

    /// <summary>What a cabinet and what holds equipment in it may carry.</summary>
    public static Source RatingPractice { get; } = new(
        "practice: load ratings",
        "The maker's rating of cabinet, castors, slides, runners or shelf is the most that it carries; a cabinet is planned for 80 % of it, so that something can be added later.",
        SourceStanding.CommonPractice);

    /// <summary>Heavy equipment low down.</summary>
    public static Source HeavyLowPractice { get; } = new(
        "practice: heavy equipment low",
        "Heavy equipment goes to the foot of a cabinet and the centre of gravity stays in its lower half; nobody lifts 25 kg or more above 1.4 m, nor more than 5 kg overhead, without a lift aid or a second person.",
        SourceStanding.CommonPractice);

    /// <summary>Heights of cabinets that are not given.</summary>
    public static Source CabinetHeightPractice { get; } = new(
        "practice: cabinet heights",
        "A cabinet is about 100 mm higher than its units and its base; castors are about 80 mm high and a plinth 100 mm; the empty cabinet has its centre of gravity in the middle of its box.",
        SourceStanding.CommonPractice);

    /// <summary>Classes of raised floors.</summary>
    public static Source En12825 { get; } = new(
        "EN 12825",
        "EN 12825, raised access floors: classes 1 to 6 by an ultimate point load of 4, 6, 8, 9, 10 and 12 kN.",
        SourceStanding.SecondarySource);

    /// <summary>What may stand on floors.</summary>
    public static Source FloorFactorPractice { get; } = new(
        "practice: floor loads",
        "A raised floor works at a half to a third of its ultimate load; offices are built for 2.5 to 5 kN/m2.",
        SourceStanding.CommonPractice);

    /// <summary>Ways in.</summary>
    public static Source DeliveryPractice { get; } = new(
        "practice: delivery",
        "An opening is 20 mm wider and higher than what passes; a cabinet is tilted by at most 45 degrees, over the shorter side of its footprint; a pallet is about 150 mm high.",
        SourceStanding.CommonPractice);

    /// <summary>Pallet.</summary>
    public static Source En13698 { get; } = new(
        "EN 13698-1",
        "EN 13698-1, flat pallets of 800 x 1200 mm: the sides; 144 mm high.",
        SourceStanding.ValueFromMemory);

    /// <summary>Lifting by hand.</summary>
    public static Source HseL23 { get; } = new(
        "HSE L23",
        "HSE L23, manual handling operations, lifting filter: 25 kg between knuckle and elbow, 20 to the shoulder, 10 to the head, held close, one man; about two thirds for a woman. Guidance, no limit of law.",
        SourceStanding.ValueFromMemory);

    /// <summary>Heights of the body.</summary>
    public static Source Iso7250 { get; } = new(
        "ISO 7250-1",
        "ISO 7250-1, body measurements: elbow 0.95 to 1.2 m, shoulder 1.3 to 1.6 m, overhead reach 1.85 to 2.1 m; knuckle 0.75 m and middle of the lower leg 0.25 m as round figures.",
        SourceStanding.ValueFromMemory);

    /// <summary>Fill of cable ways.</summary>
    public static Source En50174 { get; } = new(
        "EN 50174",
        "EN 50174, installation of cabling: cables take at most 40 % of a channel's section.",
        SourceStanding.ValueFromMemory);

    /// <summary>Bend of data cables.</summary>
    public static Source CableBend { get; } = new(
        "ANSI/TIA-568.0",
        "ANSI/TIA-568.0, telecommunications cabling: bend radius of a four-pair cable at least four times its diameter. Pages seen give the figure without the clause.",
        SourceStanding.ValueFromMemory);

    /// <summary>Channel beside the uprights.</summary>
    public static Source CableChannelPractice { get; } = new(
        "practice: cable channels",
        "The finger channel beside the uprights of a cabinet is usable about 100 mm deep, less about 20 mm of its width for the fingers.",
        SourceStanding.CommonPractice);

    /// <summary>Follows from the laws of alternating current alone.</summary>
    public static Source CircuitTheory { get; } = new(
        "circuit theory",
        "Follows from the laws of alternating current alone: I = P/(V pf), and the neutral of a star carries the sum of the phasors of its lines.",
        SourceStanding.Derived);

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
