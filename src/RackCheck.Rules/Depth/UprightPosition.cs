using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds uprights that stand wrong, and items that no setback serves together.</summary>
public sealed class UprightPosition : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.upright-position",
        Title = "Uprights in the wrong place",
        Severity = Severity.Error,
        What = "Works out for each item which setbacks of the front uprights serve it, and finds racks in which none serves every item, naming the two in conflict; or in which the setback given does not serve an item that another would serve; or in which the rear uprights stand in the rear door.",
        Why = "All items of a face hang on the same pair of uprights, so one setback has to serve them all.",
        Formula = "front door depth + front projection <= setback <= cabinet depth - rear door depth - body depth - rear projection, for every item; items on the rear uprights mirrored, with the spacing; setback + spacing <= cabinet depth - rear door depth",
        Sources = [Sources.Geometry, Sources.ClearancePractice],
        Needs = ["/cabinet/uprights/frontSetbackMm", "/cabinet/uprights/spacingMm", "/cabinet/uprights/pitchMm", "/cabinet/depthMm", "/items/*/body/depthMm", "/items/*/frontProjectionMm", "/items/*/rearProjectionMm"],
        Remedies = ["Set the uprights where every item is served, on the pitch of their holes.", "Take a deeper cabinet.", "Leave the front door off.", "Take out what does not fit."],
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

    // Of the items that some setback would serve, the one that the setback given fails by most; the id decides between equals.
    private static Mounted? WorstServed(RackSurvey survey, double setback)
    {
        Mounted? worst = null;
        var most = SetbackInterval.ToleranceMm;
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
                context.Lacks(Pointers.ItemBodyDepth[item.Index], "Without the depth of every body it cannot be said which setbacks serve them all.");
            }
            else if (item.Face == Face.Rear && context.Survey.Cabinet.SpacingMm is null)
            {
                context.Lacks(Pointers.Spacing, "Items hang on the rear uprights; without their distance it cannot be said which setbacks serve them.");
            }
        }
    }

    private static void ReportConflict(RuleContext context)
    {
        var survey = context.Survey;
        var all = survey.Depth.All;
        if (survey.Depth is not { LeastBy: { } least, GreatestBy: { } greatest } depth || depth.FitsNowhere(least) || depth.FitsNowhere(greatest))
        {
            // One item alone is too deep: that is for the rule on the cabinet's depth, no pair is in conflict.
            return;
        }

        context.Report(new FindingDraft
        {
            Message = "No place of the uprights serves both {first} and {second}: the one needs them at least {leastMm} mm behind the front face, the other at most {greatestMm} mm.",
            Data = [("first", least.Id), ("second", greatest.Id), ("leastMm", all.LeastMm), ("greatestMm", all.GreatestMm)],
            Subject = $"{least.Id} and {greatest.Id}",
            Identity = ["conflict", least.Id, greatest.Id],
            Root = Roots.NoSetbackServes,
            Pointers = [least.Pointer, greatest.Pointer, Pointers.CabinetDepth],
            Actual = Quantities.Millimetres(all.GreatestMm),
            Limit = Quantities.Millimetres(all.LeastMm),
            Calculation = $"{DepthText.Least(survey, least)} > {DepthText.Greatest(survey, greatest)}",
            Cures = DepthCures.For(survey),
        });
    }

    private static void ReportSetback(RuleContext context, double setback, Mounted item)
    {
        var survey = context.Survey;
        var own = survey.Depth.Interval(item);
        var tooSmall = setback < own.LeastMm;
        var bound = tooSmall ? own.LeastMm : own.GreatestMm;
        context.Report(new FindingDraft
        {
            Message = tooSmall
                ? "The front uprights stand {setbackMm} mm behind the front face; {item} needs them at least {limitMm} mm behind it."
                : "The front uprights stand {setbackMm} mm behind the front face; {item} needs them at most {limitMm} mm behind it.",
            Data = [("setbackMm", setback), ("item", item.Id), ("limitMm", bound)],
            Subject = $"uprights, for {item.Id}",
            Identity = ["setback", item.Id],
            Root = Roots.SetbackIsWrong,
            Pointers = [Pointers.FrontSetback, item.Pointer],
            Actual = Quantities.Millimetres(setback),
            Limit = Quantities.Millimetres(bound),
            Calculation = Invariant($"{(tooSmall ? DepthText.Least(survey, item) : DepthText.Greatest(survey, item))} {(tooSmall ? '>' : '<')} {setback:0.###}"),
            Cures = DepthCures.For(survey),
        });
    }

    private static void CheckRearUprights(RuleContext context, double spacing)
    {
        var survey = context.Survey;
        var setback = survey.Cabinet.SetbackMm ?? survey.Depth.All.LeastMm;
        var end = survey.Cabinet.Depth.RearLimitMm;
        if (setback + spacing <= end + SetbackInterval.ToleranceMm)
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = survey.Cabinet.Depth.RearOpen
                ? "The rear uprights stand {placeMm} mm behind the front face; the cabinet ends at {endMm} mm."
                : "The rear uprights stand {placeMm} mm behind the front face; the rear door stands at {endMm} mm.",
            Data = [("placeMm", setback + spacing), ("endMm", end)],
            Subject = "rear uprights",
            Identity = ["rear uprights"],
            Pointers = [Pointers.Spacing],
            Actual = Quantities.Millimetres(setback + spacing),
            Limit = Quantities.Millimetres(end),
            Calculation = Invariant($"{setback:0.###} + {spacing:0.###} = {setback + spacing:0.###} > {end:0.###}"),
            Cures =
            [
                .. SpacingCures.Move(survey, new SetbackInterval(1, end - setback)) is { } move ? [move] : Array.Empty<Cure>(),
                .. DepthCures.Uprights(survey),
            ],
        });
    }
}
