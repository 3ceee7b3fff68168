using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using RackCheck.Api.Catalogue;
using RackCheck.Model;
using RackCheck.ProductService;
using RackCheck.Survey.Catalogue;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>Contents and lifetimes of the cache, and sharing of calls.</summary>
public sealed class CachingCatalogueTests
{
    private readonly FakeTimeProvider time = new();

    private static CatalogueOptions NoRetries(Uri url) => new() { BaseUrl = url, Retries = 0, RefreshBehindSeconds = 0 };

    private static CatalogueOptions Patient(Uri url) => new() { BaseUrl = url, TotalTimeoutMs = 20_000, TryTimeoutMs = 20_000 };

    [Fact]
    public async Task Answer_is_current_for_its_lifetime()
    {
        await using var rig = await StartAsync(NoRetries, time);
        await rig.FindAsync(Pack(1), Pack(2));
        time.Advance(TimeSpan.FromSeconds(299));
        Assert.Equal(2, (await rig.FindAsync(Pack(1), Pack(2), Pack(2))).Count);
        Assert.Equal(1, rig.Host.Faults.Calls);
        time.Advance(TimeSpan.FromSeconds(2));
        await rig.FindAsync(Pack(1));
        Assert.Equal([2, 1], rig.Host.Faults.Asked);
        Assert.Equal((3d, 3d, 3d), (rig.Reading("look_ups"), rig.Reading("cache:hit"), rig.Reading("cache:miss")));
    }

    [Fact]
    public async Task LookUp_requests_only_uncached_part_numbers()
    {
        await using var rig = await StartAsync(NoRetries, time);
        await rig.FindAsync(Pack(1), Pack(2));
        Assert.Equal(3, (await rig.FindAsync(Pack(1), Pack(2), Pack(3))).Count);
        Assert.Equal([2, 1], rig.Host.Faults.Asked);
    }

    [Theory]
    [InlineData(FaultKind.Failed)]
    [InlineData(FaultKind.TruncatedJson)]
    public async Task StaleProduct_is_served_when_fetch_fails(FaultKind kind)
    {
        await using var rig = await StartAsync(NoRetries, time);
        var before = await rig.FindAsync(Pack(1), Pack(2));
        time.Advance(TimeSpan.FromSeconds(301));
        rig.Host.Faults.Set(kind);
        Assert.Equal(before.OrderBy(p => p.Key), (await rig.FindAsync(Pack(1), Pack(2))).OrderBy(p => p.Key));
        Assert.Equal((1, 2d), (rig.Host.Faults.Calls, rig.Reading("cache:stale")));

        // A part number that is not in the cache still fails.
        await rig.FailsAsync(Pack(1), Pack(3));
        time.Advance(TimeSpan.FromSeconds(86_400));
        await rig.FailsAsync(Pack(1));
    }

    [Fact]
    public async Task UnknownPartNumber_is_cached_briefly_and_never_served_stale()
    {
        await using var rig = await StartAsync(NoRetries, time);
        Assert.Empty(await rig.FindAsync("QWL-NONE"));
        Assert.Empty(await rig.FindAsync("QWL-NONE"));
        Assert.Equal(1, rig.Host.Faults.Calls);
        time.Advance(TimeSpan.FromSeconds(31));
        rig.Host.Faults.Set(FaultKind.Failed);
        await rig.FailsAsync("QWL-NONE");
        Assert.Equal(1, rig.Host.Faults.Calls);
    }

