using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>Finds vertical PDUs in the way of bodies that reach past the rear uprights.</summary>
public sealed class RearPduClash : Rule
{
    /// <summary>Width of a vertical PDU, compared with the clear width beside a body.</summary>
    public static RuleLimit PduWidthMm { get; } = new(
        "pduWidthMm", "width of a vertical PDU, compared with the clear width beside a body", Allowances.VerticalPduWidthMm, "mm", 0, 300, Stricter.Higher);

    private static readonly WordingChoice Defect = new(
        "depth.rear-pdu-clash",
        "[one:The body of {items}, {bodyMm} mm wide, reaches|The bodies of {items}, up to {bodyMm} mm wide, reach] past the rear uprights. "
            + "Beside [one:it|them] there are {roomMm} mm; {pdu} needs {neededMm} mm.");

    private static readonly MissingData Missing = new(
        "depth.rear-pdu-clash.missing",
        "A vertical PDU is mounted behind the rear uprights. Without this value, a collision cannot be checked.");

    private static readonly MissingData MissingMounting = new(
        "depth.rear-pdu-clash.missing-mounting",
        "Without the mounting of the PDU, a collision behind the rear uprights cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "depth.rear-pdu-clash",
        Title = "Item collides with a vertical PDU",
        Severity = Severity.Warning,
        What = "Finds vertical PDUs beside bodies that reach past the rear uprights and leave too little width for a PDU. Cables are soft and give way; "
            + "panels end at the front uprights.",
        Why = "The body collides with the PDU or its plugs. It cannot be mounted, or the PDU cannot be reached.",
        Formula = "(width - body width) / 2 - 20 < pduWidthMm, and body depth > upright spacing",
        Sources = [Sources.PduPlacePractice, Sources.Iec60297],
        Limits = [PduWidthMm],
        Needs =
        [
            "/pdus/*/mounting", "/cabinet/widthMm", "/cabinet/uprights/spacingMm", "/cabinet/uprights/openingMm", "/items/*/body/depthMm",
            "/items/*/body/widthMm",
        ],
        Notes = ["A shelf of unknown width is 10 mm narrower than the opening between the uprights."],
        Remedies = ["Set the rear uprights behind the deepest body.", "Use a cabinet 800 mm wide."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var units = context.Survey.Description.Pdus ?? [];
        for (var i = 0; i < units.Count; i++)
        {
            if (units[i].Mounting is null)
            {
                context.ReportMissing(Invariant($"/pdus/{i}/mounting"), MissingMounting);
            }
        }

        if (!units.Any(u => u.Mounting == PduMounting.Vertical))
        {
            return;
        }

        var needed = context.Limit(PduWidthMm);
        var bodies = Array.FindAll(context.Survey.Items, i => IsInTheWay(context, i, needed));
        for (var i = 0; bodies.Length > 0 && i < units.Count; i++)
        {
            if (units[i].Mounting == PduMounting.Vertical)
            {
                Report(context, i, units[i].Id, bodies, needed);
            }
        }
    }

    private static bool IsInTheWay(RuleContext context, MountedItem item, double needed)
    {
        var cabinet = context.Survey.Cabinet;
        if (item.Face == Face.Rear || item.Category == ItemCategory.BlankingPanel
            || !Comparison.IsOver(needed, BesideMm(cabinet, item)) || (item.BodyDepthMm is { } d && cabinet.SpacingMm is { } s && !Comparison.IsOver(d, s)))
        {
            return false;
        }

        var width = WidthMm(cabinet, item);
        if (width is null)
        {
            context.ReportMissing(Pointers.ItemBodyWidth[item.Index], Missing);
        }

        if (item.BodyDepthMm is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[item.Index], Missing);
        }

        if (cabinet.SpacingMm is null)
        {
            context.ReportMissing(Pointers.Spacing, Missing);
        }

        return width is not null && item.BodyDepthMm is not null && cabinet.SpacingMm is not null;
    }

    private static double? WidthMm(CabinetFacts cabinet, MountedItem item) =>
        item.Item!.Body?.WidthMm ?? (item.Category == ItemCategory.Shelf ? cabinet.OpeningMm - Allowances.ShelfWidthLossMm : null);

    // No body between the uprights is wider than their opening.
    private static double BesideMm(CabinetFacts cabinet, MountedItem item) =>
        Allowances.BesideMm(cabinet.WidthMm, WidthMm(cabinet, item) ?? cabinet.OpeningMm);

    private static void Report(RuleContext context, int index, string pdu, MountedItem[] bodies, double needed)
    {
        var cabinet = context.Survey.Cabinet;
        var ordered = bodies.OrderBy(b => b.Id, StringComparer.Ordinal).ToArray();
        var width = bodies.Max(b => WidthMm(cabinet, b)!.Value);
        var room = Allowances.BesideMm(cabinet.WidthMm, width);
        var deepest = bodies.Max(b => b.BodyDepthMm!.Value);
        context.Report(new FindingDraft
        {
            Message = Defect.With(bodies.Length == 1 ? "one" : ""),
            Data =
            [
                ("pdu", pdu), ("items", Names.Ids(ordered.Select(b => b.Id))), ("bodyMm", width), ("roomMm", room), ("neededMm", needed),
                ("depthMm", deepest), ("spacingMm", cabinet.SpacingMm!.Value),
            ],
            Subject = Subjects.Id(pdu),
            Identity = [pdu],
            Pointers = [Pointers.Pdu[index], .. ordered.Select(b => b.Pointer), Pointers.Spacing],
            Actual = Quantities.Millimetres(room),
            Limit = Quantities.Millimetres(needed),
            UtilisationPercent = room > 0 ? 100 * needed / room : null,
            Calculation = Invariant($"({cabinet.WidthMm:0.###} - {width:0.###}) / 2 - {Allowances.SideChannelLossMm:0.###}")
                + Invariant($" = {((cabinet.WidthMm - width) / 2) - Allowances.SideChannelLossMm:0.###} < {needed:0.###}; ")
                + Invariant($"{deepest:0.###} > {cabinet.SpacingMm:0.###}"),
            Candidates = CandidatesFor(context.Survey, width, deepest, needed),
        });
    }

    private static IEnumerable<RemedyCandidate> CandidatesFor(RackSurvey survey, double width, double deepest, double needed)
    {
        if (SpacingRemedies.Move(survey, new SetbackInterval(deepest, double.PositiveInfinity)) is { } move)
        {
            yield return move;
        }

        foreach (var wider in CabinetSizes.WidthsMm.Where(w => w > survey.Cabinet.WidthMm && !Comparison.IsOver(needed, Allowances.BesideMm(w, width))).Take(1))
        {
            yield return new RemedyBuilder(survey).SetCabinet(c => c with { WidthMm = wider }).Titled(RemedyTitles.Wide(wider));
        }
    }
}
