using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds RCDs at risk of nuisance tripping by standing leakage.</summary>
public sealed class RcdTrip : Rule
{
    // Maximum rating of an RCD for personal protection, mA.
    private const double PersonalMa = 30;

    /// <summary>Permitted standing leakage as a share of the rated residual current.</summary>
    public static RuleLimit LeakageSharePercent { get; } = new(
        "leakageSharePercent", "permitted standing leakage as a share of the rated residual current", EarthConductors.RcdSharePercent, "%", 1, 100,
        Stricter.Lower);

    private static readonly MessageWording Defect = new(
        "earthing.rcd-trip",
        "The standing leakage of supply {supply} is {leakageMa} mA; above {limitMa} mA its {rcdMa} mA RCD is at risk of nuisance tripping.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.rcd-trip",
        Title = "Nuisance tripping of the RCD",
        Severity = Severity.Warning,
        Safety = true,
        What = "Finds supplies whose standing leakage is above 30 % of the rated residual current of their RCD.",
        Why = "An RCD can trip from half its rating. Switching on one more item can shut down the whole rack, and people are tempted to bypass the RCD.",
        Formula = "sum of leakageMa over the cords on the supply <= leakageSharePercent x rcdMa",
        Sources = [Sources.Bs7671Rcd, Sources.Iec61008],
        Limits = [LeakageSharePercent],
        Needs = ["/supplies/*/rcdMa", "/items/*/power/leakageMa", "/items/*/power/plugs", "/connections", "/pdus"],
        SharesWordingsOf = [typeof(MissingLeakageData)],
        Remedies =
        [
            "Share the equipment with a second supply that has its own RCD.", "Fit an RCD of the next rating, unless 30 mA is required.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        MissingLeakageData.Report(context, static s => s.Source.RcdMa is not null);
        if (Array.Exists(tree.Supplies, s => s.Source.RcdMa is not null))
        {
            MissingLeakageData.ReportUnits(context);
        }

        var share = context.Limit(LeakageSharePercent);
        foreach (var supply in tree.Supplies)
        {
            if (supply.Source.RcdMa is not { } rated || !Comparison.IsOver(supply.LeakageMa, share / 100 * rated))
            {
                continue;
            }

            var limit = share / 100 * rated;
            var cords = Array.FindAll(tree.Cords, c => ReferenceEquals(c.Group?.Unit.Supply, supply));
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("supply", supply.Id), ("leakageMa", supply.LeakageMa), ("limitMa", limit), ("rcdMa", rated)],
                Subject = Subjects.Supply(supply.Id),
                Identity = [supply.Id],
                Pointers = [Invariant($"/supplies/{supply.Index}/rcdMa")],
                Actual = Quantities.Of(supply.LeakageMa, "mA"),
                Limit = Quantities.Of(limit, "mA"),
                UtilisationPercent = 100 * supply.LeakageMa / limit,
                Calculation = Invariant($"{LeakageText.Sum(cords, supply.LeakageMa)} > {share:0.###} / 100 x {rated:0.###} = {limit:0.###}"),
                Candidates = Candidates(context.Survey, supply, rated, share, cords),
            });
        }
    }

    // An RCD for personal protection is replaced only where there is no other remedy.
    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, SupplyNode supply, double rated, double share, Cord[] cords)
    {
        var split = PowerRemedies.AddSupplies(survey, supply, null, cords);
        var larger = Larger(survey, supply, rated, share);
        return (rated <= PersonalMa ? split.Concat(larger) : larger.Concat(split)).Concat(EarthRemedies.TakeOutLeaking(survey, cords, share / 100 * rated));
    }

    private static IEnumerable<RemedyCandidate> Larger(RackSurvey survey, SupplyNode supply, double rated, double share)
    {
        foreach (var next in EarthConductors.RcdRatingsMa)
        {
            if (next > rated && !Comparison.IsOver(supply.LeakageMa, share / 100 * next))
            {
                (string, Scalar)[] data = [("ratedMa", next), ("supply", supply.Id)];
                yield return new RemedyCandidate(
                    rated <= PersonalMa
                        ? new(RemedyTitles.OtherRcd.With("unless"), [.. data, ("personalMa", PersonalMa)])
                        : new(RemedyTitles.OtherRcd.With(), data),
                    survey.Description.EditSupply(supply.Index, s => s with { RcdMa = next }));
                yield break;
            }
        }
    }
}
