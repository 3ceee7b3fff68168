using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks that load their footprint by more than the floor bears.</summary>
public sealed class FloorDistributed : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.floor-distributed",
        Title = "Floor overloaded by the footprint",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds racks whose mass on their footprint is more than the floor is rated for. No aisle is counted in: where the floor spreads the load further, whoever answers for the building gives a rating that says so.",
        Why = "A raised floor gives way under the rack, or a ceiling cracks.",
        Formula = "m g / (w d) <= distributedKnM2, m with equipment and cabinet",
        Sources = [Sources.Statics, Sources.FloorFactorPractice],
        Needs = ["/items/*/massKg", "/cabinet/massKg", "/cabinet/widthMm", "/cabinet/depthMm", "/site/floor/distributedKnM2"],
        Remedies = ["Take a cabinet with a larger footprint.", "Take equipment out of the rack.", "Have a stronger floor, or plates that spread the load, judged by whoever answers for the building, and give the rating that comes of it."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (!mass.IsTold)
        {
            return;
        }

        if (context.Survey.Description.Site?.Floor?.DistributedKnM2 is not { } limit)
        {
            context.Lacks(Pointers.FloorDistributed, "The floor's spread load is not given: it cannot be said whether the floor bears the rack.");
            return;
        }

        MissingLoadData.ReportTotal(context, "Without every mass it cannot be said whether the floor bears the rack.");
        if (MassSurvey.Exceeds(mass.KnownFloorKnM2, limit))
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
                ? "The rack, {massKg} kg, loads the floor under it with {loadKnM2} kN/m2; the floor bears {limitKnM2} kN/m2."
                : "The rack, at least {massKg} kg, loads the floor under it with {loadKnM2} kN/m2; the floor bears {limitKnM2} kN/m2.",
            Data = [("massKg", kilograms), ("loadKnM2", load), ("limitKnM2", limit)],
            Subject = "floor",
            Identity = [],
            Pointers = [Pointers.FloorDistributed],
            Actual = Quantities.Of(load, "kN/m2"),
            Limit = Quantities.Of(limit, "kN/m2"),
            UtilisationPercent = limit > 0 ? 100 * load / limit : null,
            Calculation = Invariant($"{kilograms:0.###} x 9.80665 / 1000 / ({cabinet.WidthMm / 1000:0.######} x {cabinet.Depth.DepthMm / 1000:0.######}) = {load:0.###} > {limit:0.###}"),
            Cures = LoadCures.Spread(context.Survey, limit),
        });
    }
}
