using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds items whose own airflow is too low for their heat.</summary>
public sealed class ItemRise : Rule
{
    /// <summary>Maximum temperature rise of the air through an item by its own fans.</summary>
    public static RuleLimit ItemRiseK { get; } = new(
        "itemRiseK", "maximum temperature rise of the air through an item by its own fans", HeatSurvey.UsualItemRiseK, "K", 5, 60, Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "cooling.item-rise",
        "{item} moves {flowM3h} m3/h; its {heatW} W warm that air by {riseK} K, and the limit is {limitK} K.");

    private static readonly MissingData Missing = new(
        "cooling.item-rise.missing",
        "The heat load of an item with fans is missing, so its temperature rise is unknown.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.item-rise",
        Title = "Airflow of an item too low for its heat",
        Severity = Severity.Warning,
        What =
            "Finds items whose own airflow lets the air through them rise by more than 25 K. Each item has its own finding. An item without a stated airflow "
            + "is assumed to have fans that suit its heat.",
        Why = "The sum over the rack hides one item with too little air. Its parts get hot although the rack as a whole has enough airflow.",
        Formula = "3600 Q/(rho 1006 V) <= itemRiseK; Q and V of the item",
        Sources = [Sources.AshraeFundamentals, Sources.AirRisePractice],
        Limits = [ItemRiseK],
        Needs = ["/items/*/heatW", "/items/*/power/ratedW", "/items/*/airflow/flowM3h", "/site/ambientMaxC", "/site/altitudeM"],
        Remedies = ["Correct the airflow from the data sheet of the item.", "Use equipment with stronger fans."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        var limit = context.Limit(ItemRiseK);
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.Airflow?.FlowM3h > Comparison.Tolerance && HeatSurvey.HeatOf(item) is null)
            {
                context.ReportMissing(Pointers.ItemHeat[item.Index], Missing);
            }
            else if (heat.ItemRiseK(item) is { } rise && Comparison.IsOver(rise, limit))
            {
                Report(context, item, rise, limit);
            }
        }
    }

    private static void Report(RuleContext context, MountedItem item, double rise, double limit)
    {
        var survey = context.Survey;
        var (watts, flow) = (HeatSurvey.HeatOf(item)!.Value, item.Item!.Airflow!.FlowM3h!.Value);
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("item", item.Id), ("flowM3h", flow), ("heatW", watts), ("riseK", rise), ("limitK", limit)],
            Subject = survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = [Pointers.ItemFlow[item.Index], item.Pointer],
            Actual = Quantities.Of(rise, "K"),
            Limit = Quantities.Of(limit, "K"),
            UtilisationPercent = 100 * rise / limit,
            Calculation =
                Invariant($"3600 x {watts:0.###} / ({survey.Heat.DensityKgM3:0.####} x {Air.HeatCapacity:0} x {flow:0.###}) = ")
                + Invariant($"{rise:0.###} > {limit:0.###}"),
        });
    }
}
