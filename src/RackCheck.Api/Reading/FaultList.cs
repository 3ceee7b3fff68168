using RackCheck.Model;

namespace RackCheck.Api.Reading;

/// <summary>The faults of one request: at most one per pointer, none below a faulty value, and a limited number.</summary>
public sealed class FaultList
{
    /// <summary>Maximum number of faults in a problem document.</summary>
    public const int Most = 100;

    private readonly Dictionary<string, Fault> byPointer = new(StringComparer.Ordinal);

    /// <summary>Code of faults that are not listed; null lists all.</summary>
    public string? Ignored { get; init; }

    /// <summary>Whether there is no fault.</summary>
    public bool IsEmpty => byPointer.Count == 0;

    /// <summary>Whether a list is longer than the contract allows. Comparing its elements could then take too long.</summary>
    public bool HasTooLongList { get; set; }

    /// <summary>Whether a fault had no place any more: looking for further ones changes nothing.</summary>
    public bool HasMore { get; private set; }

    /// <summary>Adds a fault unless its pointer, or one above it, already has a fault.</summary>
    /// <param name="pointer">JSON pointer, RFC 6901.</param>
    /// <param name="code">One of <see cref="FaultCodes"/>.</param>
    /// <param name="detail">Message for people.</param>
    public void Add(string pointer, string code, string detail)
    {
        if (code == Ignored)
        {
            return;
        }

        for (var above = pointer; ; above = above[..above.LastIndexOf('/')])
        {
            if (byPointer.ContainsKey(above))
            {
                return;
            }

            if (above.Length == 0)
            {
                break;
            }
        }

        if (byPointer.Count >= Most)
        {
            HasMore = true;
            return;
        }

        byPointer.Add(pointer, new Fault { Pointer = pointer, Code = code, Detail = detail });
    }

    /// <summary>The faults in pointer order.</summary>
    /// <returns>The list; if faults were left out, its last element says so.</returns>
    public List<Fault> ToList()
    {
        var faults = byPointer.Values.OrderBy(f => f.Pointer, PointerOrder.Instance).ToList();
        if (HasMore)
        {
            faults.Add(new Fault { Pointer = "", Code = FaultCodes.More, Detail = $"There are more faults; the first {Most} are listed." });
        }

        return faults;
    }

    /// <summary>Pointer one level below another.</summary>
    /// <param name="parent">The parent pointer.</param>
    /// <param name="token">Member name or index.</param>
    /// <returns>The pointer, with ~ and / escaped as in RFC 6901.</returns>
    public static string Below(string parent, string token) =>
        parent + "/" + token.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
