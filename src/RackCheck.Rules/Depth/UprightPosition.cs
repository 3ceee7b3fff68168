using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds uprights in the wrong position, and items that no common setback suits.</summary>
public sealed class UprightPosition : Rule
{
    private static readonly MessageWording Conflict = new(
        "depth.upright-position.conflict",
        "No rail position suits both items: {first} needs a setback of at least {leastMm} mm, {second} at most {greatestMm} mm.");

    private static readonly MessageWording SetbackTooSmall = new(
        "depth.upright-position.setback-too-small",
        "The setback of the front uprights is {setbackMm} mm; {item} needs at least {limitMm} mm.");

    private static readonly MessageWording SetbackTooLarge = new(
        "depth.upright-position.setback-too-large",
        "The setback of the front uprights is {setbackMm} mm; {item} allows at most {limitMm} mm.");

    private static readonly MessageWording PastCabinet = new(
        "depth.upright-position.past-cabinet",
        "The rear uprights are {placeMm} mm behind the front face; the cabinet ends at {endMm} mm.");

    private static readonly MessageWording PastDoor = new(
        "depth.upright-position.past-door",
        "The rear uprights are {placeMm} mm behind the front face; the rear door is at {endMm} mm.");

    private static readonly MissingData MissingBodyDepth = new(
        "depth.upright-position.missing-body-depth",
        "Without every body depth, the range of suitable setbacks cannot be calculated.");

    private static readonly MissingData MissingSpacing = new(
        "depth.upright-position.missing-spacing",
        "Items are mounted on the rear uprights. Without the upright spacing, the range of suitable setbacks cannot be calculated.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.upright-position",
        Title = "Uprights in the wrong position",
        Severity = Severity.Error,
        What = "Calculates the range of setbacks of the front uprights that suits each item. Finds racks in which no setback suits every item "
            + "and names the two items in conflict. Also finds a specified setback that does not suit an item, and rear uprights that foul "
            + "the rear door.",
        Why = "All items of a face are mounted on the same pair of uprights, so one setback has to suit them all.",
        Formula = "front door depth + front projection <= setback <= cabinet depth - rear door depth - body depth - rear projection, for every "
            + "item; items on the rear uprights mirrored, with the spacing; setback + spacing <= cabinet depth - rear door depth",
        Sources = [Sources.Geometry, Sources.ClearancePractice],
        Needs =
        [
            "/cabinet/uprights/frontSetbackMm", "/cabinet/uprights/spacingMm", "/cabinet/uprights/pitchMm", "/cabinet/depthMm",
            "/items/*/body/depthMm", "/items/*/frontProjectionMm", "/items/*/rearProjectionMm",
        ],
        Notes =
        [
            "Uprights without a setback can be moved: only an empty interval is an error. A setback that is given is judged by depth.front-clearance "
                + "and depth.rear-clearance.",
            "Two items that no setback serves bring two findings: this rule names the pair, depth.cabinet-too-shallow the depth that serves both. An "
                + "item that fits at no setback alone brings the second only.",
        ],
        Remedies =
        [
            "Set the uprights to a setback on their pitch that suits every item.",
            "Use a deeper cabinet.",
            "Remove the front door.",
            "Move the items that do not fit to another rack.",
        ],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        ReportMissing(context);
        if (!survey.Depth.SomeSetbackServes)
        {
            ReportConflict(context);
        }

        if (survey.Cabinet.SetbackMm is { } setback && WorstServed(survey, setback) is { } item)
        {
            ReportSetback(context, setback, item);
        }

        if (survey.Cabinet.SpacingMm is { } spacing)
        {
            CheckRearUprights(context, spacing);
        }
    }

    // Of the items with a suitable setback, the one furthest from the specified setback. Between equals, the id decides.
    private static MountedItem? WorstServed(RackSurvey survey, double setback)
    {
        MountedItem? worst = null;
        var most = Comparison.Tolerance;
        foreach (var item in survey.Items)
        {
            var interval = survey.Depth.Interval(item);
            var failing = interval.IsEmpty ? 0 : Math.Max(interval.LeastMm - setback, setback - interval.GreatestMm);
            if (failing > most || (worst is not null && failing == most && string.CompareOrdinal(item.Id, worst.Id) < 0))
            {
                (worst, most) = (item, failing);
            }
        }

        return worst;
    }

