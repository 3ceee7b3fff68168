using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Catalogue;

/// <summary>Settings of the product catalogue, section <c>Catalogue</c>.</summary>
public sealed class CatalogueOptions : IValidatableObject
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Catalogue";

    /// <summary>The catalogue file; a relative path starts beside the service. Not read where <see cref="BaseUrl"/> is set.</summary>
    [StringLength(4096, MinimumLength = 1)]
    public string File { get; init; } = "Catalogue/products.json";

    /// <summary>Address of the product service, http or https, as <c>https://erp.example/api</c>. Unset: the file is the catalogue.</summary>
    public Uri? BaseUrl { get; init; }

    /// <summary>How long an answer is taken for current, s.</summary>
    [Range(0, 86_400)]
    public int CacheSeconds { get; init; } = 300;

    /// <summary>How long after that it still serves when the product service cannot be asked, s.</summary>
    [Range(0, 31_536_000)]
    public int StaleSeconds { get; init; } = 86_400;

    /// <summary>How long a part number counts as unknown once the product service did not know it, s.</summary>
    [Range(0, 86_400)]
    public int UnknownSeconds { get; init; } = 30;

    /// <summary>Part numbers that are kept; those that were asked for longest ago go first.</summary>
    [Range(1, 1_000_000)]
    public int CacheEntries { get; init; } = 10_000;

    /// <summary>Part numbers in one call. The contract takes 1000.</summary>
    [Range(1, 1000)]
    public int BatchSize { get; init; } = 200;

    /// <summary>Time for a look-up with all its waits, tries and batches, ms.</summary>
    [Range(50, 600_000)]
    public int TotalTimeoutMs { get; init; } = 4000;

    /// <summary>Time for one try, ms; at most the total.</summary>
    [Range(10, 600_000)]
    public int TryTimeoutMs { get; init; } = 1000;

    /// <summary>Tries after the first, where the fault may pass.</summary>
    [Range(0, 10)]
    public int Retries { get; init; } = 2;

    /// <summary>Mean wait before the first retry, ms; it doubles from one to the next, with jitter.</summary>
    [Range(1, 60_000)]
    public int RetryDelayMs { get; init; } = 100;

    /// <summary>Calls under way at once.</summary>
    [Range(1, 10_000)]
    public int MaxConcurrentCalls { get; init; } = 32;

    /// <summary>Calls that wait for one of those to end; more are refused.</summary>
    [Range(0, 100_000)]
    public int MaxQueuedCalls { get; init; } = 64;

    /// <summary>Share of tries that fail at which the breaker opens.</summary>
    [Range(0.01, 1d)]
    public double BreakerFailureRatio { get; init; } = 0.5;

    /// <summary>Tries in the sampling time under which the breaker never opens.</summary>
    [Range(2, 100_000)]
    public int BreakerMinimumTries { get; init; } = 10;

    /// <summary>Time over which the share is taken, ms.</summary>
    [Range(500, 3_600_000)]
    public int BreakerSamplingMs { get; init; } = 30_000;

    /// <summary>How long an open breaker lets nothing through before it lets one try, ms.</summary>
    [Range(500, 3_600_000)]
    public int BreakerOpenMs { get; init; } = 5000;

    /// <summary>Bytes that an answer may have; 8 MiB unless told. 200 products take about 200 KB.</summary>
    [Range(1024, 256 * 1024 * 1024)]
    public int MaxAnswerBytes { get; init; } = 8 * 1024 * 1024;

    /// <summary>The total time.</summary>
    internal TimeSpan TotalTimeout => TimeSpan.FromMilliseconds(TotalTimeoutMs);

    /// <inheritdoc/>
    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (TryTimeoutMs > TotalTimeoutMs)
        {
            yield return new ValidationResult($"{Section}:{nameof(TryTimeoutMs)} is more than {nameof(TotalTimeoutMs)}.", [nameof(TryTimeoutMs)]);
        }

        // Names and passwords in an address end up in logs; a query would be lost where paths are put behind it.
        if (BaseUrl is not null
            && !(BaseUrl.IsAbsoluteUri && BaseUrl.Scheme is "http" or "https" && BaseUrl.UserInfo.Length == 0 && BaseUrl.Query.Length == 0 && BaseUrl.Fragment.Length == 0))
        {
            yield return new ValidationResult($"{Section}:{nameof(BaseUrl)} is no plain http or https address.", [nameof(BaseUrl)]);
        }
    }
}
