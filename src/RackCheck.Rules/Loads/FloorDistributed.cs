using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks that exceed the distributed load rating of the floor.</summary>
public sealed class FloorDistributed : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.floor-distributed",
        Title = "Distributed floor load too high",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds racks whose mass on their footprint exceeds the distributed load rating of the floor. The aisle is not included in the "
            + "area. If the floor spreads the load over a larger area, the person responsible for the building specifies the rating "
            + "accordingly.",
        Why = "A raised floor collapses under the rack, or the floor slab cracks.",
        Formula = "m g / (w d) <= distributedKnM2, m with equipment and cabinet",
        Sources = [Sources.Statics, Sources.FloorFactorPractice],
        Needs = ["/items/*/massKg", "/cabinet/massKg", "/cabinet/widthMm", "/cabinet/depthMm", "/site/floor/distributedKnM2"],
        Remedies =
        [
            "Use a cabinet with a larger footprint.",
            "Move equipment to another rack.",
            "Have the person responsible for the building approve a stronger floor or load-spreading plates, and specify the resulting rating.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (!mass.IsDescribed)
        {
            return;
        }

        if (context.Survey.Description.Site?.Floor?.DistributedKnM2 is not { } limit)
        {
            context.ReportMissing(Pointers.FloorDistributed, "Without the distributed load rating of the floor, the floor load cannot be checked.");
            return;
        }

        MissingLoadData.ReportTotal(context, "Without every mass, the floor load cannot be checked.");
        if (Comparison.IsOver(mass.KnownFloorKnM2, limit))
        {
            Report(context, mass, limit);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double limit)
    {
        var cabinet = context.Survey.Cabinet;
        var (load, kilograms) = (mass.KnownFloorKnM2, mass.KnownTotalKg);
        context.Report(new FindingDraft
        {
            Message = mass.IsTotalKnown
                ? "The rack, {massKg} kg, loads the floor with {loadKnM2} kN/m2; the floor is rated for {limitKnM2} kN/m2."
                : "The rack, at least {massKg} kg, loads the floor with {loadKnM2} kN/m2; the floor is rated for {limitKnM2} kN/m2.",
            Data = [("massKg", kilograms), ("loadKnM2", load), ("limitKnM2", limit)],
            Subject = "floor",
            Identity = [],
            Pointers = [Pointers.FloorDistributed],
            Actual = Quantities.Of(load, "kN/m2"),
            Limit = Quantities.Of(limit, "kN/m2"),
            UtilisationPercent = limit > 0 ? 100 * load / limit : null,
            Calculation = Invariant($"{kilograms:0.###} x 9.80665 / 1000 / ({cabinet.WidthMm / 1000:0.######} x {cabinet.Depth.DepthMm / 1000:0.######})")
                + Invariant($" = {load:0.###} > {limit:0.###}"),
            Candidates = LoadRemedies.Spread(context.Survey, limit),
        });
    }
}
