using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cabling;

/// <summary>Finds racks with overfilled side channels.</summary>
public sealed class SideSpace : Rule
{
    /// <summary>Maximum fill of the side channels.</summary>
    public static RuleLimit FillPercent { get; } = new(
        "fillPercent", "maximum fill of the side channels", CableFill.MostPercent, "%", 1, 100, Stricter.Lower);

    private static readonly MessageWording Full = new(
        "cabling.side-space.full",
        "The cables have a cross-sectional area of {areaMm2} mm2, which is {percent} % of the side channels of a cabinet {widthMm} mm wide. "
            + "The limit is {limitPercent} %.");

    private static readonly MessageWording NoChannels = new(
        "cabling.side-space.no-channels",
        "The cables have a cross-sectional area of {areaMm2} mm2; a cabinet {widthMm} mm wide has no side channels.");

    private static readonly MissingData Missing = new(
        "cabling.side-space.missing",
        "Without the cables of all equipment, the fill of the side channels cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cabling.side-space",
        Title = "Side channels overfilled",
        Severity = Severity.Warning,
        What = "Finds racks whose cables fill more than 40 % of the cross-sectional area of the channels on both sides of the uprights.",
        Why = "Cables are squeezed and strained, cover labels and outlets, obstruct the airflow and leave no space for further cables.",
        Formula = "sum of n pi d2 / 4 > fillPercent / 100 x 2 x 100 x ((width - 482.6) / 2 - 20)",
        Sources = [Sources.En50174, Sources.CableChannelPractice],
        Limits = [FillPercent],
        Needs = ["/items/*/cables", "/items/*/power/plugs", "/cabinet/widthMm", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels"],
        Notes = ["An open frame, without doors and side panels, is not checked: its cables run in managers beside it."],
        Remedies = ["Use a cabinet 800 mm wide.", "Move the item with the most cables to another rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var cables = context.Survey.Cables;
        if (cables.Most is null || context.Survey.Cabinet.IsOpenFrame)
        {
            return;
        }

        var percent = context.Limit(FillPercent);
        if (Quantities.Round(cables.AreaMm2) > Quantities.Round(cables.SideChannelsMm2 * percent / 100))
        {
            Report(context, percent);
        }
        else if (!cables.IsKnown)
        {
            foreach (var item in context.Survey.Items.Where(CableSurvey.HidesCables))
            {
                context.ReportMissing(SitePointers.ItemCables[item.Index], Missing);
            }
        }
    }

    private static void Report(RuleContext context, double percent)
    {
        var survey = context.Survey;
        var cables = survey.Cables;
        var width = survey.Cabinet.WidthMm;
        var limit = cables.SideChannelsMm2 * percent / 100;
        context.Report(new FindingDraft
        {
            Message = cables.SideChannelsMm2 > 0 ? Full : NoChannels,
            Data = cables.SideChannelsMm2 > 0
                ? [
                    ("areaMm2", cables.AreaMm2), ("percent", CableFill.Percent(cables.AreaMm2, cables.SideChannelsMm2)),
                    ("widthMm", width), ("limitPercent", percent)
                ]
                : [("areaMm2", cables.AreaMm2), ("widthMm", width)],
            Subject = Subjects.SideChannels,
            Identity = [],
            Pointers = [Pointers.CabinetWidth, SitePointers.ItemCables[cables.Most!.Index]],
            Actual = Quantities.Of(cables.AreaMm2, "mm2"),
            Limit = Quantities.Of(limit, "mm2"),
            UtilisationPercent = limit > 0 ? 100 * cables.AreaMm2 / limit : null,
            Calculation = cables.SideChannelsMm2 > 0
                ? Invariant($"{cables.AreaMm2:0.###} > {percent:0.###} / 100 x 2 x {CableFill.ChannelDepthMm:0}")
                    + Invariant($" x (({width:0.###} - {RackGeometry.PanelWidthMm}) / 2 - {Allowances.SideChannelLossMm:0}) = {limit:0.###}")
                : Invariant($"({width:0.###} - {RackGeometry.PanelWidthMm}) / 2 - {Allowances.SideChannelLossMm:0}")
                    + Invariant($" = {((width - RackGeometry.PanelWidthMm) / 2) - Allowances.SideChannelLossMm:0.###} <= 0, no channel; ")
                    + Invariant($"{cables.AreaMm2:0.###} > 0"),
            Candidates = CablingRemedies.MoreChannel(survey, percent),
        });
    }
}
