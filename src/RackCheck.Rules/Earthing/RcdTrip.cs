using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>Finds RCDs that standing leakage brings near to tripping.</summary>
public sealed class RcdTrip : Rule
{
    // Up to here an RCD protects people, mA.
    private const double PersonalMa = 30;

    private static readonly RuleLimit LeakageSharePercent = new(
        "leakageSharePercent", "share of the rated residual current that standing leakage may take", EarthConductors.RcdSharePercent, "%", 1, 100, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "earthing.rcd-trip",
        Title = "Standing leakage near the RCD's trip current",
        Severity = Severity.Warning,
        Safety = true,
        What = "Finds supplies whose equipment leaks more, all the time, than 30 % of the rated residual current of their RCD.",
        Why = "The RCD may trip from half its rating: switching on one item more takes the whole rack down, and people are tempted to bridge it.",
        Formula = "sum of leakageMa over the cords on the supply <= leakageSharePercent x rcdMa",
        Sources = [Sources.Bs7671Rcd, Sources.Iec61008],
        Limits = [LeakageSharePercent],
        Needs = ["/supplies/*/rcdMa", "/items/*/power/leakageMa", "/items/*/power/plugs", "/connections", "/pdus"],
        Remedies = ["Split the equipment over one more supply, with an RCD of its own.", "Take an RCD of the next rating, where none of 30 mA is asked for.", "Take equipment out of the rack."],
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
            if (supply.Source.RcdMa is not { } rated || !EarthSurvey.Exceeds(supply.LeakageMa, share / 100 * rated))
            {
                continue;
            }

            var limit = share / 100 * rated;
            var cords = Array.FindAll(tree.Cords, c => ReferenceEquals(c.Group?.Unit.Supply, supply));
            context.Report(new FindingDraft
            {
                Message = "Equipment on supply {supply} leaks {leakageMa} mA to earth all the time; over {limitMa} mA its RCD, the {rcdMa} mA earth-leakage switch, can trip unasked.",
                Data = [("supply", supply.Id), ("leakageMa", supply.LeakageMa), ("limitMa", limit), ("rcdMa", rated)],
                Subject = $"supply {supply.Id}",
                Identity = [supply.Id],
                Pointers = [Invariant($"/supplies/{supply.Index}/rcdMa")],
                Actual = Quantities.Of(supply.LeakageMa, "mA"),
                Limit = Quantities.Of(limit, "mA"),
                UtilisationPercent = 100 * supply.LeakageMa / limit,
                Calculation = Invariant($"{LeakageText.Sum(cords, supply.LeakageMa)} > {share:0.###} / 100 x {rated:0.###} = {limit:0.###}"),
                Cures = Cures(context.Survey, supply, rated, share, cords),
            });
        }
    }

    // One that protects people is not given up where there is another way.
    private static IEnumerable<Cure> Cures(RackSurvey survey, SupplyNode supply, double rated, double share, Cord[] cords)
    {
        var split = PowerCures.AddSupplies(survey, supply, null, cords);
        var larger = Larger(survey, supply, rated, share);
        return (rated <= PersonalMa ? split.Concat(larger) : larger.Concat(split)).Concat(EarthCures.TakeOutLeaking(survey, cords, share / 100 * rated));
    }

    private static IEnumerable<Cure> Larger(RackSurvey survey, SupplyNode supply, double rated, double share)
    {
        foreach (var next in EarthConductors.RcdRatingsMa)
        {
            if (next > rated && !EarthSurvey.Exceeds(supply.LeakageMa, share / 100 * next))
            {
                var unless = rated <= PersonalMa ? Invariant($", unless one of {PersonalMa:0} mA is asked for") : "";
                yield return new Cure(Invariant($"Take an RCD of {next:0} mA for supply {supply.Id}{unless}"), survey.Description.EditSupply(supply.Index, s => s with { RcdMa = next }));
                yield break;
            }
        }
    }
}
