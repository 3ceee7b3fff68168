using System.Text.Json;
using System.Text.Unicode;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Catalogue;

/// <summary>Reads products as a file or a product service gives them, and finds what is wrong with them.</summary>
internal static class ProductText
{
    /// <summary>Reads a list of products.</summary>
    /// <param name="body">The text.</param>
    /// <returns>The products and no fault; or the faults, with the products as far as they could be read.</returns>
    public static (ProductList? Products, List<Fault> Faults) Read(ReadOnlyMemory<byte> body)
    {
        try
        {
            if (Utf8.IsValid(body.Span) && JsonSerializer.Deserialize(body.Span, ContractJson.Default.ProductList) is { } products)
            {
                return (products, ProductValidator.FaultsOf(products));
            }
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            // What is wrong is found below.
        }

        return Explain(body);
    }

    private static (ProductList? Products, List<Fault> Faults) Explain(ReadOnlyMemory<byte> body)
    {
        var faults = new FaultList();
        var products = Utf8.IsValid(body.Span) && FaultFinder.IsJson(body.Span, faults) && faults.IsEmpty
            ? FaultFinder.Find(body, ContractJson.Default.ProductList, faults)
            : null;
        if (faults.IsEmpty)
        {
            faults.Add("", FaultCodes.WrongForm, "The text is no list of products in UTF-8.");
        }

        return (products, faults.ToList());
    }
}
