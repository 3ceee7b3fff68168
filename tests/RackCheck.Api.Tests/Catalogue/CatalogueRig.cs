using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using RackCheck.Api.Catalogue;
using RackCheck.Model;
using RackCheck.ProductService;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>A product service on a loopback socket, its client, and the client's metrics.</summary>
internal sealed class CatalogueRig : IAsyncDisposable
{
    // Ends a test whose look-up hangs.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    private readonly ServiceProvider services = new ServiceCollection().AddMetrics().BuildServiceProvider();
    private readonly CatalogueMetrics metrics;
    private readonly MeterListener listener = new();
    private readonly ConcurrentDictionary<string, double> readings = new(StringComparer.Ordinal);

    private CatalogueRig(ProductServiceHost host, CatalogueOptions options, TimeProvider time)
    {
        (Host, Options) = (host, options);
        metrics = new CatalogueMetrics(services.GetRequiredService<IMeterFactory>());
        listener.InstrumentPublished = (instrument, own) =>
        {
            if (instrument.Meter == metrics.Meter)
            {
                own.EnableMeasurementEvents(instrument);
            }
        };
        listener.SetMeasurementEventCallback<long>((instrument, value, tags, _) => Add(instrument, value, tags));
        listener.SetMeasurementEventCallback<int>((instrument, value, _, _) => readings[instrument.Name] = value);
        listener.SetMeasurementEventCallback<double>((instrument, _, tags, _) => Add(instrument, 1, tags));
        listener.Start();
        State = new CatalogueState(metrics);
        Http = new HttpCatalogue(options, time, metrics, State, Log);
        Cached = new CachingCatalogue(Http, options, time, metrics);
    }

    public ProductServiceHost Host { get; }

    public CatalogueOptions Options { get; }

    public CatalogueState State { get; }

    public LogLines Log { get; } = new();

    public HttpCatalogue Http { get; }

    public CachingCatalogue Cached { get; }

    public static async Task<CatalogueRig> StartAsync(
        Func<Uri, CatalogueOptions>? options = null, TimeProvider? time = null, IReadOnlyList<Product>? products = null)
    {
        var host = await ProductServiceHost.StartAsync(products ?? Packs(10));
        var rig = new CatalogueRig(host, options?.Invoke(host.BaseUrl) ?? new CatalogueOptions { BaseUrl = host.BaseUrl }, time ?? TimeProvider.System);

        // The first call compiles code and connects; the tests do not measure that.
        var patient = new CatalogueOptions { BaseUrl = host.BaseUrl, TotalTimeoutMs = 60_000, TryTimeoutMs = 60_000 };
        using var warm = new HttpCatalogue(patient, TimeProvider.System, rig.metrics, rig.State, NullLogger.Instance);
        await warm.FindAsync(["QWL-PACK-0"], CancellationToken.None);
        host.Faults.Set(FaultKind.None);
        rig.readings.Clear();
        return rig;
    }

    /// <summary>Products QWL-PACK-0 and so on.</summary>
    public static IReadOnlyList<Product> Packs(int count) =>
    [
        .. Enumerable.Range(0, count).Select(i => new Product
        {
            PartNumber = Pack(i), Name = "Cage nuts", Kind = ProductKind.Fixings, Pieces = 50, Fixing = Fixing.CageNut,
        }),
    ];

    public static string Pack(int index) => FormattableString.Invariant($"QWL-PACK-{index}");

    /// <summary>Value of an instrument: a sum, the count of a histogram, or the last value of a gauge. The value of a tag follows a colon.</summary>
    public double Reading(string name)
    {
        listener.RecordObservableInstruments();
        return readings.GetValueOrDefault("rack_check.catalogue." + name);
    }

    /// <summary>Asserts that a look-up fails; returns the exception.</summary>
    public async Task<CatalogueUnavailableException> FailsAsync(Func<Task> lookUp)
    {
        var fault = await Assert.ThrowsAsync<CatalogueUnavailableException>(() => lookUp().WaitAsync(Longest));
        Assert.True(fault.RetryAfter >= TimeSpan.Zero);
        return fault;
    }

    public Task<CatalogueUnavailableException> FailsAsync(params string[] partNumbers) => FailsAsync(() => FindAsync(partNumbers));

    public Task<ProductDictionary> FindAsync(params string[] partNumbers) => Cached.FindAsync(partNumbers, CancellationToken.None).AsTask();

    public async ValueTask DisposeAsync()
    {
        Cached.Dispose();
        listener.Dispose();
        metrics.Dispose();
        await services.DisposeAsync();
        await Host.DisposeAsync();
    }

    private void Add(Instrument instrument, double value, ReadOnlySpan<KeyValuePair<string, object?>> tags)
    {
        var name = tags.Length == 0 ? instrument.Name : $"{instrument.Name}:{tags[0].Value}";
        readings.AddOrUpdate(name, value, (_, sum) => sum + value);
    }
}
