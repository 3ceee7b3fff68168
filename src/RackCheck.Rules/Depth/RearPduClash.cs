using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds items that reach past the rear uprights and collide with a vertical PDU.</summary>
public sealed class RearPduClash : Rule
{
    /// <summary>Width of a vertical PDU, compared with the side channel.</summary>
    public static RuleLimit PduWidthMm { get; } = new(
        "pduWidthMm", "width of a vertical PDU, compared with the side channel", Allowances.VerticalPduWidthMm, "mm", 0, 300, Stricter.Higher);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.rear-pdu-clash",
        Title = "Item collides with a vertical PDU",
        Severity = Severity.Warning,
        What = "Finds items whose body, slides or cables reach past the rear uprights, in a cabinet with side channels too narrow for a vertical PDU.",
        Why = "The item collides with the PDU or its plugs. It cannot be mounted, or the PDU cannot be reached.",
        Formula = "(width - 482.6) / 2 - 20 < pduWidthMm, and body depth + rear projection > upright spacing",
        Sources = [Sources.ClearancePractice, Sources.Iec60297],
        Limits = [PduWidthMm],
        Needs = ["/pdus/*/mounting", "/cabinet/widthMm", "/cabinet/uprights/spacingMm", "/items/*/body/depthMm", "/items/*/rearProjectionMm"],
        Remedies = ["Set the rear uprights behind the deepest item.", "Use a cabinet 800 mm wide."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        ReportMissingMounting(context);
        var vertical = VerticalUnit(survey.Description.Pdus);
        var channel = Allowances.SideChannelMm(survey.Cabinet.WidthMm);
        var width = context.Limit(PduWidthMm);
        if (vertical is null || !Comparison.IsOver(width, channel))
        {
            return;
        }

        foreach (var item in survey.Items)
        {
            if (item.Face == Face.Rear || item.Category == ItemCategory.BlankingPanel)
            {
                continue;
            }

            if (item.Depth is not { } depth || survey.Cabinet.SpacingMm is not { } spacing)
            {
                ReportMissing(context, item);
            }
            else if (Comparison.IsOver(depth.ReachMm, spacing))
            {
                Report(context, item, depth, spacing, vertical.Value, channel, width);
            }
        }
    }

    private static void ReportMissingMounting(RuleContext context)
    {
        var units = context.Survey.Description.Pdus;
        for (var i = 0; i < units?.Count; i++)
        {
            if (units[i].Mounting is null)
            {
                context.ReportMissing(
                    Invariant($"/pdus/{i}/mounting"), "Without the mounting of the PDU, a collision behind the rear uprights cannot be checked.");
            }
        }
    }

    private static int? VerticalUnit(IReadOnlyList<Pdu>? units)
    {
        for (var i = 0; i < units?.Count; i++)
        {
            if (units[i].Mounting == PduMounting.Vertical)
            {
                return i;
            }
        }

        return null;
    }

    private static void ReportMissing(RuleContext context, MountedItem item)
    {
        const string Message = "A vertical PDU is mounted behind the rear uprights. Without this value, a collision cannot be checked.";
        if (item.Depth is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Message);
        }

        if (context.Survey.Cabinet.SpacingMm is null)
        {
            context.ReportMissing(Pointers.Spacing, Message);
        }
    }

    private static void Report(RuleContext context, MountedItem item, ItemDepth depth, double spacing, int vertical, double channel, double width)
    {
        var survey = context.Survey;
        var onSlides = item.SupportStyle == SupportStyle.Slides;
        context.Report(new FindingDraft
        {
            Message = onSlides
                ? "{item} with its slides ends {reachMm} mm behind the front uprights and collides with {pdu} at {spacingMm} mm. The side "
                    + "channel, {channelMm} mm wide, is too narrow for the PDU."
                : "{item} ends {reachMm} mm behind the front uprights and collides with {pdu} at {spacingMm} mm. The side channel, {channelMm} "
                    + "mm wide, is too narrow for the PDU.",
            Data =
            [
                ("item", item.Id), ("reachMm", depth.ReachMm), ("spacingMm", spacing),
                ("pdu", survey.Description.Pdus![vertical].Id), ("channelMm", channel),
            ],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [item.Pointer, Pointers.Pdu[vertical], Pointers.Spacing],
            Actual = Quantities.Millimetres(depth.ReachMm),
            Limit = Quantities.Millimetres(spacing),
            UtilisationPercent = 100 * depth.ReachMm / spacing,
            Calculation = Invariant($"{item.BodyDepthMm:0.###} + {item.RearProjectionMm:0.###} = {depth.ReachMm:0.###} > {spacing:0.###}; ")
                + Invariant($"({survey.Cabinet.WidthMm:0.###} - {RackGeometry.PanelWidthMm}) / 2 - {Allowances.SideChannelLossMm:0.###}")
                + Invariant($" = {((survey.Cabinet.WidthMm - RackGeometry.PanelWidthMm) / 2) - Allowances.SideChannelLossMm:0.###} < {width:0.###}"),
            Candidates = CandidatesFor(survey, width),
        });
    }

    private static List<RemedyCandidate> CandidatesFor(RackSurvey survey, double width)
    {
        var remedies = new List<RemedyCandidate>();
        var deepest = survey.Items.Where(i => i.Face == Face.Front).Max(i => i.Depth?.ReachMm ?? 0);
        if (SpacingRemedies.Move(survey, new SetbackInterval(deepest, double.PositiveInfinity)) is { } move)
        {
            remedies.Add(move);
        }

        foreach (var wider in CabinetSizes.WidthsMm)
        {
            if (!Comparison.IsOver(width, Allowances.SideChannelMm(wider)))
            {
                remedies.Add(new RemedyBuilder(survey).SetCabinet(c => c with { WidthMm = wider }).Titled(Invariant($"Use a cabinet {wider:0.###} mm wide")));
                break;
            }
        }

        return remedies;
    }
}
