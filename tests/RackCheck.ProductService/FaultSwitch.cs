using System.Text.Json;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.ProductService;

/// <summary>What the product service does wrong.</summary>
[JsonConverter(typeof(NamedEnumConverter<FaultKind>))]
public enum FaultKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Answers rightly, after <c>delayMs</c>.</summary>
    Slow,

    /// <summary>Breaks the connection off before an answer.</summary>
    Reset,

    /// <summary>Breaks the connection off in the middle of an answer.</summary>
    ResetMidway,

    /// <summary>500.</summary>
    Failed,

    /// <summary>429, with <c>retryAfterS</c>.</summary>
    Busy,

    /// <summary>404.</summary>
    NotFound,

    /// <summary>400.</summary>
    BadRequest,

    /// <summary>302 to itself.</summary>
    Redirect,

    /// <summary>An answer that is whole for HTTP, with half of the JSON.</summary>
    TruncatedJson,

    /// <summary>A page of HTML.</summary>
    WrongContentType,

    /// <summary>A product with a member that the contract does not have.</summary>
    WrongSchema,

    /// <summary>A product with a value outside its range.</summary>
    WrongValue,

    /// <summary>Knows none of the part numbers.</summary>
    UnknownPart,

    /// <summary>An answer of 64 MiB.</summary>
    TooLarge,

    /// <summary>A product more than was asked for.</summary>
    NotAskedFor,
}

/// <summary>What to do wrong, and how often.</summary>
public sealed record FaultOrder
{
    /// <summary>What.</summary>
    public required FaultKind Kind { get; init; }

    /// <summary>The wait of <c>slow</c>, ms; 1000 unless told.</summary>
    public int? DelayMs { get; init; }

    /// <summary>What <c>busy</c> asks to wait, s; 1 unless told.</summary>
    public int? RetryAfterS { get; init; }

    /// <summary>How many calls go wrong; all unless told.</summary>
    public int? Times { get; init; }
}

/// <summary>The fault that is switched on, and the calls that came in.</summary>
public sealed class FaultSwitch
{
    private readonly Lock gate = new();
    private readonly List<int> asked = [];
    private FaultOrder order = new() { Kind = FaultKind.None };
    private int left;

    /// <summary>The fault that is switched on.</summary>
    public FaultOrder Order
    {
        get
        {
            lock (gate)
            {
                return order;
            }
        }
    }

    /// <summary>Part numbers asked for, an entry a call since the last order; 0 for the offered products.</summary>
    public IReadOnlyList<int> Asked
    {
        get
        {
            lock (gate)
            {
                return [.. asked];
            }
        }
    }

    /// <summary>Calls since the last order.</summary>
    public int Calls => Asked.Count;

    /// <summary>Switches a fault on, or off, and forgets the calls so far.</summary>
    /// <param name="value">The fault.</param>
    public void Set(FaultOrder value)
    {
        lock (gate)
        {
            (order, left) = (value, value.Times ?? int.MaxValue);
            asked.Clear();
        }
    }

    /// <summary>Switches a fault on.</summary>
    /// <param name="kind">Which.</param>
    /// <param name="times">How many calls go wrong; all unless told.</param>
    public void Set(FaultKind kind, int? times = null) => Set(new FaultOrder { Kind = kind, Times = times });

    internal FaultOrder Take(int partNumbers)
    {
        lock (gate)
        {
            asked.Add(partNumbers);
            return left-- > 0 ? order : order with { Kind = FaultKind.None };
        }
    }
}

/// <summary>How orders are read and written.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(FaultOrder))]
internal sealed partial class FaultJson : JsonSerializerContext;
