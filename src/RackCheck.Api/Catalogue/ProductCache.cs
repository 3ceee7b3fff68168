using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>Cache of answers by part number. Its size is limited; the least recently used entry is removed first. Not thread-safe.</summary>
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
    /// <param name="answer">The answer; nothing if the cache has no entry.</param>
    /// <returns>State of the entry.</returns>
    public Freshness Find(string partNumber, out PartAnswer answer)
    {
        answer = default;
        if (!nodes.TryGetValue(partNumber, out var node))
        {
            return Freshness.None;
        }

        var (isProduct, age) = (node.Value.Answer.Product is not null, time.GetElapsedTime(node.Value.Since).TotalSeconds);
        var freshness = age < (isProduct ? options.CacheSeconds : options.UnknownSeconds) ? Freshness.Fresh

            // What is unknown or wrong may be right by now.
            : !isProduct || age >= options.LongestSeconds ? Freshness.None
            : age < options.AtOnceSeconds ? Freshness.AtOnce
            : Freshness.Stale;
        if (freshness == Freshness.None)
        {
            Remove(node);
            return freshness;
        }

        answer = node.Value.Answer;
        if (freshness != Freshness.Stale)
        {
            Use(node);
        }

        return freshness;
    }

    /// <summary>Whether a refresh of an entry may begin: the last one did not fail a moment ago.</summary>
    /// <param name="partNumber">The part number.</param>
    public bool MayRefresh(string partNumber) => nodes.TryGetValue(partNumber, out var node)
        && (node.Value.FailedAt is not { } failure || time.GetElapsedTime(failure).TotalSeconds >= options.RefreshPauseSeconds);

    /// <summary>Adds an answer.</summary>
    /// <param name="partNumber">The part number.</param>
    /// <param name="answer">The answer.</param>
    public void Put(string partNumber, PartAnswer answer)
    {
        var entry = new Entry(partNumber, answer, time.GetTimestamp(), null);
        if (nodes.TryGetValue(partNumber, out var node))
        {
            node.Value = entry;
            Use(node);
            return;
        }

        if (nodes.Count >= options.CacheEntries)
        {
            Remove(byUse.Last!);
        }

        nodes.Add(partNumber, byUse.AddFirst(entry));
    }

    /// <summary>Records that a refresh failed; the entry stays as it is.</summary>
    /// <param name="partNumber">The part number.</param>
    public void RefreshFailed(string partNumber)
    {
        if (nodes.TryGetValue(partNumber, out var node))
        {
            node.Value = node.Value with { FailedAt = time.GetTimestamp() };
        }
    }

    private void Use(LinkedListNode<Entry> node)
    {
        byUse.Remove(node);
        byUse.AddFirst(node);
    }

    private void Remove(LinkedListNode<Entry> node)
    {
        byUse.Remove(node);
        nodes.Remove(node.Value.PartNumber);
    }

    private readonly record struct Entry(string PartNumber, PartAnswer Answer, long Since, long? FailedAt);
}

/// <summary>What the product service said of a part number; neither product nor fault if it does not know it.</summary>
/// <param name="Product">The product.</param>
/// <param name="Fault">Why its data cannot be used.</param>
internal readonly record struct PartAnswer(Product? Product, Fault? Fault = null);

/// <summary>State of a cache entry.</summary>
internal enum Freshness
{
    /// <summary>No entry, or it is too old.</summary>
    None,

    /// <summary>Current.</summary>
    Fresh,

    /// <summary>No longer current; served at once and refreshed behind.</summary>
    AtOnce,

    /// <summary>Older; served if the product service is unavailable.</summary>
    Stale,
}
