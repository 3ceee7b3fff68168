using RackCheck.Model;

namespace RackCheck.Planning.Proposals;

/// <summary>Parts that may remove heat from a cabinet, in the order in which they are tried: perforated doors, fan trays, air conditioners.</summary>
internal static class CoolingOptions
{
    /// <summary>The sets of parts to try, each product with the same data once. Roof fans are part of every rack that they help.</summary>
    public static IEnumerable<IReadOnlyList<Product>> Of(ProposalTask task, CabinetOffer offer, IReadOnlyList<Product> fixedParts)
    {
        Product[] doors =
        [
            .. task.Context.Offered(ProductKind.Door)
                .Where(p => p.Door is { } d && d.Door.Style == DoorStyle.Perforated && d.WidthMm == offer.WidthMm && d.HeightU == offer.HeightU
                    && (d.Face == Face.Front ? offer.Product.Cabinet!.FrontDoor : offer.Product.Cabinet!.RearDoor)?.Style is not DoorStyle.Perforated)
                .DistinctBy(p => p.Door!.Face),
        ];
        // A perforated door is open to dust and water.
        if (doors.Length > 0 && task.Request.Site?.RequiredIp is null)
        {
            yield return [.. fixedParts, .. doors];
        }

        foreach (var tray in task.Context.Offered(ProductKind.FanTray).DistinctBy(p => (p.Fans, p.Item?.HeightU)))
        {
            yield return [.. fixedParts, tray];
        }

        foreach (var cooler in task.Context.Offered(ProductKind.AirConditioner).DistinctBy(p => p.AirConditioner).OrderBy(p => p.AirConditioner!.CapacityW))
        {
            yield return [.. fixedParts, cooler];
        }
    }
}
