using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>Hangs PDUs on supplies and UPSs, mounts the horizontal ones, and finds cords without an outlet.</summary>
internal static class Outlets
{
    /// <summary>Most PDUs of a rack.</summary>
    public const int MostUnits = 32;

    /// <summary>Hangs and mounts the PDUs, and notes which lack.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="bay">The rack, with everything else in its place.</param>
    public static void Connect(BasketContext context, Bay bay)
    {
        StockEntry[] stock = [.. bay.Stock.LeftOf(ProductKind.Pdu)];
        foreach (var entry in stock.Where(e => !SupplyChoice.IsForUps(e.Product)))
        {
            Add(bay, entry, unit => SupplyChoice.Take(bay, unit));
        }

        foreach (var entry in stock.Where(e => SupplyChoice.IsForUps(e.Product)))
        {
            Add(bay, entry, unit => Feed(bay, unit));
        }

        foreach (var unit in bay.Units.Where(u => u.Unit.Mounting == PduMounting.Horizontal))
        {
            Mount(bay, unit);
        }

        OutletNeeds.Find(context, bay);
    }

    // One after the other, while a supply takes them.
    private static void Add(Bay bay, StockEntry entry, Func<Pdu, string?> hang)
    {
        while (entry.Left > 0 && bay.Units.Count < MostUnits)
        {
            var unit = ProductParts.UnitOf(entry.Product, bay.IdFor(entry.Product), "");
            if (hang(unit) is not { } supply)
            {
                return;
            }

            bay.Units.Add(new BayUnit { Unit = unit with { Supply = supply }, Piece = entry.Take() });
        }
    }

    // A unit with an appliance plug goes into a UPS that feeds none yet; without one it needs a supply with outlets like those of equipment, and none is assumed.
    private static string? Feed(Bay bay, Pdu unit)
    {
        if (bay.Items.Where(i => i.Item is { Ups.Feeds: null }).MinBy(i => i.Id, StringComparer.Ordinal) is not { } ups)
        {
            return bay.HasGivenSupplies ? SupplyChoice.Take(bay, unit) : null;
        }

        ups.Item = ups.Item with { Ups = ups.Item.Ups! with { Feeds = [unit.Id] } };
        return SupplyChoice.BehindUps(bay);
    }

    // Behind, high up, where there is room; else in front.
    private static void Mount(Bay bay, BayUnit unit)
    {
        foreach (var face in (ReadOnlySpan<Face>)[Face.Rear, Face.Front])
        {
            unit.Unit = unit.Unit with { Position = new Position { U = 1, Face = face } };
            if (FreeUnit(bay, unit) is { } free)
            {
                unit.Unit = unit.Unit with { Position = new Position { U = free, Face = face } };
                return;
            }
        }

        unit.Unit = unit.Unit with { Position = null };
    }

    private static int? FreeUnit(Bay bay, BayUnit unit)
    {
        var description = bay.Describe();
        var survey = new RackSurvey(description with { Items = [.. description.Items.Select(i => i with { Power = null, Ups = null })] });
        var mounted = Array.Find(survey.Units, u => u.Id == unit.Unit.Id)!;
        return survey.Occupancy.FindPlace(mounted, Allowances.HorizontalUnitHeightU, survey.Cabinet.HeightU, survey.Cabinet.HeightU);
    }
}
