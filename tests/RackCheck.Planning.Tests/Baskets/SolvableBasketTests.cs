using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Testing.RackGenerator;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>
/// Small catalogues, of which every choice of cabinet, PDUs and air conditioner is tried: a basket that one of them completes without an error is never held.
/// </summary>
public sealed class SolvableBasketTests
{
    private const int Baskets = 500;
    private const int MostUnits = 2;

    private static readonly ProductKind[] Large =
        [ProductKind.Cabinet, ProductKind.Pdu, ProductKind.AirConditioner, ProductKind.Door, ProductKind.Equipment];

    private static readonly Product[] Small = [.. Products.Where(p => !Large.Contains(p.Kind))];

    private static readonly Gen<(BasketRequest Basket, Product[] Large)> Cases =
        from equipment in OneOf(NumbersOf(ProductKind.Equipment)).Select(Gen.Int[1, 3], (part, quantity) => (part, quantity)).Array[1, 4]
        from cabinets in OneOf(NumbersOf(ProductKind.Cabinet)).Array[1, 3]
        from units in OneOf(NumbersOf(ProductKind.Pdu)).Array[1, 3]
        from cooler in OneOf([null, .. NumbersOf(ProductKind.AirConditioner)])
        from ambientC in Gen.Int[20, 40]
        from isDusty in Gen.Int[0, 9]
        select (
            new BasketRequest
            {
                Lines = [.. equipment.Select(e => new BasketLine { PartNumber = e.part, Quantity = e.quantity })],
                Site = new Site { Region = Region.Eu, AmbientMaxC = ambientC, RequiredIp = isDusty == 0 ? "IP54" : null },
            },
            (Product[])[.. cabinets.Concat(units).Append(cooler).OfType<string>().Distinct().Select(n => ByNumber[n])]);

    private static string?[] NumbersOf(ProductKind kind) => [.. Products.Where(p => p.Kind == kind).Select(p => p.PartNumber)];

    [Fact]
    [Trait("Kind", "property")]
    public void Basket_that_some_choice_solves_is_not_held()
    {
        var held = 0;
        Cases.Sample(
            c =>
            {
                var report = Plan(c.Basket, [.. Small, .. c.Large]);
                if (report.CompletedVerdicts.Product != Verdict.Hold)
                {
                    return;
                }

                Interlocked.Increment(ref held);
                var solved = Choices(c.Large).Where(choice => IsSolved(c.Basket, choice)).Take(1);
                Assert.Empty(solved.Select(s => string.Join(", ", s.Select(p => p.PartNumber))));
            },
            iter: Samples.Of(Baskets),
            print: c => $"{string.Join(", ", c.Basket.Lines.Select(l => $"{l.Quantity} {l.PartNumber}"))} at {c.Basket.Site!.AmbientMaxC} C "
                + $"{c.Basket.Site.RequiredIp} of {string.Join(", ", c.Large.Select(p => p.PartNumber))}");
        Assert.True(held > 0 || Samples.Of(Baskets) < Baskets, "No basket was held.");
    }

    private static IEnumerable<IReadOnlyList<Product>> Choices(Product[] large) =>
        from cabinet in large.Where(p => p.Kind == ProductKind.Cabinet)
        from units in UnitsOf([.. large.Where(p => p.Kind == ProductKind.Pdu)])
        from cooler in large.Where(p => p.Kind == ProductKind.AirConditioner).Prepend(null)
        select (IReadOnlyList<Product>)[cabinet, .. units, .. cooler is null ? (Product[])[] : [cooler]];

    // None, one, or two of the same or of different kinds.
    private static IEnumerable<Product[]> UnitsOf(Product[] kinds, int most = MostUnits) => most == 0 ? [[]] :
        [[], .. kinds.SelectMany((kind, index) => UnitsOf(kinds[index..], most - 1).Select(more => (Product[])[kind, .. more]))];

    // With no other large part on offer, what is ordered is what the rack is built of.
    private static bool IsSolved(BasketRequest basket, IReadOnlyList<Product> choice)
    {
        var ordered = basket with
        {
            Lines =
            [
                .. basket.Lines,
                .. choice.GroupBy(p => p.PartNumber).Select(g => new BasketLine { PartNumber = g.Key, Quantity = g.Count() }),
            ],
        };
        var report = Plan(ordered, Small);
        return report.CompletedVerdicts.Product != Verdict.Hold && report.Unmet.Count == 0 && report.ReplaceLines.Count == 0;
    }
}
