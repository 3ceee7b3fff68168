using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks that exceed the distributed load rating of the floor.</summary>
public sealed class FloorDistributed : Rule
{
    /// <summary>Floor load as a multiple of the rating of the floor above which it is an error.</summary>
    public static RuleLimit OverloadRatio { get; } = new(
        "overloadRatio", "floor load as a multiple of the rating of the floor; more is an error", 2, "to 1", 1, 2, Stricter.Lower);

    private static readonly WordingChoice Defect = new(
        "load.floor-distributed",
        "The rack, [at-least:at least ]{massKg} kg, loads the floor with {loadKnM2} kN/m2; the floor is rated for {limitKnM2} "
            + "kN/m2.[warning: Ask the structural engineer whether the floor spreads the load.]");

    private static readonly MissingData MissingFloorDistributed = new(
        "load.floor-distributed.missing-floor-distributed",
        "Without the distributed load rating of the floor, the floor load cannot be checked.");

    private static readonly MissingData MissingTotal = new("load.floor-distributed.missing-total", "Without every mass, the floor load cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.floor-distributed",
        Title = "Distributed floor load too high",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds racks whose mass on their footprint exceeds the distributed load rating of the floor. Up to twice the rating is a warning: a "
            + "floor slab spreads the load over the aisles, so ask the structural engineer. More is an error. A wall-hung cabinet is not checked.",
        Why = "A raised floor collapses under the rack, or the floor slab cracks.",
        Formula = "m g / (w d) <= distributedKnM2, m with equipment and cabinet; an error above overloadRatio x distributedKnM2",
        Sources = [Sources.Statics, Sources.FloorFactorPractice],
        Limits = [OverloadRatio],
        Needs = ["/items/*/massKg", "/cabinet/massKg", "/cabinet/widthMm", "/cabinet/depthMm", "/cabinet/base/style", "/site/floor/distributedKnM2"],
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
        if (!mass.Stand.StandsOnFloor)
        {
            return;
        }

        if (context.Survey.Description.Site?.Floor?.DistributedKnM2 is not { } limit)
        {
            context.ReportMissing(Pointers.FloorDistributed, MissingFloorDistributed);
            return;
        }

        MissingLoadData.ReportTotal(context, MissingTotal);
        if (Comparison.IsOver(mass.KnownFloorKnM2, limit))
        {
            Report(context, mass, limit);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double limit)
    {
        var cabinet = context.Survey.Cabinet;
        var (load, kilograms) = (mass.KnownFloorKnM2, mass.KnownTotalKg);
        var isError = Comparison.IsOver(load, context.Limit(OverloadRatio) * limit);
        context.Report(new FindingDraft
        {
            Severity = isError ? Severity.Error : Severity.Warning,
            Message = Defect.With(mass.IsTotalKnown ? "" : "at-least", isError ? "" : "warning"),
            Data = [("massKg", kilograms), ("loadKnM2", load), ("limitKnM2", limit)],
            Subject = Subjects.Floor,
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
