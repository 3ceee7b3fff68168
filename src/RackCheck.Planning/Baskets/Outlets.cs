using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>Connects PDUs to supplies and UPSs, mounts horizontal PDUs and finds cords without an outlet.</summary>
internal static class Outlets
{
    /// <summary>Maximum number of PDUs in a rack.</summary>
    public const int MostUnits = 32;

    /// <summary>Connects and mounts the PDUs and reports missing ones. All other items have positions.</summary>
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

    // One after the other, as long as a supply fits.
    private static void Add(Bay bay, StockEntry entry, Func<Pdu, string?> connect)
    {
        while (entry.Left > 0 && bay.Units.Count < MostUnits)
        {
            var unit = ProductParts.UnitOf(entry.Product, bay.IdFor(entry.Product), "");
            if (connect(unit) is not { } supply)
            {
                return;
            }

            bay.Units.Add(new BayUnit { Unit = unit with { Supply = supply }, Piece = entry.Take() });
        }
    }

    // A PDU with an appliance plug is fed from a UPS that feeds none yet. Without a UPS it needs a supply with appliance outlets,
    // and no such supply is assumed.
    private static string? Feed(Bay bay, Pdu unit)
    {
        if (bay.Items.Where(i => i.Item is { Ups.Feeds: null }).MinBy(i => i.Id, StringComparer.Ordinal) is not { } ups)
        {
            return bay.HasGivenSupplies ? SupplyChoice.Take(bay, unit) : null;
        }

        ups.Item = ups.Item with { Ups = ups.Item.Ups! with { Feeds = [unit.Id] } };
        return SupplyChoice.BehindUps(bay);
    }

    // At the rear, as high as possible; otherwise at the front.
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
