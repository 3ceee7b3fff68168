namespace RackCheck.Survey.Power;

/// <summary>
/// Which of the outlets that a cord can go into is best: the one whose breaker and lines are then least loaded. Sockets that other plugs fit
/// too, and switched outlets that other items need, come last.
/// </summary>
internal sealed class OutletChoice(CordPlacement placement, FreeCords cords, OutletPool[] pools, CordLoads loads)
{
    // A share of load is seldom above 1, so that these outweigh it.
    private const double OtherPlugScore = 10;
    private const double MissingSwitchScore = 5;
    private const double UnneededSwitchScore = 0.001;
    private const double Rounding = 1 - 1e-12;

    private readonly bool anySwitched = Array.Exists(pools, p => p.Switched);

    /// <summary>The best pool for a cord; -1 where it can go into none.</summary>
    public int Best(int cord, CordLimits limits)
    {
        var best = -1;
        var least = double.PositiveInfinity;
        for (var pool = 0; pool < pools.Length; pool++)
        {
            if (placement.CanPut(cord, pool, limits) && Score(cord, pool) is var score && score < least * Rounding)
            {
                (best, least) = (pool, score);
            }
        }

        return best;
    }

    /// <summary>How little a pool suits a cord; the least is best.</summary>
    public double Score(int cord, int pool)
    {
        var to = pools[pool];
        ref readonly var what = ref cords[cord];
        return loads.SharesWith(to.Path, what.Demand) + (OtherPlugScore * to.OtherPlugs) + (anySwitched ? SwitchScore(what.Source, to) : 0) + 1;
    }

    private static double SwitchScore(Cord cord, OutletPool to) => (cord.NeedsSwitchedOutlet, to.Switched) switch
    {
        (true, false) => MissingSwitchScore,
        (false, true) => UnneededSwitchScore,
        _ => 0,
    };
}
