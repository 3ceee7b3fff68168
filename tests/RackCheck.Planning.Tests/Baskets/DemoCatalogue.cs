using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Testing;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>The demo catalogue of the service, and short forms for baskets of it. Use with <c>using static</c>.</summary>
public static class DemoCatalogue
{
    public static IReadOnlyList<Product> Products { get; } = Read();

    public static IReadOnlyDictionary<string, Product> ByNumber { get; } = Products.ToDictionary(p => p.PartNumber, StringComparer.Ordinal);

    /// <summary>The products without the cabinets: an order stays in the cabinet that it has.</summary>
    public static IReadOnlyList<Product> WithoutCabinets { get; } = [.. Products.Where(p => p.Kind != ProductKind.Cabinet)];

    /// <summary>A UPS of the customer's own, with the data of the smaller one of the catalogue.</summary>
    public static Item OwnUps { get; } = new()
    {
        Id = "own-ups", HeightU = 2, MassKg = 24, Category = ItemCategory.Ups, Power = new ItemPower { RatedW = 1450, Plugs = [ConnectorCode.C14] },
        Ups = new Ups { RatedW = 1350, RatedVa = 1500, Outlets = [new UpsOutlet { Socket = ConnectorCode.C13, Count = 6 }] },
    };

    public static BasketRequest Basket(params (string Part, int Quantity)[] lines) => new()
    {
        Lines = [.. lines.Select(l => new BasketLine { PartNumber = "QWL-" + l.Part, Quantity = l.Quantity })],
    };

    /// <summary>A request for a rack of parts in a room of 25 C.</summary>
    public static ProposalRequest Request(params string[] parts) => new()
    {
        Items =
        [
            .. parts.Select((part, index) => new Item
            {
                Id = FormattableString.Invariant($"{part.ToLowerInvariant()}-{parts.Take(index + 1).Count(p => p == part)}"),
                PartNumber = "QWL-" + part,
            }),
        ],
        Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
    };

    public static BasketReport Plan(BasketRequest request, IReadOnlyList<Product>? offered = null)
    {
        var answer = Answer(request, offered);
        Assert.Empty(answer.Faults);
        return answer.Report!;
    }

    public static BasketAnswer Answer(BasketRequest request, IReadOnlyList<Product>? offered = null) =>
        new BasketPlanner(Judge.Checker).Plan(request, ByNumber, offered ?? Products);

    /// <summary>The completed basket.</summary>
    public static BasketRequest Completed(BasketRequest request, BasketReport report)
    {
        Assert.Equal(request.Reference, report.CompletedBasket.Reference);
        return report.CompletedBasket;
    }

    public static string TextOf(BasketReport report) => JsonSerializer.Serialize(report, ContractJson.Default.BasketReport);

    private static List<Product> Read()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "RackCheckApi.sln")))
        {
            folder = folder.Parent;
        }

        var text = File.ReadAllText(Path.Combine(folder.FullName, "src", "RackCheck.Api", "Catalogue", "products.json"));
        // In stock, all of it: which products are is a matter of one test.
        return [.. JsonSerializer.Deserialize(text, ContractJson.Default.ProductList)!.Products.Select(p => p with { InStock = null })];
    }
}
