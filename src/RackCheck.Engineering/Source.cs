namespace RackCheck.Engineering;

/// <summary>Source of a formula, table or limit.</summary>
/// <param name="Key">Short name that findings and tables cite, unique.</param>
/// <param name="Text">Title, clause and the values taken from the source.</param>
/// <param name="Standing">How the source was consulted.</param>
public sealed record Source(string Key, string Text, SourceStanding Standing);

/// <summary>How a source was consulted. No standard was read in full text for this service.</summary>
public enum SourceStanding
{
    /// <summary>A published page that quotes the source was seen.</summary>
    SecondarySource,

    /// <summary>Value from memory of the source named; read the standard before relying on it.</summary>
    ValueFromMemory,

    /// <summary>Common practice without a published source.</summary>
    CommonPractice,

    /// <summary>Derived from geometry or arithmetic.</summary>
    Derived,
}

/// <summary>All sources that the service cites.</summary>
public static partial class Sources
{
    /// <summary>Height unit, hole pattern, panel sizes and clear opening of the 482.6 mm series.</summary>
    public static Source Iec60297 { get; } = new(
        "IEC 60297-3-100",
        "IEC 60297-3-100, mechanical structures of the 482.6 mm (19 in) series: height unit U = 44.45 mm, panel height n x 44.45 - 0.8 mm, hole " +
            "pattern, clear opening at least 450 mm.",
        SourceStanding.ValueFromMemory);

    /// <summary>Height unit and hole pattern in inches.</summary>
    public static Source Eia310 { get; } = new(
        "EIA-310",
        "EIA-310, cabinets, racks, panels and associated equipment: height unit 1.75 in, hole spacing 0.625, 0.625 and 0.5 in, panel height n x 1.75 " +
            "in less 1/32 in.",
        SourceStanding.SecondarySource);

    /// <summary>Cabinet sizes on the market and the depth of doors.</summary>
    public static Source CabinetSizePractice { get; } = new(
        "practice: cabinet sizes",
        "Common overall cabinet sizes: width 600 and 800 mm, depth 600, 800, 1000 and 1200 mm. Front and rear door together take about 50 mm of the depth.",
        SourceStanding.CommonPractice);

    /// <summary>Clearances in front of and behind equipment.</summary>
    public static Source ClearancePractice { get; } = new(
        "practice: clearances",
        "Allow about 40 mm in front for handles and cables. Behind the body allow about 75 mm for mains and data cables, 25 mm without cables and 100" +
            " mm for a cable-management arm.",
        SourceStanding.CommonPractice);

    /// <summary>Chassis runners, slide rails and the capacity of a front panel.</summary>
    public static Source SupportPractice { get; } = new(
        "practice: supports",
        "A chassis runner raises the item by about 2 mm; leave 1U free after every two or three pairs. A slide rail is about 9.5 mm thick, so a " +
            "chassis on slide rails is at most about 431 mm wide; thinner slides exist. The plate of a shelf is about 3 mm thick. An item above 12 kg, " +
            "or above 6 kg and deeper than 400 mm, needs support in addition to its front panel.",
        SourceStanding.CommonPractice);

    /// <summary>Recirculation through open U positions.</summary>
    public static Source BlankingPractice { get; } = new(
        "practice: blanking",
        "With airflow front to rear, close all open U positions at the front with blanking panels to prevent hot-air recirculation.",
        SourceStanding.CommonPractice);

    /// <summary>U positions reserved for growth.</summary>
    public static Source ReservePractice { get; } = new(
        "practice: reserve",
        "Leave at least 10 % of the U positions free at handover for later equipment.",
        SourceStanding.CommonPractice);

    /// <summary>Equipment on shelves.</summary>
    public static Source ShelfPractice { get; } = new(
        "practice: shelves",
        "The usable width of a shelf is about 10 mm less than the opening between the uprights. Equipment on a shelf must not overhang its depth or " +
            "reach into an occupied U position above.",
        SourceStanding.CommonPractice);

