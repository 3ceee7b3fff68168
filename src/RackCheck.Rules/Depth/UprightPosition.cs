using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Remedies;
using RackCheck.Rules.Survey;
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
        What = "Works out for each item which setbacks of the front uprights serve it, and finds racks in which none serves every item, naming the two in conflict; or in which the setback given serves not every item but another would.",
        Why = "All items of a face hang on the same pair of uprights, so one setback has to serve them all.",
        Formula = "front door depth + front projection <= setback <= cabinet depth - rear door depth - body depth - rear projection, for every item; items on the rear uprights mirrored, with the spacing",
        Sources = [Sources.Geometry, Sources.ClearancePractice],
        Needs = ["/cabinet/uprights/frontSetbackMm", "/cabinet/uprights/pitchMm", "/cabinet/depthMm", "/items/*/body/depthMm", "/items/*/frontProjectionMm", "/items/*/rearProjectionMm"],
        Remedies = ["Set the uprights where every item is served, on the pitch of their holes.", "Take a deeper cabinet.", "Leave the front door off.", "Take out what does not fit."],
        FailingRack = """
            {
              "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 },
              "items": [
                { "id": "wave-pc", "heightU": 4, "position": { "unit": 10 }, "body": { "depthMm": 600 }, "frontProjectionMm": 40, "rearProjectionMm": 75 },
                { "id": "gauge-amp", "heightU": 3, "position": { "unit": 20 }, "body": { "depthMm": 300 }, "frontProjectionMm": 76, "rearProjectionMm": 75 }
              ]
            }
            """,
        PassingRack = """
            {
              "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 },
              "items": [
                { "id": "wave-pc", "heightU": 4, "position": { "unit": 10 }, "body": { "depthMm": 600 }, "frontProjectionMm": 40, "rearProjectionMm": 75 },
                { "id": "gauge-amp", "heightU": 3, "position": { "unit": 20 }, "body": { "depthMm": 300 }, "frontProjectionMm": 75, "rearProjectionMm": 75 }
              ]
            }
            """,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        SayWhatIsUnknown(context);
        var all = survey.Depth.All;
        if (!survey.Depth.SomeSetbackServes)
        {
            ReportConflict(context);
        }
        else if (survey.Cabinet.SetbackMm is { } setback && !all.Holds(setback))
        {
            ReportSetback(context, setback);
        }
    }

    private static void SayWhatIsUnknown(RuleContext context)
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

        var (own, other) = (survey.Depth.Interval(least), survey.Depth.Interval(greatest));
        context.Report(new FindingDraft
        {
            Message = "No setback of the uprights serves both {first} and {second}: the one needs at least {leastMm} mm, the other at most {greatestMm} mm.",
            Data = [("first", least.Id), ("second", greatest.Id), ("leastMm", all.LeastMm), ("greatestMm", all.GreatestMm)],
            Subject = $"{least.Id} and {greatest.Id}",
            Identity = [least.Id, greatest.Id],
            Pointers = [least.Pointer, greatest.Pointer, Pointers.CabinetDepth],
            Actual = Quantities.Millimetres(all.GreatestMm),
            Limit = Quantities.Millimetres(all.LeastMm),
            Calculation = Invariant($"{least.Id}: {own.LeastMm:0.###} to {Bound(own.GreatestMm)}; {greatest.Id}: {other.LeastMm:0.###} to {other.GreatestMm:0.###}; {all.LeastMm:0.###} > {all.GreatestMm:0.###}"),
            Remedies = DepthRemedies.For(survey),
        });
    }

    private static void ReportSetback(RuleContext context, double setback)
    {
        var survey = context.Survey;
        var all = survey.Depth.All;
        var tooSmall = setback < all.LeastMm;
        var by = tooSmall ? survey.Depth.LeastBy! : survey.Depth.GreatestBy!;
        context.Report(new FindingDraft
        {
            Message = "The front uprights stand {setbackMm} mm behind the front face; {leastMm} to {greatestMm} mm would serve every item. {item} is not served.",
            Data = [("setbackMm", setback), ("leastMm", all.LeastMm), ("greatestMm", double.IsFinite(all.GreatestMm) ? all.GreatestMm : survey.Cabinet.Depth.RearLimitMm), ("item", by.Id)],
            Subject = $"uprights, for {by.Id}",
            Identity = ["setback"],
            Pointers = [Pointers.FrontSetback, by.Pointer],
            Actual = Quantities.Millimetres(setback),
            Limit = Quantities.Millimetres(tooSmall ? all.LeastMm : all.GreatestMm),
            Calculation = tooSmall
                ? Invariant($"{setback:0.###} < {all.LeastMm:0.###}")
                : Invariant($"{setback:0.###} > {all.GreatestMm:0.###}"),
            Remedies = DepthRemedies.For(survey),
        });
    }

    private static string Bound(double value) => double.IsFinite(value) ? Invariant($"{value:0.###}") : "any";
}
