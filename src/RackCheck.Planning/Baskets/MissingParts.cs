using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Service;

namespace RackCheck.Planning.Baskets;

/// <summary>Missing lines. Each names the rules of its stage that have fewer findings once the basket is completed.</summary>
internal static class MissingParts
{
    /// <summary>The missing lines.</summary>
    /// <param name="order">The completed order.</param>
    /// <param name="offered">Products on offer.</param>
    /// <param name="before">The reports on the racks as ordered.</param>
    /// <param name="after">The reports on the completed racks.</param>
    /// <returns>The lines, by part number.</returns>
    public static IReadOnlyList<MissingLine> Of(CompletedOrder order, IReadOnlyList<Product> offered, CheckReport[] before, CheckReport[] after)
    {
        var remedied = CountOf(before)
            .Where(c => c.Value > CountOf(after).GetValueOrDefault(c.Key))
            .Select(c => c.Key)
            .ToHashSet(StringComparer.Ordinal);
        var lines = order.Added.GroupBy(p => p.Product.PartNumber, StringComparer.Ordinal).Select(part =>
        {
            var product = part.First().Product;
            var units = part.Sum(p => p.OrderUnits);
            var reason = Fixings(order, product) ?? JoinedReasons.Of(part.Select(p => p.Reason));
            var rules = part.SelectMany(p => RulesOf(p.Stage)).Distinct(StringComparer.Ordinal).Where(remedied.Contains);
            return Line(product, (int)Math.Min(units, int.MaxValue), reason, rules, offered) with { ForLines = LinesOf(order.Lines, reason) };
        });
        foreach (var alike in order.Cabinets.GroupBy(c => c.PartNumber, StringComparer.Ordinal))
        {
            var kind = order.Plan.Racks.Count > 1 ? "several" : order.Final.Racks.All(r => FailedRacks.FitsCabinet(r.Trial)) ? null : "closest";
            lines = lines.Append(Line(alike.First(), alike.Count(), new WordedText(LineWordings.Cabinet.With(kind)), [], offered));
        }

        return [.. lines.OrderBy(l => l.PartNumber, StringComparer.Ordinal)];
    }

    // Counted in the completed racks: fixings are added in several passes, and panels close U positions after the first.
    private static WordedText? Fixings(CompletedOrder order, Product product)
    {
        if (product is not { Kind: ProductKind.Fixings, Fixing: { } fixing })
        {
            return null;
        }

        var needed = order.Final.Racks.Select(r => r.Trial.Completed.RackBuild)
            .Where(b => FixingSets.FixingOf(order.Lines.Request, b) == fixing).Sum(FixingSets.NeededBy);
        var ordered = order.Lines.Ordered.Parts.Where(p => p.Product.Fixing == fixing).Sum(p => p.OrderUnits * Stock.PiecesOf(p.Product));
        return needed > ordered ? FixingSets.ReasonOf(fixing, needed, needed - ordered) : null;
    }

    // The items of a reason; those of a second one have a number behind the name.
    private static IReadOnlyList<string> LinesOf(BasketLines lines, WordedText reason) =>
    [
        .. reason.Values.Where(v => v.Key.StartsWith("items", StringComparison.Ordinal)).SelectMany(v => v.Value.List ?? [])
            .Select(id => id.Text is { } item ? lines.LineOfItem(item) : null)
            .OfType<int>().Distinct().Order().Select(BasketLines.PointerOf),
    ];

    private static MissingLine Line(Product product, int quantity, WordedText reason, IEnumerable<string> rules, IReadOnlyList<Product> offered) => new()
    {
        PartNumber = product.PartNumber,
        Name = product.Name,
        Quantity = quantity,
        Price = product.Price,
        Currency = product.Currency,
        ForLines = [],
        Reason = reason.Text,
        MessageKey = reason.Key,
        MessageData = reason.Values,
        Rules = [.. rules],
        Alternatives = LineAlternatives.Of(product, quantity, offered),
    };

    // Number of findings and of missing data entries per rule.
    private static Dictionary<string, int> CountOf(CheckReport[] reports) => reports.SelectMany(r => r.Findings).Select(f => f.Rule)
        .Concat(reports.SelectMany(r => r.NotAssessed).SelectMany(n => n.Missing.Select(_ => n.Rule)))
        .GroupBy(r => r, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);

    private static string[] OfTheme(string theme) =>
        [.. RuleSet.Default.All.Select(r => r.Descriptor.Id).Where(id => id.StartsWith(theme, StringComparison.Ordinal))];

    private static string[] RulesOf(Stage stage) => stage switch
    {
        Stage.Shelves => [RuleChecks.IdOf<ShelfMissing>(), RuleChecks.IdOf<NotPlaced>()],
        Stage.Rails => [RuleChecks.IdOf<NoSupport>()],
        Stage.Consoles => [RuleChecks.IdOf<KvmPorts>()],
        Stage.Cooling => OfTheme("cooling."),
        Stage.Outlets => OfTheme("power."),
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
