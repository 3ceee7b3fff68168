using System.Collections;
using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using RackCheck.Model;

namespace RackCheck.Survey.Catalogue;

/// <summary>
/// The products that a catalogue found for part numbers, and those that it has but whose data is not valid. A part number in neither is unknown.
/// </summary>
/// <param name="products">The products, by part number.</param>
/// <param name="faults">See <see cref="Faults"/>.</param>
public sealed class ProductDictionary(IReadOnlyDictionary<string, Product> products, IReadOnlyDictionary<string, Fault>? faults = null)
    : IReadOnlyDictionary<string, Product>
{
    /// <summary>Nothing found.</summary>
    public static ProductDictionary None { get; } = new(FrozenDictionary<string, Product>.Empty);

    /// <summary>By part number, the first fault of a product that cannot be used. The pointer starts at the product, as <c>/cabinet/heightU</c>.</summary>
    public IReadOnlyDictionary<string, Fault> Faults { get; } = faults ?? FrozenDictionary<string, Fault>.Empty;

    /// <inheritdoc/>
    public int Count => products.Count;

    /// <inheritdoc/>
    public IEnumerable<string> Keys => products.Keys;

    /// <inheritdoc/>
    public IEnumerable<Product> Values => products.Values;

    /// <inheritdoc/>
    public Product this[string key] => products[key];

    /// <inheritdoc/>
    public bool ContainsKey(string key) => products.ContainsKey(key);

    /// <inheritdoc/>
    public bool TryGetValue(string key, [MaybeNullWhen(false)] out Product value) => products.TryGetValue(key, out value);

    /// <inheritdoc/>
    public IEnumerator<KeyValuePair<string, Product>> GetEnumerator() => products.GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
