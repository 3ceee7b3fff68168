using System.Security.Cryptography;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Catalogue;

/// <summary>
/// The products on offer, cached. An answer that is no longer current is served at once and refreshed behind, one call at a time. The list stays the
/// same instance until a product of it changes.
/// </summary>
/// <param name="inner">The underlying catalogue.</param>
/// <param name="options">Cache times and total time of a call.</param>
/// <param name="time">The clock.</param>
/// <param name="metrics">Metrics of the cache.</param>
/// <param name="stop">Ends calls when the service stops.</param>
internal sealed class OfferedList(
    IProductCatalogue inner, CatalogueOptions options, TimeProvider time, CatalogueMetrics metrics, CancellationToken stop)
{
    private readonly CallWaiter waiter = new(options, time);
    private readonly Lock gate = new();
    private Task<IReadOnlyList<Product>>? flight;
    private IReadOnlyList<Product>? held;
    private byte[] digest = [];
    private long since;
    private long? failedAt;

    /// <summary>The products on offer.</summary>
    public async ValueTask<IReadOnlyList<Product>> GetAsync(CancellationToken cancellation)
    {
        lock (gate)
        {
            if (YoungerThan(options.CacheSeconds) is { } fresh)
            {
                metrics.Cached(1, 0);
                return fresh;
            }

            if (YoungerThan(options.AtOnceSeconds) is { } stale)
            {
                metrics.UsedStale(1);
                if (failedAt is not { } failure || time.GetElapsedTime(failure).TotalSeconds >= options.RefreshPauseSeconds)
                {
                    Begin();
                }

                return stale;
            }
        }

        return await RefreshAsync(cancellation);
    }

    /// <summary>Asks for the products now, or waits for the call in progress.</summary>
    public async Task<IReadOnlyList<Product>> RefreshAsync(CancellationToken cancellation)
    {
        Task<IReadOnlyList<Product>> call;
        lock (gate)
        {
            metrics.Cached(0, 1);
            call = Begin();
        }

        if (await waiter.WaitAsync(call, cancellation) is not { } failure)
        {
            return await call;
        }

        lock (gate)
        {
            var stale = YoungerThan(options.LongestSeconds) ?? throw CallWaiter.Again(failure);
            metrics.UsedStale(1);
            return stale;
        }
    }

    private static byte[] DigestOf(IReadOnlyList<Product> products) => SHA256.HashData(
        System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(new ProductList { Products = products }, ContractJson.Default.ProductList));

    private Task<IReadOnlyList<Product>> Begin() => flight ??= Task.Run(FetchAsync, CancellationToken.None);

    private async Task<IReadOnlyList<Product>> FetchAsync()
    {
        (IReadOnlyList<Product> Products, byte[] Digest)? answer = null;
        try
        {
            var products = await inner.OfferedAsync(stop);
            answer = (products, DigestOf(products));
        }
        finally
        {
            lock (gate)
            {
                flight = null;
                failedAt = answer is null ? time.GetTimestamp() : null;
                if (answer is { } got)
                {
                    since = time.GetTimestamp();
                    if (held is null || !digest.AsSpan().SequenceEqual(got.Digest))
                    {
                        (held, digest) = got;
                    }
                }
            }
        }

        return held!;
    }

    private IReadOnlyList<Product>? YoungerThan(double seconds) =>
        held is not null && time.GetElapsedTime(since).TotalSeconds < seconds ? held : null;
}
