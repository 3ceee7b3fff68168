using System.Diagnostics.Metrics;

namespace RackCheck.Api.Admission;

/// <summary>Metrics of admission. Tags have fixed values.</summary>
internal sealed class AdmissionMetrics : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "RackCheck.Admission";

    private const string Prefix = "rack_check.admission.";
    private static readonly InstrumentAdvice<double> Seconds =
        new() { HistogramBucketBoundaries = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10] };

    private readonly Meter meter;
    private readonly Counter<long> refused;
    private readonly Histogram<double> wait;
    private readonly Histogram<double> work;
    private readonly List<Func<Measurement<int>>> queues = [];

    /// <summary>Creates the instruments.</summary>
    /// <param name="factory">Creates the meter.</param>
    /// <param name="memory">Memory in use.</param>
    public AdmissionMetrics(IMeterFactory factory, MemoryBudget memory)
    {
        meter = factory.Create(MeterName);
        refused = meter.CreateCounter<long>(Prefix + "refused", description: "Requests refused as overload, by pool and reason: full, wait, work, memory.");
        wait = meter.CreateHistogram(Prefix + "wait.duration", "s", "Time of a computation in the queue, by pool.", advice: Seconds);
        work = meter.CreateHistogram(Prefix + "work.duration", "s", "Time of a computation, by pool.", advice: Seconds);
        meter.CreateObservableGauge(Prefix + "queue.length", () => queues.ConvertAll(read => read()), description: "Waiting computations, by pool.");
        meter.CreateObservableGauge(Prefix + "memory.bytes", () => memory.Used, "By", "Size of the request bodies and prepared answers in memory.");
    }

    /// <summary>Adds the queue of a pool to the gauge. Called while the pools are made, before the first scrape.</summary>
    public void Watch(KeyValuePair<string, object?> pool, Func<int> length) => queues.Add(() => new Measurement<int>(length(), pool));

    /// <summary>Counts a refusal.</summary>
    public void Refused(KeyValuePair<string, object?> pool, string reason) => refused.Add(1, pool, new("reason", reason));

    /// <summary>Records the time in the queue.</summary>
    public void Waited(KeyValuePair<string, object?> pool, TimeSpan time) => wait.Record(time.TotalSeconds, pool);

    /// <summary>Records the time of a computation.</summary>
    public void Worked(KeyValuePair<string, object?> pool, TimeSpan time) => work.Record(time.TotalSeconds, pool);

    /// <inheritdoc/>
    public void Dispose() => meter.Dispose();
}
