using System.Collections.Concurrent;
using System.Diagnostics.Metrics;

namespace RackCheck.Api.Catalogue;

/// <summary>Metrics of the catalogue client. Tags have fixed values, but for the part numbers of wrong products, of which the first are named.</summary>
internal sealed class CatalogueMetrics : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "RackCheck.Catalogue";

    private const string Prefix = "rack_check.catalogue.";
    private const int MostPartNumbers = 100;
    private const string OtherPartNumbers = "other";

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
    private readonly Counter<long> wrong;
    private readonly Counter<long> tokens;
    private readonly ConcurrentDictionary<string, bool> named = new(StringComparer.Ordinal);
    private volatile BreakerState breaker;

    /// <summary>Creates the instruments.</summary>
    /// <param name="factory">Creates the meter.</param>
    public CatalogueMetrics(IMeterFactory factory)
    {
        meter = factory.Create(MeterName);
        lookUps = meter.CreateCounter<long>(Prefix + "look_ups", description: "Look-ups in the catalogue, from the cache or by a call.");
        cache = meter.CreateCounter<long>(Prefix + "cache", description: "Part numbers and lists by cache result: current, fetched or served stale.");
        duration = meter.CreateHistogram(
            Prefix + "call.duration",
            "s",
            "Duration of one attempt of a call, by outcome.",
            advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5] });
        retries = meter.CreateCounter<long>(Prefix + "retries", description: "Retries after a failed first attempt.");
        openings = meter.CreateCounter<long>(Prefix + "breaker.openings", description: "Number of times that the circuit breaker opened.");
        rejected = meter.CreateCounter<long>(Prefix + "rejected", description: "Calls refused because too many were in progress or waiting.");
        inFlight = meter.CreateUpDownCounter<long>(Prefix + "in_flight", description: "Attempts in progress.");
        wrong = meter.CreateCounter<long>(
            Prefix + "products.wrong", description: "Products left out of answers because their data is not valid, by part number and fault.");
        tokens = meter.CreateCounter<long>(Prefix + "tokens", description: "Requests for an access token, by outcome.");
        meter.CreateObservableGauge(Prefix + "breaker.state", () => (int)breaker, description: "0 closed, 1 half open, 2 open.");
    }

    /// <summary>The meter, to distinguish it from that of another host in the process.</summary>
    public Meter Meter => meter;

    /// <summary>Counts a look-up.</summary>
    public void LookUp() => lookUps.Add(1);

    /// <summary>Counts cache hits and misses.</summary>
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

    /// <summary>Counts stale answers served.</summary>
    public void UsedStale(int count) => cache.Add(count, Stale);

    /// <summary>Counts a product left out of an answer.</summary>
    /// <param name="partNumber">Its part number; after the first 100 different ones they are counted together.</param>
    /// <param name="code">Code of its fault.</param>
    public void Wrong(string partNumber, string code)
    {
        var isNamed = named.ContainsKey(partNumber) || (named.Count < MostPartNumbers && named.TryAdd(partNumber, true));
        wrong.Add(1, new("part_number", isNamed ? partNumber : OtherPartNumbers), new("code", code));
    }

    /// <summary>Counts a request for an access token.</summary>
    public void Token(TryOutcome outcome) => tokens.Add(1, new KeyValuePair<string, object?>("outcome", Name(outcome)));

    /// <summary>Observes whether the catalogue answers.</summary>
    public void Observe(CatalogueState state) => meter.CreateObservableGauge(
        Prefix + "available", () => state.IsAvailable ? 1 : 0, description: "1 if the last call was answered, 0 if not or if there was none.");

    /// <summary>Records the start of an attempt.</summary>
    public void TryStarted() => inFlight.Add(1);

    /// <summary>Records the end of an attempt.</summary>
    public void TryEnded(TimeSpan took, TryOutcome outcome)
    {
        inFlight.Add(-1);
        duration.Record(took.TotalSeconds, new KeyValuePair<string, object?>("outcome", Name(outcome)));
    }

    /// <summary>Counts a retry.</summary>
    public void Retry() => retries.Add(1);

    /// <summary>Counts a call refused by the concurrency limit.</summary>
    public void Rejected() => rejected.Add(1);

    /// <summary>Records a state change of the circuit breaker.</summary>
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

/// <summary>States of the circuit breaker, as values of the gauge.</summary>
internal enum BreakerState
{
    /// <summary>Calls pass.</summary>
    Closed,

    /// <summary>One trial attempt passes.</summary>
    HalfOpen,

    /// <summary>No call passes.</summary>
    Open,
}
