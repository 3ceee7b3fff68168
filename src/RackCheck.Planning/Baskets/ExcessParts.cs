using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Baskets;

/// <summary>Excess lines of a basket: order units of which the completed rack uses no piece.</summary>
internal static class ExcessParts
{
    /// <summary>The excess lines.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its completed racks.</param>
    /// <param name="cabinets">Cabinets that no rack uses, with the lines and quantities.</param>
    /// <returns>The lines, in request order.</returns>
    public static IReadOnlyList<Surplus> Of(BasketLines lines, BasketPlan plan, IEnumerable<(Product Product, int Line, int Spare)> cabinets)
    {
        var last = plan.Racks[^1].Trial;
        var spare = plan.Spare.Parts.ToDictionary(p => p.Product.PartNumber, p => p.OrderUnits, StringComparer.Ordinal);
        List<(int Index, Surplus Line)> excess = [.. cabinets.Select(c => Line(c.Line, c.Product, c.Spare))];

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

        (int Index, Surplus Line) Line(int index, Product product, int quantity) => (
            index,
            new Surplus(
                BasketLines.PointerOf(index), product.PartNumber, quantity, ReasonOf(product, last.Offer.Product, last.Completed.RackBuild)));
    }

    private static WordedText ReasonOf(Product product, Product cabinet, RackBuild build) => product.Kind switch
    {
        ProductKind.Support => ExcessWordings.Rails,
        ProductKind.Door => new WordedText(DoorReason(product.Door!, build), ("cabinet", cabinet.Name)),
        ProductKind.BlankingPanel => ExcessWordings.Panels,
        ProductKind.Pdu => UnitReason(product, build),
        ProductKind.Cord when !PlugFit.IsInlet(product.Cord!.Plug) =>
            ExcessWordings.OutletCords,
        ProductKind.Cord => ExcessWordings.Cords,
        ProductKind.EarthLead => ExcessWordings.EarthLeads,
        ProductKind.EarthBar => product.EarthBar?.Terminals < build.Cabinet.EarthBar?.Terminals ? ExcessWordings.SmallEarthBar : ExcessWordings.EarthBars,
        ProductKind.Fixings => FixingReason(product, build),
        ProductKind.AirConditioner => build.Cooling?.AirConditioner is not { } fitted ? ExcessWordings.NoCoolerNeeded
            : product.AirConditioner!.CapacityW < fitted.CapacityW ? ExcessWordings.SmallAirConditioner : ExcessWordings.AirConditioners,
        ProductKind.RoofFans => ExcessWordings.RoofFans,
        ProductKind.CableArm => ExcessWordings.CableArms,
        ProductKind.KvmLead => ExcessWordings.KvmLeads,
        ProductKind.Filter => ExcessWordings.Filters,

        // A cabinet. Equipment, shelves and fan trays are items of a rack, all of them.
        _ => ExcessWordings.CabinetSpare,
    };

    private static MessageWording DoorReason(ProductDoor door, RackBuild build) =>
        door.WidthMm != build.Cabinet.WidthMm || door.HeightU != build.Cabinet.HeightU ? ExcessWordings.Door
        : build.CabinetParts.ContainsKey(CabinetFitting.PointerOf(door)) ? ExcessWordings.SecondDoor
        : ExcessWordings.UnsoundDoor;

    private static WordedText UnitReason(Product unit, RackBuild build) =>
        build.Units.Count >= Outlets.MostUnits ? ExcessWordings.TooManyPdus
        : HasSource(unit.Pdu!, SupplyChoice.IsForUps(unit), build) ? ExcessWordings.NoPduPlace
        : !SupplyChoice.IsForUps(unit) ? (build.HasGivenSupplies ? ExcessWordings.PlugFitsNoSupply : ExcessWordings.PlugOfOtherRegion)
        : !build.Items.Any(i => i.Item.Ups is not null) ? ExcessWordings.NoUpsOrdered
        : build.HasGivenSupplies ? ExcessWordings.NoUpsNorSupply
        : ExcessWordings.NoUps;

    private static bool HasSource(PduFacts unit, bool isForUps, RackBuild build) => isForUps
        ? build.Items.Exists(i => i.Item is { Ups: { Feeds: null } })
        : SupplyChoice.For(build, unit, SupplyChoice.Outlets(build)) is not null;

    private static WordedText FixingReason(Product fixings, RackBuild build)
    {
        var used = build.Stock.All.Where(e => e.Product.Kind == ProductKind.Fixings && e.Used > 0).Select(e => e.Product.Fixing).ToArray();
        return used.Length == 0 ? ExcessWordings.NothingToFasten
            : used.Contains(fixings.Fixing) ? ExcessWordings.EnoughFixings
            : ExcessWordings.OtherFixings;
    }
}
