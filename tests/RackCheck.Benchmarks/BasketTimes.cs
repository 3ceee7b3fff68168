using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;

namespace RackCheck.Benchmarks;

/// <summary>Times of baskets of the demo catalogue: what a shop posts while a customer fills the basket.</summary>
internal static class BasketTimes
{
    private const int Baskets = 60;
    private const int Warm = 20;

    /// <summary>Prints p50, p95 and the greatest time of each size, with the demo catalogue and with 2,000 products on offer.</summary>
    public static void Print()
    {
        var file = Path.Combine(AppContext.BaseDirectory, "Catalogue", "products.json");
        var products = JsonSerializer.Deserialize(File.ReadAllBytes(file), ContractJson.Default.ProductList)!.Products;
        Product[] many = [.. products, .. Enumerable.Range(0, 2000 - products.Count).Select(i => Copy(products[i % products.Count], i))];
        var planner = new BasketPlanner(new RackChecker(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault)));
        foreach (IReadOnlyList<Product> offered in (IReadOnlyList<Product>[])[products, many])
        {
            Print("of a shop", planner, FromShops(), offered);
            foreach (var (lines, mounted) in ((int, int)[])[(5, 10), (20, 40), (40, 60)])
            {
                var random = new Random(42);
                Print(
                    string.Create(CultureInfo.InvariantCulture, $"of {lines} random lines"),
                    planner,
                    [.. Enumerable.Range(0, Baskets).Select(_ => Basket(random, products, lines, mounted))],
                    offered);
            }
        }
    }

    private static void Print(string kind, BasketPlanner planner, BasketRequest[] requests, IReadOnlyList<Product> offered)
    {
        var found = offered.ToDictionary(p => p.PartNumber, StringComparer.Ordinal);
        Array.ForEach(requests[..Warm], r => planner.Plan(r, found, offered));
        var held = 0;
        double[] times = [.. requests.Select(r => TimeOf(() => held += IsHeld(planner.Plan(r, found, offered)) ? 1 : 0)).Order()];
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{requests.Length} {kind}, {offered.Count} on offer: p50 {times[times.Length / 2]:F0} ms, "
            + $"p95 {times[(int)(0.95 * times.Length)]:F0} ms, most {times[^1]:F0} ms, {held} held when complete"));
    }

    // What the acceptance cases post.
    private static BasketRequest[] FromShops() =>
    [
        .. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "baskets"), "*.json").Order(StringComparer.Ordinal)
            .Select(f => JsonDocument.Parse(File.ReadAllBytes(f)).RootElement.GetProperty("request").Deserialize(ContractJson.Default.BasketRequest)!),
    ];

    private static bool IsHeld(BasketAnswer answer) => answer.Report?.CompletedVerdicts.Product == Verdict.Hold;

    private static Product Copy(Product product, int number) =>
        product with { PartNumber = string.Create(CultureInfo.InvariantCulture, $"{product.PartNumber}-{number}") };

    private static double TimeOf(Action action)
    {
        var clock = Stopwatch.StartNew();
        action();
        return clock.Elapsed.TotalMilliseconds;
    }

    // A third of the lines is equipment; of it no more than a number of pieces.
    private static BasketRequest Basket(Random random, IReadOnlyList<Product> products, int lines, int mounted)
    {
        Product[] equipment = [.. products.Where(p => p.Kind == ProductKind.Equipment)];
        Product[] parts = [.. products.Where(p => p.Kind is not ProductKind.Equipment and not ProductKind.Cabinet)];
        List<BasketLine> all = [];
        for (var i = 0; i < lines; i++)
        {
            var isEquipment = i % 3 != 2;
            var from = isEquipment ? equipment : parts;
            var quantity = isEquipment ? Math.Min(mounted, random.Next(1, 3)) : random.Next(1, 5);
            if (quantity > 0)
            {
                all.Add(new BasketLine { PartNumber = from[random.Next(from.Length)].PartNumber, Quantity = quantity });
                mounted -= isEquipment ? quantity : 0;
            }
        }

        return new BasketRequest { Lines = all, Site = new Site { Region = Region.Eu } };
    }
}
