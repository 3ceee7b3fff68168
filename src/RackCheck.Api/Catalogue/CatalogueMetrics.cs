using System.Diagnostics.Metrics;

namespace RackCheck.Api.Catalogue;

/// <summary>What the catalogue client tells of itself. Tags are words of a fixed list: no part number ever becomes one.</summary>
internal sealed class CatalogueMetrics : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "RackCheck.Catalogue";

    private const string Prefix = "rack_check.catalogue.";

    private static readonly KeyValuePair<string, object?> Hit = new("result", "hit");
    private static readonly KeyValuePair<string, object?> Miss = new("result", "miss");
    private static readonly KeyValuePair<string, object?> Stale = new("result", "stale");

    private readonly Meter meter;
    private readonly Counter<long> lookUps;
    private readonly Counter<long> cache;
    private readonly Histogram<double> duration;
    private readonly Counter<long> retries;
    private readonly Counter<long> openings;
    private readonly Counter<long> rejected;
    private readonly UpDownCounter<long> inFlight;
    private volatile BreakerState breaker;

    /// <summary>Makes the instruments.</summary>
    /// <param name="factory">Makes the meter.</param>
    public CatalogueMetrics(IMeterFactory factory)
    {
        meter = factory.Create(MeterName);
        lookUps = meter.CreateCounter<long>(Prefix + "look_ups", description: "Times that the catalogue was asked, whether from memory or by a call.");
        cache = meter.CreateCounter<long>(Prefix + "cache", description: "Part numbers and lists, by whether they were found current, had to be fetched, or served though out of date.");
        duration = meter.CreateHistogram(
            Prefix + "call.duration",
            "s",
            "Time of one try of a call, by outcome.",
            advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5] });
        retries = meter.CreateCounter<long>(Prefix + "retries", description: "Tries after a first that failed.");
        openings = meter.CreateCounter<long>(Prefix + "breaker.openings", description: "Times that the breaker opened.");
        rejected = meter.CreateCounter<long>(Prefix + "rejected", description: "Calls refused because too many were under way and waiting.");
        inFlight = meter.CreateUpDownCounter<long>(Prefix + "in_flight", description: "Tries under way.");
        meter.CreateObservableGauge(Prefix + "breaker.state", () => (int)breaker, description: "0 closed, 1 half open, 2 open.");
    }

    /// <summary>The meter, to tell it from that of another host in the process.</summary>
    public Meter Meter => meter;

    /// <summary>The catalogue was asked.</summary>
    public void LookUp() => lookUps.Add(1);

    /// <summary>What memory had.</summary>
    public void Cached(int hits, int misses)
    {
        if (hits > 0)
        {
            cache.Add(hits, Hit);
        }

        if (misses > 0)
        {
            cache.Add(misses, Miss);
        }
    }

    /// <summary>What served though out of date.</summary>
    public void UsedStale(int count) => cache.Add(count, Stale);

    /// <summary>A try begins.</summary>
    public void TryStarted() => inFlight.Add(1);

    /// <summary>A try ended.</summary>
    public void TryEnded(TimeSpan took, TryOutcome outcome)
    {
        inFlight.Add(-1);
        duration.Record(took.TotalSeconds, new KeyValuePair<string, object?>("outcome", Name(outcome)));
    }

    /// <summary>A further try will be made.</summary>
    public void Retry() => retries.Add(1);

    /// <summary>A call was refused by the bulkhead.</summary>
    public void Rejected() => rejected.Add(1);

    /// <summary>The breaker changed.</summary>
    public void Breaker(BreakerState state)
    {
        breaker = state;
        if (state == BreakerState.Open)
        {
            openings.Add(1);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => meter.Dispose();

    private static string Name(TryOutcome outcome) => outcome switch
    {
        TryOutcome.Answered => "answered",
        TryOutcome.NoConnection => "no-connection",
        TryOutcome.TimedOut => "timed-out",
        TryOutcome.Busy => "busy",
        TryOutcome.Failed => "failed",
        TryOutcome.Refused => "refused",
        _ => "wrong-content",
    };
}

/// <summary>States of the breaker, as the gauge shows them.</summary>
internal enum BreakerState
{
    /// <summary>Calls go through.</summary>
    Closed,

    /// <summary>One try goes through.</summary>
    HalfOpen,

    /// <summary>Nothing goes through.</summary>
    Open,
}
