using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds items that foul the rear door at the specified setback.</summary>
public sealed class RearClearance : Rule
{
    private static readonly MessageWording OpenRear = new(
        "depth.rear-clearance.open-rear",
        "{item} reaches {reachMm} mm behind the front face; the cabinet ends at {endMm} mm.");

    private static readonly MessageWording Door = new(
        "depth.rear-clearance.door",
        "{item} reaches {reachMm} mm behind the front face; the rear door is at {endMm} mm.");

    private static readonly MissingData MissingBodyDepth = new(
        "depth.rear-clearance.missing-body-depth",
        "Without the body depth, the clearance to the rear door cannot be checked.");

    private static readonly MissingData MissingSpacing = new(
        "depth.rear-clearance.missing-spacing",
        "Items are mounted on the rear uprights. Without the upright spacing, the clearance to the rear door cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.rear-clearance",
        Title = "Fouls the rear door",
        Severity = Severity.Error,
        What = "Finds items whose body, connectors or cable bends foul the rear door at the specified setback of the uprights. For items on "
            + "the rear uprights, the front projection is checked.",
        Why = "The door does not close or kinks the cables at their connectors.",
        Formula = "front uprights: setback + body depth + rear projection <= cabinet depth - rear door depth; rear uprights: setback + spacing "
            + "+ front projection <= cabinet depth - rear door depth",
        Sources = [Sources.Geometry, Sources.ClearancePractice],
        Needs =
        [
            "/cabinet/uprights/frontSetbackMm", "/cabinet/depthMm", "/cabinet/rearDoor", "/items/*/body/depthMm", "/items/*/rearProjectionMm",
            "/cabinet/uprights/spacingMm",
        ],
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
        foreach (var item in survey.Items)
        {
            if (!IsKnown(context, item) || survey.Cabinet.SetbackMm is not { } setback)
            {
                continue;
            }

            var interval = survey.Depth.Interval(item);
            if (!Comparison.IsOver(setback, interval.GreatestMm))
            {
                continue;
            }

            var end = survey.Cabinet.Depth.RearLimitMm;
            var needed = end + setback - interval.GreatestMm;
            context.Report(new FindingDraft
            {
                Message = survey.Cabinet.Depth.RearOpen ? OpenRear : Door,
                Data = [("item", item.Id), ("reachMm", needed), ("endMm", end)],
                Subject = survey.Cabinet.Place(item),
                Identity = [item.Id],
                Pointers = [item.Pointer, Pointers.FrontSetback],
                Actual = Quantities.Millimetres(needed),
                Limit = Quantities.Millimetres(end),
                UtilisationPercent = end > 0 ? 100 * needed / end : null,
                Calculation = item.Face == Face.Front
                    ? Invariant($"{setback:0.###} + {item.BodyDepthMm:0.###} + {item.RearProjectionMm:0.###} = {needed:0.###} > {end:0.###}")
                    : Invariant($"{setback:0.###} + {survey.Cabinet.SpacingMm:0.###}")
                        + Invariant($" + {(survey.Cabinet.Depth.RearOpen ? 0 : item.FrontProjectionMm):0.###} = {needed:0.###} > {end:0.###}"),
                Candidates = DepthRemedies.For(survey),
            });
        }
    }

    private static bool IsKnown(RuleContext context, MountedItem item)
    {
        if (item.Face == Face.Rear)
        {
            // On the rear uprights only the front projection faces this door, so the body depth does not matter here.
            if (context.Survey.Cabinet.SpacingMm is null)
            {
                context.ReportMissing(Pointers.Spacing, MissingSpacing);
                return false;
            }

            return item.Depth is not null;
        }

        if (item.Depth is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], MissingBodyDepth);
        }

        return item.Depth is not null;
    }
}
