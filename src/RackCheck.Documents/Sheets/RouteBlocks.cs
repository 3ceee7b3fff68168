using RackCheck.Engineering;
using RackCheck.Rules.Delivery;
using RackCheck.Survey;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;
using Quantities = RackCheck.Model.Quantities;

namespace RackCheck.Documents.Sheets;

/// <summary>The places of the delivery route, with what the rack needs there and what is left.</summary>
internal static class RouteBlocks
{
    private sealed record Place(string Name, string Clear, string Needs, double? LeftMm, string Passage);

    /// <summary>The route as a table, the tightest place named.</summary>
    public static IEnumerable<Block?> Of(SheetContext context)
    {
        if (context.Survey.Route is not { } route)
        {
            return [new Paragraph("The description has no delivery route. Measure doors, corridors, lift and floors before the rack is sent.")];
        }

        Place[] places = [.. Openings(context, route), .. Corners(route), .. LiftCar(context, route), .. Ramps(route)];
        if (places.Length == 0)
        {
            return [new Paragraph("The description names no opening, corner, lift or ramp on the route. Measure the route before the rack is sent.")];
        }

        var tightest = places.Where(p => p.LeftMm is not null).MinBy(p => p.LeftMm);
        var words = tightest is null ? "No place of the route can be compared: the height of the cabinet is missing."
            : tightest.LeftMm < 0 ? Invariant($"Tightest place: {tightest.Name}, {Number(-tightest.LeftMm)} mm short. {tightest.Passage}.")
            : Invariant($"Tightest place: {tightest.Name}, with {Number(tightest.LeftMm)} mm to spare beyond the clearance. {tightest.Passage}.");
        return
        [
            new Paragraph(words),
            Table(
                "Places on the route, on the pallet unless stated",
                [new("Place", 26), new("Clear mm", 18), new("Needed with clearance mm", 24), new("To spare mm", 10, true), new("Passage", 22)],
                places.Select(p => (IReadOnlyList<string>)[p.Name, p.Clear, p.Needs, p.LeftMm is { } left ? Number(left) : "", p.Passage])),
        ];
    }

    private static IEnumerable<Place> Openings(SheetContext context, RouteSurvey route)
    {
        var (clearance, tilt) = (context.Limit<Opening>(Opening.ClearanceMm), context.Limit<Opening>(Opening.TiltDeg));
        foreach (var opening in route.Source.Openings ?? [])
        {
            var (size, clear) = (route.OnPallet, new ClearOpening(opening.WidthMm, opening.HeightMm));
            var name = opening.Name is { Length: > 0 } given ? Name(given) : "opening";
            var across = opening.WidthMm - size.ShortMm - clearance;
            var size2 = Invariant($"{Number(opening.WidthMm)} x {Number(opening.HeightMm)}");
            if (!route.HeightIsKnown)
            {
                yield return new(name, size2, Invariant($"{Number(size.ShortMm + clearance)} wide"), across < 0 ? Round(across) : null, "height not known");
                continue;
            }

            var passage = DeliveryRoute.Through(size, route.Bare, clear, clearance, route.Source.MayTilt == true ? tilt : 0);
            var left = Math.Min(across, opening.HeightMm - size.HeightMm - clearance);
            var words = passage.OnPallet ? (route.HasPallet ? "Passes on the pallet" : "Passes")
                : passage.OffPallet ? "Passes only without the pallet"
                : passage.Tilted ? Invariant($"Passes only without the pallet, tilted by {Number(Quantities.Round(passage.TiltDeg!.Value))} degrees")
                : "Does not pass";
            yield return new(
                name, size2, Invariant($"{Number(size.ShortMm + clearance)} x {Number(size.HeightMm + clearance)}"), Round(left), words);
        }
    }

    private static IEnumerable<Place> Corners(RouteSurvey route) => (route.Source.Corridors ?? []).Select(c =>
    {
        var size = route.OnPallet;
        var passage = CornerTurn.Round(c.WidthMm, c.TurnIntoMm, size.LongMm, size.ShortMm);
        var most = Math.Max(0, passage.GreatestWidthMm);
        return new Place(
            Invariant($"corner from {Number(c.WidthMm)} into {Number(c.TurnIntoMm)}"), Invariant($"{Number(Quantities.Round(most))} wide at this length"),
            Invariant($"{Number(size.ShortMm)} wide, {Number(size.LongMm)} long"), Round(most - size.ShortMm),
            !passage.Passes ? "Does not pass" : passage.Straight ? "Passes without turning" : "Passes turning");
    });

    private static IEnumerable<Place> LiftCar(SheetContext context, RouteSurvey route)
    {
        if (route.Source.Lift is not { } lift)
        {
            yield break;
        }

        var clearance = context.Limit<Lift>(Lift.ClearanceMm);
        var size = route.OnPallet;
        double width = lift.WidthMm ?? double.PositiveInfinity, depth = lift.DepthMm ?? double.PositiveInfinity;
        double[] left =
        [
            Math.Min(width, depth) - size.ShortMm - clearance, Math.Max(width, depth) - size.LongMm - clearance,
            route.HeightIsKnown && lift.HeightMm is { } high ? high - size.HeightMm - clearance : double.PositiveInfinity,
        ];
        var least = left.Min();
        var mass = lift.RatedKg is not { } rated ? "rated load not known"
            : Comparison.IsOver(route.KnownKg, rated) ? Invariant($"overloaded: {Number(route.KnownKg)} kg of {Number(rated)} kg")
            : Invariant($"{Number(rated - route.KnownKg)} kg of {Number(rated)} kg left for people and truck");
        yield return new(
            "lift car", Invariant($"{Number(lift.WidthMm)} x {Number(lift.DepthMm)} x {Number(lift.HeightMm)}"),
            Invariant($"{Number(size.ShortMm + clearance)} x {Number(size.LongMm + clearance)} x ")
                + (route.HeightIsKnown ? Number(size.HeightMm + clearance) : Unknown),
            double.IsFinite(least) ? Round(least) : null, (least < 0 ? "Does not fit" : double.IsFinite(least) ? "Fits" : "Size not known") + "; " + mass);
    }

    private static IEnumerable<Place> Ramps(RouteSurvey route) => (route.Source.Ramps ?? []).Select(r => new Place(
        "ramp", Invariant($"slope {Number(r.SlopePercent)} %"), "", null, "Hold the rack from the lower side"));

    private static double Round(double value) => Quantities.Round(value);
}
