using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>What is too many in a basket: order units of which the completed rack uses no piece.</summary>
internal static class ExcessParts
{
    /// <summary>The lines with too much on them.</summary>
    /// <param name="request">The basket.</param>
    /// <param name="products">The products that are known, by part number.</param>
    /// <param name="completed">The completed basket.</param>
    /// <param name="cabinet">The cabinet of the rack.</param>
    /// <returns>The lines, in the order of the request.</returns>
    public static IReadOnlyList<ExcessLine> Of(BasketRequest request, IReadOnlyDictionary<string, Product> products, Completed completed, Product cabinet)
    {
        var spare = completed.Bay.Stock.All.ToDictionary(e => e.Product.PartNumber, e => e.SpareUnits, StringComparer.Ordinal);
        List<ExcessLine> excess = [];

        // The pieces of the first line are used first.
        for (var i = request.Lines.Count - 1; i >= 0; i--)
        {
            var line = request.Lines[i];
            if (products.TryGetValue(line.PartNumber, out var product) && Math.Min(spare[line.PartNumber], line.Quantity) is > 0 and var units)
            {
                spare[line.PartNumber] -= units;
                excess.Add(new ExcessLine { Line = LineMap.PointerOf(i), PartNumber = line.PartNumber, Quantity = (int)units, Reason = ReasonOf(product, cabinet, completed.Bay) });
            }
        }

        excess.Reverse();
        return excess;
    }

    private static string ReasonOf(Product product, Product cabinet, Bay bay) => product.Kind switch
    {
        ProductKind.Cabinet => $"A basket makes one rack, and its cabinet is {cabinet.PartNumber}: order further cabinets in baskets of their own.",
        ProductKind.Support => "No item is left that needs these rails and that they carry between the uprights of this cabinet.",
        ProductKind.Door => $"The cabinet {cabinet.PartNumber} has no place for this door: it is of another size, or there is one already.",
        ProductKind.BlankingPanel => "No open front units are left for them.",
        ProductKind.Pdu => UnitReason(product, bay),
        ProductKind.Cord when !MainsCords.IsFromOutlet(product.Cord!) => "Equipment hangs on the appliance outlets of PDUs; the plug of this cord goes into another sort of outlet.",
        ProductKind.Cord => "No item is left whose inlet it fits and whose outlet it reaches.",
        ProductKind.EarthLead => "No item with a stud is left that it is long and thick enough for.",
        ProductKind.EarthBar => "The cabinet has an earth bar with enough terminals.",
        ProductKind.Fixings => FixingReason(product, bay),
        ProductKind.AirConditioner => "The rack has a cooler already.",
        ProductKind.RoofFans => "The roof has as many fans as it may.",
        _ => "The rack has no use for it.",
    };

    private static string UnitReason(Product unit, Bay bay) =>
        bay.Units.Count >= Outlets.MostUnits ? "There are as many PDUs as a rack may have."
        : !SupplyChoice.IsForUps(unit) ? "Its plug goes into no supply that is given."
        : bay.HasGivenSupplies ? "It hangs behind a UPS: no UPS is free for it, and its plug goes into no supply that is given."
        : "It hangs behind a UPS, and no UPS is free for it.";

    private static string FixingReason(Product fixings, Bay bay)
    {
        var used = bay.Stock.All.Where(e => e.Product.Kind == ProductKind.Fixings && e.Used > 0).Select(e => e.Product.Fixing).ToArray();
        return used.Length == 0 ? "Nothing in the rack is left to fasten with them."
            : used.Contains(fixings.Fixing) ? "The others in the basket are enough."
            : "What hangs on the uprights is fastened with another sort.";
    }
}
