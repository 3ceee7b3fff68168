using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Access;

/// <summary>Settings of the rate limit, section <c>RateLimit</c>. It applies to each caller: by credentials, or by address without them.</summary>
public sealed class RateLimitOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "RateLimit";

    /// <summary>Requests a minute in the long run; 0 is unlimited.</summary>
    [Range(0, 10_000_000)]
    public int PerMinute { get; init; } = 6_000;

    /// <summary>Requests at once after a pause.</summary>
    [Range(1, 10_000_000)]
    public int Burst { get; init; } = 1_000;
}
