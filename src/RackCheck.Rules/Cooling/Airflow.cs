using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds racks with an airflow too low for their heat load.</summary>
public sealed class Airflow : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.airflow",
        Title = "Airflow too low for the heat load",
        Severity = Severity.Error,
        What =
            "Finds racks whose available airflow is below the airflow that the heat load needs, at the permitted temperature rise and the air density of the "
            + "site. The available airflow is that of the fans at their working point, of the underfloor supply, or of the equipment's own fans through the "
            + "doors.",
        Why = "The air gets too hot along the airflow path. Equipment at the end of the path fails early or switches off.",
        Formula = "V = 3600 Q/(rho 1006 riseK) <= available; fans: intersection of the fan curve with K V^2",
        Sources = [Sources.AshraeFundamentals, Sources.Iso2533, Sources.Idelchik, Sources.SharpOrifice, Sources.FanLaws, Sources.InstalledFanPractice],
        Needs =
        [
            "/items/*/heatW", "/items/*/power/typicalW", "/items/*/power/ratedW", "/items/*/airflow/flowM3h", "/cooling", "/cabinet/frontDoor",
            "/cabinet/rearDoor", "/cabinet/roof", "/site/ambientMaxC", "/site/altitudeM",
        ],
        Notes =
        [
            "The airflow path is one of five: air conditioner, else fans, else underfloor supply, else doors, else closed. A cabinet that is open at "
                + "one end only, or has trays that only circulate the air, counts as closed.",
            "Fan curves are scaled to the air density of the site, as the pressure drop of the path is: a data sheet is for 1.2 kg/m3.",
            "A fan curve is used as a flow that never rises with pressure. A stalled stretch counts as flat at its lowest pressure so far, which gives "
                + "too little flow rather than too much.",
            "The gas constant of dry air is 287.05 J/(kg K); check values from other libraries use 287.055 (0.002 % apart).",
        ],
        Remedies = ["Fit perforated doors.", "Fit fans in the roof.", "Fit more fan trays.", "Fit an air conditioner.", "Move equipment to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        const string Message = "Heat loads of items or data of the airflow path are missing, so the airflow cannot be checked.";
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Message) || heat.AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner)
        {
            return;
        }

        MissingHeatData.ReportHeat(context, Message);
        if (heat.AvailableM3h is not { } available)
        {
            ReportMissing(context, Message);
        }
        else if (available < heat.NeededM3h && !(heat.AirPath.Mode == CoolingMode.Doors && ReportMissingFlows(context, Message)))
        {
            Report(context, available);
        }
    }

    private static void ReportMissing(RuleContext context, string message)
    {
        var path = context.Survey.Heat.AirPath;
        switch (path.Mode)
        {
            case CoolingMode.Underfloor:
                context.ReportMissing(Pointers.UnderfloorFlow, message);
                break;
            case CoolingMode.Doors:
                ReportMissingFlows(context, message, withStill: true);
                break;
            default:
                foreach (var pointer in path.Missing)
                {
                    context.ReportMissing(pointer, message);
                }

                break;
        }
    }

    // An item without fans moves no air; any other item with a heat load may have fans.
    private static bool ReportMissingFlows(RuleContext context, string message, bool withStill = false)
    {
        var any = false;
        foreach (var item in context.Survey.Items)
        {
            if (HeatSurvey.HeatOf(item) is not 0 && item.Item!.Airflow?.FlowM3h is null && (withStill || item.Item.Airflow?.Direction != AirflowDirection.None))
            {
                any = true;
                context.ReportMissing(Pointers.ItemFlow[item.Index], message);
            }
        }

        return any;
    }

    // With the rounded resistance, so that the calculation can be repeated by hand.
    private static string WorkingPoint(double k, double available) =>
        Invariant($"; at the working point {k:0.##########} x {available:0.###}^2 = {Openings.LossPa(k, available):0.###} Pa");

    private static void Report(RuleContext context, double available)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        var (words, pointer) = heat.AirPath.Mode switch
        {
            CoolingMode.Forced => ("The fans deliver", heat.AirPath.HasRoofFans ? Pointers.RoofFans : Pointers.FanTrays),
            CoolingMode.Underfloor => ("The underfloor supply delivers", Pointers.UnderfloorFlow),
            _ => ("The equipment's own fans deliver", "/items"),
        };
        var working = heat.AirPath.LossK is { } k and > 0 && double.IsFinite(k) ? WorkingPoint(Math.Round(k, 10), available) : "";
        context.Report(new FindingDraft
        {
            Message = words + " {availableM3h} m3/h; {heatW} W at a rise of {riseK} K needs {neededM3h} m3/h.",
            Data = [("availableM3h", available), ("heatW", heat.KnownW), ("neededM3h", heat.NeededM3h), ("riseK", heat.AllowedRiseK)],
            Subject = "air through the rack",
            Identity = ["air"],
            Pointers = survey.Description.Cooling is null ? [pointer] : [pointer, Pointers.Cooling],
            Actual = Quantities.Of(available, "m3/h"),
            Limit = Quantities.Of(heat.NeededM3h, "m3/h"),
            UtilisationPercent = available > 0 ? 100 * heat.NeededM3h / available : null,
            Calculation =
                Invariant($"3600 x {heat.KnownW:0.###} / ({heat.DensityKgM3:0.####} x {Air.HeatCapacity:0} x {heat.AllowedRiseK:0.###}) = ")
                + Invariant($"{heat.NeededM3h:0.###} > {available:0.###}{working}"),
            Candidates = CoolingRemedies.Improve(survey),
        });
    }
}
