using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Catalogue;

/// <summary>Settings of the product catalogue, section <c>Catalogue</c>.</summary>
public sealed class CatalogueOptions : IValidatableObject
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Catalogue";

    /// <summary>The catalogue file; a relative path starts at the directory of the service. Not used if <see cref="BaseUrl"/> is set.</summary>
    [StringLength(4096, MinimumLength = 1)]
    public string File { get; init; } = "Catalogue/products.json";

    /// <summary>Address of the product service, http or https, as <c>https://erp.example/api</c>. If unset, the file is the catalogue.</summary>
    public Uri? BaseUrl { get; init; }

    /// <summary>Time for which an answer is current, s.</summary>
    [Range(0, 86_400)]
    public int CacheSeconds { get; init; } = 300;

    /// <summary>Additional time for which it is served if the product service is unavailable, s.</summary>
    [Range(0, 31_536_000)]
    public int StaleSeconds { get; init; } = 86_400;

    /// <summary>Time for which a part number counts as unknown after the product service did not find it, s.</summary>
    [Range(0, 86_400)]
    public int UnknownSeconds { get; init; } = 30;

    /// <summary>Maximum number of part numbers in the cache; the least recently used are removed first.</summary>
    [Range(1, 1_000_000)]
    public int CacheEntries { get; init; } = 10_000;

    /// <summary>Maximum number of part numbers in one call. The contract allows 1000.</summary>
    [Range(1, 1000)]
    public int BatchSize { get; init; } = 200;

    /// <summary>Total time of a look-up including all waits, attempts and batches, ms.</summary>
    [Range(50, 600_000)]
    public int TotalTimeoutMs { get; init; } = 4000;

    /// <summary>Time for one attempt, ms; at most the total time.</summary>
    [Range(10, 600_000)]
    public int TryTimeoutMs { get; init; } = 1000;

    /// <summary>Number of retries after a transient fault.</summary>
    [Range(0, 10)]
    public int Retries { get; init; } = 2;

    /// <summary>Mean wait before the first retry, ms; it doubles with each retry, with jitter.</summary>
    [Range(1, 60_000)]
    public int RetryDelayMs { get; init; } = 100;

    /// <summary>Maximum number of concurrent calls.</summary>
    [Range(1, 10_000)]
    public int MaxConcurrentCalls { get; init; } = 32;

    /// <summary>Maximum number of waiting calls; further calls are refused.</summary>
    [Range(0, 100_000)]
    public int MaxQueuedCalls { get; init; } = 64;

    /// <summary>Proportion of failed attempts at which the circuit breaker opens.</summary>
    [Range(0.01, 1d)]
    public double BreakerFailureRatio { get; init; } = 0.5;

    /// <summary>Minimum number of attempts in the sampling time for the circuit breaker to open.</summary>
    [Range(2, 100_000)]
    public int BreakerMinimumTries { get; init; } = 10;

    /// <summary>Sampling time of that proportion, ms.</summary>
    [Range(500, 3_600_000)]
    public int BreakerSamplingMs { get; init; } = 30_000;

    /// <summary>Time for which the open circuit breaker blocks all calls before a trial attempt, ms.</summary>
    [Range(500, 3_600_000)]
    public int BreakerOpenMs { get; init; } = 5000;

    /// <summary>Maximum length of an answer, bytes; default 8 MiB. 200 products take about 200 KB.</summary>
    [Range(1024, 256 * 1024 * 1024)]
    public int MaxAnswerBytes { get; init; } = 8 * 1024 * 1024;

    /// <summary>The total time of a look-up.</summary>
    internal TimeSpan TotalTimeout => TimeSpan.FromMilliseconds(TotalTimeoutMs);

    /// <inheritdoc/>
    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (TryTimeoutMs > TotalTimeoutMs)
        {
            yield return new ValidationResult($"{Section}:{nameof(TryTimeoutMs)} is greater than {nameof(TotalTimeoutMs)}.", [nameof(TryTimeoutMs)]);
        }

        // User names and passwords in an address would get into logs; a query would be lost when paths are appended.
        if (BaseUrl is not null
            && !(BaseUrl.IsAbsoluteUri
                && BaseUrl.Scheme is "http" or "https"
                && BaseUrl.UserInfo.Length == 0
                && BaseUrl.Query.Length == 0
                && BaseUrl.Fragment.Length == 0))
        {
            yield return new ValidationResult($"{Section}:{nameof(BaseUrl)} is not a plain http or https address.", [nameof(BaseUrl)]);
        }
    }
}
