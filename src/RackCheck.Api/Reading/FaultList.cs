using RackCheck.Model;

namespace RackCheck.Api.Reading;

/// <summary>The faults of one request: at most one for a place, none below a place that is at fault itself, and not without end.</summary>
public sealed class FaultList
{
    /// <summary>Faults that a problem lists at most.</summary>
    public const int Most = 100;

    private readonly Dictionary<string, Fault> byPointer = new(StringComparer.Ordinal);
    private bool more;

    /// <summary>Whether there is no fault.</summary>
    public bool IsEmpty => byPointer.Count == 0;

    /// <summary>Whether a list is longer than the contract allows. Then comparing its elements with each other could take for ever.</summary>
    public bool HasWrongCount => byPointer.Values.Any(f => f.Code == FaultCodes.WrongCount);

    /// <summary>Whether no more faults are taken.</summary>
    public bool IsFull => byPointer.Count >= Most;

    /// <summary>Adds a fault, unless its place or one above it is at fault already.</summary>
    /// <param name="pointer">Place, RFC 6901.</param>
    /// <param name="code">Code.</param>
    /// <param name="detail">What is wrong, for people.</param>
    public void Add(string pointer, string code, string detail)
    {
        if (IsFull)
        {
            more = true;
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

        byPointer.Add(pointer, new Fault { Pointer = pointer, Code = code, Detail = detail });
    }

    /// <summary>The faults in the order of their places.</summary>
    /// <returns>The list; where faults were left out its last element says so.</returns>
    public List<Fault> ToList()
    {
        var faults = byPointer.Values.OrderBy(f => f.Pointer, PointerOrder.Instance).ToList();
        if (more)
        {
            faults.Add(new Fault { Pointer = "", Code = FaultCodes.More, Detail = $"There are more faults; the first {Most} are listed." });
        }

        return faults;
    }

    /// <summary>A pointer one level down.</summary>
    /// <param name="parent">The pointer above.</param>
    /// <param name="token">Name or index.</param>
    /// <returns>The pointer, with ~ and / of the name escaped as RFC 6901 says.</returns>
    public static string Below(string parent, string token) =>
        parent + "/" + token.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
