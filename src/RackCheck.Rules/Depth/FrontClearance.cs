using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds items that foul the front door at the setback given.</summary>
public sealed class FrontClearance : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.front-clearance",
        Title = "Fouls the front door",
        Severity = Severity.Error,
        What = "Finds items whose handles, knobs or cables foul the front door at the setback of the uprights that is given; of items on the rear uprights it is the body that reaches forward.",
        Why = "The door does not close, or crushes the cables.",
        Formula = "front uprights: setback - front projection >= front door depth; rear uprights: setback + spacing - body depth - rear projection >= front door depth. Without a front door what stands out may pass",
        Sources = [Sources.Geometry, Sources.ClearancePractice],
        Needs = ["/cabinet/uprights/frontSetbackMm", "/cabinet/frontDoor", "/items/*/frontProjectionMm", "/cabinet/uprights/spacingMm"],
        Remedies = ["Set the uprights where every item is served.", "Take a deeper cabinet.", "Leave the front door off.", "Take out what does not fit."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        if (survey.Cabinet.SetbackMm is not { } setback)
        {
            // Movable uprights go where every item is served; where no setback does, other rules of this theme say so.
            return;
        }

        foreach (var item in survey.Items)
        {
            if (item.Face == Face.Rear && (item.Depth is null || survey.Cabinet.SpacingMm is null))
            {
                ReportMissing(context, item);
                continue;
            }

            var interval = survey.Depth.Interval(item);
            if (setback >= interval.LeastMm - SetbackInterval.ToleranceMm)
            {
                continue;
            }

            var door = survey.Cabinet.Depth.FrontDoorMm;
            context.Report(new FindingDraft
            {
                Message = "{item} keeps the front door from closing: the front uprights stand {setbackMm} mm behind the front face, and it needs {neededMm} mm.",
                Data = [("item", item.Id), ("setbackMm", setback), ("neededMm", interval.LeastMm)],
                Subject = survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [item.Pointer, Pointers.FrontSetback],
                Actual = Quantities.Millimetres(setback),
                Limit = Quantities.Millimetres(interval.LeastMm),
                Calculation = item.Face == Face.Front
                    ? Invariant($"{door:0.###} + {item.FrontProjectionMm:0.###} = {interval.LeastMm:0.###} > {setback:0.###}")
                    : Invariant($"{door:0.###} + {item.BodyDepthMm:0.###} + {item.RearProjectionMm:0.###} - {survey.Cabinet.SpacingMm:0.###} = {interval.LeastMm:0.###} > {setback:0.###}"),
                Cures = DepthCures.For(survey),
            });
        }
    }

    private static void ReportMissing(RuleContext context, Mounted item)
    {
        const string Message = "It hangs on the rear uprights; without this it cannot be said how far it reaches to the front door.";
        if (item.Depth is null)
        {
            context.Lacks(Pointers.ItemBodyDepth[item.Index], Message);
        }

        if (context.Survey.Cabinet.SpacingMm is null)
        {
            context.Lacks(Pointers.Spacing, Message);
        }
    }
}