    [Fact]
    public async Task FiftyConcurrentLookUps_share_one_call()
    {
        await using var rig = await StartAsync(Patient);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 500 });
        var answers = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => Task.Run(() => rig.FindAsync(Pack(1)))));
        Assert.All(answers, a => Assert.Equal([Pack(1)], a.Keys));
        Assert.Equal([1], rig.Host.Faults.Asked);
    }

    [Fact]
    public async Task LookUp_waits_for_running_call_and_fetches_rest_in_one_call()
    {
        await using var rig = await StartAsync(Patient);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 500 });
        var first = rig.FindAsync(Pack(1), Pack(2));
        var second = rig.FindAsync(Pack(2), Pack(3), Pack(4));
        Assert.Equal((2, 3), ((await first).Count, (await second).Count));
        Assert.Equal([2, 2], rig.Host.Faults.Asked);
    }

    [Fact]
    public async Task CancelledLookUp_does_not_affect_others()
    {
        await using var rig = await StartAsync(Patient);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 500 });
        using var giveUp = new CancellationTokenSource();
        var first = rig.Cached.FindAsync([Pack(1)], giveUp.Token).AsTask();
        var second = rig.FindAsync(Pack(1));
        await giveUp.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        Assert.False(second.IsCompleted);
        Assert.Single(await second);
        Assert.Equal([1], rig.Host.Faults.Asked);
    }

    [Fact]
    public async Task Wait_for_shared_call_ends_at_total_time()
    {
        var never = new StubCatalogue();
        using var catalogue = Caching(never, new CatalogueOptions());
        var first = catalogue.FindAsync([Pack(1)], CancellationToken.None).AsTask();
        time.Advance(TimeSpan.FromSeconds(3));
        var second = catalogue.FindAsync([Pack(1)], CancellationToken.None).AsTask();
        time.Advance(TimeSpan.FromSeconds(1.1));
        await Assert.ThrowsAsync<CatalogueUnavailableException>(() => first);
        Assert.False(second.IsCompleted);
        time.Advance(TimeSpan.FromSeconds(3));
        await Assert.ThrowsAsync<CatalogueUnavailableException>(() => second);
        await never.Asked;
        Assert.Equal(1, never.Calls);
    }

    [Fact]
    public async Task LateAnswer_is_cached()
    {
        var late = new StubCatalogue();
        using var catalogue = Caching(late, new CatalogueOptions());
        var first = catalogue.FindAsync([Pack(1)], CancellationToken.None).AsTask();
        time.Advance(TimeSpan.FromSeconds(5));
        await Assert.ThrowsAsync<CatalogueUnavailableException>(() => first);
        late.Answer(Packs(2));
        Assert.Single(await catalogue.FindAsync([Pack(1)], CancellationToken.None));
        Assert.Equal(1, late.Calls);
    }

    [Fact]
    public async Task OfferedProducts_are_cached()
    {
        await using var rig = await StartAsync(NoRetries, time);
        await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => rig.Cached.OfferedAsync(CancellationToken.None).AsTask()));
        Assert.Equal([0], rig.Host.Faults.Asked);
        time.Advance(TimeSpan.FromSeconds(301));
        rig.Host.Faults.Set(FaultKind.TruncatedJson);
        Assert.Equal(10, (await rig.Cached.OfferedAsync(CancellationToken.None)).Count);
        Assert.Equal((1, 1d), (rig.Host.Faults.Calls, rig.Reading("cache:stale")));
        time.Advance(TimeSpan.FromSeconds(86_400));
        await rig.FailsAsync(() => rig.Cached.OfferedAsync(CancellationToken.None).AsTask());
    }

    [Fact]
    public async Task Cache_size_is_limited()
    {
        await using var rig = await StartAsync(
            url => new CatalogueOptions { BaseUrl = url, CacheEntries = 100, TotalTimeoutMs = 20_000, TryTimeoutMs = 20_000 }, products: Packs(150));
        Assert.Equal(150, (await rig.FindAsync([.. Packs(150).Select(p => p.PartNumber)])).Count);
        Assert.Equal(100, rig.Cached.Count);
    }

    [Fact]
    public void LeastRecentlyUsed_entry_is_removed_first()
    {
        var cache = new ProductCache(new CatalogueOptions { CacheEntries = 2 }, time);
        var packs = Packs(3);
        cache.Put(Pack(0), new PartAnswer(packs[0]));
        cache.Put(Pack(1), new PartAnswer(packs[1]));
        Assert.Equal(Freshness.Fresh, cache.Find(Pack(0), out _));
        cache.Put(Pack(2), new PartAnswer(packs[2]));
        Assert.Equal(
            [Freshness.Fresh, Freshness.None, Freshness.Fresh],
            Enumerable.Range(0, 3).Select(i => cache.Find(Pack(i), out _)));
        Assert.Equal(2, cache.Count);
    }

    [Fact]
    public async Task Catalogue_without_cache_entries_still_answers()
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, CacheSeconds = 0, StaleSeconds = 0, UnknownSeconds = 0 });
        Assert.Equal([Pack(1)], (await rig.FindAsync(Pack(1), "QWL-NONE")).Keys);
        Assert.Equal([Pack(1)], (await rig.FindAsync(Pack(1), "QWL-NONE")).Keys);
        Assert.Equal([2, 2], rig.Host.Faults.Asked);
    }

    private CachingCatalogue Caching(StubCatalogue inner, CatalogueOptions options) => new(
        inner,
        options,
        time,
        new CatalogueMetrics(new ServiceCollection().AddMetrics().BuildServiceProvider().GetRequiredService<System.Diagnostics.Metrics.IMeterFactory>()));

    // Answers on request, for any number of calls.
    private sealed class StubCatalogue : IProductCatalogue
    {
        private readonly TaskCompletionSource<IReadOnlyList<Product>> answer = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource asked = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private int calls;

        public Task Asked => asked.Task;

        public int Calls => Volatile.Read(ref calls);

        public void Answer(IReadOnlyList<Product> products) => answer.SetResult(products);

        public async ValueTask<ProductDictionary> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
        {
            Interlocked.Increment(ref calls);
            asked.TrySetResult();
            return new ProductDictionary((await answer.Task).Where(p => partNumbers.Contains(p.PartNumber)).ToDictionary(p => p.PartNumber));
        }

        public async ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation) => await answer.Task;
    }
}
