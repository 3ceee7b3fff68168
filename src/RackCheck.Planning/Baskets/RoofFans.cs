using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Fans in the roof where the air does not suffice for the heat: what fans on offer mend is missing from the basket.</summary>
internal static class RoofFans
{
    private static readonly string Rule = RuleChecks.IdOf<Rules.Cooling.Airflow>();

    private static readonly RackChecker Checker = RuleChecks.Only<Rules.Cooling.Airflow>();

    private static readonly RackChecker All = RuleChecks.OfThemes("cooling");

    /// <summary>Notes the fan unit that lacks.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="bay">The rack, with everything that gives off heat.</param>
    public static void Find(BasketContext context, Bay bay)
    {
        var rack = bay.Describe();
        var finding = Checker.Recheck(ResolvedRack.Plain(rack)).Findings.FirstOrDefault(f => f.Accepted is null);
        if (finding is null)
        {
            return;
        }

        // That with which least is left to find, its failure included; of those the smallest. The openings may break the protection asked for,
        // or leave it open whether they do.
        var before = All.Recheck(ResolvedRack.Plain(rack));
        var product = context.Offered(ProductKind.RoofFans)
            .Where(p => p.Fans!.Count > 0)
            .OrderBy(p => p.Fans!.Count * p.Fans.FreeFlowM3h).ThenBy(p => p.PartNumber, StringComparer.Ordinal)
            .Select(p => (Product: p, After: All.Recheck(ResolvedRack.Plain(With(rack, p.Fans!)))))
            .Where(c => c.After.Findings.All(f => f.Rule != Rule) && c.After.NotAssessed.Count <= before.NotAssessed.Count && RuleChecks.FaultsOf(c.After).CompareTo(RuleChecks.FaultsOf(before)) < 0)
            .OrderBy(c => c.After.Findings.Count)
            .Select(c => c.Product)
            .FirstOrDefault();
        if (product is not null)
        {
            bay.Lacks.Add(new Lack(
                Stage.Cooling,
                product,
                1,
                Invariant($"The heat needs {finding.Limit!.Value:0.#} m3/h of air and only {finding.Actual!.Value:0.#} m3/h go through the rack; fans in the roof move enough.")));
        }
    }

    private static RackDescription With(RackDescription rack, FanSet fans)
    {
        var cooling = rack.Cooling ?? new Cooling();
        return rack with { Cabinet = CabinetFitting.WithFanOpening(rack.Cabinet!), Cooling = cooling with { RoofFans = [.. cooling.RoofFans ?? [], fans] } };
    }
}