    /// <summary>Appliance couplers: ratings and mating.</summary>
    public static Source Iec60320 { get; } = new(
        "IEC 60320-1",
        "IEC 60320-1, appliance couplers: C13 to C16 rated 10 A, C19 and C20 rated 16 A; in North America 15 A and 20 A. Connectors C13 and C19 are for " +
            "cold conditions, 70 C, and C15 for hot conditions, 120 C. The mating of C14 with C15 and the temperatures are values from memory.",
        SourceStanding.SecondarySource);

    /// <summary>British plug and socket.</summary>
    public static Source Bs1363 { get; } = new(
        "BS 1363",
        "BS 1363, 13 A plugs, socket-outlets and adaptors: rated current.",
        SourceStanding.ValueFromMemory);

    /// <summary>Continental European plugs and sockets.</summary>
    public static Source Cee7 { get; } = new(
        "CEE 7",
        "CEE 7, plugs and socket-outlets for household and similar purposes, standard sheets 3, 4 and 7: rated 16 A; socket 3 accepts plugs 4 and 7.",
        SourceStanding.ValueFromMemory);

    /// <summary>North American plugs and sockets.</summary>
    public static Source NemaWd6 { get; } = new(
        "NEMA WD 6",
        "NEMA WD 6, wiring devices, dimensions: 5-15 rated 15 A, 5-20, L5-20 and L6-20 rated 20 A, L5-30 and L6-30 rated 30 A; receptacle 5-20 also accepts "
        + "plug 5-15.",
        SourceStanding.ValueFromMemory);

    /// <summary>Industrial plugs and sockets.</summary>
    public static Source Iec60309 { get; } = new(
        "IEC 60309-2",
        "IEC 60309-2, plugs, socket-outlets and couplers for industrial purposes, series I: rated 16, 32 and 63 A.",
        SourceStanding.ValueFromMemory);

    /// <summary>Instantaneous trip of circuit breakers.</summary>
    public static Source Iec60898 { get; } = new(
        "IEC 60898-1",
        "IEC 60898-1, circuit-breakers for household and similar installations: instantaneous trip range 3 to 5 (B), 5 to 10 (C) and 10 to 20 (D) " +
            "times the rated current.",
        SourceStanding.SecondarySource);

    /// <summary>Continuous load on a breaker in North America.</summary>
    public static Source Nec210 { get; } = new(
        "NEC 210.20(A)",
        "NEC (NFPA 70) 210.20(A), overcurrent protection of branch circuits: rating at least 125 % of the continuous load. The continuous load is " +
            "therefore at most 80 % of the rating.",
        SourceStanding.SecondarySource);

    /// <summary>Receptacles on branch circuits.</summary>
    public static Source Nec210Receptacles { get; } = new(
        "NEC 210.21(B)",
        "NEC (NFPA 70) 210.21(B), receptacles: a single receptacle is rated at least as its branch circuit; 15 A receptacles are permitted on 20 A circuits.",
        SourceStanding.ValueFromMemory);

    /// <summary>Current-carrying capacity of cables.</summary>
    public static Source Bs7671Capacity { get; } = new(
        "BS 7671 table 4D2A",
        "BS 7671 appendix 4 table 4D2A, two-core copper cable, 70 C thermoplastic: current-carrying capacity for reference method C (clipped direct)," +
            " two and three loaded conductors.",
        SourceStanding.ValueFromMemory);

    /// <summary>Voltage drop of cables.</summary>
    public static Source Bs7671Drop { get; } = new(
        "BS 7671 table 4D2B",
        "BS 7671 appendix 4 table 4D2B, two-core copper cable, 70 C thermoplastic: voltage drop, mV/A/m.",
        SourceStanding.SecondarySource);

    /// <summary>Resistance of copper conductors.</summary>
    public static Source Iec60228 { get; } = new(
        "IEC 60228",
        "IEC 60228, conductors of insulated cables, class 2: maximum resistance at 20 C. Nominal cross-sectional areas above 16 mm2 are values from memory.",
        SourceStanding.SecondarySource);

    /// <summary>Resistivity of copper.</summary>
    public static Source Iec60028 { get; } = new(
        "IEC 60028",
        "IEC 60028, resistance standard for copper (100 % IACS): 1/58 ohm mm2/m at 20 C.",
        SourceStanding.SecondarySource);

