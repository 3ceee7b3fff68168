using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds items that do not fit on their shelf.</summary>
public sealed class ShelfFit : Rule
{
    private static readonly MessageWording Width = new(
        "layout.shelf-fit.width",
        "The items on {shelf} are {totalMm} mm wide in total; the usable width is {usableMm} mm. There is no space for {items}.");

    private static readonly MessageWording Depth = new(
        "layout.shelf-fit.depth",
        "{item} is {depthMm} mm deep and overhangs {shelf}, which is {shelfDepthMm} mm deep.");

    private static readonly MessageWording Height = new(
        "layout.shelf-fit.height",
        "{item} is {heightMm} mm high; {roomMm} mm is free above {shelf} ({freeUnits} U).");

    private static readonly MissingData MissingBodyDepth = new(
        "layout.shelf-fit.missing-body-depth",
        "The item stands on a shelf. Without its depth, the overhang cannot be checked.");

    private static readonly MissingData MissingBodyHeight = new(
        "layout.shelf-fit.missing-body-height",
        "The item stands on a shelf. Without its height, the clearance to the equipment above cannot be checked.");

    private static readonly MissingData MissingBodyWidth = new(
        "layout.shelf-fit.missing-body-width",
        "The item stands on a shelf. Without its width, the usable width of the shelf cannot be checked.");

