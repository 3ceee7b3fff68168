using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds air conditioners that have less left, where the room is hot, than the heat asks of them.</summary>
public sealed class CoolerCapacity : Rule
{
    private static readonly RuleLimit HeatTransferWM2K = new(
        "heatTransferWM2K", "heat that the surface passes, by square metre and kelvin: painted sheet steel, air inside stirred", Enclosures.StirredWM2K, "W/(m2 K)", 0.1, 20, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.cooler-capacity",
        Title = "Air conditioner too weak",
        Severity = Severity.Error,
        What = "Finds air conditioners whose capacity, derated at the site's temperature, is under the heat less what the surface sheds; where the room is hotter than the setpoint the surface takes heat in.",
        Why = "The temperature inside rises past the setpoint.",
        Formula = "capacityW (1 - 0.02 (ambientMaxC - ratedAmbientC)) >= Q - heatTransferWM2K A (setpointC - ambientMaxC)",
        Sources = [Sources.Iec60890, Sources.SheetSteel, Sources.CoolerDeratingPractice],
        Limits = [HeatTransferWM2K],
        Needs = ["/cooling/airConditioner", "/items/*/heatW", "/items/*/power/ratedW", "/cabinet/heightMm", "/cabinet/placement", "/site/ambientMaxC"],
        Remedies = ["Take a stronger air conditioner.", "Hold a higher temperature, where the items bear it.", "Take equipment out of the rack."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (context.Survey.Description.Cooling?.AirConditioner is not { } cooler)
        {
            return;
        }

        if (!heat.HasHeat)
        {
            ReportNothingGiven(context);
            return;
        }

        MissingHeatData.ReportHeat(context, "Without the heat of all items it cannot be said what is asked of the air conditioner.");
        var transfer = context.Limit(HeatTransferWM2K);
        var left = Quantities.Round(AirConditioners.LeftW(cooler.CapacityW, heat.RatedAmbientC, heat.AmbientC));
        var needed = heat.CoolerNeededW(heat.SurfaceM2, heat.SetpointC, transfer);
        if (heat.KnownW > 0 && left < needed)
        {
            Report(context, cooler, transfer, left, needed);
        }
    }

    // Nobody fits a cooler for nothing: where no item tells of any heat, that was forgotten.
    private static void ReportNothingGiven(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.HeatW is null && item.Category is not (ItemCategory.BlankingPanel or ItemCategory.Shelf or ItemCategory.CableManager or ItemCategory.AirConditioner))
            {
                context.Lacks(Pointers.ItemHeat[item.Index], "There is an air conditioner, but no item tells of any heat: it cannot be said what is asked of it.");
            }
        }
    }

    private static void Report(RuleContext context, AirConditioner cooler, double transfer, double left, double needed)
    {
        var heat = context.Survey.Heat;
        var derated = left < cooler.CapacityW
            ? Invariant($"{cooler.CapacityW:0.###} x (1 - {AirConditioners.DeratingPercentPerK / 100} x ({heat.AmbientC:0.###} - {heat.RatedAmbientC:0.###})) = {left:0.###}")
            : Invariant($"{left:0.###}");
        var past = AirConditioners.IsWithinDerating(heat.RatedAmbientC, heat.AmbientC) ? "" : Invariant($"; {heat.AmbientC:0.###} - {heat.RatedAmbientC:0.###} = {heat.AmbientC - heat.RatedAmbientC:0.###} > {AirConditioners.DeratingToK:0}, past which few run at all");
        context.Report(new FindingDraft
        {
            Message = "With the room at {ambientC} C the air conditioner of {capacityW} W takes away {leftW} W, but {heatW} W of heat ask {neededW} W of it to hold {setpointC} C.",
            Data = [("capacityW", cooler.CapacityW), ("leftW", left), ("ambientC", heat.AmbientC), ("heatW", heat.KnownW), ("neededW", needed), ("setpointC", heat.SetpointC)],
            Subject = "air conditioner",
            Identity = ["capacity"],
            Pointers = [Pointers.CoolerCapacity],
            Actual = Quantities.Of(left, "W"),
            Limit = Quantities.Of(needed, "W"),
            UtilisationPercent = left > 0 ? 100 * needed / left : null,
            Calculation = Invariant($"{heat.KnownW:0.###} - {transfer:0.###} x {heat.SurfaceM2:0.###} x ({heat.SetpointC:0.###} - {heat.AmbientC:0.###}) = {needed:0.###} > {derated}{past}"),
            Cures = CoolingCures.Strengthen(context.Survey, transfer),
        });
    }
}
