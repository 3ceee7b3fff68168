using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Which of several PDUs that take the same cords is chosen.</summary>
internal static class PduRank
{
    /// <summary>
    /// The rank of a PDU, the lowest first: where the lowest cost is preferred the cheapest; then one that does not trip on inrush, that suits the cabinet and
    /// that demands least of the supply.
    /// </summary>
    /// <param name="context">What building a rack needs.</param>
    /// <param name="build">The rack.</param>
    /// <param name="product">The PDU.</param>
    /// <param name="supply">Its supply.</param>
    /// <param name="cords">The cords on one of it.</param>
    /// <param name="count">Number of PDUs.</param>
    public static (double Cost, bool Trips, int Phases, bool IsUnsuited, double RatedA, bool IsSwitchedInVain, int Outlets) Of(
        BasketContext context, RackBuild build, Product product, Supply supply, IReadOnlyCollection<Cord> cords, int count = 1)
    {
        var unit = product.Pdu!;
        var prefersVertical = Allowances.SideChannelMm(build.Cabinet.WidthMm!.Value) >= Allowances.VerticalPduWidthMm;
        return (
            context.SeeksLowestCost ? count * product.Price ?? double.PositiveInfinity : 0,
            OutletNeeds.MayTrip(unit, supply, cords),
            supply.Phases ?? 1,
            unit.Mounting == PduMounting.Vertical != prefersVertical,
            unit.RatedA ?? 0,
            unit.RemoteSwitched == true && !cords.Any(context.WantsSwitchedOutlet),
            SupplyChoice.CountOf(unit));
    }
}
