using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Building;

/// <summary>Connects PDUs to supplies and UPSs, mounts horizontal PDUs and finds cords without an outlet.</summary>
internal static class Outlets
{
    /// <summary>Maximum number of PDUs in a rack.</summary>
    public const int MostUnits = 32;

    // No id begins with a line break.
    private const string Probe = "\n";

    /// <summary>Connects and mounts the PDUs and reports missing ones. All other items have positions.</summary>
    public static void Connect(BasketContext context, RackBuild build)
    {
        StockEntry[] stock = [.. build.Stock.LeftOf(ProductKind.Pdu)];
        foreach (var entry in stock.Where(e => !SupplyChoice.IsForUps(e.Product)))
        {
            Add(context, build, entry, unit => SupplyChoice.Take(build, unit));
        }

        foreach (var entry in stock.Where(e => SupplyChoice.IsForUps(e.Product)))
        {
            Add(context, build, entry, unit => Feed(build, unit));
        }

        foreach (var unit in build.UnitsToPlace)
        {
            Mount(build, unit);
        }

        if (build.UnitsToPlace.Select(u => u.Unit.Id).ToArray() is { Length: > 0 } left)
        {
            build.Unmet.Add(new OpenNeed(
                new(LineWordings.PduPlaceNeed, ("pdus", Scalar.Ids(left))), new(LineWordings.NoPduPlace.With(left.Length == 1 ? "one" : null))));
        }

        if (context.OnUps is { } wanted)
        {
            // What a UPS feeds depends on the plugs.
            CordEnds.Choose(context, build);
            build.Connections = UpsFeeds.Choose(build, wanted, context.Limits.PduDesignShare);
            build.Rewire();
        }

        CordEnds.Choose(context, build);
        OutletNeeds.Find(context, build);
    }

    // One after the other, as long as a supply fits.
    private static void Add(BasketContext context, RackBuild build, StockEntry entry, Func<Pdu, string?> connect)
    {
        while (entry.Left > 0 && build.Units.Count < MostUnits)
        {
            if (context.Leaves == ProductKind.Pdu && PduSets.IsHorizontal(entry.Product) && build.UnitsToPlace.Count() is var others
                && FreePlaces(build, others + 1) <= others)
            {
                return;
            }

            var unit = ProductParts.UnitOf(entry.Product, build.IdFor(entry.Product), "");
            if (connect(unit) is not { } supply)
            {
                return;
            }

            build.Units.Add(new BuildPdu { Unit = unit with { Supply = supply }, Piece = entry.Take() });
        }
    }

    // A PDU with an appliance plug is fed from a UPS that feeds none yet. Without a UPS it needs a supply with appliance outlets,
    // and no such supply is assumed.
    private static string? Feed(RackBuild build, Pdu unit)
    {
        if (build.Items.Where(i => i.Item is { Ups.Feeds: null }).MinBy(i => i.Id, StringComparer.Ordinal) is not { } ups)
        {
            return build.HasGivenSupplies ? SupplyChoice.Take(build, unit) : null;
        }

        ups.Item = ups.Item with { Ups = ups.Item.Ups! with { Feeds = [unit.Id] } };
        return SupplyChoice.BehindUps(build);
    }

    /// <summary>U positions in which horizontal PDUs can be mounted, at the rear and at the front; no more than asked for.</summary>
    /// <param name="build">The rack with its items. PDUs without a position take none.</param>
    /// <param name="most">The number asked for.</param>
    public static int FreePlaces(RackBuild build, int most)
    {
        var atRear = FreePlaces(build, Face.Rear, most);
        return atRear == most ? most : atRear + FreePlaces(build, Face.Front, most - atRear);
    }

    private static int FreePlaces(RackBuild build, Face face, int most)
    {
        var rack = build.Describe();
        var probe = new Pdu { Id = Probe, Supply = "", Mounting = PduMounting.Horizontal, Position = new Position { U = 1, Face = face } };
        var survey = RackSurvey.Lazily(ResolvedRack.Plain(rack with { Pdus = [.. rack.Pdus!, probe] }));
        var mounted = Array.Find(survey.Units, u => u.Id == Probe)!;
        return Enumerable.Range(1, survey.Cabinet.HeightU).Where(u => survey.Occupancy.CanGo(mounted, Allowances.HorizontalUnitHeightU, u)).Take(most).Count();
    }

    // As near as possible to the cords: at the rear, or at the front of a cabinet whose rear is at a wall and has no door; otherwise at the other face.
    private static void Mount(RackBuild build, BuildPdu unit)
    {
        var isReachedFromFront = build.Cabinet is { Base.Style: BaseStyle.Wall, RearDoor: null or { Style: null or DoorStyle.None } };
        foreach (var face in isReachedFromFront ? (ReadOnlySpan<Face>)[Face.Front, Face.Rear] : [Face.Rear, Face.Front])
        {
            unit.Unit = unit.Unit with { Position = new Position { U = 1, Face = face } };
            if (FreeUnit(build, unit) is { } free)
            {
                unit.Unit = unit.Unit with { Position = new Position { U = free, Face = face } };
                return;
            }
        }

        unit.Unit = unit.Unit with { Position = null };
    }

    private static int? FreeUnit(RackBuild build, BuildPdu unit)
    {
        var description = build.Describe();
        var (cords, moment) = (0, 0.0);
        foreach (var item in description.Items)
        {
            if (item is { Power.Plugs.Count: > 0 and var plugs, Position.U: var bottom })
            {
                (cords, moment) = (cords + plugs, moment + (plugs * (bottom + ((item.HeightU ?? 1) / 2.0))));
            }
        }

        var survey = RackSurvey.Lazily(description);
        var mounted = Array.Find(survey.Units, u => u.Id == unit.Unit.Id)!;
        var middle = cords == 0 ? survey.Cabinet.HeightU : (int)(moment / cords);
        return survey.Occupancy.FindPlace(mounted, Allowances.HorizontalUnitHeightU, middle, survey.Cabinet.HeightU);
    }
}
