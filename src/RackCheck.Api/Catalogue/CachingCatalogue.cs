using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// Caches the answers of a catalogue. Concurrent requests for a part number share one call: later requests wait for the call in progress. Calls
/// are independent of requests, so that a cancelled request does not affect others and the result is cached in any case. An answer that is no longer
/// current is served at once; one task in the background refreshes those that were asked for, a batch at a time.
/// </summary>
internal sealed class CachingCatalogue : IProductCatalogue, IDisposable
{
    private readonly IProductCatalogue inner;
    private readonly CatalogueOptions options;
    private readonly CatalogueMetrics metrics;
    private readonly CancellationTokenSource stopping = new();
    private readonly CancellationToken stop;
    private readonly CallWaiter waiter;
    private readonly OfferedList offered;
    private readonly Lock gate = new();
    private readonly ProductCache cache;
    private readonly Dictionary<string, Task<ProductDictionary>> flights = new(StringComparer.Ordinal);
    private readonly HashSet<string> due = new(StringComparer.Ordinal);
    private Task refreshing = Task.CompletedTask;

    /// <summary>Creates the cache.</summary>
    /// <param name="inner">The underlying catalogue.</param>
    /// <param name="options">Cache size, cache times and total time of a look-up.</param>
    /// <param name="time">The clock.</param>
    /// <param name="metrics">Metrics of the cache.</param>
    public CachingCatalogue(IProductCatalogue inner, CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics)
    {
        (this.inner, this.options, this.metrics) = (inner, options, metrics);
        stop = stopping.Token;
        cache = new ProductCache(options, time);
        waiter = new CallWaiter(options, time);
        offered = new OfferedList(inner, options, time, metrics, stop);
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

    /// <summary>The refresh in the background; completed if there is none.</summary>
    public Task Refreshing
    {
        get
        {
            lock (gate)
            {
                return refreshing;
            }
        }
    }

    /// <inheritdoc/>
    public async ValueTask<ProductDictionary> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        metrics.LookUp();
        var answers = new Answers(partNumbers.Count);
        if (TakeCached(partNumbers, answers) is not { } missing)
        {
            return answers.ToFound();
        }

        var failure = await waiter.WaitAsync(Task.WhenAll(missing.Values.Distinct()), cancellation);
        var stale = 0;
        foreach (var (partNumber, flight) in missing)
        {
            var answer = flight.IsCompletedSuccessfully ? AnswerIn(await flight, partNumber) : default(PartAnswer?);
            if (answer is null or { Fault: not null } && StaleOf(partNumber) is { } old)
            {
                (answer, stale) = (new PartAnswer(old), stale + 1);
            }

            answers.Add(partNumber, answer ?? throw CallWaiter.Again(failure!));
        }

        if (stale > 0)
        {
            metrics.UsedStale(stale);
        }

        return answers.ToFound();
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        metrics.LookUp();
        return offered.GetAsync(cancellation);
    }

    /// <summary>Asks for the products on offer now, however old those in the cache are.</summary>
    /// <param name="cancellation">Ends the wait.</param>
    /// <exception cref="CatalogueUnavailableException">The catalogue does not respond, and nothing is in the cache.</exception>
    public Task RefreshOfferedAsync(CancellationToken cancellation) => offered.RefreshAsync(cancellation);

    /// <inheritdoc/>
    public void Dispose()
    {
        if (stop.IsCancellationRequested)
        {
            return;
        }

        stopping.Cancel();
        stopping.Dispose();
        (inner as IDisposable)?.Dispose();
    }

    private static PartAnswer AnswerIn(ProductDictionary found, string partNumber) =>
        new(found.GetValueOrDefault(partNumber), found.Faults.GetValueOrDefault(partNumber));

