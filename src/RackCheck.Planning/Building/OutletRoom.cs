using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>What a PDU has left for further cords: its outlets, and its power in all, on each phase and in each group with a breaker.</summary>
internal sealed class OutletRoom
{
    private readonly List<(int Group, ConnectorCode Socket)> kinds = [];
    private readonly List<int> left = [];
    private readonly double[] groupVa;
    private readonly int[] phaseOf;
    private readonly double[] phaseVa = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity];
    private double unitVa;

    /// <summary>An empty PDU.</summary>
    /// <param name="unit">The PDU, with its outlets.</param>
    /// <param name="supply">Its supply.</param>
    /// <param name="share">Share of its rating and of that of its breakers that may be used.</param>
    public OutletRoom(PduFacts unit, Supply supply, double share)
    {
        var groups = unit.Groups!;
        var lineVa = share * (unit.RatedA ?? double.PositiveInfinity) * supply.VoltageV;
        unitVa = (supply.Phases == 3 ? 3 : 1) * lineVa;
        groupVa = [.. groups.Select(g => g.BreakerA is { } breaker ? share * breaker * supply.VoltageV : double.PositiveInfinity)];

        // Where an outlet is between two phases, its current counts on both: the sum of all is the bound then.
        phaseOf = [.. groups.Select(g => supply.Phases != 3 ? -1 : g.Phase switch { Phase.L1 => 0, Phase.L2 => 1, Phase.L3 => 2, _ => -1 })];
        if (Array.TrueForAll(phaseOf, p => p >= 0))
        {
            Array.Fill(phaseVa, lineVa);
        }

        foreach (var (index, group) in groups.Index())
        {
            foreach (var alike in group.Outlets.GroupBy(o => o.Socket))
            {
                kinds.Add((index, alike.Key));
                left.Add(alike.Sum(o => o.Count));
            }
        }
    }

    /// <summary>
    /// Puts a cord into an outlet that it fits and that nothing else needs, on the phase and in the group with the most power left.
    /// </summary>
    /// <param name="cord">The cord.</param>
    /// <param name="voltAmperes">The load that counts, VA.</param>
    /// <param name="isHeeded">Whether it has to have the power for it.</param>
    /// <returns>Whether there was an outlet.</returns>
    public bool Take(Cord cord, double voltAmperes, bool isHeeded)
    {
        var at = -1;
        for (var i = 0; i < kinds.Count; i++)
        {
            if (left[i] > 0 && PlugFit.Fits(cord.Code, kinds[i].Socket) && (!isHeeded || voltAmperes <= RoomIn(i, cord)) && (at < 0 || IsBetter(i, at, cord)))
            {
                at = i;
            }
        }

        if (at < 0)
        {
            return false;
        }

        left[at]--;
        unitVa -= voltAmperes;
        groupVa[kinds[at].Group] -= voltAmperes;
        if (!cord.IsThreePhase && phaseOf[kinds[at].Group] is >= 0 and var phase)
        {
            phaseVa[phase] -= voltAmperes;
        }

        return true;
    }

    private bool IsBetter(int one, int other, Cord cord)
    {
        var (first, second) = (kinds[one].Socket, kinds[other].Socket);
        var order = PlugFit.Of(first).Takes.Length.CompareTo(PlugFit.Of(second).Takes.Length);
        order = order != 0 ? order : first.CompareTo(second);
        return order < 0 || (order == 0 && RoomIn(one, cord) > RoomIn(other, cord));
    }

    private double RoomIn(int kind, Cord cord)
    {
        var group = kinds[kind].Group;
        var inGroup = Math.Min(unitVa, groupVa[group]);
        return !cord.IsThreePhase && phaseOf[group] is >= 0 and var phase ? Math.Min(inGroup, phaseVa[phase]) : inGroup;
    }
}
