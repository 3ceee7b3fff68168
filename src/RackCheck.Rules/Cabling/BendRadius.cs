using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cabling;

/// <summary>Finds equipment with too little space behind it for the bend radius of its cables.</summary>
public sealed class BendRadius : Rule
{
    /// <summary>Minimum bend radius of a cable, in cable diameters.</summary>
    public static RuleLimit BendFactor { get; } = new(
        "bendFactor", "minimum bend radius of a cable, in cable diameters", CableFill.BendDiameters, "diameters", 1, 30, Stricter.Higher);

    private static readonly MessageWording Space = new(
        "cabling.bend-radius.space",
        "The space behind {item} is {spaceMm} mm; its cables, {diameterMm} mm in diameter, need {neededMm} mm to bend.");

    private static readonly MessageWording NoSpace = new(
        "cabling.bend-radius.no-space",
        "There is no space behind {item}; its cables, {diameterMm} mm in diameter, need {neededMm} mm to bend.");

    private static readonly MissingData Missing = new(
        "cabling.bend-radius.missing",
        "Without this value, the cable bend radius behind the equipment cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cabling.bend-radius",
        Title = "Space behind equipment below the cable bend radius",
        Severity = Severity.Warning,
        What = "Finds items with less space between body and door than four times the diameter of their thickest cable.",
        Why = "A cable bent below its minimum bend radius loses data rate or breaks inside, and it strains its connector.",
        Formula = "depth - rear door - setback - body depth < bendFactor x d; on the rear uprights setback + spacing - body depth - front door",
        Sources = [Sources.CableBend, Sources.Geometry],
        Limits = [BendFactor],
        Needs =
        [
            "/items/*/cables", "/items/*/body/depthMm", "/cabinet/depthMm", "/cabinet/rearDoor", "/cabinet/uprights/frontSetbackMm",
            "/cabinet/uprights/spacingMm",
        ],
        Remedies = ["Set the uprights further forward.", "Use a deeper cabinet.", "Move it to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var factor = context.Limit(BendFactor);
        foreach (var item in context.Survey.Items)
        {
            if (CableSurvey.ThickestMm(item) is not (> 0 and var thickest))
            {
                continue;
            }

            if (context.Survey.Cables.SpaceBehindMm(item) is not { } space)
            {
                ReportMissing(context, item);
            }
            else if (Comparison.IsOver(factor * thickest, space))
            {
                Report(context, item, space, thickest, factor);
            }
        }
    }

    private static void ReportMissing(RuleContext context, MountedItem item)
    {
        var survey = context.Survey;
        if (item.BodyDepthMm is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Missing);
        }

        if (survey.Depth.SetbackMm is null)
        {
            context.ReportMissing(Pointers.FrontSetback, Missing);
        }

        if (item.Face == Face.Rear && survey.Cabinet.SpacingMm is null)
        {
            context.ReportMissing(Pointers.Spacing, Missing);
        }
    }

    private static void Report(RuleContext context, MountedItem item, double space, double thickest, double factor)
    {
        var survey = context.Survey;
        var needed = factor * thickest;
        var cabinet = survey.Cabinet.Depth;
        var setback = survey.Depth.SetbackMm!.Value;
        context.Report(new FindingDraft
        {
            Message = space > 0 ? Space : NoSpace,
            Data = space > 0
                ? [("item", item.Id), ("spaceMm", space), ("diameterMm", thickest), ("neededMm", needed)]
                : [("item", item.Id), ("diameterMm", thickest), ("neededMm", needed)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [SitePointers.ItemCables[item.Index], Pointers.CabinetDepth],
            Actual = Quantities.Millimetres(space),
            Limit = Quantities.Millimetres(needed),
            Calculation = item.Face == Face.Front
                ? Invariant($"{cabinet.DepthMm:0.###} - {cabinet.RearDoorMm:0.###} - {setback:0.###} - {item.BodyDepthMm:0.###} = {space:0.###}")
                    + Invariant($" < {factor:0.###} x {thickest:0.###} = {needed:0.###}")
                : Invariant($"{setback:0.###} + {survey.Cabinet.SpacingMm:0.###} - {item.BodyDepthMm:0.###} - {cabinet.FrontDoorMm:0.###}")
                    + Invariant($" = {space:0.###} < {factor:0.###} x {thickest:0.###} = {needed:0.###}"),
            Candidates = CablingRemedies.MoreBehind(survey, item, factor),
        });
    }
}
