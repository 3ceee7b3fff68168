using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>How many racks are judged for a basket. It is a count, so that it is the same on every machine.</summary>
public sealed class BasketWorkTests
{
    // Batteries that stand no more than 30 C in a room of 35, which no cabinet and no division clears. It was 237 before only what leaves the order as it is
    // was tried as a remedy and a division that gains nothing was the last.
    [Fact]
    public void Basket_that_nothing_clears_takes_few_racks()
    {
        var counter = new Counter();
        var checker = new RackChecker(RuleSet.Of([.. RuleSet.Default.All, counter]), (rule, fault) => throw new InvalidOperationException(rule.Id, fault));
        var basket = Basket(("BAT-48", 1), ("SRV-2", 16), ("UPS-3", 1), ("SW-48", 2)) with { Site = new Site { Region = Region.Eu } };
        var report = new BasketPlanner(checker).Plan(basket, ByNumber, Products).Report!;
        Assert.Equal(Verdict.Hold, report.CompletedVerdicts.Product);
        Assert.Equal(["cooling.inlet-limit"], report.CompletedReport!.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Rule).Distinct());
        Assert.InRange(counter.Racks, 20, 140);
    }

    private sealed class Counter : Rule
    {
        public int Racks { get; private set; }

        public override RuleDescriptor Descriptor { get; } = RuleSet.Default.All[0].Descriptor with
        {
            Id = "test.count", Title = "Count", Severity = Severity.Advice,
        };

        public override void Check(RuleContext context) => Racks++;
    }
}
