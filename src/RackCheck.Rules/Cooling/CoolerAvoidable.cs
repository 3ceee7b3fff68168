using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds air conditioners where perforated doors or fans are enough.</summary>
public sealed class CoolerAvoidable : Rule
{
    private static readonly MessageWording DoorsDo = new(
        "cooling.cooler-avoidable.doors-do",
        "The air conditioner is not needed: behind perforated doors the equipment's own fans deliver {availableM3h} m3/h; the heat load "
            + "needs {neededM3h} m3/h.");

    private static readonly MessageWording FansDo = new(
        "cooling.cooler-avoidable.fans-do",
        "The air conditioner is not needed: {fans} fans in the roof deliver {availableM3h} m3/h; the heat load needs {neededM3h} m3/h.");

    private static readonly MissingData MissingHeat = new(
        "cooling.cooler-avoidable.missing-heat",
        "Heat loads of items are missing, so doors or fans cannot be checked as a replacement for the air conditioner.");

    private static readonly MissingData MissingMaxInlet = new(
        "cooling.cooler-avoidable.missing-max-inlet",
        "Inlet limits are missing, so room air cannot be checked as a replacement for the air conditioner.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.cooler-avoidable",
        Title = "Air conditioner not needed",
        Severity = Severity.Advice,
        What =
            "Finds racks with an air conditioner where the room is cool enough for every item with an inlet limit, the degree of protection permits "
            + "openings, and the equipment's own fans through perforated doors, or fans in the roof, deliver the airflow that the heat load needs.",
        Why = "An air conditioner costs the most to buy and to run, produces condensate, and stops the rack when it fails.",
        Formula =
            "ambientMaxC <= least maxInletC at the altitude; requiredIp met by IP20; V = 3600 Q/(rho 1006 riseK) <= own flow, or the working point of fans "
            + "in the roof; without riseK each item's own rise <= 25 K",
        Sources = [Sources.CoolingPractice, Sources.AshraeFundamentals, Sources.OpeningIpPractice, Sources.FanLaws],
        Needs = ["/cooling/airConditioner", "/items/*/heatW", "/items/*/airflow/flowM3h", "/items/*/maxInletC", "/site/requiredIp", "/site/ambientMaxC"],
        SharesWordingsOf = [typeof(MissingHeatData)],
        Remedies = ["Fit perforated doors instead.", "Fit fans in the roof instead."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || heat.AirPath.Mode != CoolingMode.AirConditioner || !CoolingRemedies.AllowsOpenings(context.Survey))
        {
            return;
        }

        if (!heat.IsAltitudeCovered)
        {
            MissingHeatData.ReportAltitude(context);
        }
        else if (heat.LeastInletC is not { } limit)
        {
            ReportMissingLimits(context);
        }
        else if (heat.AmbientC <= limit)
        {
            MissingHeatData.ReportHeat(context,
                MissingHeat);
            if (heat.IsHeatKnown)
            {
                Advise(context);
            }
        }
    }

    private static void ReportMissingLimits(RuleContext context)
    {
        foreach (var item in context.Survey.Items)
        {
            if (HeatSurvey.HeatOf(item) is not 0)
            {
                context.ReportMissing(Pointers.ItemMaxInlet[item.Index], MissingMaxInlet);
            }
        }
    }

    private static void Advise(RuleContext context)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        var doorsDo = CoolingRemedies.DoorsSuffice(survey);
        var fans = doorsDo ? null : CoolingRemedies.RoofFans(survey, survey.Description
            with { Cooling = survey.Description.Cooling! with { AirConditioner = null } });
        if (!doorsDo && fans is null)
        {
            return;
        }

        // Through the doors the equipment's own fans set the rise where none is given.
        var (given, density) = (survey.Description.Cooling?.RiseK, doorsDo ? heat.DensityKgM3 : heat.HotDensityKgM3);
        var available = doorsDo ? heat.DoorsFlowM3h(given ?? HeatSurvey.UsualItemRiseK) : fans!.Value.FlowM3h;
        var rise = given ?? (doorsDo ? HeatSurvey.UsualItemRiseK : heat.ForcedRiseK);
        var needed = doorsDo ? heat.NeedAt(rise) : heat.RoofNeedM3h;
        context.Report(new FindingDraft
        {
            Message = doorsDo ? DoorsDo : FansDo,
            Data = doorsDo
                ? [("availableM3h", available), ("neededM3h", needed)]
                : [("fans", fans!.Value.Count), ("availableM3h", available), ("neededM3h", needed)],
            Subject = Subjects.AirConditioner,
            Identity = ["avoidable"],
            Pointers = ["/cooling/airConditioner"],
            Calculation =
                Invariant($"3600 x {heat.KnownW:0.###} / ({density:0.####} x {Air.HeatCapacity:0} x {rise:0.###}) = ")
                + Invariant($"{needed:0.###} <= {available:0.###}; ")
                + Invariant($"{heat.AmbientC:0.###} <= {heat.LeastInletC:0.###}"),
            Candidates = CoolingRemedies.WithoutCooler(survey),
        });
    }
}
