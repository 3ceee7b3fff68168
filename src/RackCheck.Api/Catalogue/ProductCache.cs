using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>Cache of products by part number. Its size is limited; the least recently used entry is removed first. Not thread-safe.</summary>
/// <param name="options">Number of entries and their lifetimes.</param>
/// <param name="time">The clock.</param>
internal sealed class ProductCache(CatalogueOptions options, TimeProvider time)
{
    private readonly Dictionary<string, LinkedListNode<Entry>> nodes = new(StringComparer.Ordinal);
    private readonly LinkedList<Entry> byUse = new();

    /// <summary>Number of entries.</summary>
    public int Count => nodes.Count;

    /// <summary>Looks a part number up.</summary>
    /// <param name="partNumber">The part number.</param>
    /// <param name="product">The product; null if the product service does not know it, or the cache has no entry.</param>
    /// <returns>State of the entry.</returns>
    public Freshness Find(string partNumber, out Product? product)
    {
        product = null;
        if (!nodes.TryGetValue(partNumber, out var node))
        {
            return Freshness.None;
        }

        var age = time.GetElapsedTime(node.Value.Since).TotalSeconds;
        product = node.Value.Product;
        var holds = product is null ? options.UnknownSeconds : options.CacheSeconds;
        if (age < holds)
        {
            byUse.Remove(node);
            byUse.AddFirst(node);
            return Freshness.Fresh;
        }

        // An unknown part number may become known later.
        if (product is not null && age < (double)options.CacheSeconds + options.StaleSeconds)
        {
            return Freshness.Stale;
        }

        Remove(node);
        product = null;
        return Freshness.None;
    }

    /// <summary>Adds an answer.</summary>
    /// <param name="partNumber">The part number.</param>
    /// <param name="product">The product; null if the product service does not know it.</param>
    public void Put(string partNumber, Product? product)
    {
        var entry = new Entry(partNumber, product, time.GetTimestamp());
        if (nodes.TryGetValue(partNumber, out var node))
        {
            node.Value = entry;
            byUse.Remove(node);
            byUse.AddFirst(node);
            return;
        }

        if (nodes.Count >= options.CacheEntries)
        {
            Remove(byUse.Last!);
        }

        nodes.Add(partNumber, byUse.AddFirst(entry));
    }

    private void Remove(LinkedListNode<Entry> node)
    {
        byUse.Remove(node);
        nodes.Remove(node.Value.PartNumber);
    }

    private readonly record struct Entry(string PartNumber, Product? Product, long Since);
}

/// <summary>State of a cache entry.</summary>
internal enum Freshness
{
    /// <summary>No entry, or it is too old.</summary>
    None,

    /// <summary>Current.</summary>
    Fresh,

    /// <summary>Stale; served if the product service is unavailable.</summary>
    Stale,
}
