using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds items that are used extended without a cable-management arm, or without the space for it.</summary>
public sealed class CableArm : Rule
{
    /// <summary>Depth of a cable-management arm behind the body.</summary>
    public static RuleLimit ArmDepthMm { get; } = new(
        "armDepthMm", "depth of a cable-management arm behind the body", Allowances.CableArmMm, "mm", 0, 500, Stricter.Higher);

    private static readonly MessageWording NoArm = new(
        "depth.cable-arm.no-arm",
        "{item} is used extended but has no cable-management arm. The arm needs {armMm} mm behind the body.");

    private static readonly MessageWording Space = new(
        "depth.cable-arm.space",
        "The space behind {item} is {roomMm} mm; its cable-management arm needs {armMm} mm.");

    private static readonly MessageWording NoSpace = new(
        "depth.cable-arm.no-space", "There is no space behind {item}; its cable-management arm needs {armMm} mm.");

    private static readonly MissingData Missing = new(
        "depth.cable-arm.missing",
        "Without this value, the space for the cable-management arm behind the body cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.cable-arm",
        Title = "Cable management missing for extended use",
        Severity = Severity.Warning,
        What = "Finds items that are used extended on their slides without a cable-management arm, or with too little space for the arm behind the body.",
        Why = "The cables pull out of their connectors, or the item cannot be pulled out.",
        Formula = "space behind the body = cabinet depth - rear door depth - setback - body depth >= armDepthMm; on the rear uprights setback "
            + "+ spacing - body depth - front door depth",
        Sources = [Sources.ClearancePractice],
        Limits = [ArmDepthMm],
        Needs = ["/items/*/support/usedExtended", "/items/*/support/cableArm", "/items/*/body/depthMm", "/cabinet/uprights/frontSetbackMm", "/cabinet/depthMm"],
        Remedies = ["Fit a cable-management arm.", "Use a deeper cabinet."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.Support is not { UsedExtended: true } support)
            {
                continue;
            }

            var room = RoomBehind(context.Survey, item);
            var arm = context.Limit(ArmDepthMm);
            if (support.CableArm != true)
            {
                ReportMissing(context, item, room, arm);
            }
            else if (room is null)
            {
                ReportMissing(context, item);
            }
            else if (Comparison.IsOver(arm, room.Value))
            {
                ReportNoRoom(context, item, room.Value, arm);
            }
        }
    }

    private static double? RoomBehind(RackSurvey survey, MountedItem item)
    {
        if (item.BodyDepthMm is not { } body || survey.Depth.SetbackMm is not { } setback)
        {
            return null;
        }

        return item.Face == Face.Front
            ? survey.Cabinet.Depth.RearLimitMm - setback - body
            : setback + survey.Cabinet.SpacingMm - body - survey.Cabinet.Depth.FrontDoorMm;
    }

    private static void ReportMissing(RuleContext context, MountedItem item)
    {
        if (item.BodyDepthMm is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Missing);
        }

        if (context.Survey.Depth.SetbackMm is null)
        {
            context.ReportMissing(Pointers.FrontSetback, Missing);
        }

        if (item.Face == Face.Rear && context.Survey.Cabinet.SpacingMm is null)
        {
            context.ReportMissing(Pointers.Spacing, Missing);
        }
    }

    private static void ReportMissing(RuleContext context, MountedItem item, double? room, double arm)
    {
        var survey = context.Survey;
        var builder = new RemedyBuilder(survey).SetSupport(item, item.Item!.Support! with { CableArm = true });
        RemedyCandidate? candidate = null;
        var tooLittle = room is { } given && Comparison.IsOver(arm, given) ? room : null;
        if (tooLittle is null)
        {
            candidate = builder.Titled(new(RemedyTitles.CableArm, ("item", item.Id)));
        }
        else if (DeeperFor(survey, item, arm) is { } depth)
        {
            candidate = builder.SetCabinet(c => c with { DepthMm = depth })
                .Titled(new(RemedyTitles.CableArmDeeper, ("item", item.Id), ("depthMm", depth)));
        }

        context.Report(new FindingDraft
        {
            Message = NoArm,
            Data = [("item", item.Id), ("armMm", arm)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemSupport[item.Index], item.Pointer],
            Actual = tooLittle is { } behind ? Quantities.Millimetres(behind) : null,
            Limit = tooLittle is null ? null : Quantities.Millimetres(arm),
            Calculation = tooLittle is { } known ? Calculation(survey, item, known, arm) : null,
            Candidates = candidate is null ? [] : [candidate],
        });
    }

    private static void ReportNoRoom(RuleContext context, MountedItem item, double room, double arm)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = room > 0 ? Space : NoSpace,
            Data = room > 0 ? [("item", item.Id), ("roomMm", room), ("armMm", arm)] : [("item", item.Id), ("armMm", arm)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [$"{item.Pointer}/support/cableArm", item.Pointer],
            Actual = Quantities.Millimetres(room),
            Limit = Quantities.Millimetres(arm),
            Calculation = Calculation(survey, item, room, arm),
            Candidates = DeeperFor(survey, item, arm) is { } depth
                ? [new RemedyBuilder(survey).SetCabinet(c => c with { DepthMm = depth }).Titled(RemedyTitles.Deep(depth))]
                : [],
        });
    }

    private static string Calculation(RackSurvey survey, MountedItem item, double room, double arm)
    {
        return item.Face == Face.Front
            ? Invariant($"{survey.Cabinet.Depth.RearLimitMm:0.###} - {survey.Depth.SetbackMm:0.###} - {item.BodyDepthMm:0.###} = {room:0.###} < {arm:0.###}")
            : Invariant($"{survey.Depth.SetbackMm:0.###} + {survey.Cabinet.SpacingMm:0.###} - {item.BodyDepthMm:0.###}")
                + Invariant($" - {survey.Cabinet.Depth.FrontDoorMm:0.###} = {room:0.###} < {arm:0.###}");
    }

    // A deeper cabinet gives more space behind front-mounted items only: the rear uprights keep their distance from the front.
    private static double? DeeperFor(RackSurvey survey, MountedItem item, double arm)
    {
        foreach (var depth in item.Face == Face.Front ? CabinetSizes.DepthsMm : [])
        {
            // Without a specified setback, the uprights may have another setback in a deeper cabinet.
            var other = survey.Cabinet.Depth with { DepthMm = depth };
            if (depth > survey.Cabinet.Depth.DepthMm
                && other.RearLimitMm - survey.Depth.SetbackIn(other) - item.BodyDepthMm is { } left && !Comparison.IsOver(arm, left))
            {
                return depth;
            }
        }

        return null;
    }
}
