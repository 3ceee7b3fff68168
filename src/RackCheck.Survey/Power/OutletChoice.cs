namespace RackCheck.Survey.Power;

/// <summary>
/// Selects the best outlet for a cord: the one with the lowest load on its breaker and lines. Sockets that other plugs also fit,
/// and switched outlets that other items need, are last.
/// </summary>
internal sealed class OutletChoice(CordPlacement placement, FreeCords cords, OutletPool[] pools, CordLoads loads, SearchAllowance allowance)
{
    // A load share is rarely above 1, so these weights outweigh it.
    private const double OtherPlugScore = 10;
    private const double MissingSwitchScore = 5;
    private const double UnneededSwitchScore = 0.001;
    private const double Rounding = 1 - 1e-12;

    private readonly bool anySwitched = Array.Exists(pools, p => p.Switched);

    /// <summary>The best pool for a cord; -1 if none suits.</summary>
    public int Best(int cord, CordLimits limits)
    {
        var best = -1;
        var least = double.PositiveInfinity;
        allowance.Take(pools.Length);
        for (var pool = 0; pool < pools.Length; pool++)
        {
            if (placement.CanPut(cord, pool, limits) && Score(cord, pool) is var score && score < least * Rounding)
            {
                (best, least) = (pool, score);
            }
        }

        return best;
    }

    /// <summary>Penalty of a pool for a cord; the lowest is best.</summary>
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
