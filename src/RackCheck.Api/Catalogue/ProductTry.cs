using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>How one try of a call to the product service ended.</summary>
internal enum TryOutcome
{
    /// <summary>With products.</summary>
    Answered,

    /// <summary>No connection, or one that broke.</summary>
    NoConnection,

    /// <summary>Not in the time for one try, or 408.</summary>
    TimedOut,

    /// <summary>429.</summary>
    Busy,

    /// <summary>5xx.</summary>
    Failed,

    /// <summary>Another status than 200: asking again changes nothing.</summary>
    Refused,

    /// <summary>An answer that cannot be trusted: asking again is no cure, and nothing of it is used.</summary>
    WrongContent,
}

/// <summary>The end of one try.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Products">The products, where it was answered.</param>
/// <param name="Why">What was wrong, in the service's own words.</param>
/// <param name="RetryAfter">What the product service asked to wait.</param>
internal readonly record struct ProductTry(TryOutcome Outcome, IReadOnlyList<Product>? Products = null, string? Why = null, TimeSpan? RetryAfter = null)
{
    /// <summary>Whether the fault may pass by itself.</summary>
    public bool IsTransient => Outcome is TryOutcome.NoConnection or TryOutcome.TimedOut or TryOutcome.Busy or TryOutcome.Failed;

    /// <summary>An answer that is of no use.</summary>
    public static ProductTry Wrong(string why) => new(TryOutcome.WrongContent, Why: why);
}
