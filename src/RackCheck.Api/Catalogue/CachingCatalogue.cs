using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// Keeps what a catalogue answered. A part number is asked for once however many want it at the same time: who comes later waits for the call
/// that is under way. Calls are nobody's own, so that a caller who gives up takes nothing from the others; what they bring is kept all the same.
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

    /// <summary>Makes the catalogue.</summary>
    /// <param name="inner">The catalogue that is asked.</param>
    /// <param name="options">How much is kept and how long, and the total time of a look-up.</param>
    /// <param name="time">The clock.</param>
    /// <param name="metrics">What it tells of itself.</param>
    public CachingCatalogue(IProductCatalogue inner, CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics)
    {
        (this.inner, this.options, this.time, this.metrics) = (inner, options, time, metrics);
        cache = new ProductCache(options, time);
    }

    /// <summary>Part numbers kept now.</summary>
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

    // Puts what is current into the answer, and gives for the rest the calls that will bring it: those under way, and one for all others.
    private Dictionary<string, Task<IReadOnlyDictionary<string, Product>>>? TakeFresh(IReadOnlyCollection<string> partNumbers, Dictionary<string, Product> found)
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
            // In one step: nobody may find the call gone and its answer not there yet.
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

    // Waits for calls, no longer than the total time, whoever began them; says why they brought nothing.
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
            return new CatalogueUnavailableException("The product service does not answer in time.", RetryAfterLateAnswer, fault);
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
            // Fresh where another call has brought it meanwhile.
            return cache.Find(partNumber, out var product) == Freshness.None ? null : product;
        }
    }

    private IReadOnlyList<Product>? OfferedYoungerThan(double seconds) => offered is not null && time.GetElapsedTime(offeredSince).TotalSeconds < seconds ? offered : null;

    // A new exception for each who waited: one thrown by several at once loses its trace.
    private static CatalogueUnavailableException Again(CatalogueUnavailableException fault) => new(fault.Message, fault.RetryAfter, fault);
}
