using System.Threading.RateLimiting;
using Polly;
using Polly.CircuitBreaker;
using Polly.RateLimiting;
using Polly.Retry;
using Polly.Timeout;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// What stands between a look-up and the product service, from outside in: total time, bulkhead, retry, breaker, time of one try. The total is
/// outermost so that it bounds the wait for a place and between tries too; the breaker is inside the retry so that it counts tries.
/// </summary>
internal static partial class ProductPipeline
{
    /// <summary>When the call began, so that no wait is begun that the total time would cut short.</summary>
    public static readonly ResiliencePropertyKey<long> Began = new("rack-check.began");

    /// <summary>Builds it.</summary>
    public static ResiliencePipeline<ProductTry> Build(CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics, ILogger logger)
    {
        var builder = new ResiliencePipelineBuilder<ProductTry> { TimeProvider = time, Name = "catalogue" }
            .AddTimeout(options.TotalTimeout)
            .AddRateLimiter(new RateLimiterStrategyOptions
            {
                DefaultRateLimiterOptions = new ConcurrencyLimiterOptions { PermitLimit = options.MaxConcurrentCalls, QueueLimit = options.MaxQueuedCalls },
                OnRejected = _ => Note(metrics.Rejected),
            });
        if (options.Retries > 0)
        {
            builder.AddRetry(Retry(options, time, metrics));
        }

        return builder
            .AddCircuitBreaker(Breaker(options, metrics, logger))
            .AddTimeout(TimeSpan.FromMilliseconds(options.TryTimeoutMs))
            .Build();
    }

    private static RetryStrategyOptions<ProductTry> Retry(CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics) => new()
    {
        MaxRetryAttempts = options.Retries,
        BackoffType = DelayBackoffType.Exponential,
        UseJitter = true,
        Delay = TimeSpan.FromMilliseconds(options.RetryDelayMs),
        ShouldHandle = args => ValueTask.FromResult(
            MayPass(args.Outcome)
            && (args.Outcome is not { Result.RetryAfter: { } wait } || wait < options.TotalTimeout - time.GetElapsedTime(args.Context.Properties.GetValue(Began, 0)))),

        // None: the backoff's own. Being told to wait less than that is no reason to hurry.
        DelayGenerator = args => ValueTask.FromResult(
            args.Outcome is { Result.RetryAfter: { } wait } && wait.TotalMilliseconds > options.RetryDelayMs ? wait : (TimeSpan?)null),
        OnRetry = _ => Note(metrics.Retry),
    };

    private static CircuitBreakerStrategyOptions<ProductTry> Breaker(CatalogueOptions options, CatalogueMetrics metrics, ILogger logger) => new()
    {
        FailureRatio = options.BreakerFailureRatio,
        MinimumThroughput = options.BreakerMinimumTries,
        SamplingDuration = TimeSpan.FromMilliseconds(options.BreakerSamplingMs),
        BreakDuration = TimeSpan.FromMilliseconds(options.BreakerOpenMs),

        // Wrong content does not count: one bad product must not cut off all the others.
        ShouldHandle = args => ValueTask.FromResult(MayPass(args.Outcome)),
        OnOpened = args => Note(() =>
        {
            metrics.Breaker(BreakerState.Open);
            LogOpened(logger, args.BreakDuration.TotalSeconds);
        }),
        OnHalfOpened = _ => Note(() => metrics.Breaker(BreakerState.HalfOpen)),
        OnClosed = _ => Note(() =>
        {
            metrics.Breaker(BreakerState.Closed);
            LogClosed(logger);
        }),
    };

    private static bool MayPass(Outcome<ProductTry> outcome) => outcome is { Exception: TimeoutRejectedException } or { Exception: null, Result.IsTransient: true };

    private static ValueTask Note(Action action)
    {
        action();
        return default;
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The product service fails too often: it is not asked for {Seconds} s")]
    private static partial void LogOpened(ILogger logger, double seconds);

    [LoggerMessage(Level = LogLevel.Information, Message = "The product service answers again")]
    private static partial void LogClosed(ILogger logger);
}
