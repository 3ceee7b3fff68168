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

    /// <summary>
    /// What becomes of members that the contract does not define. Default: ignored in answers of the product service, a fault in the file.
    /// </summary>
    public UnknownMembers? UnknownMembers { get; init; }

    /// <summary>A fixed header with credentials for the product service.</summary>
    public CatalogueHeaderOptions Header { get; init; } = new();

    /// <summary>OAuth 2 client credentials for the product service.</summary>
    public CatalogueOAuthOptions OAuth { get; init; } = new();

    /// <summary>Whether credentials are sent over TLS only, except on this machine.</summary>
    public bool RequireHttps { get; init; } = true;

    /// <summary>Time for which an answer is current, s.</summary>
    [Range(0, 86_400)]
    public int CacheSeconds { get; init; } = 300;

    /// <summary>Additional time for which it is served if the product service is unavailable, s.</summary>
    [Range(0, 31_536_000)]
    public int StaleSeconds { get; init; } = 86_400;

    /// <summary>
    /// Part of that time in which an answer that is no longer current is served at once and refreshed behind, s; after it a request waits for the refresh.
    /// </summary>
    [Range(0, 31_536_000)]
    public int RefreshBehindSeconds { get; init; } = 3600;

    /// <summary>Time after a failed refresh before the next one, s.</summary>
    [Range(0, 86_400)]
    public int RefreshPauseSeconds { get; init; } = 5;

    /// <summary>Interval at which the product service is checked without a request, s; 0 is never. A list in the cache saves the call.</summary>
    [Range(0, 86_400)]
    public int WatchSeconds { get; init; } = 30;

    /// <summary>Time for which a part number counts as unknown or wrong after the product service did not find it or gave invalid data, s.</summary>
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

    /// <summary>What becomes of unknown members in the file.</summary>
    internal UnknownMembers UnknownInFile => UnknownMembers ?? Catalogue.UnknownMembers.Refuse;

    /// <summary>What becomes of unknown members in answers of the product service.</summary>
    internal UnknownMembers UnknownInAnswers => UnknownMembers ?? Catalogue.UnknownMembers.Ignore;

    /// <summary>Age up to which an answer is served at once, s.</summary>
    internal double AtOnceSeconds => CacheSeconds + (double)Math.Min(RefreshBehindSeconds, StaleSeconds);

    /// <summary>Age up to which an answer is served if there is no other, s.</summary>
    internal double LongestSeconds => CacheSeconds + (double)StaleSeconds;

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
            yield break;
        }

        if (UnknownMembers is { } unknown && !Enum.IsDefined(unknown))
        {
            yield return new ValidationResult($"{Section}:{nameof(UnknownMembers)} is neither ignore nor refuse.", [nameof(UnknownMembers)]);
        }

        if (Header.IsSet && OAuth.IsSet)
        {
            yield return new ValidationResult($"{Section}:{nameof(Header)} and {nameof(OAuth)} exclude each other.", [nameof(Header)]);
        }

        if ((Header.IsSet || OAuth.IsSet) && RequireHttps && BaseUrl is { Scheme: "http", IsLoopback: false })
        {
            yield return new ValidationResult(
                $"{Section}:{nameof(BaseUrl)} must be an https address, since credentials are sent, or {nameof(RequireHttps)} false.", [nameof(BaseUrl)]);
        }

        foreach (var fault in Header.Faults().Concat(OAuth.Faults(RequireHttps)))
        {
            yield return new ValidationResult($"{Section}:{fault}", [nameof(Header)]);
        }
    }
}
