using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Advises where the fans do with all of them running, but not with one out.</summary>
public sealed class FanRedundancy : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.fan-redundancy",
        Title = "No fan to spare",
        Severity = Severity.Advice,
        What = "Advises where the fans move the air that the heat needs only while all of them run: with the one out whose set is missed most they do not.",
        Why = "Fans are what fails first; until somebody comes the rack runs too hot.",
        Formula = "working point of the fans less one >= 3600 Q/(rho 1006 riseK)",
        Sources = [Sources.CoolingPractice, Sources.FanLaws, Sources.InstalledFanPractice, Sources.AshraeFundamentals],
        Needs = ["/cooling/roofFans", "/cooling/fanTrays", "/items/*/heatW", "/items/*/power/ratedW", "/cooling/riseK", "/site/ambientMaxC"],
        Remedies = ["Fit one fan more."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        if (!heat.IsJudged || heat.Way.Path != AirPath.Forced)
        {
            return;
        }

        const string Message = "Without the heat of all items, and what the way of the air loses, it cannot be said whether the fans do with one of them out.";
        MissingHeatData.ReportHeat(context, Message);
        if (heat.AvailableM3h is not { } available)
        {
            foreach (var pointer in heat.Way.Missing)
            {
                context.Lacks(pointer, Message);
            }
        }
        else if (available >= heat.NeededM3h && Worst(heat.Way) is var (set, flow) && flow < heat.NeededM3h)
        {
            Report(context, set, flow);
        }
    }

    // The set of which one fan is missed most, counted roof before trays, and what the others then move.
    private static (int Set, double FlowM3h) Worst(AirWay way)
    {
        var groups = way.FanGroups();
        var worst = (Set: 0, FlowM3h: double.PositiveInfinity);
        for (var i = 0; i < groups.Length; i++)
        {
            if (groups[i].Count == 0)
            {
                continue;
            }

            var whole = groups[i];
            groups[i] = whole with { Count = whole.Count - 1 };
            var flow = Quantities.Round(way.FlowOf(groups)!.Value);
            groups[i] = whole;
            worst = flow < worst.FlowM3h ? (i, flow) : worst;
        }

        return worst;
    }

    private static void Report(RuleContext context, int set, double flow)
    {
        var heat = context.Survey.Heat;
        var roof = context.Survey.Description.Cooling!.RoofFans?.Count ?? 0;
        context.Report(new FindingDraft
        {
            Message = "With one fan broken the others move {flowM3h} m3/h of air, but {heatW} W of heat need {neededM3h} m3/h.",
            Data = [("flowM3h", flow), ("heatW", heat.KnownW), ("neededM3h", heat.NeededM3h)],
            Subject = "fans",
            Identity = ["spare"],
            Pointers = [set < roof ? Invariant($"{Pointers.RoofFans}/{set}/count") : Invariant($"{Pointers.FanTrays}/{set - roof}/count")],
            Actual = Quantities.Of(flow, "m3/h"),
            Limit = Quantities.Of(heat.NeededM3h, "m3/h"),
            UtilisationPercent = flow > 0 ? 100 * heat.NeededM3h / flow : null,
            Calculation = Invariant($"3600 x {heat.KnownW:0.###} / ({heat.DensityKgM3:0.####} x {Air.HeatCapacity:0} x {heat.AllowedRiseK:0.###}) = {heat.NeededM3h:0.###} > {flow:0.###}"),
            Cures = CoolingCures.MoreFans(context.Survey),
        });
    }
}
