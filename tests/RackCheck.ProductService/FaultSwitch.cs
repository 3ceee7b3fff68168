using System.Text.Json;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.ProductService;

/// <summary>Faults that the product service simulates.</summary>
[JsonConverter(typeof(NamedEnumConverter<FaultKind>))]
public enum FaultKind
{
    /// <summary>No fault.</summary>
    None,

    /// <summary>Correct answer after <c>delayMs</c>.</summary>
    Slow,

    /// <summary>Closes the connection before an answer.</summary>
    Reset,

    /// <summary>Closes the connection in the middle of an answer.</summary>
    ResetMidway,

    /// <summary>Status 500.</summary>
    Failed,

    /// <summary>Status 429 with <c>retryAfterS</c>.</summary>
    Busy,

    /// <summary>Status 404.</summary>
    NotFound,

    /// <summary>Status 400.</summary>
    BadRequest,

    /// <summary>Status 302 to itself.</summary>
    Redirect,

    /// <summary>A complete HTTP response with half of the JSON.</summary>
    TruncatedJson,

    /// <summary>An HTML page.</summary>
    WrongContentType,

    /// <summary>The first product has a member that the contract does not define.</summary>
    WrongSchema,

    /// <summary>The first product has a value outside its range.</summary>
    WrongValue,

    /// <summary>The first product has a number as part number.</summary>
    Nameless,

    /// <summary>No part number is known.</summary>
    UnknownPart,

    /// <summary>An answer of 64 MiB.</summary>
    TooLarge,

    /// <summary>All products, whatever was requested.</summary>
    NotAskedFor,
}

/// <summary>A fault to simulate and how often.</summary>
public sealed record FaultOrder
{
    /// <summary>Kind of the fault.</summary>
    public required FaultKind Kind { get; init; }

    /// <summary>Delay of <c>slow</c>, ms; default 1000.</summary>
    public int? DelayMs { get; init; }

    /// <summary>Retry-After of <c>busy</c>, s; default 1.</summary>
    public int? RetryAfterS { get; init; }

    /// <summary>Number of calls that fail; default all.</summary>
    public int? Times { get; init; }
}

/// <summary>The active fault and the calls received.</summary>
public sealed class FaultSwitch
{
    private readonly Lock gate = new();
    private readonly List<int> asked = [];
    private FaultOrder order = new() { Kind = FaultKind.None };
    private int left;

    /// <summary>The active fault.</summary>
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

    /// <summary>Which requests are let in by their headers; others get 401. Null lets all in.</summary>
    public Func<IHeaderDictionary, bool>? LetsIn { get; set; }

    /// <summary>Number of part numbers requested, one entry per call since the last order; 0 for the offered products.</summary>
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

    /// <summary>Switches a fault on or off and clears the calls received.</summary>
    public void Set(FaultOrder value)
    {
        lock (gate)
        {
            (order, left) = (value, value.Times ?? int.MaxValue);
            asked.Clear();
        }
    }

    /// <summary>Switches a fault on.</summary>
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

/// <summary>JSON of orders.</summary>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(FaultOrder))]
internal sealed partial class FaultJson : JsonSerializerContext;
