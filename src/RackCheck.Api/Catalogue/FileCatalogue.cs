using System.Collections.Frozen;
using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>Catalogue from a JSON file, read once. All of its products are on offer.</summary>
internal sealed class FileCatalogue : IProductCatalogue
{
    private const int FaultsShown = 20;

    private readonly FrozenDictionary<string, Product> byPartNumber;
    private readonly Product[] offered;

    /// <summary>Creates the catalogue.</summary>
    /// <param name="products">Valid products.</param>
    public FileCatalogue(ProductList products)
    {
        byPartNumber = products.Products.ToFrozenDictionary(p => p.PartNumber, StringComparer.Ordinal);
        offered = [.. products.Products.OrderBy(p => p.PartNumber, StringComparer.Ordinal)];
    }

    /// <summary>Reads the products of a file.</summary>
    /// <param name="path">Path; a relative path starts at the directory of the service.</param>
    /// <param name="unknown">What becomes of members that the contract does not define.</param>
    /// <returns>The valid products.</returns>
    /// <exception cref="InvalidDataException">The file is missing or invalid; the message gives part numbers and faults.</exception>
    public static ProductList Read(string path, UnknownMembers unknown = UnknownMembers.Refuse)
    {
        path = Path.Combine(AppContext.BaseDirectory, path);
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            throw new InvalidDataException($"The catalogue file {path} cannot be read.", fault);
        }

        var body = bytes.AsMemory(bytes.AsSpan().StartsWith("\uFEFF"u8) ? 3 : 0);
        var (products, faults) = ProductText.Read(body, unknown);
        return faults.Count == 0
            ? products!
            : throw new InvalidDataException(
                $"The catalogue file {path} is not valid. {string.Join(' ', faults.Take(FaultsShown).Select(f => ProductValidator.Describe(f, products)))}");
    }

    /// <inheritdoc/>
    public ValueTask<ProductDictionary> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var found = new Dictionary<string, Product>(partNumbers.Count, StringComparer.Ordinal);
        foreach (var partNumber in partNumbers)
        {
            if (byPartNumber.TryGetValue(partNumber, out var product))
            {
                found[partNumber] = product;
            }
        }

        return ValueTask.FromResult(new ProductDictionary(found));
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return ValueTask.FromResult<IReadOnlyList<Product>>(offered);
    }
}
