using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Power;
using RackCheck.Rules.Service;

namespace RackCheck.Planning.Baskets;

/// <summary>Missing lines. Each names the rules of its stage that have fewer findings once the basket is completed.</summary>
internal static class MissingParts
{
    /// <summary>The missing lines.</summary>
    /// <returns>The lines, by part number.</returns>
    public static IReadOnlyList<MissingLine> Of(Completed completed, ChosenCabinet? cabinet, CheckReport before, CheckReport after)
    {
        var remedied = CountOf(before)
            .Where(c => c.Value > CountOf(after).GetValueOrDefault(c.Key))
            .Select(c => c.Key)
            .ToHashSet(StringComparer.Ordinal);
        var lines = completed.Added.Select(piece => Line(piece.Product, piece.OrderUnits, piece.Reason, RulesOf(piece.Stage).Where(remedied.Contains)));
        if (cabinet is not null)
        {
            lines = lines.Append(Line(
                cabinet.Product,
                1,
                cabinet.TakesAll
                    ? "The basket has no cabinet; this is the smallest on offer that takes everything with the fewest errors."
                    : "The basket has no cabinet; none on offer takes everything, and this one comes closest.",
                []));
        }

        return [.. lines.OrderBy(l => l.PartNumber, StringComparer.Ordinal)];
    }

    private static MissingLine Line(Product product, long units, string reason, IEnumerable<string> rules) => new()
    {
        PartNumber = product.PartNumber,
        Name = product.Name,
        Quantity = (int)Math.Min(units, int.MaxValue),
        Reason = reason,
        Rules = [.. rules],
    };

    // Number of findings and of missing data entries per rule.
    private static Dictionary<string, int> CountOf(CheckReport report) => report.Findings.Select(f => f.Rule)
        .Concat(report.NotAssessed.SelectMany(n => n.Missing.Select(_ => n.Rule)))
        .GroupBy(r => r, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);

    private static string[] RulesOf(Stage stage) => stage switch
    {
        Stage.Shelves => [RuleChecks.IdOf<ShelfMissing>(), RuleChecks.IdOf<NotPlaced>()],
        Stage.Rails => [RuleChecks.IdOf<NoSupport>()],
        Stage.Consoles => [RuleChecks.IdOf<KvmPorts>()],
        Stage.Cooling => [RuleChecks.IdOf<Rules.Cooling.Airflow>()],
        Stage.Outlets => [RuleChecks.IdOf<NoSource>(), RuleChecks.IdOf<Redundancy>()],
        Stage.Earth =>
        [
            RuleChecks.IdOf<BarMissing>(), RuleChecks.IdOf<BarTerminals>(), RuleChecks.IdOf<ConductorSize>(), RuleChecks.IdOf<LeadLength>(),
            RuleChecks.IdOf<Resistance>(),
        ],
        Stage.Accessories => [RuleChecks.IdOf<Rules.Depth.CableArm>()],
        Stage.Blanking => [RuleChecks.IdOf<Blanking>()],
        _ => [],
    };
}
