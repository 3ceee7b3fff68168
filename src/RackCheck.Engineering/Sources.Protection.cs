namespace RackCheck.Engineering;

/// <content>Sources of electrical protection.</content>
public static partial class Sources
{
    /// <summary>Overload protection of outlets.</summary>
    public static Source Iec62368Outlets { get; } = new(
        "IEC 60364-4-43 433.1, IEC 62368-1",
        "An IEC 60320 outlet must not be protected above the rating that its type is tested for: 16 A, and 20 A in North America.",
        SourceStanding.ValueFromMemory);

    /// <summary>Automatic disconnection on an earth fault.</summary>
    public static Source Bs7671Disconnection { get; } = new(
        "BS 7671 411.4.4, IEC 60364-4-41",
        "A breaker disconnects an earth fault at once if the fault current at the end of the circuit reaches the upper limit of "
            + "its instantaneous trip: 5, 10 or "+
            "20 times its rating for curve B, C or D. The conductors are taken at their operating temperature, 1.2 times the resistance at 20 C.",
        SourceStanding.ValueFromMemory);

    /// <summary>Highest declared external loop impedance.</summary>
    public static Source DeclaredLoopPractice { get; } = new(
        "practice: declared earth fault loop",
        "Public TN-S supplies are declared with at most 0.8 ohm of external earth fault loop impedance, which is 287 A at 230 V.",
        SourceStanding.CommonPractice);

    /// <summary>Breaking capacity.</summary>
    public static Source Bs7671Breaking { get; } = new(
        "BS 7671 434.5.1, IEC 60364-4-43",
        "The rated breaking capacity of a protective device is at least the prospective fault current where it is installed. Usual breakers have 6 kA.",
        SourceStanding.ValueFromMemory);

    /// <summary>Additional protection of socket outlets.</summary>
    public static Source Bs7671Additional { get; } = new(
        "BS 7671 411.3.3, IEC 60364-4-41",
        "Socket outlets up to 32 A have additional protection by an RCD of at most 30 mA, unless a risk assessment or local code says otherwise.",
        SourceStanding.ValueFromMemory);

    /// <summary>Altitude of switchgear and insulation.</summary>
    public static Source Iec60947Altitude { get; } = new(
        "IEC 60947-1, IEC 60664-1",
        "Switchgear ratings and clearances apply up to 2000 m above sea level. Above that the manufacturer confirms them.",
        SourceStanding.ValueFromMemory);

    /// <summary>Correction factors of cables.</summary>
    public static Source Bs7671Factors { get; } = new(
        "BS 7671 tables 4B1 and 4C1",
        "Correction factors for ambient temperature (70 C thermoplastic, 30 C is 1) and for bunched circuits.",
        SourceStanding.ValueFromMemory);

    /// <summary>Ring final circuits.</summary>
    public static Source Bs7671Ring { get; } = new(
        "BS 7671 433.1.204",
        "A ring final circuit of 2.5 mm2 may be protected at 32 A: each leg carries part of the load. The fuse in a BS 1363 plug protects what is behind it.",
        SourceStanding.ValueFromMemory);

    /// <summary>Loop of a ring final circuit.</summary>
    public static Source RingLoop { get; } = new(
        "On-Site Guide to BS 7671, ring final circuits",
        "The conductors from the origin to the far point of a ring are a quarter of the whole ring taken once: two legs in parallel, each half as long.",
        SourceStanding.ValueFromMemory);

    /// <summary>Equipment grounding conductors.</summary>
    public static Source Nec250 { get; } = new(
        "NEC 250.122",
        "Copper equipment grounding conductors by overcurrent device: 15 A 14 AWG (2.1 mm2), 20 A 12 AWG (3.3 mm2), 30 to 60 A 10 AWG (5.3 mm2).",
        SourceStanding.ValueFromMemory);

    /// <summary>Let-through energy of breakers.</summary>
    public static Source Iec60898Energy { get; } = new(
        "IEC 60898-1 energy limitation class 3",
        "Breakers up to 32 A of curve B or C let through at most 90 000 A2s at 10 kA.",
        SourceStanding.ValueFromMemory);

    /// <summary>UPS without a load.</summary>
    public static Source UpsPractice { get; } = new(
        "practice: UPS",
        "A UPS feeds named PDUs. It recharges with about 10 % of its rating while it carries its load. Behind one UPS both cords of an item fail together.",
        SourceStanding.CommonPractice);
}
