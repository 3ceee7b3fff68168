using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds items that are pulled forward while they work and whose cables are not led along.</summary>
public sealed class CableArm : Rule
{
    private static readonly RuleLimit ArmDepthMm = new(
        "armDepthMm", "depth that a cable-management arm takes behind a body", Allowances.CableArmMm, "mm", 0, 500, Stricter.Higher);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.cable-arm",
        Title = "Cables are not led along when pulled out",
        Severity = Severity.Warning,
        What = "Finds items that are pulled forward while they work without a cable-management arm, or with one that has no room behind the body.",
        Why = "Cables are torn out of their connectors, or the item cannot be pulled out at all.",
        Formula = "room behind the body = cabinet depth - rear door depth - setback - body depth >= armDepthMm; on the rear uprights setback + spacing - body depth - front door depth",
        Sources = [Sources.ClearancePractice],
        Limits = [ArmDepthMm],
        Needs = ["/items/*/support/usedExtended", "/items/*/support/cableArm", "/items/*/body/depthMm", "/cabinet/uprights/frontSetbackMm", "/cabinet/depthMm"],
        Remedies = ["Fit a cable-management arm.", "Take a deeper cabinet."],
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
            else if (room < arm - SetbackInterval.ToleranceMm)
            {
                ReportNoRoom(context, item, room.Value, arm);
            }
        }
    }

    private static double? RoomBehind(RackSurvey survey, Mounted item)
    {
        if (item.BodyDepthMm is not { } body || survey.Depth.SetbackMm is not { } setback)
        {
            return null;
        }

        return item.Face == Face.Front
            ? survey.Cabinet.Depth.RearLimitMm - setback - body
            : setback + survey.Cabinet.SpacingMm - body - survey.Cabinet.Depth.FrontDoorMm;
    }

    private static void ReportMissing(RuleContext context, Mounted item)
    {
        const string Message = "Its cable-management arm needs room behind the body; without this it cannot be said whether it has it.";
        if (item.BodyDepthMm is null)
        {
            context.Lacks(Pointers.ItemBodyDepth[item.Index], Message);
        }

        if (context.Survey.Depth.SetbackMm is null)
        {
            context.Lacks(Pointers.FrontSetback, Message);
        }

        if (item.Face == Face.Rear && context.Survey.Cabinet.SpacingMm is null)
        {
            context.Lacks(Pointers.Spacing, Message);
        }
    }

    private static void ReportMissing(RuleContext context, Mounted item, double? room, double arm)
    {
        var survey = context.Survey;
        var builder = new CureBuilder(survey).SetSupport(item, item.Item!.Support! with { CableArm = true });
        Cure? cure = null;
        var tooLittle = room < arm - SetbackInterval.ToleranceMm ? room : null;
        if (tooLittle is null)
        {
            cure = builder.Titled($"Fit a cable-management arm behind {item.Id}");
        }
        else if (DeeperFor(survey, item, arm) is { } depth)
        {
            cure = builder.SetCabinet(c => c with { DepthMm = depth })
                .Titled(Invariant($"Fit a cable-management arm behind {item.Id} and take a cabinet {depth:0.###} mm deep"));
        }

        context.Report(new FindingDraft
        {
            Message = "{item} is pulled forward while it works but has no cable-management arm, which takes {armMm} mm behind it.",
            Data = [("item", item.Id), ("armMm", arm)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemSupport[item.Index], item.Pointer],
            Actual = tooLittle is { } behind ? Quantities.Millimetres(behind) : null,
            Limit = tooLittle is null ? null : Quantities.Millimetres(arm),
            Calculation = tooLittle is { } known ? Calculation(survey, item, known, arm) : null,
            Cures = cure is null ? [] : [cure],
        });
    }

    private static void ReportNoRoom(RuleContext context, Mounted item, double room, double arm)
    {
        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = room > 0
                ? "Behind {item} there are {roomMm} mm; its cable-management arm takes {armMm} mm."
                : "Behind {item} there is no room; its cable-management arm takes {armMm} mm.",
            Data = room > 0 ? [("item", item.Id), ("roomMm", room), ("armMm", arm)] : [("item", item.Id), ("armMm", arm)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [$"{item.Pointer}/support/cableArm", item.Pointer],
            Actual = Quantities.Millimetres(room),
            Limit = Quantities.Millimetres(arm),
            Calculation = Calculation(survey, item, room, arm),
            Cures = DeeperFor(survey, item, arm) is { } depth
                ? [new CureBuilder(survey).SetCabinet(c => c with { DepthMm = depth }).Titled(Invariant($"Take a cabinet {depth:0.###} mm deep"))]
                : [],
        });
    }

    private static string Calculation(RackSurvey survey, Mounted item, double room, double arm)
    {
        return item.Face == Face.Front
            ? Invariant($"{survey.Cabinet.Depth.RearLimitMm:0.###} - {survey.Depth.SetbackMm:0.###} - {item.BodyDepthMm:0.###} = {room:0.###} < {arm:0.###}")
            : Invariant($"{survey.Depth.SetbackMm:0.###} + {survey.Cabinet.SpacingMm:0.###} - {item.BodyDepthMm:0.###} - {survey.Cabinet.Depth.FrontDoorMm:0.###} = {room:0.###} < {arm:0.###}");
    }

    // A deeper cabinet gives room behind front-mounted items only: the rear uprights keep their distance from the front.
    private static double? DeeperFor(RackSurvey survey, Mounted item, double arm)
    {
        foreach (var depth in item.Face == Face.Front ? CabinetSizes.DepthsMm : [])
        {
            // Uprights that are not set yet may stand elsewhere in a deeper cabinet.
            var other = survey.Cabinet.Depth with { DepthMm = depth };
            if (depth > survey.Cabinet.Depth.DepthMm
                && other.RearLimitMm - survey.Depth.SetbackIn(other) - item.BodyDepthMm >= arm - SetbackInterval.ToleranceMm)
            {
                return depth;
            }
        }

        return null;
    }
}