    // Adds cached answers to the result and returns the calls for the others: those in progress, and one new call.
    private Dictionary<string, Task<ProductDictionary>>? TakeCached(IReadOnlyCollection<string> partNumbers, Answers answers)
    {
        Dictionary<string, Task<ProductDictionary>>? missing = null;
        HashSet<string>? own = null;
        var (hits, stale) = (0, 0);
        lock (gate)
        {
            foreach (var partNumber in partNumbers)
            {
                var freshness = cache.Find(partNumber, out var answer);
                if (freshness is Freshness.Fresh or Freshness.AtOnce)
                {
                    answers.Add(partNumber, answer);
                    hits += freshness == Freshness.Fresh ? 1 : 0;
                    stale += freshness == Freshness.AtOnce ? 1 : 0;
                    if (freshness == Freshness.AtOnce && !flights.ContainsKey(partNumber) && cache.MayRefresh(partNumber))
                    {
                        due.Add(partNumber);
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
                var flight = Begin(own);
                foreach (var partNumber in own)
                {
                    missing.Add(partNumber, flight);
                }
            }

            if (due.Count > 0 && refreshing.IsCompleted)
            {
                refreshing = Task.Run(RefreshAsync, CancellationToken.None);
            }
        }

        metrics.Cached(hits, missing?.Count ?? 0);
        if (stale > 0)
        {
            metrics.UsedStale(stale);
        }

        return missing;
    }

    // Only with the lock.
    private Task<ProductDictionary> Begin(IReadOnlyCollection<string> partNumbers)
    {
        var flight = Task.Run(() => FetchAsync(partNumbers), CancellationToken.None);
        foreach (var partNumber in partNumbers)
        {
            flights.Add(partNumber, flight);
        }

        return flight;
    }

    // One batch after the other, until nothing is due.
    private async Task RefreshAsync()
    {
        while (NextDue() is { } flight)
        {
            await ((Task)flight).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private Task<ProductDictionary>? NextDue()
    {
        lock (gate)
        {
            var batch = due.Where(p => !flights.ContainsKey(p)).Take(options.BatchSize).ToArray();
            if (batch.Length == 0 || stop.IsCancellationRequested)
            {
                // The task ends under the lock, so that a request that finds something due knows that it has to start one.
                due.Clear();
                refreshing = Task.CompletedTask;
                return null;
            }

            due.ExceptWith(batch);
            return Begin(batch);
        }
    }

    private async Task<ProductDictionary> FetchAsync(IReadOnlyCollection<string> partNumbers)
    {
        ProductDictionary? found = null;
        try
        {
            found = await inner.FindAsync(partNumbers, stop);
            return found;
        }
        finally
        {
            // In one step, so that no request finds the call gone and its answer not yet cached.
            lock (gate)
            {
                foreach (var partNumber in partNumbers)
                {
                    flights.Remove(partNumber);

                    // A product that has become wrong is served as it was, as without an answer.
                    if (found is null || (found.Faults.ContainsKey(partNumber) && IsHeld(partNumber)))
                    {
                        cache.RefreshFailed(partNumber);
                    }
                    else
                    {
                        cache.Put(partNumber, AnswerIn(found, partNumber));
                    }
                }
            }
        }
    }

    private bool IsHeld(string partNumber) => cache.Find(partNumber, out var answer) != Freshness.None && answer.Product is not null;

    private Product? StaleOf(string partNumber)
    {
        lock (gate)
        {
            // Current if another call has cached it meanwhile.
            return cache.Find(partNumber, out var answer) == Freshness.None ? null : answer.Product;
        }
    }

    private sealed class Answers(int count)
    {
        private readonly Dictionary<string, Product> products = new(count, StringComparer.Ordinal);
        private Dictionary<string, Fault>? faults;

        public void Add(string partNumber, PartAnswer answer)
        {
            if (answer.Product is { } product)
            {
                products[partNumber] = product;
            }
            else if (answer.Fault is { } fault)
            {
                (faults ??= new(StringComparer.Ordinal))[partNumber] = fault;
            }
        }

        public ProductDictionary ToFound() => new(products, faults);
    }
}
