using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds air conditioners with a derated capacity below the cooling load.</summary>
public sealed class CoolerCapacity : Rule
{
    /// <summary>Heat transfer coefficient of the cabinet surface: painted sheet steel, stirred air inside.</summary>
    public static RuleLimit HeatTransferWM2K { get; } = new(
        "heatTransferWM2K", "heat transfer coefficient of the cabinet surface: painted sheet steel, stirred air inside", Enclosures.StirredWM2K,
        "W/(m2 K)", 0.1, 20, Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "cooling.cooler-capacity",
        "In a room at {ambientC} C the {capacityW} W air conditioner removes {leftW} W; a heat load of {heatW} W needs {neededW} W to hold "
            + "{setpointC} C.");

    private static readonly MissingData MissingAllHeat = new(
        "cooling.cooler-capacity.missing-all-heat",
        "No item has a heat load, so the cooling load of the air conditioner is unknown.");

    private static readonly MissingData MissingHeat = new(
        "cooling.cooler-capacity.missing-heat",
        "Heat loads of items are missing, so the cooling load of the air conditioner is unknown.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.cooler-capacity",
        Title = "Air conditioner undersized",
        Severity = Severity.Error,
        What =
            "Finds air conditioners whose capacity, derated for the site temperature, is below the heat load less the heat dissipated by the surface. In a "
            + "room hotter than the setpoint the surface gains heat.",
        Why = "The temperature inside rises above the setpoint.",
        Formula = "capacityW (1 - 0.015 (ambientMaxC - ratedAmbientC)) >= Q - heatTransferWM2K A (setpointC - ambientMaxC)",
        Sources = [Sources.Iec60890, Sources.SheetSteel, Sources.CoolerDeratingPractice],
        Limits = [HeatTransferWM2K],
        Needs = ["/cooling/airConditioner", "/items/*/heatW", "/items/*/power/ratedW", "/cabinet/heightMm", "/cabinet/placement", "/site/ambientMaxC"],
        Notes =
        [
            "An air conditioner loses 1.5 % of its capacity per kelvin above its rated ambient temperature, default 35 C. No source gives one figure for all "
                + "units: this is the middle of common practice. The manufacturer's curve takes precedence.",
        ],
        Remedies = ["Fit a larger air conditioner.", "Raise the setpoint, where the equipment permits it.", "Move equipment to another rack."],
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

        MissingHeatData.ReportHeat(context, MissingHeat);
        var transfer = context.Limit(HeatTransferWM2K);
        var left = Quantities.Round(AirConditioners.LeftW(cooler.CapacityW, heat.RatedAmbientC, heat.AmbientC));
        var needed = heat.CoolerNeededW(heat.SurfaceM2, heat.SetpointC, transfer);
        if (heat.KnownW > 0 && left < needed)
        {
            Report(context, cooler, transfer, left, needed);
        }
    }

    // A rack with an air conditioner has a heat load: heat data was left out.
    private static void ReportNothingGiven(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.HeatW is null
                && item.Category is not (ItemCategory.BlankingPanel or ItemCategory.Shelf or ItemCategory.CableManager or ItemCategory.AirConditioner))
            {
                context.ReportMissing(Pointers.ItemHeat[item.Index], MissingAllHeat);
            }
        }
    }

    private static void Report(RuleContext context, AirConditioner cooler, double transfer, double left, double needed)
    {
        var heat = context.Survey.Heat;
        var derated = left < cooler.CapacityW
            ? Invariant($"{cooler.CapacityW:0.###} x ")
                + Invariant($"(1 - {AirConditioners.DeratingPercentPerK / 100} x ({heat.AmbientC:0.###} - {heat.RatedAmbientC:0.###})) = ")
                + Invariant($"{left:0.###}")
            : Invariant($"{left:0.###}");
        var past = AirConditioners.IsWithinDerating(heat.RatedAmbientC, heat.AmbientC)
            ? ""
            : Invariant($"; {heat.AmbientC:0.###} - {heat.RatedAmbientC:0.###} = {heat.AmbientC - heat.RatedAmbientC:0.###} > ")
                + Invariant($"{AirConditioners.DeratingToK:0}, above the operating range of most air conditioners");
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data =
            [
                ("capacityW", cooler.CapacityW), ("leftW", left), ("ambientC", heat.AmbientC), ("heatW", heat.KnownW), ("neededW", needed),
                ("setpointC", heat.SetpointC),
            ],
            Subject = Subjects.AirConditioner,
            Identity = ["capacity"],
            Pointers = [Pointers.CoolerCapacity],
            Actual = Quantities.Of(left, "W"),
            Limit = Quantities.Of(needed, "W"),
            UtilisationPercent = left > 0 ? 100 * needed / left : null,
            Calculation =
                Invariant($"{heat.KnownW:0.###} - {transfer:0.###} x {heat.SurfaceM2:0.###} x ({heat.SetpointC:0.###} - {heat.AmbientC:0.###}) = ")
                + Invariant($"{needed:0.###} > {derated}{past}"),
            Candidates = CoolingRemedies.Strengthen(context.Survey, transfer),
        });
    }
}
