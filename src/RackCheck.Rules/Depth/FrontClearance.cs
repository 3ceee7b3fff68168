using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds items that foul the front door at the specified setback.</summary>
public sealed class FrontClearance : Rule
{
    private static readonly MessageWording Defect = new(
        "depth.front-clearance",
        "{item} fouls the front door: it needs a setback of {neededMm} mm, and the setback of the front uprights is {setbackMm} mm.");

    private static readonly MissingData Missing = new(
        "depth.front-clearance.missing",
        "The item is mounted on the rear uprights. Without this value, the clearance to the front door cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.front-clearance",
        Title = "Fouls the front door",
        Severity = Severity.Error,
        What = "Finds items whose handles, knobs or cables foul the front door at the specified setback of the uprights. For items on the rear "
            + "uprights, the rear end of the body is checked.",
        Why = "The door does not close or crushes the cables.",
        Formula = "front uprights: setback - front projection >= front door depth; rear uprights: setback + spacing - body depth - rear "
            + "projection >= front door depth. Without a front door, items may protrude",
        Sources = [Sources.Geometry, Sources.ClearancePractice],
        Needs = ["/cabinet/uprights/frontSetbackMm", "/cabinet/frontDoor", "/items/*/frontProjectionMm", "/cabinet/uprights/spacingMm"],
        Remedies =
        [
            "Set the uprights to a setback that suits every item.",
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
        if (survey.Cabinet.SetbackMm is not { } setback)
        {
            // Without a specified setback, the uprights get one that suits every item. Other depth rules report that there is none.
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
            if (!Comparison.IsOver(interval.LeastMm, setback))
            {
                continue;
            }

            var door = survey.Cabinet.Depth.FrontDoorMm;
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("item", item.Id), ("setbackMm", setback), ("neededMm", interval.LeastMm)],
                Subject = survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [item.Pointer, Pointers.FrontSetback],
                Actual = Quantities.Millimetres(setback),
                Limit = Quantities.Millimetres(interval.LeastMm),
                Calculation = item.Face == Face.Front
                    ? Invariant($"{door:0.###} + {item.FrontProjectionMm:0.###} = {interval.LeastMm:0.###} > {setback:0.###}")
                    : Invariant($"{door:0.###} + {item.BodyDepthMm:0.###} + {item.RearProjectionMm:0.###} - {survey.Cabinet.SpacingMm:0.###}")
                        + Invariant($" = {interval.LeastMm:0.###} > {setback:0.###}"),
                Candidates = DepthRemedies.For(survey),
            });
        }
    }

    private static void ReportMissing(RuleContext context, MountedItem item)
    {
        if (item.Depth is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Missing);
        }

        if (context.Survey.Cabinet.SpacingMm is null)
        {
            context.ReportMissing(Pointers.Spacing, Missing);
        }
    }
}
