using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// Caches the answers of a catalogue. Concurrent requests for a part number share one call: later requests wait for the call in progress. Calls
/// are independent of requests, so that a cancelled request does not affect others and the result is cached in any case.
/// </summary>
internal sealed class CachingCatalogue : IProductCatalogue, IDisposable
{
    private static readonly TimeSpan RetryAfterLateAnswer = TimeSpan.FromSeconds(1);

    private readonly IProductCatalogue inner;
    private readonly CatalogueOptions options;
    private readonly TimeProvider time;
    private readonly CatalogueMetrics metrics;
    private readonly CancellationTokenSource stopping = new();
    private readonly Lock gate = new();
    private readonly ProductCache cache;
    private readonly Dictionary<string, Task<IReadOnlyDictionary<string, Product>>> flights = new(StringComparer.Ordinal);
    private Task<IReadOnlyList<Product>>? offeredFlight;
    private IReadOnlyList<Product>? offered;
    private long offeredSince;

    /// <summary>Creates the cache.</summary>
    /// <param name="inner">The underlying catalogue.</param>
    /// <param name="options">Cache size, cache times and total time of a look-up.</param>
    /// <param name="time">The clock.</param>
    /// <param name="metrics">Metrics of the cache.</param>
    public CachingCatalogue(IProductCatalogue inner, CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics)
    {
        (this.inner, this.options, this.time, this.metrics) = (inner, options, time, metrics);
        cache = new ProductCache(options, time);
    }

    /// <summary>Number of part numbers in the cache.</summary>
    public int Count
    {
        get
        {
            lock (gate)
            {
                return cache.Count;
            }
        }
    }

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyDictionary<string, Product>> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        metrics.LookUp();
        var found = new Dictionary<string, Product>(partNumbers.Count, StringComparer.Ordinal);
        if (TakeFresh(partNumbers, found) is not { } missing)
        {
            return found;
        }

        var failure = await WaitAsync(Task.WhenAll(missing.Values.Distinct()), cancellation);
        var stale = 0;
        foreach (var (partNumber, flight) in missing)
        {
            if (flight.IsCompletedSuccessfully)
            {
                if ((await flight).TryGetValue(partNumber, out var product))
                {
                    found.Add(partNumber, product);
                }
            }
            else
            {
                found.Add(partNumber, StaleOf(partNumber) ?? throw Again(failure!));
                stale++;
            }
        }

        if (stale > 0)
        {
            metrics.UsedStale(stale);
        }

        return found;
    }

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        metrics.LookUp();
        Task<IReadOnlyList<Product>> flight;
        lock (gate)
        {
            if (OfferedYoungerThan(options.CacheSeconds) is { } fresh)
            {
                metrics.Cached(1, 0);
                return fresh;
            }

            metrics.Cached(0, 1);
            flight = offeredFlight ??= Task.Run(FetchOfferedAsync, CancellationToken.None);
        }

        if (await WaitAsync(flight, cancellation) is not { } failure)
        {
            return await flight;
        }

        lock (gate)
        {
            var stale = OfferedYoungerThan((double)options.CacheSeconds + options.StaleSeconds) ?? throw Again(failure);
            metrics.UsedStale(1);
            return stale;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        stopping.Cancel();
        stopping.Dispose();
        (inner as IDisposable)?.Dispose();
    }

    // Adds current products to the result and returns the calls for the others: those in progress, and one new call.
    private Dictionary<string, Task<IReadOnlyDictionary<string, Product>>>? TakeFresh(
        IReadOnlyCollection<string> partNumbers, Dictionary<string, Product> found)
    {
        Dictionary<string, Task<IReadOnlyDictionary<string, Product>>>? missing = null;
        HashSet<string>? own = null;
        var hits = 0;
        lock (gate)
        {
            foreach (var partNumber in partNumbers)
            {
                if (cache.Find(partNumber, out var product) == Freshness.Fresh)
                {
                    hits++;
                    if (product is not null)
                    {
                        found[partNumber] = product;
                    }
                }
                else if (flights.TryGetValue(partNumber, out var flight))
                {
                    (missing ??= new(StringComparer.Ordinal))[partNumber] = flight;
                }
                else
                {
                    (own ??= new(StringComparer.Ordinal)).Add(partNumber);
                }
            }

            if (own is not null)
            {
                missing ??= new(StringComparer.Ordinal);
                var flight = Task.Run(() => FetchAsync(own), CancellationToken.None);
                foreach (var partNumber in own)
                {
                    flights.Add(partNumber, flight);
                    missing.Add(partNumber, flight);
                }
            }
        }

        metrics.Cached(hits, missing?.Count ?? 0);
        return missing;
    }

    private async Task<IReadOnlyDictionary<string, Product>> FetchAsync(HashSet<string> partNumbers)
    {
        IReadOnlyDictionary<string, Product>? products = null;
        try
        {
            products = await inner.FindAsync(partNumbers, stopping.Token);
            return products;
        }
        finally
        {
            // In one step, so that no request finds the call gone and its answer not yet cached.
            lock (gate)
            {
                foreach (var partNumber in partNumbers)
                {
                    flights.Remove(partNumber);
                    if (products is not null)
                    {
                        cache.Put(partNumber, products.GetValueOrDefault(partNumber));
                    }
                }
            }
        }
    }

    private async Task<IReadOnlyList<Product>> FetchOfferedAsync()
    {
        IReadOnlyList<Product>? products = null;
        try
        {
            products = await inner.OfferedAsync(stopping.Token);
            return products;
        }
        finally
        {
            lock (gate)
            {
                offeredFlight = null;
                if (products is not null)
                {
                    (offered, offeredSince) = (products, time.GetTimestamp());
                }
            }
        }
    }

    // Waits for calls, at most for the total time. Returns the reason if they fail.
    private async Task<CatalogueUnavailableException?> WaitAsync(Task calls, CancellationToken cancellation)
    {
        try
        {
            await calls.WaitAsync(options.TotalTimeout, time, cancellation);
            return null;
        }
        catch (CatalogueUnavailableException fault)
        {
            return fault;
        }
        catch (TimeoutException fault)
        {
            return new CatalogueUnavailableException("The product service did not respond in time.", RetryAfterLateAnswer, fault);
        }
        catch (OperationCanceledException fault) when (!cancellation.IsCancellationRequested)
        {
            return new CatalogueUnavailableException("The service is stopping.", RetryAfterLateAnswer, fault);
        }
    }

    private Product? StaleOf(string partNumber)
    {
        lock (gate)
        {
            // Current if another call has cached it meanwhile.
            return cache.Find(partNumber, out var product) == Freshness.None ? null : product;
        }
    }

    private IReadOnlyList<Product>? OfferedYoungerThan(double seconds) =>
        offered is not null && time.GetElapsedTime(offeredSince).TotalSeconds < seconds ? offered : null;

    // A new exception for each waiting request, since a shared one loses its stack trace.
    private static CatalogueUnavailableException Again(CatalogueUnavailableException fault) => new(fault.Message, fault.RetryAfter, fault);
}