    private static void ReportMissing(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Depth is null)
            {
                context.ReportMissing(Pointers.ItemBodyDepth[item.Index], MissingBodyDepth);
            }
            else if (item.Face == Face.Rear && context.Survey.Cabinet.SpacingMm is null)
            {
                context.ReportMissing(Pointers.Spacing, MissingSpacing);
            }
        }
    }

    private static void ReportConflict(RuleContext context)
    {
        var survey = context.Survey;
        var all = survey.Depth.All;
        if (survey.Depth is not { LeastBy: { } least, GreatestBy: { } greatest } depth || depth.FitsNowhere(least) || depth.FitsNowhere(greatest))
        {
            // One item alone is too deep. The rule on the cabinet depth reports it; no pair is in conflict.
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Conflict,
            Data = [("first", least.Id), ("second", greatest.Id), ("leastMm", all.LeastMm), ("greatestMm", all.GreatestMm)],
            Subject = Subjects.Pair(least.Id, greatest.Id),
            // That no setback serves all is the defect, whichever items are furthest apart; the utilisation says how bad it is.
            Identity = ["conflict"],
            Pointers = [least.Pointer, greatest.Pointer, Pointers.CabinetDepth],
            Actual = Quantities.Millimetres(all.GreatestMm),
            Limit = Quantities.Millimetres(all.LeastMm),
            UtilisationPercent = 100 * MountingDepth.LeastCabinetDepthMm(survey.Cabinet.Depth, all) / survey.Cabinet.Depth.DepthMm,
            Calculation = $"{DepthText.Least(survey, least)} > {DepthText.Greatest(survey, greatest)}",
            Candidates = DepthRemedies.For(survey),
        });
    }

    private static void ReportSetback(RuleContext context, double setback, MountedItem item)
    {
        var survey = context.Survey;
        var own = survey.Depth.Interval(item);
        var tooSmall = setback < own.LeastMm;
        var bound = tooSmall ? own.LeastMm : own.GreatestMm;
        context.Report(new FindingDraft
        {
            Message = tooSmall ? SetbackTooSmall : SetbackTooLarge,
            Data = [("setbackMm", setback), ("item", item.Id), ("limitMm", bound)],
            Subject = Subjects.UprightsFor(item.Id),
            Identity = ["setback", item.Id],
            Pointers = [Pointers.FrontSetback, item.Pointer],
            Actual = Quantities.Millimetres(setback),
            Limit = Quantities.Millimetres(bound),
            Calculation = Invariant(
                $"{(tooSmall ? DepthText.Least(survey, item) : DepthText.Greatest(survey, item))} {(tooSmall ? '>' : '<')} {setback:0.###}"),
            Candidates = DepthRemedies.For(survey),
        });
    }

    private static void CheckRearUprights(RuleContext context, double spacing)
    {
        var survey = context.Survey;
        var setback = survey.Cabinet.SetbackMm ?? survey.Depth.All.LeastMm;
        var end = survey.Cabinet.Depth.RearLimitMm;
        if (!Comparison.IsOver(setback + spacing, end))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = survey.Cabinet.Depth.RearOpen ? PastCabinet : PastDoor,
            Data = [("placeMm", setback + spacing), ("endMm", end)],
            Subject = Subjects.RearUprights,
            Identity = ["rear uprights"],
            Pointers = [Pointers.Spacing],
            Actual = Quantities.Millimetres(setback + spacing),
            Limit = Quantities.Millimetres(end),
            Calculation = Invariant($"{setback:0.###} + {spacing:0.###} = {setback + spacing:0.###} > {end:0.###}"),
            Candidates =
            [
                .. SpacingRemedies.Move(survey, new SetbackInterval(1, end - setback)) is { } move ? [move] : Array.Empty<RemedyCandidate>(),
                .. DepthRemedies.Uprights(survey),
            ],
        });
    }
}
