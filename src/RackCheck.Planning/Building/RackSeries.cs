using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>How far a rack is built.</summary>
internal enum Extent
{
    /// <summary>Shelves, rails, positions, KVM switch and roof fans.</summary>
    Mounted,

    /// <summary>PDUs and their supplies too.</summary>
    Wired,

    /// <summary>Everything: earth leads, cords, panels, fixings and accessories too.</summary>
    Dressed,
}

/// <summary>
/// Builds a rack again and again while parts are added to its stock. Parts of a stage change nothing of the stages before, which are copied from the last rack.
/// </summary>
/// <param name="context">The basket.</param>
/// <param name="cabinet">The cabinet, which every stock contains.</param>
internal sealed class RackSeries(BasketContext context, Product cabinet)
{
    private RackBuild? mounted;
    private RackBuild? wired;
    private bool isGivenUp;

    /// <summary>Builds the rack from another stock.</summary>
    /// <param name="stock">The stock, nothing of which is used.</param>
    /// <param name="extent">How far the rack is built.</param>
    /// <param name="isWhole">Whether the rack is built to its extent even if it lacks parts of a stage before.</param>
    /// <returns>The rack. Where it lacks parts that others depend on, it ends there, unless it is to be whole.</returns>
    public RackBuild Build(Stock stock, Extent extent, bool isWhole = false)
    {
        if (mounted is null || isWhole || !HasSame(stock, mounted.Stock, Extent.Mounted))
        {
            (mounted, wired) = (RackAssembler.Mount(context, stock, cabinet, isWhole), null);
        }

        if (extent == Extent.Mounted || (mounted.MissingPieces.Count > 0 && !isWhole))
        {
            return mounted;
        }

        if (wired is null || isGivenUp != context.OutletsGivenUp || !HasSame(stock, wired.Stock, Extent.Wired))
        {
            (wired, isGivenUp) = (mounted.CopyWith(stock), context.OutletsGivenUp);
            Outlets.Connect(context, wired);
        }

        if (extent == Extent.Wired)
        {
            return wired;
        }

        var dressed = wired.CopyWith(stock);
        RackAssembler.Dress(context, dressed);
        return dressed;
    }

    // Whether two stocks have the same parts of those that decide on a rack up to an extent.
    private static bool HasSame(Stock one, Stock other, Extent extent)
    {
        static IEnumerable<(string PartNumber, long OrderUnits)> Of(Stock stock, Extent extent) =>
            stock.All.Where(e => FirstUseOf(e.Product) <= extent).Select(e => (e.Product.PartNumber, e.OrderUnits));
        return Of(one, extent).SequenceEqual(Of(other, extent));
    }

    // Cords with another plug than that of the inlet decide on outlets; all others are chosen by them.
    private static Extent FirstUseOf(Product product) => product switch
    {
        { Kind: ProductKind.Pdu } => Extent.Wired,
        { Cord: { } cord } => MainsCords.IsFromOutlet(cord) ? Extent.Dressed : Extent.Wired,
        { Kind: ProductKind.EarthBar or ProductKind.EarthLead or ProductKind.BlankingPanel or ProductKind.Fixings
            or ProductKind.CableArm or ProductKind.KvmLead or ProductKind.Filter } => Extent.Dressed,
        _ => Extent.Mounted,
    };
}