    /// <summary>Cross-sectional area of protective conductors.</summary>
    public static Source Iec60364Earthing { get; } = new(
        "IEC 60364-5-54",
        "IEC 60364-5-54, earthing arrangements and protective conductors: minimum cross-sectional area by line conductor (table 54.2), minimum for a " +
            "separate conductor (543.1), adiabatic equation with k = 143 and 115.",
        SourceStanding.SecondarySource);

    /// <summary>High protective conductor current.</summary>
    public static Source Bs7671ProtectiveCurrent { get; } = new(
        "BS 7671 543.7",
        "BS 7671 543.7, high protective conductor currents: above 3.5 mA a permanent or industrial connection and a label; above 10 mA high-integrity" +
            " earthing, such as one conductor of 10 mm2 or a second conductor (543.7.1.203). IEC 60364-5-54 543.7 is similar.",
        SourceStanding.ValueFromMemory);

    /// <summary>Standing leakage through an RCD.</summary>
    public static Source Bs7671Rcd { get; } = new(
        "BS 7671 531.3.2",
        "BS 7671 531.3.2, unwanted tripping of RCDs: standing leakage at most 30 % of the rated residual current. The page seen quotes the percentage" +
            " without the clause.",
        SourceStanding.ValueFromMemory);

    /// <summary>Ratings of RCDs.</summary>
    public static Source Iec61008 { get; } = new(
        "IEC 61008-1",
        "IEC 61008-1, residual current operated circuit-breakers: preferred rated residual currents, of which 30, 100, 300 and 500 mA are used. Up to" +
            " 30 mA counts as additional protection of people.",
        SourceStanding.ValueFromMemory);

    /// <summary>Earth continuity resistance.</summary>
    public static Source Iec60950EarthTest { get; } = new(
        "IEC 60950-1",
        "IEC 60950-1, safety of information technology equipment, protective bonding test for circuits up to 16 A: at most 0.1 ohm. The successor IEC" +
            " 62368-1 has the same limit (value from memory).",
        SourceStanding.SecondarySource);

    /// <summary>Default power factor and design share of a PDU.</summary>
    public static Source LoadingPractice { get; } = new(
        "practice: loading",
        "Default power factor 0.95 where the data sheet gives none. A PDU is loaded to at most 80 % of its rating at the design stage.",
        SourceStanding.CommonPractice);

    /// <summary>Overload protection of conductors.</summary>
    public static Source Iec60364Overload { get; } = new(
        "IEC 60364-4-43 433.1",
        "IEC 60364-4-43 433.1, coordination between conductors and overload protective devices: design current <= rated current of the device <= " +
            "current-carrying capacity of the conductor.",
        SourceStanding.ValueFromMemory);

    /// <summary>Maximum voltage drop.</summary>
    public static Source Bs7671DropLimit { get; } = new(
        "BS 7671 appendix 4, 6.4",
        "BS 7671 appendix 4 section 6.4, voltage drop in consumers' installations: 3 % for lighting, 5 % for other uses. The use of 3 % as an early " +
            "warning is common practice.",
        SourceStanding.SecondarySource);

    /// <summary>Sequenced outlets.</summary>
    public static Source SequencingPractice { get; } = new(
        "practice: sequencing",
        "Inrush currents add up when all equipment switches on together after a power failure. Remotely switched outlets are switched on in sequence.",
        SourceStanding.CommonPractice);

    /// <summary>Balance of three-phase loads.</summary>
    public static Source BalancePractice { get; } = new(
        "practice: phase balance",
        "Distribute single-phase loads so that the most loaded line is within about 20 % of the mean of the three lines. No action is needed while " +
            "that line is below 10 % of the supply rating.",
        SourceStanding.CommonPractice);

    /// <summary>Compatible mains voltages.</summary>
    public static Source VoltagePractice { get; } = new(
        "practice: mains voltages",
        "Equipment rated at 200 to 240 V runs on any supply in that range. Equipment rated at 120 V does not, nor the reverse. A supply voltage of " +
            "0.8 to 1.25 times the rated voltage is accepted.",
        SourceStanding.CommonPractice);

