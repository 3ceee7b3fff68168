using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds racks with an airflow too low for their heat load.</summary>
public sealed class Airflow : Rule
{
    private static readonly WordingChoice Deliver = new(
        "cooling.airflow",
        "[fans:The fans deliver|most:Even on an open path the fans deliver|underfloor:The underfloor supply delivers|The equipment's own fans deliver] "
            + "{availableM3h} m3/h; {heatW} W at a rise of {riseK} K needs {neededM3h} m3/h.");

    private static readonly MissingData Missing = new(
        "cooling.airflow.missing",
        "Heat loads of items or data of the airflow path are missing, so the airflow cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.airflow",
        Title = "Airflow too low for the heat load",
        SharesWordingsOf = [typeof(NaturalDraught)],
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What =
            "Finds racks whose available airflow is below the airflow that the heat load needs, at the permitted temperature rise and the air density of the "
            + "site. The available airflow is that of the fans at their working point with a filter mat due for change, of the underfloor supply, or, where "
            + "riseK is given, of the equipment's own fans through the doors. Natural draught through a vented roof is estimated: a warning.",
        Why = "The air gets too hot along the airflow path. Equipment at the end of the path fails early or switches off.",
        Formula = "V = 3600 Q/(rho 1006 riseK) <= available; fans: intersection of the fan curve with K V^2 + L V; draught: 3600 Cd A sqrt(2 g H riseK/T)",
        Sources =
        [
            Sources.AshraeFundamentals, Sources.Iso2533, Sources.Idelchik, Sources.SharpOrifice, Sources.FanLaws, Sources.InstalledFanPractice,
            Sources.AirRisePractice, Sources.FilterPractice, Sources.StackEffect,
        ],
        Needs =
        [
            "/items/*/heatW", "/items/*/power/typicalW", "/items/*/power/ratedW", "/items/*/airflow/flowM3h", "/cooling", "/cabinet/frontDoor",
            "/cabinet/rearDoor", "/cabinet/roof", "/site/ambientMaxC", "/site/altitudeM",
        ],
        Notes =
        [
            "The airflow path is one of six: air conditioner, else fans, else underfloor supply, else doors, else a vented roof, else closed. A cabinet that "
                + "is open at one end only, or has trays that only circulate the air, counts as closed.",
            "The permitted rise is riseK; without it 15 K for fans, underfloor supply and draught, and none through perforated doors, where the equipment's "
                + "own fans set the rise (cooling.item-rise).",
            "Roof fans move hot air: their airflow is compared at the density of the air in the roof.",
            "The loss of a filter mat is proportional to the flow. The calculation also shows the working point with a clean mat. Without data 40 Pa clean and "
                + "80 Pa before it is changed, at 0.5 m/s.",
            "Through the doors, items without a stated airflow are assumed to have fans that suit their heat.",
            "Where a loss of the path is missing, fans that are too weak even on an open path are found all the same.",
            "Fan curves are scaled to the air density of the site, as the pressure drop of the path is: a data sheet is for 1.2 kg/m3.",
            "A fan curve is used as a flow that never rises with pressure. A stalled stretch counts as flat at its lowest pressure so far, which gives "
                + "too little flow rather than too much.",
            "The gas constant of dry air is 287.05 J/(kg K); check values from other libraries use 287.055 (0.002 % apart).",
        ],
        Remedies =
        [
            "Fit perforated doors.", "Fit fans in the roof and a closed rear door.", "Fit more fan trays.", "Fit an air conditioner.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (!heat.HasHeat || MissingHeatData.ReportDoors(context, Missing) || heat.AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner)
        {
            return;
        }

        if (heat.AllowedRiseK is not { } rise)
        {
            return;
        }

        MissingHeatData.ReportHeat(context, Missing);
        if (heat.AirPath.Mode == CoolingMode.Draught)
        {
            NaturalDraught.Check(context, Missing);
        }
        else if (Available(heat, rise) is { } available)
        {
            Judge(context, available);
        }
        else if (heat.AirPath.MostFanFlowM3h is not { } most || !Judge(context, most))
        {
            ReportMissing(context, Missing);
        }
    }

    private static double? Available(HeatSurvey heat, double rise) =>
        heat.AirPath.Mode != CoolingMode.Doors ? heat.AvailableM3h
        : heat.HasOwnFlow || heat.FittedHeatW > 0 ? heat.DoorsFlowM3h(rise)
        : null;

    private static double Needed(HeatSurvey heat) => heat.AirPath.Mode == CoolingMode.Forced ? heat.FanNeedM3h : heat.NeededM3h!.Value;

    private static void ReportMissing(RuleContext context, MissingData message)
    {
        var path = context.Survey.Heat.AirPath;
        switch (path.Mode)
        {
            case CoolingMode.Underfloor:
                context.ReportMissing(Pointers.UnderfloorFlow, message);
                break;
            case CoolingMode.Doors:
                ReportMissingFlows(context, message);
                break;
            default:
                foreach (var pointer in path.Missing)
                {
                    context.ReportMissing(pointer, message);
                }

                break;
        }
    }

    private static void ReportMissingFlows(RuleContext context, MissingData message)
    {
        foreach (var item in context.Survey.Items)
        {
            if (HeatSurvey.HeatOf(item) is not 0 && item.Item!.Airflow?.FlowM3h is null)
            {
                context.ReportMissing(Pointers.ItemFlow[item.Index], message);
            }
        }
    }

    // With the rounded resistances, so that the calculation can be repeated by hand.
    private static string WorkingPoint(AirPath path, double available)
    {
        if (path.LossK is not { } exact || !double.IsFinite(exact) || (exact <= 0 && path.Mat is null))
        {
            return "";
        }

        var k = Math.Round(exact, 10);
        return path.Mat is not { } mat
            ? Invariant($"; at the working point {k:0.##########} x {available:0.###}^2 = {Openings.LossPa(k, available):0.###} Pa")
            : Point("before the filter is changed", mat.Linear, available)
                + (path.CleanFlowM3h is { } clean ? Point("with a clean filter", mat.CleanLinear!.Value, Quantities.Round(clean)) : "");

        string Point(string when, double exactLinear, double flow)
        {
            var linear = Math.Round(exactLinear, 6);
            return Invariant($"; {when} {k:0.##########} x {flow:0.###}^2 + {linear:0.######} x {flow:0.###} = ")
                + Invariant($"{Openings.LossPa(k, flow) + (linear * flow):0.###} Pa");
        }
    }

    // Whether there is a finding.
    private static bool Judge(RuleContext context, double available)
    {
        var heat = context.Survey.Heat;
        var isOver = heat.KnownW > 0 && Comparison.IsOver(Needed(heat), available);
        if (isOver)
        {
            Report(context, available);
        }

        return isOver;
    }

    private static void Report(RuleContext context, double available)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        var (source, pointer) = heat.AirPath.Mode switch
        {
            CoolingMode.Forced => (heat.AvailableM3h is null ? "most" : "fans", heat.AirPath.HasRoofFans ? Pointers.RoofFans : Pointers.FanTrays),
            CoolingMode.Underfloor => ("underfloor", Pointers.UnderfloorFlow),
            _ => ("", "/items"),
        };
        var (needed, rise) = (Needed(heat), heat.AllowedRiseK!.Value);
        var isRoof = heat.AirPath is { Mode: CoolingMode.Forced, HasRoofFans: true };
        var density = isRoof ? heat.HotDensityKgM3 : heat.DensityKgM3;
        var hot = isRoof
            ? Invariant($"{heat.DensityKgM3:0.####} x ({heat.AmbientC:0.###} + {Air.ZeroC}) / ({heat.AmbientC + rise:0.###} + {Air.ZeroC}) = ")
                + Invariant($"{density:0.####}; ")
            : "";
        context.Report(new FindingDraft
        {
            Message = Deliver.With(source),
            Data = [("availableM3h", available), ("heatW", heat.KnownW), ("neededM3h", needed), ("riseK", rise)],
            Subject = Subjects.AirThroughTheRack,
            Identity = ["air"],
            Pointers = survey.Description.Cooling is null ? [pointer] : [pointer, Pointers.Cooling],
            Actual = Quantities.Of(available, "m3/h"),
            Limit = Quantities.Of(needed, "m3/h"),
            UtilisationPercent = available > 0 ? 100 * needed / available : null,
            Calculation =
                hot + Invariant($"3600 x {heat.KnownW:0.###} / ({density:0.####} x {Air.HeatCapacity:0} x {rise:0.###}) = ")
                + Invariant($"{needed:0.###} > {available:0.###}{(heat.AirPath.Mode == CoolingMode.Forced ? WorkingPoint(heat.AirPath, available) : "")}"),
            Candidates = CoolingRemedies.Improve(survey),
        });
    }
}
