using System.Globalization;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Documents.Pages;

/// <summary>The parts of the sample catalogue, for whoever tries the service.</summary>
internal static class PartsPage
{
    /// <summary>What the page has, in a sentence.</summary>
    public const string Summary = "Part numbers of the sample catalogue that the service starts with unless another is set.";

    /// <summary>Writes the page.</summary>
    /// <param name="products">The products.</param>
    public static Html Write(IEnumerable<Product> products) => Html.Of($"""
        {PageFrame.Trail(Paths.Parts, (Paths.Reference, "Reference"))}
        <h1>Parts of the sample catalogue</h1>
        <p class="lead">{Summary}</p>
        <p>They are invented, to try baskets and proposals with. Another catalogue has other part numbers, which the service does not list: ask whoever
        operates it.</p>
        {Html.Table(
            "Parts", [new("Part number"), new("Kind"), new("Name"), new("Price")],
            products.OrderBy(p => p.PartNumber, StringComparer.Ordinal).Select(Row))}
        """);

    private static string KindOf(Product product) =>
        JsonSerializer.SerializeToElement(product, ContractJson.Default.Product).GetProperty("kind").GetString()!.Replace('-', ' ');

    private static Html[] Row(Product product) =>
    [
        Html.Of($"<code>{product.PartNumber}</code>"), Html.Text(KindOf(product)), Html.Text(product.Name),
        Html.Text(product.Price is { } price ? string.Create(CultureInfo.InvariantCulture, $"{price:0.00} {product.Currency}") : ""),
    ];
}