    /// <summary>Two supplies for dual-corded equipment.</summary>
    public static Source RedundancyPractice { get; } = new(
        "practice: redundant cords",
        "The cords of dual-corded equipment are fed from different supplies and share the load. If one supply fails, the others must carry the full load.",
        SourceStanding.CommonPractice);

    /// <summary>Battery run time at another load.</summary>
    public static Source Peukert { get; } = new(
        "Peukert",
        "Peukert's law, exponent 1.15 for valve-regulated lead-acid batteries: run time t = t1 (P1/P)^1.15, with a known run time t1 at load P1. " +
            "Accuracy about +-30 % for run times of minutes.",
        SourceStanding.ValueFromMemory);

    /// <summary>Route of an earth lead.</summary>
    public static Source EarthRoutePractice { get; } = new(
        "practice: earth leads",
        "The earth bar is at the bottom rear of the cabinet. An earth lead runs down beside the uprights with some slack; an item on slide rails " +
            "needs extra length equal to the extension.",
        SourceStanding.CommonPractice);

    /// <summary>Bonded parts of a cabinet.</summary>
    public static Source BondingPractice { get; } = new(
        "practice: bonding",
        "Provide one earth bar terminal for each earth stud, for the frame, each door, the side panels, a roof with fans and the main protective " +
            "conductor, plus one spare.",
        SourceStanding.CommonPractice);

    /// <summary>Static stability: tilt.</summary>
    public static Source Iec62368Tilt { get; } = new(
        "IEC 62368-1 8.6 tilt",
        "IEC 62368-1 clause 8.6, static stability: equipment must not tip over when tilted by 10 degrees in any direction.",
        SourceStanding.ValueFromMemory);

    /// <summary>Static stability: push.</summary>
    public static Source Iec62368Push { get; } = new(
        "IEC 62368-1 8.6 push",
        "IEC 62368-1 clause 8.6, static stability: no tipping under a horizontal push of 13 % of the weight, up to 250 N, at a height up to 1.5 m. " +
            "IEC 60950-1 4.1 required 20 %, 250 N, 2 m (value from memory).",
        SourceStanding.SecondarySource);

    /// <summary>Tipping.</summary>
    public static Source Statics { get; } = new(
        "statics",
        "Derived from statics: a body tips over an edge when the overturning moment exceeds the stabilising moment.",
        SourceStanding.Derived);

    /// <summary>Lines of feet and castors.</summary>
    public static Source CastorPractice { get; } = new(
        "practice: feet and castors",
        "Feet and castors stand about 50 mm inside the frame, which is behind the doors; a plinth is flush with the frame. A castor swivelled inwards " +
            "moves the support line on that side inwards by a further 30 mm or so.",
        SourceStanding.CommonPractice);

    /// <summary>Equipment in the extended position.</summary>
    public static Source PulledOutPractice { get; } = new(
        "practice: pulled-out equipment",
        "With one item fully extended past the open door, the stabilising moment is at least 1.25 times the overturning moment. Without an interlock two " +
            "items can be out at once.",
        SourceStanding.CommonPractice);

    /// <summary>Load ratings of the cabinet and of supports.</summary>
    public static Source RatingPractice { get; } = new(
        "practice: load ratings",
        "The manufacturer's load rating of the cabinet, castors, slide rails, chassis runners or shelf is the maximum. A cabinet is loaded to at most" +
            " 80 % of its rating at the design stage, to leave a reserve.",
        SourceStanding.CommonPractice);

    /// <summary>Heavy equipment at the bottom.</summary>
    public static Source HeavyLowPractice { get; } = new(
        "practice: heavy equipment low",
        "Mount heavy equipment at the bottom and keep the centre of gravity in the lower half of the cabinet. Two people mount equipment; above " +
            "1.05 m and 1.4 m the mass that they mount is reduced. Use a lifting aid for more.",
        SourceStanding.CommonPractice);

    /// <summary>Default cabinet heights.</summary>
    public static Source CabinetHeightPractice { get; } = new(
        "practice: cabinet heights",
        "Overall height is about 100 mm more than the mounting space and the base. Castors are about 80 mm high and a plinth 100 mm. The centre of " +
            "gravity of an empty cabinet is at the centre of its volume.",
        SourceStanding.CommonPractice);