    private static readonly MissingData MissingShelfDepth = new(
        "layout.shelf-fit.missing-shelf-depth",
        "Without the depth of the shelf, the overhang of the items on it cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.shelf-fit",
        Title = "Item does not fit on its shelf",
        Severity = Severity.Error,
        What = "Finds shelf loads that are wider in total than the usable width, and items that are deeper than the shelf or higher than the "
            + "free U positions above it.",
        Why = "An item that overhangs the shelf can fall. An item that is too high collides with the equipment above.",
        Formula = "sum of widths <= opening - 10; body depth <= depth of the shelf; height <= free U above the shelf x 44.45",
        Sources = [Sources.ShelfPractice, Sources.Iec60297],
        Needs = ["/items/*/onShelf", "/items/*/body", "/items/*/position", "/cabinet/uprights/openingMm", "/pdus/*/mounting", "/pdus/*/position"],
        Remedies =
        [
            "Too wide: move some items to another shelf.",
            "Too deep: use a deeper shelf.",
            "Too high: mount the shelf where enough U positions above it are free, or use a taller cabinet.",
            "Move it to another rack.",
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
                // By id, so that the result does not depend on the order of the items.
                MountedItem[] load = [.. shelf.Load.OrderBy(t => t.Id, StringComparer.Ordinal)];
                CheckWidth(context, shelf, load);
                CheckDepth(context, shelf, load);
                CheckHeight(context, shelf, load);
            }
        }
    }

    private static void CheckWidth(RuleContext context, MountedItem shelf, MountedItem[] load)
    {
        var usable = ShelfRemedies.UsableWidthMm(context.Survey);
        var total = 0.0;
        var over = new List<MountedItem>();
        var kept = 0.0;
        foreach (var item in load)
        {
            if (item.Item!.Body?.WidthMm is not { } width)
            {
                context.ReportMissing(Pointers.ItemBodyWidth[item.Index], MissingBodyWidth);
                continue;
            }

            total += width;
            if (!Comparison.IsOver(kept + width, usable))
            {
                kept += width;
            }
            else
            {
                over.Add(item);
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
            Width,
            [("shelf", shelf.Id), ("totalMm", total), ("usableMm", usable), ("items", Names.Ids(over.Select(t => t.Id)))],
            total,
            usable,
            Invariant($"{string.Join(" + ", load.Select(t => Invariant($"{t.Item!.Body?.WidthMm ?? 0:0.###}")))} = {total:0.###}")
                + Invariant($" > {context.Survey.Cabinet.OpeningMm:0.###} - {Allowances.ShelfWidthLossMm:0.###} = {usable:0.###}"),
            CandidatesFor(() => ShelfRemedies.Stand(context.Survey, over), () => PlaceRemedies.TakeOut(context.Survey, over)));
    }

    private static void CheckDepth(RuleContext context, MountedItem shelf, MountedItem[] load)
    {
        foreach (var item in load)
        {
            if (item.BodyDepthMm is not { } depth)
            {
                context.ReportMissing(Pointers.ItemBodyDepth[item.Index], MissingBodyDepth);
            }
            else if (shelf.BodyDepthMm is not { } shelfDepth)
            {
                context.ReportMissing(Pointers.ItemBodyDepth[shelf.Index], MissingShelfDepth);
            }
            else if (Comparison.IsOver(depth, shelfDepth))
            {
                Report(
                    context,
                    shelf,
                    item,
                    "depth",
                    Depth,
                    [("item", item.Id), ("depthMm", depth), ("shelf", shelf.Id), ("shelfDepthMm", shelfDepth)],
                    depth,
                    shelfDepth,
                    Invariant($"{depth:0.###} > {shelfDepth:0.###}"),
                    CandidatesFor(() => DeeperShelf(context.Survey, shelf, depth), () => PlaceRemedies.TakeOut(context.Survey, item)));
            }
        }
    }

    private static void CheckHeight(RuleContext context, MountedItem shelf, MountedItem[] load)
    {
        if (!shelf.IsPlaced)
        {
            return;
        }

        var free = context.Survey.Occupancy.FreeAbove(shelf);
        var room = RackGeometry.ApertureMm(free);
        foreach (var item in load)
        {
            if (item.StandingHeightMm is not { } height)
            {
                context.ReportMissing(Pointers.ItemBodyHeight[item.Index], MissingBodyHeight);
            }
            else if (Comparison.IsOver(height, room))
            {
                Report(
                    context,
                    shelf,
                    item,
                    "height",
                    Height,
                    [("item", item.Id), ("heightMm", height), ("freeUnits", free), ("shelf", shelf.Id), ("roomMm", room)],
                    height,
                    room,
                    Invariant($"{free} x {RackGeometry.UnitMm} = {room:0.###} < {height:0.###}"),
                    CandidatesFor(() => PlaceRemedies.Mount(context.Survey, shelf), () => PlaceRemedies.TakeOut(context.Survey, item)));
            }
        }
    }

    // A deeper shelf is a remedy only where its depth fits these uprights and nothing is mounted behind it.
    private static RemedyCandidate? DeeperShelf(RackSurvey survey, MountedItem shelf, double depth)
    {
        var deeper = new MountedItem
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
            ? new RemedyBuilder(survey)
                .SetItem(shelf, i => i with { Body = (i.Body ?? new Body()) with { DepthMm = depth } })
                .Titled(new(RemedyTitles.ShelfDepth, ("depthMm", depth), ("item", shelf.Id)))
            : null;
    }

    private static IEnumerable<RemedyCandidate> CandidatesFor(params Func<RemedyCandidate?>[] attempts)
    {
        foreach (var attempt in attempts)
        {
            if (attempt() is { } candidate)
            {
                yield return candidate;
            }
        }
    }

    private static void Report(
        RuleContext context,
        MountedItem shelf,
        MountedItem culprit,
        string measure,
        MessageWording message,
        IReadOnlyList<(string Name, Scalar Value)> data,
        double actual,
        double limit,
        string calculation,
        IEnumerable<RemedyCandidate> candidates) => context.Report(new FindingDraft
        {
            Message = message,
            Data = data,
            Subject = Subjects.OnShelf(context.Survey.Cabinet, culprit.Id, shelf),
            // Too wide is the load of the shelf, whichever item is named as the one too many.
            Identity = measure == "width" ? [shelf.Id, measure] : [shelf.Id, culprit.Id, measure],

            // Without a body height, the U height of the item counts.
            Pointers =
            [
                measure == "height" && culprit.Item!.Body?.HeightMm is null ? $"{culprit.Pointer}/heightU" : $"{culprit.Pointer}/body/{measure}Mm",
                shelf.Pointer,
            ],
            Actual = Quantities.Millimetres(actual),
            Limit = Quantities.Millimetres(limit),
            UtilisationPercent = limit > 0 ? 100 * actual / limit : null,
            Calculation = calculation,
            Candidates = candidates,
        });
}
