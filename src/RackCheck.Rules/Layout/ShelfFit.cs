using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds things that do not go on their shelf.</summary>
public sealed class ShelfFit : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.shelf-fit",
        Title = "Does not go on its shelf",
        Severity = Severity.Error,
        What = "Finds things on a shelf that are wider together than its usable width, deeper than the shelf, or higher than the free units above it.",
        Why = "What hangs over a shelf falls, and what is too high meets the unit above.",
        Formula = "sum of widths <= opening - 10; body depth <= depth of the shelf; height <= free units above the shelf x 44.45",
        Sources = [Sources.ShelfPractice, Sources.Iec60297],
        Needs = ["/items/*/onShelf", "/items/*/body", "/items/*/position", "/cabinet/uprights/openingMm"],
        Remedies =
        [
            "Too wide: stand what is too much on another shelf.",
            "Too deep: take a deeper shelf.",
            "Too high: mount the shelf where there is room above it, or take a higher cabinet.",
            "Take it out of this rack.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var shelf in context.Survey.Items)
        {
            if (shelf.Load.Count > 0)
            {
                // By id, so that what is named does not hang on the order of items.
                Mounted[] load = [.. shelf.Load.OrderBy(t => t.Id, StringComparer.Ordinal)];
                CheckWidth(context, shelf, load);
                CheckDepth(context, shelf, load);
                CheckHeight(context, shelf, load);
            }
        }
    }

    private static void CheckWidth(RuleContext context, Mounted shelf, Mounted[] load)
    {
        var usable = ShelfCures.UsableWidthMm(context.Survey);
        var total = 0.0;
        var over = new List<Mounted>();
        var kept = 0.0;
        foreach (var thing in load)
        {
            if (thing.Item!.Body?.WidthMm is not { } width)
            {
                context.Lacks(Pointers.ItemBodyWidth[thing.Index], "It stands on a shelf; without its width it cannot be said whether all goes on.");
                continue;
            }

            total += width;
            if (kept + width <= usable + SetbackInterval.ToleranceMm)
            {
                kept += width;
            }
            else
            {
                over.Add(thing);
            }
        }

        if (over.Count == 0)
        {
            return;
        }

        Report(
            context,
            shelf,
            over[0],
            "width",
            "What stands on {shelf} is {totalMm} mm wide together, where {usableMm} mm can be used: there is no room for {item}.",
            [("shelf", shelf.Id), ("totalMm", total), ("usableMm", usable), ("item", Names.List([.. over.Select(t => t.Id)]))],
            total,
            usable,
            Invariant($"{string.Join(" + ", load.Select(t => Invariant($"{t.Item!.Body?.WidthMm ?? 0:0.###}")))} = {total:0.###} > {context.Survey.Cabinet.OpeningMm:0.###} - {Allowances.ShelfWidthLossMm:0.###} = {usable:0.###}"),
            CuresFor(() => ShelfCures.Stand(context.Survey, over), () => PlaceCures.TakeOut(context.Survey, over)));
    }

    private static void CheckDepth(RuleContext context, Mounted shelf, Mounted[] load)
    {
        foreach (var thing in load)
        {
            if (thing.BodyDepthMm is not { } depth)
            {
                context.Lacks(Pointers.ItemBodyDepth[thing.Index], "It stands on a shelf; without its depth it cannot be said whether it hangs over.");
            }
            else if (shelf.BodyDepthMm is not { } shelfDepth)
            {
                context.Lacks(Pointers.ItemBodyDepth[shelf.Index], "Without the depth of the shelf it cannot be said whether what stands on it hangs over.");
            }
            else if (depth > shelfDepth + SetbackInterval.ToleranceMm)
            {
                Report(
                    context,
                    shelf,
                    thing,
                    "depth",
                    "{item} is {depthMm} mm deep and hangs over the shelf {shelf}, which is {shelfDepthMm} mm deep.",
                    [("item", thing.Id), ("depthMm", depth), ("shelf", shelf.Id), ("shelfDepthMm", shelfDepth)],
                    depth,
                    shelfDepth,
                    Invariant($"{depth:0.###} > {shelfDepth:0.###}"),
                    CuresFor(() => DeeperShelf(context.Survey, shelf, depth), () => PlaceCures.TakeOut(context.Survey, thing)));
            }
        }
    }

    private static void CheckHeight(RuleContext context, Mounted shelf, Mounted[] load)
    {
        if (!shelf.IsPlaced)
        {
            return;
        }

        var free = context.Survey.Occupancy.FreeAbove(shelf);
        var room = RackGeometry.ApertureMm(free);
        foreach (var thing in load)
        {
            if (thing.StandingHeightMm is not { } height)
            {
                context.Lacks(Pointers.ItemBodyHeight[thing.Index], "It stands on a shelf; without its height it cannot be said whether it meets what hangs above.");
            }
            else if (height > room + SetbackInterval.ToleranceMm)
            {
                Report(
                    context,
                    shelf,
                    thing,
                    "height",
                    "{item} is {heightMm} mm high; above the shelf {shelf} {freeUnits} U are free, which is {roomMm} mm.",
                    [("item", thing.Id), ("heightMm", height), ("freeUnits", free), ("shelf", shelf.Id), ("roomMm", room)],
                    height,
                    room,
                    Invariant($"{free} x {RackGeometry.UnitMm} = {room:0.###} < {height:0.###}"),
                    CuresFor(() => PlaceCures.Mount(context.Survey, shelf), () => PlaceCures.TakeOut(context.Survey, thing)));
            }
        }
    }

    // A deeper shelf is a cure only where the depth that it takes is there: for these uprights, and with nothing behind it.
    private static Cure? DeeperShelf(RackSurvey survey, Mounted shelf, double depth)
    {
        var deeper = new Mounted
        {
            Index = shelf.Index,
            Id = shelf.Id,
            HeightU = shelf.HeightU,
            Face = shelf.Face,
            FrontProjectionMm = shelf.FrontProjectionMm,
            BodyDepthMm = depth,
            RearProjectionMm = shelf.RearProjectionMm,
        };
        var shared = shelf.IsPlaced && survey.Occupancy.ByPlace.Any(other =>
            other.Face != shelf.Face && other.Bottom <= shelf.ClaimTop && other.ClaimTop >= shelf.Bottom);
        return survey.Depth.CanTake(deeper) && !shared
            ? new CureBuilder(survey).SetItem(shelf, i => i with { Body = (i.Body ?? new Body()) with { DepthMm = depth } }).Titled(Invariant($"Take a shelf {depth:0.###} mm deep for {shelf.Id}"))
            : null;
    }

    private static IEnumerable<Cure> CuresFor(params Func<Cure?>[] candidates)
    {
        foreach (var candidate in candidates)
        {
            if (candidate() is { } cure)
            {
                yield return cure;
            }
        }
    }

    private static void Report(
        RuleContext context,
        Mounted shelf,
        Mounted culprit,
        string measure,
        string message,
        IReadOnlyList<(string Name, Scalar Value)> data,
        double actual,
        double limit,
        string calculation,
        IEnumerable<Cure> cures) => context.Report(new FindingDraft
        {
            Message = message,
            Data = data,
            Subject = $"{culprit.Id}, on {context.Survey.Cabinet.Place(shelf)}",
            Identity = [shelf.Id, culprit.Id, measure],

            // Of what is too wide together the first that is too much is named; with that gone it may be the next.
            Root = measure == "width" ? "width on " + shelf.Id : null,
            // A unit whose body's height is not given is measured by its units.
            Pointers = [measure == "height" && culprit.Item!.Body?.HeightMm is null ? $"{culprit.Pointer}/heightU" : $"{culprit.Pointer}/body/{measure}Mm", shelf.Pointer],
            Actual = Quantities.Millimetres(actual),
            Limit = Quantities.Millimetres(limit),
            UtilisationPercent = limit > 0 ? 100 * actual / limit : null,
            Calculation = calculation,
            Cures = cures,
        });
}