    /// <summary>Classes of raised floors.</summary>
    public static Source En12825 { get; } = new(
        "EN 12825",
        "EN 12825, raised access floors: classes 1 to 6 with ultimate point loads of 4, 6, 8, 9, 10 and 12 kN.",
        SourceStanding.SecondarySource);

    /// <summary>Permissible floor loads.</summary>
    public static Source FloorFactorPractice { get; } = new(
        "practice: floor loads",
        "The working load of a raised floor is a half to a third of its ultimate load. Office floors are designed for 2.5 to 5 kN/m2.",
        SourceStanding.CommonPractice);

    /// <summary>Delivery routes.</summary>
    public static Source DeliveryPractice { get; } = new(
        "practice: delivery",
        "An opening is at least 20 mm wider and higher than the load. A cabinet is tilted by at most 45 degrees, over the shorter side of its " +
            "footprint. A pallet is about 150 mm high.",
        SourceStanding.CommonPractice);

    /// <summary>Pallet dimensions.</summary>
    public static Source En13698 { get; } = new(
        "EN 13698-1",
        "EN 13698-1, flat pallets of 800 x 1200 mm: side lengths, height 144 mm.",
        SourceStanding.ValueFromMemory);

    /// <summary>Manual lifting.</summary>
    public static Source HseL23 { get; } = new(
        "HSE L23",
        "HSE L23, manual handling operations, lifting filter: close to the body, one man, 25 kg between knuckle and elbow height, 20 kg up to the " +
            "shoulder and 10 kg up to the head; about two thirds for a woman. Two people lift two thirds of the sum of both. Guidance, not a legal limit.",
        SourceStanding.ValueFromMemory);

    /// <summary>Body heights.</summary>
    public static Source Iso7250 { get; } = new(
        "ISO 7250-1",
        "ISO 7250-1, body measurements: elbow 0.95 to 1.2 m, shoulder 1.3 to 1.6 m, overhead reach 1.85 to 2.1 m. Knuckle height 0.75 m and mid lower" +
            " leg 0.25 m are rounded.",
        SourceStanding.ValueFromMemory);

    /// <summary>Fill of cable channels.</summary>
    public static Source En50174 { get; } = new(
        "EN 50174",
        "EN 50174, installation of cabling: cables fill at most 40 % of the cross-sectional area of a channel.",
        SourceStanding.ValueFromMemory);

    /// <summary>Bend radius of data cables.</summary>
    public static Source CableBend { get; } = new(
        "ANSI/TIA-568.0",
        "ANSI/TIA-568.0, telecommunications cabling: bend radius of a four-pair cable at least four times its diameter. The pages seen quote the " +
            "value without the clause.",
        SourceStanding.ValueFromMemory);

    /// <summary>Cable channel beside the uprights.</summary>
    public static Source CableChannelPractice { get; } = new(
        "practice: cable channels",
        "The cable channel beside the uprights has a usable depth of about 100 mm. Cable fingers reduce its width by about 20 mm.",
        SourceStanding.CommonPractice);

    /// <summary>Plausible ranges of what a description does not give.</summary>
    public static Source RangePractice { get; } = new(
        "practice: plausible ranges",
        "What equipment, cabinets and sites of the trade usually have. Another basis is named beside the range.",
        SourceStanding.CommonPractice);

    /// <summary>Derived from alternating current theory.</summary>
    public static Source CircuitTheory { get; } = new(
        "circuit theory",
        "Derived from alternating current theory: I = P/(V pf); the neutral of a star-connected load carries the phasor sum of its line currents.",
        SourceStanding.Derived);

    /// <summary>Derived from the geometry of the description.</summary>
    public static Source Geometry { get; } = new(
        "geometry",
        "Derived from the geometry of the description: two bodies cannot occupy the same space, and nothing projects through a closed door.",
        SourceStanding.Derived);

    /// <summary>Derived from the request.</summary>
    public static Source Bookkeeping { get; } = new(
        "bookkeeping",
        "Derived from the request: its statements about the rack must agree with each other.",
        SourceStanding.Derived);
}
