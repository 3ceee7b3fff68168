using RackCheck.Model;

namespace RackCheck.Survey.Power;

/// <summary>What rules and cures ask of a cord and where it may go.</summary>
public static class CordFacts
{
    /// <summary>Least share of its own voltage's mains that serves an item: 208, 230 and 240 V serve each other, 120 V and 230 V do not.</summary>
    public const double LeastVoltageShare = 0.8;

    /// <summary>Greatest share, as the least.</summary>
    public const double MostVoltageShare = 1.25;

    /// <summary>Whether a voltage serves the item of a cord; any does while the item's is not given.</summary>
    /// <param name="cord">The cord.</param>
    /// <param name="voltageV">The voltage of an outlet, V.</param>
    /// <returns>Whether it does.</returns>
    public static bool SuitsVoltage(this Cord cord, double voltageV) =>
        cord.Item.Item!.Power!.VoltageV is not { } own || (own >= LeastVoltageShare * voltageV && own <= MostVoltageShare * voltageV);

    /// <summary>Whether a supply has the voltage and the phases that a cord asks for.</summary>
    /// <param name="cord">The cord.</param>
    /// <param name="supply">The supply.</param>
    /// <returns>Whether it has.</returns>
    public static bool Suits(this Cord cord, SupplyNode supply) =>
        cord.SuitsVoltage(supply.Source.VoltageV) && (!cord.IsThreePhase || supply.Phases == 3);

    /// <summary>Most current of a line of a cord, over normal use and the loss of each supply.</summary>
    /// <param name="cord">The cord.</param>
    /// <returns>The current, A; null where it hangs on no outlet.</returns>
    public static double? WorstA(this Cord cord) =>
        cord.Group is { Unit: var unit } ? cord.WorstVoltAmperes / unit.Supply.Source.VoltageV / (cord.IsThreePhase ? unit.Lines.Count : 1) : null;

    /// <summary>What a cord may carry, A: the lesser rating of its plug and the socket that it goes into.</summary>
    /// <param name="cord">The cord.</param>
    /// <param name="northAmerica">Whether the ratings of North America hold.</param>
    /// <returns>The rating; infinite for what is wired without plug and socket.</returns>
    public static double RatedA(this Cord cord, bool northAmerica) => Math.Min(
        PlugFit.RatedA(cord.Code, northAmerica),
        cord.Socket is { } socket ? PlugFit.RatedA(socket, northAmerica) : double.PositiveInfinity);

    /// <summary>The supplies that a unit lives by: its own, or those of the cords of the UPS that it hangs on.</summary>
    /// <param name="tree">The power tree.</param>
    /// <param name="unit">The unit.</param>
    /// <returns>The supplies.</returns>
    public static HashSet<SupplyNode> SuppliesOf(this PowerTree tree, PduNode unit)
    {
        var found = new HashSet<SupplyNode>();
        var seen = new HashSet<PduNode>();
        var open = new Stack<PduNode>([unit]);
        while (open.TryPop(out var next))
        {
            if (!seen.Add(next))
            {
                continue;
            }

            if (!next.IsBehindUps)
            {
                found.Add(next.Supply);
                continue;
            }

            foreach (var cord in tree.CordsOf(next.FedBy!.Item))
            {
                if (cord.Group is { } group)
                {
                    open.Push(group.Unit);
                }
            }
        }

        return found;
    }

    /// <summary>The plug made for a socket, of those that go in.</summary>
    /// <param name="socket">The socket.</param>
    /// <returns>The plug; null where the code is no socket.</returns>
    public static ConnectorCode? PlugFor(ConnectorCode socket)
    {
        ConnectorCode? found = null;
        foreach (var plug in Enum.GetValues<ConnectorCode>())
        {
            if (PlugFit.Fits(plug, socket) && (found is null || PlugFit.SocketFor(plug) == socket))
            {
                found = plug;
            }
        }

        return found;
    }
}
