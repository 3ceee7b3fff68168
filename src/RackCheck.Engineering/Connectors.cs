using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A standard plug or socket.</summary>
/// <param name="Code">Name in the contract.</param>
/// <param name="RatedA">Rated current, A; null for hard-wired connections.</param>
/// <param name="RatedNorthAmericaA">Rated current in North America, A; null for hard-wired connections.</param>
/// <param name="Takes">Plugs that the socket accepts; empty for a plug.</param>
/// <param name="Phases">Number of phases.</param>
/// <param name="Secured">Whether it is an industrial or permanent connection, as required for a high protective conductor current.</param>
/// <param name="Standard">Key of the standard's source; "none" for hard-wired connections.</param>
public sealed record Connector(
    string Code,
    double? RatedA,
    double? RatedNorthAmericaA,
    ImmutableArray<string> Takes,
    int Phases,
    bool Secured,
    string Standard);

/// <summary>Plugs and sockets: ratings and mating.</summary>
/// <remarks>IEC 60320-1, including North American ratings (secondary source); BS 1363, CEE 7, NEMA WD 6 and IEC 60309-2 (values from memory).</remarks>
public static class Connectors
{
    private static readonly string Iec60320 = Sources.Iec60320.Key;
    private static readonly string Bs1363 = Sources.Bs1363.Key;
    private static readonly string Cee7 = Sources.Cee7.Key;
    private static readonly string Nema = Sources.NemaWd6.Key;
    private static readonly string Iec60309 = Sources.Iec60309.Key;

    /// <summary>Maximum overload protection of IEC 60320 outlets, A: IEC 60364-4-43 433.1 and IEC 62368-1 (values from memory).</summary>
    public const double MostOutletProtectionA = 16;

    /// <summary>Rated current of the largest fuse in a BS 1363 plug, A.</summary>
    public const double Bs1363FuseA = 13;

    /// <summary>Maximum overload protection of IEC 60320 outlets in North America, A.</summary>
    public const double MostOutletProtectionNorthAmericaA = 20;

    /// <summary>Maximum temperature of a cord with connectors for cold conditions (C13, C19), C: IEC 60320-1 (value from memory).</summary>
    public const double ColdCordC = 70;

    /// <summary>Maximum temperature of a cord with connectors for hot conditions (C15), C: IEC 60320-1 (value from memory).</summary>
    public const double HotCordC = 120;

    /// <summary>All connectors of the contract.</summary>
    public static ImmutableArray<Connector> All { get; } =
    [
        new("C13", 10, 15, ["C14"], 1, false, Iec60320),
        new("C14", 10, 15, [], 1, false, Iec60320),
        new("C15", 10, 15, ["C14", "C16"], 1, false, Iec60320),
        new("C16", 10, 15, [], 1, false, Iec60320),
        new("C19", 16, 20, ["C20"], 1, false, Iec60320),
        new("C20", 16, 20, [], 1, false, Iec60320),
        new("BS1363", 13, 13, ["BS1363"], 1, false, Bs1363),
        new("CEE7/3", 16, 16, ["CEE7/4", "CEE7/7"], 1, false, Cee7),
        new("CEE7/4", 16, 16, [], 1, false, Cee7),
        new("CEE7/7", 16, 16, [], 1, false, Cee7),
        new("NEMA5-15", 15, 15, ["NEMA5-15"], 1, false, Nema),
        new("NEMA5-20", 20, 20, ["NEMA5-15", "NEMA5-20"], 1, false, Nema),
        new("NEMAL5-20", 20, 20, ["NEMAL5-20"], 1, true, Nema),
        new("NEMAL5-30", 30, 30, ["NEMAL5-30"], 1, true, Nema),
        new("NEMAL6-20", 20, 20, ["NEMAL6-20"], 1, true, Nema),
        new("NEMAL6-30", 30, 30, ["NEMAL6-30"], 1, true, Nema),
        new("NEMAL14-30", 30, 30, ["NEMAL14-30"], 1, true, Nema),
        new("NEMAL15-30", 30, 30, ["NEMAL15-30"], 3, true, Nema),
        new("NEMAL21-20", 20, 20, ["NEMAL21-20"], 3, true, Nema),
        new("NEMAL21-30", 30, 30, ["NEMAL21-30"], 3, true, Nema),
        new("IEC60309-16A-1P", 16, 16, ["IEC60309-16A-1P"], 1, true, Iec60309),
        new("IEC60309-16A-3P", 16, 16, ["IEC60309-16A-3P"], 3, true, Iec60309),
        new("IEC60309-32A-1P", 32, 32, ["IEC60309-32A-1P"], 1, true, Iec60309),
        new("IEC60309-32A-3P", 32, 32, ["IEC60309-32A-3P"], 3, true, Iec60309),
        new("IEC60309-63A-1P", 63, 63, ["IEC60309-63A-1P"], 1, true, Iec60309),
        new("IEC60309-63A-3P", 63, 63, ["IEC60309-63A-3P"], 3, true, Iec60309),
        new("hardwired", null, null, ["hardwired"], 3, true, "none"),
    ];

    /// <summary>Maximum temperature of a mains cord by its plug.</summary>
    /// <param name="code">The plug.</param>
    /// <returns>Temperature, C: 120 with a C16 plug, else 70; null for a hard-wired connection, which is no cord.</returns>
    public static double? CordLimitC(string code) => code switch
    {
        "hardwired" => null,
        "C16" => HotCordC,
        _ => ColdCordC,
    };

    /// <summary>Maximum rating of the breaker of a circuit that ends in a socket: that of the socket, with the exceptions of the wiring rules.</summary>
    /// <param name="code">The socket.</param>
    /// <param name="isNorthAmerica">Whether North American ratings apply.</param>
    /// <returns>
    /// Rating, A; null for a hard-wired connection. 32 A for BS 1363, where each plug has a fuse; 20 A for NEMA 5-15, which may be on a 20 A circuit; IEC 60320
    /// sockets as behind the breaker of a PDU.
    /// </returns>
    /// <remarks>IEC 60364-4-43 433.1; BS 7671 433.1.204; NEC 210.21(B) (values from memory).</remarks>
    public static double? MostBreakerA(string code, bool isNorthAmerica)
    {
        var connector = All.Single(c => c.Code == code);
        var rated = isNorthAmerica ? connector.RatedNorthAmericaA : connector.RatedA;
        return code switch
        {
            "BS1363" => Cables.MostRingA,
            "NEMA5-15" => 20,
            _ when connector.Standard == Iec60320 => isNorthAmerica ? MostOutletProtectionNorthAmericaA : MostOutletProtectionA,
            _ => rated,
        };
    }
}
