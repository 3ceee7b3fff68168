using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for mass: stronger cabinets, castors and slides, heavy items lower down, larger footprints, removal of equipment.</summary>
public static class LoadRemedies
{
    private static readonly MessageWording Rated = new("remedy.rated-load", "Use a cabinet with a rated load of {ratedKg:exact} kg");
    private static readonly MessageWording Castors = new("remedy.castors", "Use castors with a dynamic load rating of {ratedKg:exact} kg");
    private static readonly WordedText FeetAtPlace = new(
        "remedy.feet-at-place", "Use levelling feet instead of castors, and fit the equipment at the final position");
    private static readonly MessageWording TransportRated = new("remedy.transport-rating", "Use a cabinet with a transport load rating of {ratedKg:exact} kg");
    private static readonly WordedText FloorStanding = new("remedy.floor-standing", "Use a floor-standing cabinet on levelling feet");
    private static readonly WordingChoice RatedSupport = new(
        "remedy.support-rating",
        "Mount [load:the load of {item}|{item}] on [shelf:a shelf|slides:slides|runners:runners|a support] rated for {ratedKg:exact} kg");
    private static readonly MessageWording LiftingAid = new("remedy.lifting-aid", "Use a lifting aid for {item}");
    private static readonly MessageWording TwoPeople = new("remedy.two-people", "Have two people lift {item}");
    private static readonly MessageWording LargerCabinet = new("remedy.footprint", "Use a cabinet {widthMm:exact} mm wide and {depthMm:exact} mm deep");
    private static readonly MessageWording Swap = new("remedy.swap", "Swap {item} and {other}");
    private static readonly WordingChoice StrongerFloor = new(
        "remedy.floor",
        "Use a floor with a confirmed load capacity of [point:{pointKn:exact} kN point load|{distributedKnM2:exact} kN/m2]: this floor does not carry the "
        + "empty cabinet");

    // Maximum number of moves in one remedy; more moves are a new layout.
    private const int MostMoves = 6;

    // Ratings on the market; common practice, no source.
    private static readonly double[] CabinetRatingsKg = [400, 600, 800, 1000, 1200, 1500];

    private static readonly double[] CastorRatingsKg = [100, 200, 300, 400, 500, 600, 800, 1000];

    private static readonly double[] SupportRatingsKg = [20, 30, 45, 60, 80, 100, 120, 150, 200];

    /// <summary>A cabinet with a sufficient rated load, or less equipment.</summary>
    /// <param name="ratedKg">The rated load of the cabinet, kg.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Carry(RackSurvey survey, double ratedKg)
    {
        var plannedShare = survey.Limits.RackPlannedShare;
        var needed = survey.Mass.KnownEquipmentKg / plannedShare;
        if (Next(CabinetRatingsKg, needed) is { } rating)
        {
            yield return new RemedyBuilder(survey).SetCabinet(c => c with { RatedLoadKg = rating })
                .Titled(new(Rated, ("ratedKg", rating)));
        }

        foreach (var candidate in TakeOut(survey, survey.Mass.KnownEquipmentKg - (plannedShare * ratedKg)))
        {
            yield return candidate;
        }
    }

    /// <summary>Castors with a sufficient dynamic load rating, no castors, or less equipment.</summary>
    /// <param name="ratedKg">The dynamic load rating, kg.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Roll(RackSurvey survey, double ratedKg)
    {
        if (Next(CastorRatingsKg, survey.Mass.KnownEquipmentKg) is { } rating)
        {
            yield return new RemedyBuilder(survey).SetCabinet(c => c with { RollingLoadKg = rating })
                .Titled(new(Castors, ("ratedKg", rating)));
        }

        yield return TipRemedies.OnBase(survey, BaseStyle.Feet, FeetAtPlace);
        foreach (var candidate in TakeOut(survey, survey.Mass.KnownEquipmentKg - ratedKg))
        {
            yield return candidate;
        }
    }

    /// <summary>The cabinet delivered empty, one with a sufficient transport rating, or less equipment.</summary>
    /// <param name="ratedKg">The transport load rating, kg.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Transport(RackSurvey survey, double ratedKg)
    {
        yield return DeliveryRemedies.Empty(survey);
        if (Next(CabinetRatingsKg, survey.Mass.KnownEquipmentKg) is { } rating)
        {
            yield return new RemedyBuilder(survey)
                .SetCabinet(c => c with { TransportLoadKg = rating, RatedLoadKg = c.RatedLoadKg is { } rated ? Math.Max(rated, rating) : null })
                .Titled(new(TransportRated, ("ratedKg", rating)));
        }

        foreach (var candidate in TakeOut(survey, survey.Mass.KnownEquipmentKg - ratedKg))
        {
            yield return candidate;
        }
    }

