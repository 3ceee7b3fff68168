using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cabling;

/// <summary>Finds more cables than the channels beside the uprights take.</summary>
public sealed class SideSpace : Rule
{
    private static readonly RuleLimit FillPercent = new(
        "fillPercent", "share of the side channels that cables may take", CableFill.MostPercent, "%", 1, 100, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cabling.side-space",
        Title = "Side channels overfull",
        Severity = Severity.Warning,
        What = "Finds racks whose cables together take more than 40 % of the channels on both sides of the uprights.",
        Why = "Cables are pressed and pulled tight, hide labels and outlets, and stand in the way of air and of the next cable.",
        Formula = "sum of n pi d2 / 4 > fillPercent / 100 x 2 x 100 x ((width - 482.6) / 2 - 20)",
        Sources = [Sources.En50174, Sources.CableChannelPractice],
        Limits = [FillPercent],
        Needs = ["/items/*/cables", "/items/*/power/plugs", "/cabinet/widthMm"],
        Remedies = ["Take a cabinet 800 mm wide.", "Take what has most cables out of this rack."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var cables = context.Survey.Cables;
        if (cables.Most is null)
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
                context.Lacks(SitePointers.ItemCables[item.Index], "What cables leave some of the equipment is not given, so it cannot be said whether the side channels hold them all.");
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
            Message = cables.SideChannelsMm2 > 0
                ? "The cables take {areaMm2} mm2, which is {percent} % of the channels at the sides of a cabinet {widthMm} mm wide; {limitPercent} % is the most."
                : "The cables take {areaMm2} mm2, and a cabinet {widthMm} mm wide has no channels for them at its sides.",
            Data = cables.SideChannelsMm2 > 0
                ? [("areaMm2", cables.AreaMm2), ("percent", CableFill.Percent(cables.AreaMm2, cables.SideChannelsMm2)), ("widthMm", width), ("limitPercent", percent)]
                : [("areaMm2", cables.AreaMm2), ("widthMm", width)],
            Subject = "side channels",
            Identity = [],
            Pointers = [Pointers.CabinetWidth, SitePointers.ItemCables[cables.Most!.Index]],
            Actual = Quantities.Of(cables.AreaMm2, "mm2"),
            Limit = Quantities.Of(limit, "mm2"),
            UtilisationPercent = limit > 0 ? 100 * cables.AreaMm2 / limit : null,
            Calculation = cables.SideChannelsMm2 > 0
                ? Invariant($"{cables.AreaMm2:0.###} > {percent:0.###} / 100 x 2 x {CableFill.ChannelDepthMm:0} x (({width:0.###} - {RackGeometry.PanelWidthMm}) / 2 - {Allowances.SideChannelLossMm:0}) = {limit:0.###}")
                : Invariant($"({width:0.###} - {RackGeometry.PanelWidthMm}) / 2 - {Allowances.SideChannelLossMm:0} = {((width - RackGeometry.PanelWidthMm) / 2) - Allowances.SideChannelLossMm:0.###} <= 0, which is no room; {cables.AreaMm2:0.###} > 0"),
            Cures = CablingCures.MoreChannel(survey, percent),
        });
    }
}
