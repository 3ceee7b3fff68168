using RackCheck.Model;

namespace RackCheck.Survey.Power;

/// <summary>Facts about a cord and its possible outlets, for rules and remedies.</summary>
public static class CordFacts
{
    /// <summary>Minimum share of the mains voltage that suits an item: 208, 230 and 240 V are interchangeable, 120 V and 230 V are not.</summary>
    public const double LeastVoltageShare = 0.8;

    /// <summary>Maximum share of the mains voltage that suits an item.</summary>
    public const double MostVoltageShare = 1.25;

    /// <summary>Whether a voltage suits the item of a cord; any voltage does if that of the item is missing.</summary>
    /// <param name="voltageV">The voltage of an outlet, V.</param>
    public static bool SuitsVoltage(this Cord cord, double voltageV) =>
        cord.Item.Item!.Power!.VoltageV is not { } own || (own >= LeastVoltageShare * voltageV && own <= MostVoltageShare * voltageV);

    /// <summary>Whether a supply has the voltage and the phases that a cord needs.</summary>
    public static bool Suits(this Cord cord, SupplyNode supply) =>
        cord.SuitsVoltage(supply.Source.VoltageV) && (!cord.IsThreePhase || supply.Phases == 3);

    /// <summary>Maximum line current of a cord, over normal use and the loss of each supply.</summary>
    /// <returns>The current, A; null if the cord has no outlet.</returns>
    public static double? WorstA(this Cord cord) =>
        cord.Group is { Unit: var unit } ? cord.WorstVoltAmperes / unit.Supply.Source.VoltageV / (cord.IsThreePhase ? unit.Lines.Count : 1) : null;

    /// <summary>Permitted current of a cord, A: the lower rating of its plug and its socket.</summary>
    /// <param name="northAmerica">Whether North American ratings apply.</param>
    /// <returns>The rating; infinite for hard-wired equipment.</returns>
    public static double RatedA(this Cord cord, bool northAmerica) => Math.Min(
        PlugFit.RatedA(cord.Code, northAmerica),
        cord.Socket is { } socket ? PlugFit.RatedA(socket, northAmerica) : double.PositiveInfinity);

    /// <summary>The supplies that feed a PDU: its own, or those of the cords of the UPS that feeds it.</summary>
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

    /// <summary>The plug that belongs to a socket.</summary>
    /// <returns>The plug; null if the code is not a socket.</returns>
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
