using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds closed cabinets whose surface does not shed their heat.</summary>
public sealed class SealedRise : Rule
{
    private static readonly RuleLimit HeatTransferWM2K = new(
        "heatTransferWM2K", "heat that the surface passes, by square metre and kelvin: painted sheet steel, air inside stirred", Enclosures.StirredWM2K, "W/(m2 K)", 1, 20, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.sealed-rise",
        Title = "Closed cabinet too hot",
        Severity = Severity.Error,
        What = "Finds closed cabinets in which the room's temperature and the rise through the surface pass the least inlet limit of the items. A cabinet that is open at one end only, or in which fans only stir, counts as closed.",
        Why = "Equipment takes in air hotter than it is made for: it fails early or switches off.",
        Formula = "ambientMaxC + Q/(heatTransferWM2K A) <= least maxInletC, less 1 K for 300 m above 900 m; A by faces: 0.9 free, 0.5 covered, 1.4 roof, 0.7 covered roof",
        Sources = [Sources.Iec60890, Sources.SheetSteel, Sources.StillCabinet, Sources.AshraeTc99],
        Limits = [HeatTransferWM2K],
        Needs = ["/items/*/heatW", "/items/*/power/ratedW", "/items/*/maxInletC", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/heightMm", "/cabinet/placement", "/site/ambientMaxC", "/site/altitudeM"],
        Remedies = ["Take perforated doors.", "Fit fans in the roof.", "Take an air conditioner.", "Take equipment out of the rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        const string Message = "Without the style of the doors, the heat of all items and an inlet limit it cannot be said whether the cabinet grows too hot while it is closed.";
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Message) || heat.Way.Path != AirPath.Closed)
        {
            return;
        }

        MissingHeatData.ReportHeat(context, Message);
        if (heat.LeastInletC is not { } limit)
        {
            ReportMissingLimits(context, Message);
            return;
        }

        var transfer = context.Limit(HeatTransferWM2K);
        var rise = heat.KnownW > 0 ? heat.ClosedRiseK(transfer) : 0;
        var hottest = Quantities.Round(heat.AmbientC + rise);
        if (heat.KnownW > 0 && hottest > limit)
        {
            Report(context, transfer, rise, hottest, limit);
        }
    }

    private static void ReportMissingLimits(RuleContext context, string message)
    {
        foreach (var item in context.Survey.Items)
        {
            if (HeatSurvey.HeatOf(item) is not 0)
            {
                context.Lacks(Pointers.ItemMaxInlet[item.Index], message);
            }
        }
    }

    private static void Report(RuleContext context, double transfer, double rise, double hottest, double limit)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        var item = heat.LeastInletItem!;
        var stillRise = Enclosures.StillTopFactor * heat.KnownW / (Enclosures.StillWM2K * heat.SurfaceM2);
        context.Report(new FindingDraft
        {
            Message = "{heatW} W of heat bring the air in the closed cabinet to {hottestC} C where it is stirred, and to about {stillC} C at the top where it is not; {item} may take in {limitC} C at most.",
            Data = [("hottestC", hottest), ("heatW", heat.KnownW), ("item", item.Id), ("limitC", limit), ("stillC", heat.AmbientC + Math.Round(stillRise, 2, MidpointRounding.AwayFromZero))],
            Subject = "closed cabinet",
            Identity = ["closed"],
            Pointers = ["/cabinet", Pointers.ItemMaxInlet[item.Index]],
            Actual = Quantities.Of(hottest, "C"),
            Limit = Quantities.Of(limit, "C"),
            Calculation = Invariant($"{heat.KnownW:0.###} / ({transfer:0.###} x {heat.SurfaceM2:0.###}) = {Enclosures.RiseK(heat.KnownW, heat.SurfaceM2, transfer):0.###}; {heat.AmbientC:0.###} + {rise:0.##} = {hottest:0.###} > {limit:0.###}; still, at the top: {Enclosures.StillTopFactor} x {heat.KnownW:0.###} / ({Enclosures.StillWM2K} x {heat.SurfaceM2:0.###}) = {stillRise:0.###}"),
            Cures = CoolingCures.Improve(survey),
        });
    }
}
