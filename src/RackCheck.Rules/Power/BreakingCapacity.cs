using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds breakers with a breaking capacity below the prospective fault current.</summary>
public sealed class BreakingCapacity : Rule
{
    // Rated breaking capacities on the market, kA.
    private static readonly double[] SizesKa = [6, 10, 15, 25, 36, 50, 70, 100];

    private static readonly MessageWording Defect = new(
        "power.breaking-capacity",
        "The breaker of supply {supply} has a breaking capacity of {breakingKa} kA; the prospective fault current is {faultA} A.");

    private static readonly MissingData Missing = new(
        "power.breaking-capacity.missing",
        "The fault current is above 6 kA and the breaking capacity of the breaker is missing.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.breaking-capacity",
        Title = "Breaking capacity too low",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds breakers whose rated breaking capacity is below the prospective fault current. Up to 6 kA every usual breaker is sufficient.",
        Why = "A breaker that cannot break the fault current bursts, or its contacts weld and the fault is not disconnected.",
        Formula = "prospective fault current at the origin <= rated breaking capacity",
        Sources = [Sources.Bs7671Breaking],
        Needs = ["/supplies/*/faultCurrentA", "/supplies/*/breaker/breakingKa"],
        Remedies = ["Fit a breaker with a higher breaking capacity."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var supply in context.Survey.Power.Supplies)
        {
            if (supply.Source.FaultCurrentA is not { } current)
            {
                continue;
            }

            var at = Invariant($"/supplies/{supply.Index}/breaker/breakingKa");
            if (supply.Source.Breaker?.BreakingKa is not { } breaking)
            {
                if (Comparison.IsOver(current, FaultLoops.UsualBreakingKa * 1000))
                {
                    context.ReportMissing(at, Missing);
                }

                continue;
            }

            if (Comparison.IsOver(current, breaking * 1000))
            {
                context.Report(new FindingDraft
                {
                    Message = Defect,
                    Data = [("supply", supply.Id), ("breakingKa", breaking), ("faultA", current)],
                    Subject = Subjects.Supply(supply.Id),
                    Identity = [supply.Id],
                    Pointers = [at, Invariant($"/supplies/{supply.Index}/faultCurrentA")],
                    Actual = Quantities.Of(current, "A"),
                    Limit = Quantities.Of(breaking * 1000, "A"),
                    UtilisationPercent = current / breaking / 10,
                    Calculation = Invariant($"{current:0.###} > {breaking:0.###} x 1000 = {breaking * 1000:0.###}"),
                    Candidates =
                    [
                        .. SizesKa.Where(s => s * 1000 >= current).Take(1).Select(s => new RemedyCandidate(
                            new(RemedyTitles.BreakingCapacity, ("breakingKa", s), ("supply", supply.Id)),
                            context.Survey.Description.EditSupply(supply.Index, x => x with { Breaker = x.Breaker! with { BreakingKa = s } }))),
                    ],
                });
            }
        }
    }
}