    /// <summary>Heavy equipment lower down, the cabinet delivered empty, or a route without the ramp.</summary>
    /// <param name="mostPercent">Steepest slope that this rack takes, %; 0 where it takes none.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> OnRamp(RackSurvey survey, double mostPercent)
    {
        foreach (var candidate in Sink(survey))
        {
            yield return candidate;
        }

        yield return DeliveryRemedies.Empty(survey);

        // Rounded down, so that a ramp of the slope named passes.
        var most = Math.Floor(10 * mostPercent) / 10;
        yield return DeliveryRemedies.OtherRoute(
            survey,
            most > 0 ? new(RemedyTitles.Route.With("steep-ramps"), ("slopePercent", most)) : new(RemedyTitles.Route.With("ramps")),
            d => d with { Ramps = [.. d.Ramps!.Where(r => r.SlopePercent <= most)] });
    }

    /// <summary>Less equipment on the wall, or a floor-standing cabinet.</summary>
    /// <param name="ratedKg">Maximum mass on the wall, kg.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> OnWall(RackSurvey survey, double ratedKg) =>
        TakeOut(survey, survey.Mass.KnownTotalKg - ratedKg)
            .Append(TipRemedies.OnBase(survey, BaseStyle.Feet, FloorStanding));

    /// <summary>Slides, runners or a shelf with a sufficient rating, or less load on them.</summary>
    /// <param name="item">The item, or the shelf.</param>
    /// <param name="loadKg">Their load, kg.</param>
    /// <param name="isShelf">Whether the load is on the item, which is a shelf.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> StrongerSupport(RackSurvey survey, MountedItem item, double loadKg, bool isShelf)
    {
        var rating = Next(SupportRatingsKg, loadKg) ?? (50 * Math.Ceiling(loadKg / 50));
        var support = item.Item!.Support! with { RatedKg = rating };
        var name = isShelf ? "shelf" : item.SupportStyle switch
        {
            SupportStyle.Slides => "slides",
            SupportStyle.Runners => "runners",
            SupportStyle.Shelf => "shelf",
            _ => null,
        };
        yield return new RemedyBuilder(survey).SetSupport(item, support)
            .Titled(new(RatedSupport.With(isShelf ? "load" : null, name), ("item", item.Id), ("ratedKg", rating)));
        IReadOnlyList<MountedItem> heaviest = isShelf
            ? [item.Load.OrderByDescending(t => t.Item!.MassKg ?? 0).ThenBy(t => t.Id, StringComparer.Ordinal).First()]
            : [item];
        if (PlaceRemedies.TakeOut(survey, heaviest) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>A lifting aid, a second person, the item lower down, or removed.</summary>
    /// <param name="item">The item; if it is on a shelf, the shelf is moved.</param>
    /// <param name="persons">Number of people who lift together.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Lift(RackSurvey survey, MountedItem item, int persons)
    {
        yield return new RemedyCandidate(new(LiftingAid, ("item", item.Id)), Handled(survey, h => h with { LiftAid = true }));
        if (persons == 1)
        {
            yield return new RemedyCandidate(new(TwoPeople, ("item", item.Id)), Handled(survey, h => h with { Persons = 2 }));
        }

        foreach (var candidate in Lower(survey, item))
        {
            yield return candidate;
        }
    }

    /// <summary>An item lower down, or removed.</summary>
    /// <param name="item">The item; if it is on a shelf, the shelf is moved.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Lower(RackSurvey survey, MountedItem item)
    {
        var carrier = item.Shelf ?? item;
        foreach (var move in MovesDown(survey, carrier))
        {
            yield return move.Fit.Titled(move.Title, "lower");
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>Heavy equipment lower down, in one or more moves, or the rack bolted to the floor.</summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> LowerCentre(RackSurvey survey) => Sink(survey).Then(() => TipRemedies.Bolted(survey));

    /// <summary>Heavy equipment lower down, move by move.</summary>
    /// <returns>Candidates, smallest change first.</returns>
    public static IEnumerable<RemedyCandidate> Sink(RackSurvey survey)
    {
        var (now, isRefitted) = (survey, false);
        WordedText? title = null;
        for (var moves = 0; moves < MostMoves && BestMove(now) is { } move; moves++)
        {
            title = title?.Then(move.Plain) ?? move.Plain;
            isRefitted |= move.Fit.IsRefitted || move.Fit.Displaced.Count > 0;
            yield return (move.Fit with { IsRefitted = isRefitted }).Titled(title, nameof(Sink));
            now = RackSurvey.Lazily(move.Fit.After);
        }
    }

    /// <summary>A cabinet with a larger footprint, less equipment, or last another floor.</summary>
    /// <param name="limitKnM2">Permitted floor load, kN/m2.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Spread(RackSurvey survey, double limitKnM2)
    {
        var cabinet = survey.Cabinet;
        var footprints = from width in CabinetSizes.WidthsMm.Append(cabinet.WidthMm)
                         from depth in CabinetSizes.DepthsMm.Append(cabinet.Depth.DepthMm)
                         where width >= cabinet.WidthMm && depth >= cabinet.Depth.DepthMm
                         where FloorLoads.DistributedKnM2(LargerKg(cabinet, width, depth) + survey.Mass.KnownEquipmentKg, width, depth) <= limitKnM2
                         orderby width * depth
                         select (width, depth);
        foreach (var (width, depth) in footprints.Distinct())
        {
            yield return Larger(survey, width, depth);
        }

        var empty = FloorLoads.DistributedKnM2(cabinet.Source.MassKg ?? 0, cabinet.WidthMm, cabinet.Depth.DepthMm);
        var excessKg = (survey.Mass.KnownFloorKnM2 - limitKnM2) * cabinet.WidthMm * cabinet.Depth.DepthMm / 1000 / Gravity.MPerS2;
        foreach (var candidate in TakeOut(survey, excessKg))
        {
            yield return candidate;
        }

        // Another floor is offered only if this floor does not carry the empty cabinet.
        if (Comparison.IsOver(empty, limitKnM2))
        {
            yield return OtherFloor(
                survey, f => f with { DistributedKnM2 = UpToTenth(survey.Mass.KnownFloorKnM2) },
                new(StrongerFloor.With(), ("distributedKnM2", UpToTenth(survey.Mass.KnownFloorKnM2))));
        }
    }

    /// <summary>Less equipment on the feet, or last another floor.</summary>
    /// <param name="limitKn">Permitted point load of the floor, kN.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Unburden(RackSurvey survey, double limitKn)
    {
        // The foot carries at least its equal share of the weight; with an uneven load more equipment may have to be removed.
        var foot = survey.Mass.Balance?.Feet.GreatestKn ?? (Gravity.WeightN(survey.Mass.KnownTotalKg) / 4000);
        foreach (var candidate in TakeOut(survey, (foot - limitKn) * 1000 / Gravity.MPerS2))
        {
            yield return candidate;
        }

        if (Comparison.IsOver(Gravity.WeightN(survey.Cabinet.Source.MassKg ?? 0) / 4000, limitKn))
        {
            yield return OtherFloor(survey, f => f with { PointKn = UpToTenth(foot) }, new(StrongerFloor.With("point"), ("pointKn", UpToTenth(foot))));
        }
    }

    /// <summary>Equipment removed, heaviest first, starting with the minimum mass; the last step is all items with a mass.</summary>
    /// <param name="leastKg">Minimum mass to remove, kg.</param>
    /// <returns>Candidates, smallest change first.</returns>
    public static IEnumerable<RemedyCandidate> TakeOut(RackSurvey survey, double leastKg)
    {
        // The items on a shelf move with it. Panels are light and close the front: they go last.
        var (gone, kilograms) = (new List<MountedItem>(), 0.0);
        RemedyCandidate? least = null;
        foreach (var item in survey.Items.OrderBy(BlankingPanels.IsPanel).ThenByDescending(MassSurvey.LoadedKg)
            .ThenBy(i => i.Id, StringComparer.Ordinal))
        {
            if (MassSurvey.LoadedKg(item) <= 0 || (item.Shelf is not null && gone.Contains(item.Shelf)))
            {
                continue;
            }

            gone.Add(item);
            kilograms += MassSurvey.LoadedKg(item);
            if (!Comparison.IsOver(leastKg, kilograms) && PlaceRemedies.TakeOut(survey, gone) is { } candidate)
            {
                least ??= candidate with { Kind = "take out" };
                yield return candidate with { Kind = "take out" };
            }
        }

        // Low equipment stabilises a cabinet; without it the cabinet can tip.
        if (least is not null && survey.Mass.Stand.CanTip)
        {
            yield return least with { Title = least.Title.Then(RemedyTitles.BoltIt), After = TipRemedies.Bolt(least.After) };
        }
    }

    /// <summary>A cabinet with another footprint, and its mass in proportion.</summary>
    /// <param name="widthMm">Its width, mm.</param>
    /// <param name="depthMm">Its depth, mm.</param>
    public static RemedyCandidate Larger(RackSurvey survey, double widthMm, double depthMm)
    {
        var kilograms = LargerKg(survey.Cabinet, widthMm, depthMm);
        return new RemedyBuilder(survey)
            .SetCabinet(c => c with { WidthMm = widthMm, DepthMm = depthMm, MassKg = c.MassKg is null ? null : Math.Min(5000, kilograms) })
            .Titled(new(LargerCabinet, ("widthMm", widthMm), ("depthMm", depthMm)));
    }

    // The mass increases about in proportion to the footprint; common practice, no source.
    private static double LargerKg(CabinetFacts cabinet, double widthMm, double depthMm) =>
        Math.Ceiling((cabinet.Source.MassKg ?? 0) * widthMm * depthMm / (cabinet.WidthMm * cabinet.Depth.DepthMm));

    private static RackDescription Handled(RackSurvey survey, Func<Handling, Handling> change) =>
        survey.Description.EditSite(s => s with { Handling = change(s.Handling ?? new Handling()) });

    private static double UpToTenth(double value) => Math.Ceiling(Quantities.Round(10 * value)) / 10;

    private static double? Next(double[] ratings, double needed) => ratings.Where(r => r >= needed).Cast<double?>().FirstOrDefault();

    private static RemedyCandidate OtherFloor(RackSurvey survey, Func<Floor, Floor> change, WordedText title) => new(
        title,
        survey.Description with { Site = survey.Description.Site! with { Floor = change(survey.Description.Site.Floor!) } });

    private static Descent? BestMove(RackSurvey survey)
    {
        var order = survey.Occupancy.ByPlace.Where(m => m.Item is not null && !BlankingPanels.IsPanel(m) && MassSurvey.LoadedKg(m) > 0)
            .OrderByDescending(m => Quantities.Round(MassSurvey.LoadedKg(m) * m.Top)).ThenBy(m => m.Id, StringComparer.Ordinal);
        return order.Select(item => MovesDown(survey, item).FirstOrDefault()).FirstOrDefault(move => move is not null);
    }

    // The lowest position that is free or closed by panels only.
    private static IEnumerable<Descent> MovesDown(RackSurvey survey, MountedItem item)
    {
        if (item.Bottom is not { } bottom || item.Item is null)
        {
            yield break;
        }

        if (BlankingPanels.GivingWay(survey, item.Face).FindPlace(item, item.HeightU, 1, survey.Cabinet.HeightU) is { } free && free < bottom)
        {
            var fit = BlankingPanels.FitAndClose(survey, new RemedyBuilder(survey).Place(item, free), item, free);
            yield return new Descent(
                RemedyTitles.Mount(survey.Cabinet, item, free, item.HeightU), fit, RemedyTitles.Mount(survey.Cabinet, item, free, item.HeightU, fit.Displaced));
        }

        // The lowest lighter item of the same height and face is swapped with it.
        var lighter = survey.Occupancy.ByPlace.FirstOrDefault(o => o.Item is not null && o.Bottom < bottom && o.HeightU == item.HeightU && o.Face == item.Face
            && o.Load.Count == 0 && item.Load.Count == 0 && !BlankingPanels.IsPanel(o)
            && o.Item.MassKg is { } mass && mass < item.Item.MassKg);
        if (lighter is not null)
        {
            var swapped = new RemedyBuilder(survey).Place(item, lighter.Bottom!.Value).Place(lighter, bottom).After;
            var title = new WordedText(Swap, ("item", item.Id), ("other", lighter.Id));
            yield return new Descent(title, new PanelFit(swapped, [], false), title);
        }
    }

    // One move down. In a row of moves its title does not name the panels: some are fitted by an earlier move.
    private sealed record Descent(WordedText Plain, PanelFit Fit, WordedText Title);
}
