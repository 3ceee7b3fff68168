using System.Globalization;

namespace RackCheck.Model;

/// <summary>Orders RFC 6901 pointers token by token, numbers by value: /items/2 comes before /items/10.</summary>
public sealed class PointerOrder : IComparer<string>
{
    private PointerOrder()
    {
    }

    /// <summary>The one instance.</summary>
    public static PointerOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(string? x, string? y)
    {
        var left = x.AsSpan();
        var right = y.AsSpan();

        // Most pointers differ in their last token or in one index: whole tokens that are the same are passed over at once.
        var same = left.CommonPrefixLength(right);
        if (same == left.Length && same == right.Length)
        {
            return 0;
        }

        if (left[..same].LastIndexOf('/') is var token and > 0)
        {
            left = left[token..];
            right = right[token..];
        }

        while (!left.IsEmpty && !right.IsEmpty)
        {
            var leftToken = Next(ref left);
            var rightToken = Next(ref right);
            var order = IndexOf(leftToken) is >= 0 and var leftIndex && IndexOf(rightToken) is >= 0 and var rightIndex
                ? leftIndex.CompareTo(rightIndex)
                : leftToken.CompareTo(rightToken, StringComparison.Ordinal);
            if (order != 0)
            {
                return order;
            }
        }

        return left.Length.CompareTo(right.Length);
    }

    // -1 for what is no index.
    private static int IndexOf(ReadOnlySpan<char> token) =>
        !token.IsEmpty && char.IsAsciiDigit(token[0]) && int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? index : -1;

    private static ReadOnlySpan<char> Next(ref ReadOnlySpan<char> rest)
    {
        var slash = rest[1..].IndexOf('/');
        var token = slash < 0 ? rest[1..] : rest[1..(slash + 1)];
        rest = slash < 0 ? [] : rest[(slash + 1)..];
        return token;
    }
}
