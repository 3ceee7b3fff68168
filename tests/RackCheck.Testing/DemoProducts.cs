using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Testing;

/// <summary>The catalogue of the demo, as it is shipped with the service.</summary>
public static class DemoProducts
{
    public static IReadOnlyList<Product> All { get; } =
        JsonSerializer.Deserialize(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "products.json")), ContractJson.Default.ProductList)!.Products;

    public static IReadOnlyDictionary<string, Product> ByPartNumber { get; } = All.ToDictionary(p => p.PartNumber, StringComparer.Ordinal);
}
