using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>Excess lines of a basket: order units of which the completed rack uses no piece.</summary>
internal static class ExcessParts
{
    /// <summary>The reason where nothing more is to be said.</summary>
    public const string NotNeeded = "The rack does not need it.";

    /// <summary>The excess lines.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its completed racks.</param>
    /// <param name="cabinets">Cabinets that no rack uses, with the lines and quantities.</param>
    /// <returns>The lines, in request order.</returns>
    public static IReadOnlyList<ExcessLine> Of(BasketLines lines, BasketPlan plan, IEnumerable<(Product Product, int Line, int Spare)> cabinets)
    {
        var last = plan.Racks[^1].Trial;
        var spare = plan.Spare.Parts.ToDictionary(p => p.Product.PartNumber, p => p.OrderUnits, StringComparer.Ordinal);
        List<(int Index, ExcessLine Line)> excess = [.. cabinets.Select(c => Line(c.Line, c.Product, c.Spare))];

        // The pieces of the first line are used first.
        foreach (var (index, line) in lines.Request.Lines.Index().Reverse())
        {
            if (lines.ProductOf(line) is { } product && Math.Min(spare.GetValueOrDefault(product.PartNumber), line.Quantity) is > 0 and var units)
            {
                spare[product.PartNumber] -= units;
                excess.Add(Line(index, product, (int)units));
            }
        }

        return [.. excess.OrderBy(e => e.Index).Select(e => e.Line)];

        (int Index, ExcessLine Line) Line(int index, Product product, int quantity) => (index, new ExcessLine
        {
            Line = BasketLines.PointerOf(index),
            PartNumber = product.PartNumber,
            Quantity = quantity,
            Reason = ReasonOf(product, last.Offer.Product, last.Completed.RackBuild),
        });
    }

    private static string ReasonOf(Product product, Product cabinet, RackBuild build) => product.Kind switch
    {
        ProductKind.Cabinet => "The equipment does not need it.",
        ProductKind.Support => "No further item needs these rails and suits their load rating and length in this cabinet.",
        ProductKind.Door => $"The door does not fit {cabinet.Name}: the size differs, or a door is already fitted.",
        ProductKind.BlankingPanel => "No open front U positions are left to close.",
        ProductKind.Pdu => UnitReason(product, build),
        ProductKind.Cord when !MainsCords.IsFromOutlet(product.Cord!) =>
            "Equipment is fed from appliance outlets of PDUs; the plug of this cord fits another type of outlet.",
        ProductKind.Cord => "No further item has an inlet that this cord fits and an outlet within its length.",
        ProductKind.EarthLead => "No further item with an earth stud suits its length and cross-sectional area.",
        ProductKind.EarthBar => "The cabinet has an earth bar with enough terminals.",
        ProductKind.Fixings => FixingReason(product, build),
        ProductKind.AirConditioner => "The rack already has an air conditioner.",
        ProductKind.RoofFans => "The roof already has the maximum number of fans.",
        ProductKind.CableArm => "No further item is pulled out in use.",
        ProductKind.KvmLead => "No further host has a KVM port within the length of this lead.",
        ProductKind.Filter => "The air intake already has a filter mat.",
        _ => NotNeeded,
    };

    private static string UnitReason(Product unit, RackBuild build) =>
        build.Units.Count >= Outlets.MostUnits ? "The rack already has the maximum number of PDUs."
        : !SupplyChoice.IsForUps(unit) ? "Its plug fits none of the specified supplies."
        : build.HasGivenSupplies ? "It needs a UPS, but none is free, and its plug fits none of the specified supplies."
        : "It needs a UPS, but none is free.";

    private static string FixingReason(Product fixings, RackBuild build)
    {
        var used = build.Stock.All.Where(e => e.Product.Kind == ProductKind.Fixings && e.Used > 0).Select(e => e.Product.Fixing).ToArray();
        return used.Length == 0 ? "Nothing in the rack is left to fasten."
            : used.Contains(fixings.Fixing) ? "The other fixings in the basket are enough."
            : "The equipment on the uprights uses another type of fixing.";
    }
}
