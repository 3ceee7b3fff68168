using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>What is known of part numbers, and since when. Bounded: what was asked for longest ago goes first. Not for several threads at once.</summary>
/// <param name="options">How many entries, and how long they hold.</param>
/// <param name="time">The clock.</param>
internal sealed class ProductCache(CatalogueOptions options, TimeProvider time)
{
    private readonly Dictionary<string, LinkedListNode<Entry>> nodes = new(StringComparer.Ordinal);
    private readonly LinkedList<Entry> byUse = new();

    /// <summary>Entries kept now.</summary>
    public int Count => nodes.Count;

    /// <summary>Looks a part number up.</summary>
    /// <param name="partNumber">The part number.</param>
    /// <param name="product">The product; null where it is unknown to the product service, or nothing is known of it here.</param>
    /// <returns>How good the entry is.</returns>
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

        // That a part number was unknown once says nothing for later.
        if (product is not null && age < (double)options.CacheSeconds + options.StaleSeconds)
        {
            return Freshness.Stale;
        }

        Remove(node);
        product = null;
        return Freshness.None;
    }

    /// <summary>Keeps what was answered.</summary>
    /// <param name="partNumber">The part number.</param>
    /// <param name="product">The product; null where the product service does not know it.</param>
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

/// <summary>How good an entry is.</summary>
internal enum Freshness
{
    /// <summary>There is none, or it is too old for anything.</summary>
    None,

    /// <summary>Current.</summary>
    Fresh,

    /// <summary>Out of date; serves where the product service cannot be asked.</summary>
    Stale,
}
