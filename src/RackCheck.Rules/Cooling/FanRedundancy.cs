using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds fans without N+1 redundancy.</summary>
public sealed class FanRedundancy : Rule
{
    private static readonly MessageWording Defect = new(
        "cooling.fan-redundancy",
        "With one fan failed the others deliver {flowM3h} m3/h; {heatW} W needs {neededM3h} m3/h.");

    private static readonly MissingData Missing = new(
        "cooling.fan-redundancy.missing",
        "Heat loads of items or data of the airflow path are missing, so N+1 fan redundancy cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.fan-redundancy",
        Title = "No N+1 fan redundancy",
        Severity = Severity.Advice,
        What =
            "Finds racks whose fans deliver the airflow that the heat load needs only while all of them run. The check stops the one fan whose failure costs "
            + "the most airflow.",
        Why = "Fans fail first. Until the fan is replaced, the rack overheats.",
        Formula = "airflow at the working point with one fan stopped >= 3600 Q/(rho 1006 riseK)",
        Sources = [Sources.CoolingPractice, Sources.FanLaws, Sources.InstalledFanPractice, Sources.AshraeFundamentals],
        Needs =
        [
            "/cooling/roofFans", "/cooling/fanTrays", "/items/*/heatW", "/items/*/power/ratedW", "/cooling/riseK", "/site/ambientMaxC",
            "/cabinet/frontDoor/perforatedAreaM2", "/cabinet/rearDoor/perforatedAreaM2", "/cabinet/roof/openAreaCm2", "/site/humidityMaxPercent",
            "/site/altitudeM", "/items/*/airflow/flowM3h",
        ],
        Remedies = ["Fit one more fan."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (!heat.IsJudged || heat.AirPath.Mode != CoolingMode.Forced)
        {
            return;
        }

        MissingHeatData.ReportHeat(context, Missing);
        if (heat.AvailableM3h is not { } available)
        {
            foreach (var pointer in heat.AirPath.Missing)
            {
                context.ReportMissing(pointer, Missing);
            }
        }
        else if (!Comparison.IsOver(heat.FanNeedM3h, available) && Worst(heat.AirPath) is var (set, flow) && Comparison.IsOver(heat.FanNeedM3h, flow))
        {
            Report(context, set, flow);
        }
    }

    // The set whose loss of one fan costs the most airflow, counted roof before trays, and the remaining airflow.
    private static (int Set, double FlowM3h) Worst(AirPath path)
    {
        var groups = path.FanGroups();
        var worst = (Set: 0, FlowM3h: double.PositiveInfinity);
        for (var i = 0; i < groups.Length; i++)
        {
            if (groups[i].Count == 0)
            {
                continue;
            }

            var whole = groups[i];
            groups[i] = whole with { Count = whole.Count - 1 };
            var flow = Quantities.Round(path.FlowOf(groups)!.Value);
            groups[i] = whole;
            worst = flow < worst.FlowM3h ? (i, flow) : worst;
        }

        return worst;
    }

    private static void Report(RuleContext context, int set, double flow)
    {
        var heat = context.Survey.Heat;
        var needed = heat.FanNeedM3h;
        var roof = context.Survey.Description.Cooling!.RoofFans?.Count ?? 0;
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("flowM3h", flow), ("heatW", heat.KnownW), ("neededM3h", needed)],
            Subject = Subjects.Fans,
            Identity = ["spare"],
            Pointers = [set < roof ? Invariant($"{Pointers.RoofFans}/{set}/count") : Invariant($"{Pointers.FanTrays}/{set - roof}/count")],
            Actual = Quantities.Of(flow, "m3/h"),
            Limit = Quantities.Of(needed, "m3/h"),
            UtilisationPercent = flow > 0 ? 100 * needed / flow : null,
            Calculation =
                Invariant($"3600 x {heat.KnownW:0.###} / ({heat.FanDensityKgM3:0.####} x {Air.HeatCapacity:0} x {heat.ForcedRiseK:0.###}) = ")
                + Invariant($"{needed:0.###} > {flow:0.###}"),
            Candidates = CoolingRemedies.MoreFans(context.Survey),
        });
    }
}
