using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Which of several PDUs that take the same cords is chosen.</summary>
internal static class PduRank
{
    /// <summary>
    /// The rank of a PDU, the lowest first: where the lowest cost is preferred the cheapest; then one that does not trip on inrush, that suits the cabinet and
    /// that demands least of the supply; then one that the supplier prefers, and the cheapest, which is no larger than needed.
    /// </summary>
    /// <param name="context">What building a rack needs.</param>
    /// <param name="build">The rack.</param>
    /// <param name="product">The PDU.</param>
    /// <param name="supply">Its supply.</param>
    /// <param name="cords">The cords on one of it.</param>
    /// <param name="count">Number of PDUs.</param>
    public static (double Cost, bool Trips, int Phases, bool IsUnsuited, double RatedA, bool IsSwitchedInVain, bool IsPassedOver, double Price, int Outlets) Of(
        BasketContext context, RackBuild build, Product product, Supply supply, IReadOnlyCollection<Cord> cords, int count = 1)
    {
        var unit = product.Pdu!;
        return (
            context.SeeksLowestCost ? count * product.Price ?? double.PositiveInfinity : 0,
            OutletNeeds.MayTrip(unit, supply, cords),
            supply.Phases ?? 1,
            IsUnsuited(context, build, unit),
            unit.RatedA ?? 0,
            unit.RemoteSwitched == true && !cords.Any(context.WantsSwitchedOutlet),
            !context.SeeksLowestCost && product.Preferred != true,
            context.HasPduPrices ? product.Price!.Value : 0,
            SupplyChoice.CountOf(unit));
    }

    /// <summary>
    /// Whether a PDU is vertical, and the cabinet has no channel beside the panels that is wide enough for it; or it takes a U position that is to stay free.
    /// </summary>
    /// <param name="context">What building a rack needs.</param>
    /// <param name="build">The rack.</param>
    /// <param name="unit">The PDU.</param>
    public static bool IsUnsuited(BasketContext context, RackBuild build, PduFacts unit) =>
        Allowances.SideChannelMm(build.Cabinet.WidthMm!.Value) < Allowances.VerticalPduWidthMm
            ? unit.Mounting == PduMounting.Vertical
            : context.KeepsHeightFree && unit.Mounting != PduMounting.Vertical;
}
