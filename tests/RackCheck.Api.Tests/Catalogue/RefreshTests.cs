using System.Diagnostics.Metrics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Reading;
using RackCheck.Model;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>Answers that are no longer current are served at once and refreshed behind, within bounds.</summary>
public sealed class RefreshTests : IAsyncLifetime
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    private readonly FakeTimeProvider time = new();
    private readonly ScriptedCatalogue inner = new() { Products = Packs(10) };
    private readonly ServiceProvider services = new ServiceCollection().AddMetrics().BuildServiceProvider();
    private CachingCatalogue catalogue = null!;

    public Task InitializeAsync()
    {
        catalogue = Make(new CatalogueOptions());
        return Task.CompletedTask;
    }

    public async Task DisposeAsync()
    {
        catalogue.Dispose();
        await services.DisposeAsync();
    }

    [Fact]
    public async Task Stale_product_is_served_at_once_and_refreshed_behind()
    {
        await FindAsync(1);
        inner.Products = Renamed();
        inner.Hold();
        time.Advance(TimeSpan.FromSeconds(301));

        // The call is held, so that an answer cannot come from it.
        Assert.Equal("Cage nuts", await NameAsync(1));
        inner.Release();
        await RefreshedAsync();
        Assert.Equal("Cage nuts, new", await NameAsync(1));
        Assert.Equal([1, 1], inner.Asked);
    }

    [Fact]
    public async Task Part_number_is_refreshed_by_one_call_at_a_time()
    {
        await FindAsync(1);
        inner.Hold();
        time.Advance(TimeSpan.FromSeconds(301));
        await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => Task.Run(() => FindAsync(1))));
        inner.Release();
        await RefreshedAsync();
        Assert.Equal([1, 1], inner.Asked);
    }

    [Fact]
    public async Task Many_stale_products_are_refreshed_in_batches_one_after_the_other()
    {
        catalogue = Make(new CatalogueOptions { BatchSize = 4 });
        await FindAsync([.. Enumerable.Range(0, 10)]);
        time.Advance(TimeSpan.FromSeconds(301));
        await Task.WhenAll(Enumerable.Range(0, 10).Select(i => Task.Run(() => FindAsync(i))));
        await RefreshedAsync();
        Assert.Equal((20, 1), (inner.Asked.Sum(), inner.MostRunning));
        Assert.All(inner.Asked.Skip(1), n => Assert.InRange(n, 1, 4));
    }

    [Fact]
    public async Task Failed_refresh_is_repeated_after_a_pause_and_the_product_still_served()
    {
        await FindAsync(1);
        time.Advance(TimeSpan.FromSeconds(301));
        inner.Fails = true;
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal("Cage nuts", await NameAsync(1));
            await RefreshedAsync();
        }

        Assert.Equal(2, inner.Asked.Count);
        time.Advance(TimeSpan.FromSeconds(5));
        Assert.Equal("Cage nuts", await NameAsync(1));
        await RefreshedAsync();
        Assert.Equal(3, inner.Asked.Count);
    }

    [Fact]
    public async Task Older_product_waits_for_the_answer_and_serves_only_without_one()
    {
        await FindAsync(1);
        inner.Products = Renamed();
        time.Advance(TimeSpan.FromSeconds(300 + 3600));
        Assert.Equal("Cage nuts, new", await NameAsync(1));
        time.Advance(TimeSpan.FromSeconds(300 + 3600));
        inner.Fails = true;
        Assert.Equal("Cage nuts, new", await NameAsync(1));
        Assert.Equal(3, inner.Asked.Count);
        time.Advance(TimeSpan.FromSeconds(86_400));
        await Assert.ThrowsAsync<CatalogueUnavailableException>(() => FindAsync(1));
    }

    [Fact]
    public async Task Refresh_stops_with_the_service()
    {
        catalogue = Make(new CatalogueOptions { BatchSize = 1 });
        await FindAsync(1, 2, 3);
        inner.Hold();
        time.Advance(TimeSpan.FromSeconds(301));
        await FindAsync(1, 2, 3);
        var refreshing = catalogue.Refreshing;
        catalogue.Dispose();
        await refreshing.WaitAsync(Longest);
        Assert.InRange(inner.Asked.Count, 1, 2);
    }

    [Fact]
    public async Task Product_that_became_wrong_is_served_as_it_was()
    {
        await FindAsync(1);
        inner.Products = [];
        inner.Faults = new Dictionary<string, Fault>
        {
            [Pack(1)] = new() { Pointer = "/pieces", Code = FaultCodes.OutOfRange, Detail = "0 is outside 1 to 10000." },
        };
        time.Advance(TimeSpan.FromSeconds(301));
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal("Cage nuts", await NameAsync(1));
            await RefreshedAsync();
        }

        // No longer than an answer serves at all.
        Assert.Equal(2, inner.Asked.Count);
        time.Advance(TimeSpan.FromSeconds(86_400));
        var found = await FindAsync(1);
        Assert.Empty(found);
        Assert.Equal("/pieces", found.Faults[Pack(1)].Pointer);
    }

    [Fact]
    public async Task Offered_list_is_served_at_once_and_stays_the_same_until_it_changes()
    {
        var first = await OfferedAsync();
        time.Advance(TimeSpan.FromSeconds(301));
        inner.Hold();
        Assert.Same(first, await OfferedAsync());
        inner.Release();
        await catalogue.RefreshOfferedAsync(CancellationToken.None);

        // Refreshed, with equal products in another list.
        Assert.Same(first, await OfferedAsync());
        Assert.True(inner.Asked.Count >= 2);
        inner.Products = Renamed();
        await catalogue.RefreshOfferedAsync(CancellationToken.None);
        var changed = await OfferedAsync();
        Assert.NotSame(first, changed);
        Assert.All(changed, p => Assert.Equal("Cage nuts, new", p.Name));
        Assert.All(first, p => Assert.Equal("Cage nuts", p.Name));
    }

    [Fact]
    public async Task Offered_list_is_refreshed_by_one_call_at_a_time_with_a_pause_after_a_failure()
    {
        var first = await OfferedAsync();
        time.Advance(TimeSpan.FromSeconds(301));
        inner.Hold();
        inner.Fails = true;
        var lists = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => Task.Run(OfferedAsync)));
        Assert.All(lists, l => Assert.Same(first, l));

        // Joins the call in progress, and gets the list that is there.
        var joined = catalogue.RefreshOfferedAsync(CancellationToken.None);
        inner.Release();
        await joined.WaitAsync(Longest);
        Assert.Equal(2, inner.Asked.Count);
        Assert.Same(first, await OfferedAsync());
        Assert.Equal(2, inner.Asked.Count);
    }

    private static IReadOnlyList<Product> Renamed() => [.. Packs(10).Select(p => p with { Name = "Cage nuts, new" })];

    private CachingCatalogue Make(CatalogueOptions options) =>
        new(inner, options, time, new CatalogueMetrics(services.GetRequiredService<IMeterFactory>()));

    private Task<Survey.Catalogue.ProductDictionary> FindAsync(params int[] packs) =>
        catalogue.FindAsync([.. packs.Select(Pack)], CancellationToken.None).AsTask().WaitAsync(Longest);

    private async Task<string> NameAsync(int pack) => (await FindAsync(pack))[Pack(pack)].Name;

    private Task<IReadOnlyList<Product>> OfferedAsync() => catalogue.OfferedAsync(CancellationToken.None).AsTask().WaitAsync(Longest);

    private Task RefreshedAsync() => catalogue.Refreshing.WaitAsync(Longest);
}
