using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>Outcome of one attempt of a call to the product service.</summary>
internal enum TryOutcome
{
    /// <summary>Products received.</summary>
    Answered,

    /// <summary>No connection, or a broken connection.</summary>
    NoConnection,

    /// <summary>Timeout of one attempt, or status 408.</summary>
    TimedOut,

    /// <summary>Status 429.</summary>
    Busy,

    /// <summary>Status 5xx.</summary>
    Failed,

    /// <summary>Any other status than 200. A retry would not help.</summary>
    Refused,

    /// <summary>Invalid answer. A retry would not help, and nothing of it is used.</summary>
    WrongContent,
}

/// <summary>Result of one attempt.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Products">The products, if received.</param>
/// <param name="Why">The reason of a failure, worded by this service.</param>
/// <param name="RetryAfter">Wait that the product service asks for.</param>
/// <param name="LeftOut">The products left out of the answer.</param>
internal readonly record struct ProductTry(
    TryOutcome Outcome,
    IReadOnlyList<Product>? Products = null,
    string? Why = null,
    TimeSpan? RetryAfter = null,
    IReadOnlyList<WrongProduct>? LeftOut = null)
{
    /// <summary>Whether the fault is transient.</summary>
    public bool IsTransient => Outcome is TryOutcome.NoConnection or TryOutcome.TimedOut or TryOutcome.Busy or TryOutcome.Failed;

    /// <summary>The outcome of an HTTP status.</summary>
    public static TryOutcome OutcomeOf(int status) => status switch
    {
        200 => TryOutcome.Answered,
        408 => TryOutcome.TimedOut,
        429 => TryOutcome.Busy,
        >= 500 => TryOutcome.Failed,
        _ => TryOutcome.Refused,
    };

    /// <summary>An invalid answer.</summary>
    public static ProductTry Wrong(string why) => new(TryOutcome.WrongContent, Why: why);
}
