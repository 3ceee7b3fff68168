using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>
/// The product that was meant by an unknown part number. Part numbers are exact; a guess takes no notice of case, blanks and hyphens, nor of what is left out
/// in front.
/// </summary>
/// <param name="offered">Products on offer.</param>
internal sealed class PartNumberHints(IReadOnlyList<Product> offered)
{
    // An edit more than this is another part.
    private const int MostEdits = 3;

    // A shorter end of a part number says too little.
    private const int LeastOfEnd = 4;

    // A basket with more unknown numbers than this was not mistyped. Each is compared with all products.
    private const int MostGuesses = 50;

    private readonly Dictionary<string, Product?> guesses = new(StringComparer.Ordinal);
    private readonly Lazy<(Product Product, string Plain)[]> plain = new(() => [.. offered.Select(p => (p, Plain(p.PartNumber)))]);

    /// <summary>The product, or null where none is near.</summary>
    /// <param name="number">The unknown part number.</param>
    public Product? Like(string number)
    {
        if (!guesses.TryGetValue(number, out var like) && guesses.Count < MostGuesses)
        {
            guesses[number] = like = Guess(Plain(number));
        }

        return like;
    }

    private Product? Guess(string typed)
    {
        var (best, fewest) = ((Product?)null, MostEdits);
        foreach (var (product, own) in plain.Value)
        {
            var edits = typed.Length >= LeastOfEnd && own.EndsWith(typed, StringComparison.Ordinal)
                ? Math.Min(1, own.Length - typed.Length)
                : Edits.Between(typed, own, MostEdits);
            if (edits < fewest
                || (edits == fewest && best is not null && string.CompareOrdinal(product.PartNumber, best.PartNumber) < 0))
            {
                (best, fewest) = (product, edits);
            }
        }

        return best;
    }

    private static string Plain(string number) => string.Concat(number.Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
