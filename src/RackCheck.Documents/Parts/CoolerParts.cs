using RackCheck.Model;
using RackCheck.Model.Converters;
using static System.FormattableString;

namespace RackCheck.Documents.Parts;

/// <summary>The air conditioner: a main piece, which the list of small parts leaves out and names.</summary>
internal static class CoolerParts
{
    /// <summary>Style and capacity, as "wall, 1000 W".</summary>
    public static string TextOf(AirConditioner cooler)
    {
        var style = cooler.Style is { } known ? NamedEnumConverter<AirConditionerStyle>.Name(known) : "style not given";
        return Invariant($"{style}, {cooler.CapacityW:0.###} W");
    }

    /// <summary>The product on offer that an air conditioner is; null if there is none.</summary>
    /// <param name="cooler">The air conditioner of the description.</param>
    /// <param name="offered">Air conditioners on offer, the preferred first.</param>
    public static Product? ProductOf(AirConditioner cooler, IEnumerable<Product> offered)
    {
        // Feed and setpoint are choices of the rack; the rest is the product.
        var bare = cooler with { Supply = null, SetpointC = null };
        return offered.FirstOrDefault(p => p.AirConditioner is { } own && (own with { Supply = null, SetpointC = null }) == bare);
    }

    /// <summary>Notes that the air conditioner is not in the list.</summary>
    public static void Note(PartsContext context)
    {
        if (context.Rack.Cooling?.AirConditioner is { } cooler)
        {
            var part = ProductOf(cooler, context.Offered(ProductKind.AirConditioner)) is { } product ? $", part number {product.PartNumber}" : "";
            context.Notes.Add($"The air conditioner ({TextOf(cooler)}{part}) is a main piece and not in this list. Fixings, seals and cord: by its maker.");
        }
    }
}
