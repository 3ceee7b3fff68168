using System.Text.Json;
using System.Text.Unicode;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Catalogue;

/// <summary>Reads the products of a file or of a product service and finds their faults.</summary>
internal static class ProductText
{
    /// <summary>Reads a list of products.</summary>
    /// <param name="body">The JSON text.</param>
    /// <returns>The products without faults; or the faults and the readable products.</returns>
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
            // The faults are found below.
        }

        return Explain(body);
    }

    private static (ProductList? Products, List<Fault> Faults) Explain(ReadOnlyMemory<byte> body)
    {
        var faults = new FaultList();
        var products = Utf8.IsValid(body.Span) && RequestDiagnostics.IsJson(body.Span, faults) && faults.IsEmpty
            ? RequestDiagnostics.Find(body, ContractJson.Default.ProductList, faults)
            : null;
        if (faults.IsEmpty)
        {
            faults.Add("", FaultCodes.WrongForm, "The text is not a list of products in UTF-8.");
        }

        return (products, faults.ToList());
    }
}
