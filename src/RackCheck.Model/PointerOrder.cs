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
        while (!left.IsEmpty && !right.IsEmpty)
        {
            var leftToken = Next(ref left);
            var rightToken = Next(ref right);
            var order = int.TryParse(leftToken, out var leftIndex) && int.TryParse(rightToken, out var rightIndex)
                ? leftIndex.CompareTo(rightIndex)
                : leftToken.CompareTo(rightToken, StringComparison.Ordinal);
            if (order != 0)
            {
                return order;
            }
        }

        return left.Length.CompareTo(right.Length);
    }

    private static ReadOnlySpan<char> Next(ref ReadOnlySpan<char> rest)
    {
        var slash = rest[1..].IndexOf('/');
        var token = slash < 0 ? rest[1..] : rest[1..(slash + 1)];
        rest = slash < 0 ? [] : rest[(slash + 1)..];
        return token;
    }
}
