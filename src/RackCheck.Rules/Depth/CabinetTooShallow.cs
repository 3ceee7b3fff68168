using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds cabinets in which no setback of the uprights suits every item.</summary>
public sealed class CabinetTooShallow : Rule
{
    private static readonly MessageWording One = new(
        "depth.cabinet-too-shallow.one", "{item} needs a cabinet {neededMm} mm deep; this one is {depthMm} mm deep.");

    private static readonly MessageWording Two = new(
        "depth.cabinet-too-shallow.two",
        "{item} and {other} together need a cabinet {neededMm} mm deep; this one is {depthMm} mm deep.");

    private static readonly MissingData MissingBodyDepth = new(
        "depth.cabinet-too-shallow.missing-body-depth",
        "Without every body depth, the minimum cabinet depth cannot be calculated.");

    private static readonly MissingData MissingSpacing = new(
        "depth.cabinet-too-shallow.missing-spacing",
        "Items are mounted on the rear uprights. Without the upright spacing, the minimum cabinet depth cannot be calculated.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.cabinet-too-shallow",
        Title = "Cabinet too shallow",
        Severity = Severity.Error,
        What = "Finds cabinets in which no setback of the uprights suits every item, and calculates the minimum cabinet depth.",
        Why = "With any setback of the uprights, one of the doors does not close.",
        Formula = "minimum depth = largest (front door depth + front projection) + largest (body depth + rear projection) + rear door depth; "
            + "items on the rear uprights mirrored, with the spacing",
        Sources = [Sources.Geometry, Sources.ClearancePractice, Sources.CabinetSizePractice],
        Needs =
        [
            "/cabinet/depthMm", "/cabinet/frontDoor", "/cabinet/rearDoor", "/items/*/body/depthMm", "/items/*/frontProjectionMm",
            "/items/*/rearProjectionMm", "/cabinet/uprights/spacingMm",
        ],
        Notes =
        [
            "An absent door counts as 25 mm deep, as an assumption of the report.",
        ],
        Remedies =
        [
            "Use the smallest common depth (600, 800, 1000, 1200) that is sufficient.",
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
        if (survey.Depth.SomeSetbackServes)
        {
            return;
        }

        var greatest = survey.Depth.GreatestBy!;
        var (cabinet, all) = (survey.Cabinet.Depth, survey.Depth.All);

        // The deepest item is named alone where it needs this depth alone, though others project as far in front.
        var isAlone = greatest.Face == Face.Front && !Comparison.IsOver(all.LeastMm, MountingDepth.LeastForProjection(cabinet, greatest.FrontProjectionMm));
        var least = isAlone ? greatest : survey.Depth.LeastBy ?? greatest;
        var needed = MountingDepth.LeastCabinetDepthMm(cabinet, all);
        var same = ReferenceEquals(least, greatest);
        context.Report(new FindingDraft
        {
            Message = same ? One : Two,
            Data = same
                ? [("item", greatest.Id), ("neededMm", needed), ("depthMm", cabinet.DepthMm)]
                : [("item", greatest.Id), ("other", least.Id), ("neededMm", needed), ("depthMm", cabinet.DepthMm)],
            Subject = same ? Subjects.CabinetFor(greatest.Id) : Subjects.CabinetFor(greatest.Id, least.Id),
            // The depth of the cabinet is the defect, whichever items need the most; the utilisation says how bad it is.
            Identity = ["depth"],
            Pointers = same ? [Pointers.CabinetDepth, greatest.Pointer] : [Pointers.CabinetDepth, greatest.Pointer, least.Pointer],
            Actual = Quantities.Millimetres(cabinet.DepthMm),
            Limit = Quantities.Millimetres(needed),
            UtilisationPercent = 100 * needed / cabinet.DepthMm,
            Calculation = Calculation(survey, least, greatest, needed),
            Candidates = DepthRemedies.For(survey),
        });
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

    // Front-mounted items: the sum of the depths. Rear-mounted items: the limits of the setback, which give the same result.
    private static string Calculation(RackSurvey survey, MountedItem least, MountedItem greatest, double needed)
    {
        var cabinet = survey.Cabinet.Depth;
        var all = survey.Depth.All;
        if (least.Face != Face.Front || greatest.Face != Face.Front)
        {
            return (all.LeastMm > 0 ? $"setback at least {DepthText.Least(survey, least)}; " : "")
                + $"setback at most {DepthText.Greatest(survey, greatest)}; "
                + Invariant($"{cabinet.DepthMm:0.###} + {all.LeastMm:0.###} - {Term(all.GreatestMm)} = {needed:0.###} > {cabinet.DepthMm:0.###}");
        }

        var before = cabinet.FrontOpen ? "0" : Invariant($"{cabinet.FrontDoorMm:0.###} + {least.FrontProjectionMm:0.###}");
        return Invariant($"{before} + {greatest.BodyDepthMm ?? 0:0.###} + {greatest.RearProjectionMm:0.###} + {cabinet.RearDoorMm:0.###}")
            + Invariant($" = {needed:0.###} > {cabinet.DepthMm:0.###}");
    }

    private static string Term(double value) => value < 0 ? Invariant($"({value:0.###})") : Invariant($"{value:0.###}");
}
