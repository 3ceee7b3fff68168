using RackCheck.Model;

namespace RackCheck.Planning.Proposals;

/// <summary>The quantities of a proposal with their bounds.</summary>
internal static class Objectives
{
    // Sums of the same terms in another order differ in their last digits.
    private const double RoundingMm = 1e-6;

    /// <summary>The objective of a rack.</summary>
    /// <param name="chosen">Its cabinet.</param>
    /// <param name="high">All allowed cabinets that are high enough for the equipment alone.</param>
    /// <param name="space">The space of the rack.</param>
    /// <param name="itemsU">Height of the equipment of the request alone, U.</param>
    /// <param name="prefer">What the cabinet has to be smallest in.</param>
    public static IReadOnlyList<ObjectiveValue> Of(
        CabinetOffer chosen, IReadOnlyList<CabinetOffer> high, ProposalSpace space, int itemsU, CabinetPreference prefer)
    {
        List<ObjectiveValue> all = [Value(ObjectiveName.Cabinets, 1, 1)];
        if (prefer == CabinetPreference.SmallestFootprint)
        {
            // Depth and width count together, as their product.
            var least = high.MinBy(c => c.WidthMm * c.DepthMm)!;
            var isLeast = chosen.WidthMm * chosen.DepthMm <= least.WidthMm * least.DepthMm;
            var best = isLeast ? chosen : least;
            all.Add(Value(ObjectiveName.Depth, chosen.DepthMm, best.DepthMm) with { Proven = isLeast });
            all.Add(Value(ObjectiveName.Width, chosen.WidthMm, best.WidthMm) with { Proven = isLeast });
            var alike = high.Where(c => c.DepthMm == chosen.DepthMm && c.WidthMm == chosen.WidthMm);
            all.Add(Value(ObjectiveName.Height, chosen.HeightU, alike.Min(c => c.HeightU)));
        }
        else
        {
            all.Add(Value(ObjectiveName.Height, chosen.HeightU, high.Min(c => c.HeightU)));
            CabinetOffer[] alike = [.. high.Where(c => c.HeightU == chosen.HeightU)];
            all.Add(Value(ObjectiveName.Depth, chosen.DepthMm, alike.Min(c => c.DepthMm)));
            all.Add(Value(ObjectiveName.Width, chosen.WidthMm, alike.Where(c => c.DepthMm == chosen.DepthMm).Min(c => c.WidthMm)));
        }

        if (space.CentreMm is { } centre)
        {
            all.Add(Value(ObjectiveName.CentreOfGravity, centre, Math.Min(centre, space.LeastCentreMm)) with
            {
                Proven = centre <= space.LeastCentreMm + RoundingMm,
            });
        }

        all.Add(Value(ObjectiveName.FreeU, chosen.HeightU - space.UsedU, chosen.HeightU - itemsU));
        return all;
    }

    private static ObjectiveValue Value(ObjectiveName name, double value, double bound) => new()
    {
        Name = name,
        Value = Math.Round(value, 3),
        Bound = Math.Round(bound, 3),
        Proven = value == bound,
    };
}
