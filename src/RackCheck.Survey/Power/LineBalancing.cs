namespace RackCheck.Survey.Power;

/// <summary>
/// Balances the lines of three-phase supplies: cords are moved or exchanged while that reduces the difference between the lines and no limit is
/// exceeded.
/// </summary>
internal sealed class LineBalancing(CordPlacement placement, FreeCords cords, OutletPool[] pools, CordLoads loads, SearchAllowance allowance)
{
    private const double CloseShare = 0.05;
    private const double LeastGain = 1e-6;

    public void Run(SupplyNode[] supplies)
    {
        foreach (var supply in supplies)
        {
            for (var round = 0; supply.Phases == 3 && round < cords.Count && !allowance.IsSpent && Improve(supply); round++)
            {
            }
        }
    }

    private bool Improve(SupplyNode supply)
    {
        var spread = Spread(supply, 0, 0, 0);
        var best = new Step(-1, -1, -1, spread - (LeastGain * Math.Max(1, spread)));
        for (var cord = 0; cord < cords.Count && !allowance.IsSpent; cord++)
        {
            allowance.Take(pools.Length + cords.Count - cord);
            if (LineOn(cord, supply) is not (>= 0 and var line))
            {
                continue;
            }

            best = BestMove(supply, cord, line, best);
            best = BestExchange(supply, cord, line, spread, best);
        }

        if (best.Cord < 0)
        {
            return false;
        }

        Take(best);
        return true;
    }

    private Step BestMove(SupplyNode supply, int cord, int line, Step best)
    {
        var load = AmperesOf(cord);
        for (var pool = 0; pool < pools.Length; pool++)
        {
            var to = loads.LineOn(supply, pools[pool].Path);
            if (to >= 0 && to != line && Spread(supply, line, to, load) < best.Spread && CanMove(cord, pool))
            {
                best = new Step(cord, pool, -1, Spread(supply, line, to, load));
            }
        }

        return best;
    }

    // Lines that are nearly balanced are left: the search costs more than it gains.
    private Step BestExchange(SupplyNode supply, int cord, int line, double spread, Step best)
    {
        var load = AmperesOf(cord);
        for (var other = cord + 1; other < cords.Count && spread > CloseShare * loads.LineA(supply, line); other++)
        {
            if (cords[other].Kind == cords[cord].Kind && LineOn(other, supply) is >= 0 and var to && to != line
                && Spread(supply, line, to, load - AmperesOf(other)) is var after && after < best.Spread && CanExchange(cord, other))
            {
                best = new Step(cord, placement.PoolOf(other), other, after);
            }
        }

        return best;
    }

    private void Take(Step step)
    {
        var from = placement.PoolOf(step.Cord);
        placement.TakeOut(step.Cord);
        if (step.Other >= 0)
        {
            placement.TakeOut(step.Other);
            placement.Put(step.Other, from);
        }

        placement.Put(step.Cord, step.Pool);
    }

    private bool CanMove(int cord, int to)
    {
        var from = placement.PoolOf(cord);
        placement.TakeOut(cord);
        var can = IsAsGood(cord, from, to);
        placement.Put(cord, from);
        return can;
    }

    private bool CanExchange(int cord, int other)
    {
        var (from, to) = (placement.PoolOf(cord), placement.PoolOf(other));
        placement.TakeOut(cord);
        placement.TakeOut(other);
        var can = IsAsGood(other, to, from);
        if (can)
        {
            placement.Put(other, from);
            can = IsAsGood(cord, from, to);
            placement.TakeOut(other);
        }

        placement.Put(cord, from);
        placement.Put(other, to);
        return can;
    }

    // A move must not use a socket that more other plugs fit, change whether the outlet is switched, or exceed a limit.
    private bool IsAsGood(int cord, int from, int to) =>
        pools[to].OtherPlugs <= pools[from].OtherPlugs && pools[to].Switched == pools[from].Switched && placement.CanPut(cord, to, CordLimits.DesignShare);

    private double AmperesOf(int cord) => cords[cord].Demand.VoltAmperes * pools[placement.PoolOf(cord)].Path.PerVolt;

    // The line of a supply that a cord loads, 0 to 2; -1 if it loads another supply, all lines, or none.
    private int LineOn(int cord, SupplyNode supply) =>
        placement.PoolOf(cord) is >= 0 and var pool && cords[cord].Demand.Lines == 1 ? loads.LineOn(supply, pools[pool].Path) : -1;

    // Difference between the highest and the lowest line load of a supply after a load moves from one line to another.
    private double Spread(SupplyNode supply, int from, int to, double load)
    {
        Span<double> lines = [loads.LineA(supply, 0), loads.LineA(supply, 1), loads.LineA(supply, 2)];
        lines[from] -= load;
        lines[to] += load;
        return Math.Max(lines[0], Math.Max(lines[1], lines[2])) - Math.Min(lines[0], Math.Min(lines[1], lines[2]));
    }

    /// <summary>A move of a cord to a pool, or its exchange with another cord there, and the difference between the lines after it.</summary>
    private readonly record struct Step(int Cord, int Pool, int Other, double Spread);
}
