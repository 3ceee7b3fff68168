using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Building;

/// <summary>
/// Adds roof fans if the airflow is too low for the heat load and offered fans correct it. Between perforated doors they would draw air past the equipment.
/// </summary>
internal static class RoofFans
{
    private static readonly string Rule = RuleChecks.IdOf<Rules.Cooling.Airflow>();

    private static readonly RackChecker Checker = RuleChecks.Only<Rules.Cooling.Airflow>();

    private static readonly RackChecker All = RuleChecks.OfThemes("cooling");

    /// <summary>Reports the missing roof fan unit. The rack holds everything that dissipates heat.</summary>
    public static void Find(BasketContext context, RackBuild build)
    {
        var rack = build.Describe();
        var finding = Checker.Find(ResolvedRack.Plain(rack)).Findings.FirstOrDefault(f => f.Accepted is null);
        var (front, rear) = (rack.Cabinet!.FrontDoor, rack.Cabinet.RearDoor);
        if (finding is null || (AirPath.LetsAirThrough(front) == true && AirPath.LetsAirThrough(rear) == true))
        {
            return;
        }

        // The fan unit that leaves the fewest findings, including those of a fan failure; then the smallest. Its openings may violate the
        // required IP code or leave it unassessed.
        var before = All.Find(ResolvedRack.Plain(rack));
        var product = context.Offered(ProductKind.RoofFans)
            .Where(p => p.Fans!.Count > 0)
            .OrderBy(p => p.Fans!.Count * p.Fans.FreeFlowM3h)
            .Select(p => (Product: p, After: All.Find(ResolvedRack.Plain(With(rack, p.Fans!)))))
            .Where(c => c.After.Findings.All(f => f.Rule != Rule)
                && c.After.NotAssessed <= before.NotAssessed
                && RuleChecks.FaultsOf(c.After).CompareTo(RuleChecks.FaultsOf(before)) < 0)
            .OrderBy(c => c.After.Findings.Count)
            .Select(c => c.Product)
            .FirstOrDefault();
        if (product is not null)
        {
            build.MissingPieces.Add(new MissingPiece(
                Stage.Cooling,
                product,
                1,
                new WordedText(LineWordings.RoofFans, ("neededM3h", finding.Limit!.Value), ("airflowM3h", finding.Actual!.Value))));
        }
    }

    private static RackDescription With(RackDescription rack, FanSet fans)
    {
        var cooling = rack.Cooling ?? new Cooling();
        return rack with { Cabinet = CabinetFitting.WithFanOpening(rack.Cabinet!), Cooling = cooling with { RoofFans = [.. cooling.RoofFans ?? [], fans] } };
    }
}
