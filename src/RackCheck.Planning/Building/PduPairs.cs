using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>
/// Chooses the PDUs of a rack with dual-corded equipment: the same ones on both sides, so that either side carries everything alone and cords are shared
/// evenly.
/// </summary>
internal static class PduPairs
{
    // On each side.
    private const int MostPdus = 4;

    /// <summary>Chooses the PDUs.</summary>
    /// <param name="context">What building a rack needs.</param>
    /// <param name="build">The rack.</param>
    /// <param name="left">The cords without an outlet.</param>
    /// <returns>
    /// The PDU and how many of it for both sides together; null if the rack has PDUs already, no item has a cord for each side, outlets have to be remotely
    /// switched, which few have, or no PDU takes all cords.
    /// </returns>
    public static (Product Product, int Count)? Choose(BasketContext context, RackBuild build, IReadOnlyList<Cord> left)
    {
        if (build.Units.Count > 0 || context.Rules.IsOff<Rules.Power.Redundancy>() || left.Any(context.WantsSwitchedOutlet)
            || !left.Any(c => IsDual(c)))
        {
            return null;
        }

        var sides = SidesOf(left);
        var choices = context.Offered(ProductKind.Pdu)
            .Where(p => p.Pdu?.Groups is not null && !SupplyChoice.IsForUps(p))
            .Where(p => build.HasGivenSupplies || SupplyChoice.SuitsRegion(build.Region, p.Pdu!))
            .Select(p => (Product: p, Supply: SupplyChoice.For(build, p.Pdu!, new Dictionary<string, int>(StringComparer.Ordinal))))
            .Where(c => c.Supply is not null)
            .Select(c => (c.Product, Supply: c.Supply!, Count: LeastOf(context, build, c.Product.Pdu!, c.Supply!, sides)))
            .Where(c => c.Count is not null)
            .OrderBy(c => context.SeeksLowestCost ? 0 : c.Count)
            .ThenBy(c => sides.Max(s => PduRank.Of(context, build, c.Product, c.Supply, SharesOf(s, c.Count!.Value)[0], c.Count.Value)))
            .ToArray();
        if (choices is not [var best, ..])
        {
            return null;
        }

        // Where not all of them find a U position, vertical ones.
        var pdus = 2 * best.Count!.Value;
        if (PduSets.IsHorizontal(best.Product) && Outlets.FreePlaces(build, pdus) < pdus)
        {
            best = choices.FirstOrDefault(c => !PduSets.IsHorizontal(c.Product), best);
        }

        return (best.Product, 2 * best.Count!.Value);
    }

    private static bool IsDual(Cord cord) => cord is { IsRedundant: true, Siblings: > 1 };

    // Dual-corded items have every other cord on either side; the others go to the side with the lower load, the greatest first.
    private static Cord[][] SidesOf(IReadOnlyList<Cord> left)
    {
        List<Cord>[] sides = [[.. left.Where(c => IsDual(c) && c.Plug % 2 == 0)], [.. left.Where(c => IsDual(c) && c.Plug % 2 == 1)]];
        double[] loads = [.. sides.Select(s => s.Sum(c => c.VoltAmperes))];
        foreach (var cord in left.Where(c => !IsDual(c)).OrderByDescending(c => c.VoltAmperes))
        {
            var side = loads[0] <= loads[1] ? 0 : 1;
            sides[side].Add(cord);
            loads[side] += cord.VoltAmperes;
        }

        return [.. sides.Select(s => s.OrderByDescending(c => c.VoltAmperes).ToArray())];
    }

    // The cords of a side in turn on its PDUs.
    private static Cord[][] SharesOf(Cord[] side, int count) =>
        [.. Enumerable.Range(0, count).Select(k => side.Where((_, i) => i % count == k).ToArray())];

    private static int? LeastOf(BasketContext context, RackBuild build, PduFacts unit, Supply supply, Cord[][] sides)
    {
        // Given supplies are shared by several PDUs as far as they carry the side.
        var ofSide = build.HasGivenSupplies ? build.Supplies.Count(s => SupplyChoice.Takes(s, unit)) / 2 : MostPdus;
        var most = ofSide == 0 || Array.Exists(sides, s => IsOver(s, ofSide)) ? ofSide : MostPdus;
        var leakageMa = OutletNeeds.MostLeakageMa(context, build, unit);
        return Enumerable.Range(1, Math.Min(most, MostPdus)).Cast<int?>().FirstOrDefault(count =>
            Array.TrueForAll(sides, side => Array.TrueForAll(SharesOf(side, count!.Value), share =>
                TakesAll(share, c => c.VoltAmperes, context.Limits.PduDesignShare, leakageMa)
                && TakesAll(share, LoadAlone, ShareAlone(context, build), double.PositiveInfinity))));

        bool IsOver(Cord[] side, int supplies)
        {
            var ratedVa = supplies * (supply.Phases == 3 ? 3 : 1) * supply.RatedA * supply.VoltageV;
            return side.Sum(c => c.VoltAmperes) > context.Limits.PduDesignShare * ratedVa || side.Sum(LoadAlone) > ShareAlone(context, build) * ratedVa;
        }

        bool TakesAll(Cord[] share, Func<Cord, double> load, double ofRating, double most) =>
            OutletNeeds.Take(unit, supply, share.Select(c => (c, load(c))), ofRating, most).Length == share.Length;
    }

    /// <summary>Share of its rating that a PDU may carry with a supply lost: all of it, in North America what a breaker may carry for long.</summary>
    public static double ShareAlone(BasketContext context, RackBuild build) => build.Region == Region.Na ? context.Limits.PduDesignShare : 1;

    /// <summary>What a cord carries while the other side is lost, VA.</summary>
    public static double LoadAlone(Cord cord) =>
        IsDual(cord) ? cord.VoltAmperes * cord.Siblings / (cord.Plug % 2 == 0 ? (cord.Siblings + 1) / 2 : cord.Siblings / 2) : cord.VoltAmperes;
}
