using System.Threading.RateLimiting;
using Polly;
using Polly.CircuitBreaker;
using Polly.RateLimiting;
using Polly.Retry;
using Polly.Timeout;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// Resilience pipeline of calls to the product service, from outside in: total timeout, concurrency limit, retry, circuit breaker, timeout of one
/// attempt. The total timeout is outermost, so that it includes all waits. The circuit breaker is inside the retry, so that it counts attempts.
/// </summary>
internal static partial class ProductPipeline
{
    /// <summary>Start of the call, so that no wait begins that would exceed the total time.</summary>
    public static readonly ResiliencePropertyKey<long> Began = new("rack-check.began");

    /// <summary>Builds the pipeline.</summary>
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
            && (args.Outcome is not { Result.RetryAfter: { } wait }
                || wait < options.TotalTimeout - time.GetElapsedTime(args.Context.Properties.GetValue(Began, 0)))),

        // Null selects the backoff delay. A shorter Retry-After does not reduce it.
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

        // Invalid content does not count: one invalid product must not block all others.
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

    private static bool MayPass(Outcome<ProductTry> outcome) =>
        outcome is { Exception: TimeoutRejectedException } or { Exception: null, Result.IsTransient: true };

    private static ValueTask Note(Action action)
    {
        action();
        return default;
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The product service has failed too often; calls are suspended for {Seconds} s")]
    private static partial void LogOpened(ILogger logger, double seconds);

    [LoggerMessage(Level = LogLevel.Information, Message = "The product service responds again")]
    private static partial void LogClosed(ILogger logger);
}
