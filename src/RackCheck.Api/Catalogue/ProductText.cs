using System.Buffers;
using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Catalogue;

/// <summary>Reads the products of a file or of a product service and finds their faults.</summary>
internal static class ProductText
{
    private const string List = "products";
    private const int MostProducts = 10_000;
    private const int LongestPartNumber = 64;

    // As strict as the contract but for members that it does not define.
    private static readonly JsonTypeInfo<ProductList> Tolerant = (JsonTypeInfo<ProductList>)new JsonSerializerOptions(ContractJson.Default.Options)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip,
        TypeInfoResolver = ContractJson.Default,
    }.GetTypeInfo(typeof(ProductList));

    /// <summary>Reads a list of products as a whole.</summary>
    /// <param name="body">The JSON text.</param>
    /// <param name="unknown">What becomes of members that the contract does not define.</param>
    /// <returns>The products without faults; or the faults and the readable products.</returns>
    public static (ProductList? Products, List<Fault> Faults) Read(ReadOnlyMemory<byte> body, UnknownMembers unknown)
    {
        try
        {
            var type = unknown == UnknownMembers.Ignore ? Tolerant : ContractJson.Default.ProductList;
            if (Utf8.IsValid(body.Span) && JsonSerializer.Deserialize(body.Span, type) is { } products)
            {
                return (products, ProductValidator.FaultsOf(products));
            }
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            // The faults are found below.
        }

        var faults = new FaultList { Ignored = unknown == UnknownMembers.Ignore ? FaultCodes.UnknownMember : null };
        var readable = Utf8.IsValid(body.Span) && RequestDiagnostics.IsJson(body.Span, faults) && faults.IsEmpty
            ? RequestDiagnostics.Find(body, ContractJson.Default.ProductList, faults)
            : null;
        if (faults.IsEmpty)
        {
            faults.Add("", FaultCodes.WrongForm, "The text is not a list of products in UTF-8.");
        }

        return (readable, faults.ToList());
    }

    /// <summary>Reads a list of products one by one: a wrong product does not affect the others.</summary>
    /// <param name="body">The JSON text.</param>
    /// <param name="unknown">What becomes of members that the contract does not define.</param>
    /// <returns>The valid and the wrong products; or the fault of the list as a whole.</returns>
    public static ProductsRead ReadEach(ReadOnlyMemory<byte> body, UnknownMembers unknown)
    {
        var (list, faults) = Read(body, unknown);
        if (faults.Count == 0)
        {
            return new ProductsRead(list!.Products, [], null);
        }

        var ofText = new FaultList();
        if (!Utf8.IsValid(body.Span) || !RequestDiagnostics.IsJson(body.Span, ofText) || !ofText.IsEmpty)
        {
            return new ProductsRead([], [], Shown(ofText.ToList() is [var first, ..] ? first : faults[0]));
        }

        using var document = JsonDocument.Parse(body, new JsonDocumentOptions { MaxDepth = ContractJson.DepthLimit });
        return FaultOfList(document.RootElement, unknown) is { } fault
            ? new ProductsRead([], [], fault)
            : ReadElements([.. document.RootElement.GetProperty(List).EnumerateArray()], unknown);
    }

    private static Fault? FaultOfList(JsonElement root, UnknownMembers unknown)
    {
        static Fault Of(string pointer, string code, string detail) => new() { Pointer = pointer, Code = code, Detail = detail };

        if (root.ValueKind != JsonValueKind.Object)
        {
            return Of("", FaultCodes.WrongType, "An object is required.");
        }

        var lists = root.EnumerateObject().Where(m => m.NameEquals(List)).Select(m => m.Value).ToList();
        return unknown == UnknownMembers.Refuse && root.GetPropertyCount() > lists.Count
                ? Of("", FaultCodes.UnknownMember, "The contract does not define a member beside the list of products.")
            : lists is not [var list] ? lists.Count == 0
                ? Of("/" + List, FaultCodes.MissingMember, "It is required but missing.")
                : Of("/" + List, FaultCodes.DuplicateMember, "Duplicate member.")
            : list.ValueKind != JsonValueKind.Array ? Of("/" + List, FaultCodes.WrongType, "An array is required.")
            : list.GetArrayLength() > MostProducts ? Of("/" + List, FaultCodes.WrongCount, $"It has more than {MostProducts} elements.")
            : null;
    }

    private static ProductsRead ReadElements(List<JsonElement> elements, UnknownMembers unknown)
    {
        var numbers = elements.ConvertAll(PartNumberOf);
        var twice = numbers.Where(n => n is not null).GroupBy(n => n, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key)
            .ToHashSet(StringComparer.Ordinal);
        var (products, wrong) = (new List<Product>(elements.Count), new List<WrongProduct>());
        for (var i = 0; i < elements.Count; i++)
        {
            var (product, fault) = ReadOne(elements[i], unknown);
            if (product is not null && twice.Contains(product.PartNumber))
            {
                // Nobody can say which of them is meant.
                (product, fault) = (null, new Fault
                {
                    Pointer = "/partNumber", Code = FaultCodes.DuplicateId, Detail = "Another product has this part number.",
                });
            }

            if (product is not null)
            {
                products.Add(product);
            }
            else
            {
                wrong.Add(new WrongProduct(i, numbers[i], fault!));
            }
        }

        return new ProductsRead(products, wrong, null);
    }

    private static (Product? Product, Fault? Fault) ReadOne(JsonElement element, UnknownMembers unknown)
    {
        var text = new ArrayBufferWriter<byte>();
        text.Write("{\"products\":["u8);
        text.Write(JsonMarshal.GetRawUtf8Value(element));
        text.Write("]}"u8);
        var (list, faults) = Read(text.WrittenMemory, unknown);
        return faults is [var first, ..] ? (null, Shown(first)) : (list!.Products[0], null);
    }

    // The part number, if it can be read: of a product that is wrong otherwise, too.
    private static string? PartNumberOf(JsonElement element)
    {
        try
        {
            return element.ValueKind == JsonValueKind.Object
                && element.TryGetProperty("partNumber", out var value)
                && value.ValueKind == JsonValueKind.String
                && value.GetString() is { Length: > 0 and <= LongestPartNumber } number
                    ? number
                    : null;
        }
        catch (InvalidOperationException)
        {
            // Invalid UTF-16.
            return null;
        }
    }

    // With a pointer that starts at the product. The name of a member that is not in the contract is text of the other party.
    private static Fault Shown(Fault fault)
    {
        const string First = "/" + List + "/0";
        var pointer = fault.Code switch
        {
            FaultCodes.TooDeep => "",
            FaultCodes.UnknownMember or FaultCodes.DuplicateMember => fault.Pointer[..fault.Pointer.LastIndexOf('/')],
            _ => fault.Pointer,
        };
        return fault with { Pointer = pointer.StartsWith(First, StringComparison.Ordinal) ? pointer[First.Length..] : pointer };
    }
}

/// <summary>What becomes of members that the contract does not define.</summary>
public enum UnknownMembers
{
    /// <summary>They are ignored.</summary>
    Ignore,

    /// <summary>They make the product wrong.</summary>
    Refuse,
}

/// <summary>A list of products, read one by one.</summary>
/// <param name="Products">The valid products.</param>
/// <param name="Wrong">The products left out.</param>
/// <param name="Fault">The fault of the list as a whole; then nothing of it is used.</param>
internal sealed record ProductsRead(IReadOnlyList<Product> Products, IReadOnlyList<WrongProduct> Wrong, Fault? Fault);

/// <summary>A product that is left out.</summary>
/// <param name="Index">Its index in the list.</param>
/// <param name="PartNumber">Its part number; null if that cannot be read.</param>
/// <param name="Fault">Its first fault; the pointer starts at the product.</param>
internal sealed record WrongProduct(int Index, string? PartNumber, Fault Fault);
