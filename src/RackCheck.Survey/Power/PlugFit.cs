using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Survey.Power;

/// <summary>The table of connectors by the contract's codes: what goes into what, and for how much.</summary>
public static class PlugFit
{
    private static readonly ConnectorCode[] Codes = Enum.GetValues<ConnectorCode>();
    private static readonly Connector[] Rows = Array.ConvertAll(
        Codes, code => Connectors.All.Single(c => c.Code == NamedEnumConverter<ConnectorCode>.Name(code)));
    private static readonly bool[,] Table = MakeTable();

    /// <summary>Whether a plug goes into a socket.</summary>
    /// <param name="plug">The plug.</param>
    /// <param name="socket">The socket.</param>
    /// <returns>Whether it does.</returns>
    public static bool Fits(ConnectorCode plug, ConnectorCode socket) => Table[(int)plug, (int)socket];

    /// <summary>Row of the table of connectors.</summary>
    /// <param name="code">The connector.</param>
    /// <returns>The row.</returns>
    public static Connector Of(ConnectorCode code) => Rows[(int)code];

    /// <summary>What a connector is rated for, A.</summary>
    /// <param name="code">The connector.</param>
    /// <param name="northAmerica">Whether the ratings of North America hold.</param>
    /// <returns>Its rating; infinite for what is wired without one.</returns>
    public static double RatedA(ConnectorCode code, bool northAmerica) =>
        (northAmerica ? Of(code).RatedNorthAmericaA : Of(code).RatedA) ?? double.PositiveInfinity;

    /// <summary>Whether a connector carries three phases; what is wired without one carries as many as there are.</summary>
    /// <param name="code">The connector.</param>
    /// <returns>Whether it does.</returns>
    public static bool IsThreePhase(ConnectorCode code) => code != ConnectorCode.Hardwired && Of(code).Phases == 3;

    /// <summary>The socket made for a plug: the one that takes it and the fewest others.</summary>
    /// <param name="plug">The plug.</param>
    /// <returns>The socket; the plug's own code where the table has none.</returns>
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
