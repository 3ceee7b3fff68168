using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Survey.Power;

/// <summary>The table of connectors by the codes of the contract: which plug fits which socket, and the ratings.</summary>
public static class PlugFit
{
    private static readonly ConnectorCode[] Codes = Enum.GetValues<ConnectorCode>();
    private static readonly Connector[] Rows = Array.ConvertAll(
        Codes, code => Connectors.All.Single(c => c.Code == NamedEnumConverter<ConnectorCode>.Name(code)));
    private static readonly bool[,] Table = MakeTable();

    /// <summary>Whether a plug fits a socket.</summary>
    public static bool Fits(ConnectorCode plug, ConnectorCode socket) => Table[(int)plug, (int)socket];

    /// <summary>Whether a plug is that of an appliance inlet, which takes a separate cord.</summary>
    /// <param name="plug">The plug.</param>
    public static bool IsInlet(ConnectorCode plug) => plug is ConnectorCode.C14 or ConnectorCode.C16 or ConnectorCode.C20;

    /// <summary>Row of the table of connectors.</summary>
    public static Connector Of(ConnectorCode code) => Rows[(int)code];

    /// <summary>Whether a connector is of IEC 60320.</summary>
    public static bool IsIec60320(ConnectorCode code) => Of(code).Standard == Sources.Iec60320.Key;

    /// <summary>Whether a connector is of IEC 60309, an industrial one.</summary>
    public static bool IsIec60309(ConnectorCode code) => Of(code).Standard == Sources.Iec60309.Key;

    /// <summary>Rated current of a connector, A.</summary>
    /// <param name="northAmerica">Whether North American ratings apply.</param>
    /// <returns>Its rating; infinite for a hard-wired connection.</returns>
    public static double RatedA(ConnectorCode code, bool northAmerica) =>
        (northAmerica ? Of(code).RatedNorthAmericaA : Of(code).RatedA) ?? double.PositiveInfinity;

    /// <summary>Whether a connector carries three phases; a hard-wired connection carries all phases.</summary>
    public static bool IsThreePhase(ConnectorCode code) => code != ConnectorCode.Hardwired && Of(code).Phases == 3;

    /// <summary>The socket that belongs to a plug: the one that fits it and the fewest others.</summary>
    /// <returns>The socket; the code of the plug if the table has none.</returns>
    public static ConnectorCode SocketFor(ConnectorCode plug)
    {
        var best = plug;
        var fewest = int.MaxValue;
        foreach (var code in Codes)
        {
            if (Fits(plug, code) && Of(code).Takes.Length < fewest)
            {
                (best, fewest) = (code, Of(code).Takes.Length);
            }
        }

        return best;
    }

    private static bool[,] MakeTable()
    {
        var table = new bool[Codes.Length, Codes.Length];
        foreach (var plug in Codes)
        {
            foreach (var socket in Codes)
            {
                table[(int)plug, (int)socket] = Rows[(int)socket].Takes.Contains(Rows[(int)plug].Code);
            }
        }

        return table;
    }
}
