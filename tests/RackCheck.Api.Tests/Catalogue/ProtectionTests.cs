using Microsoft.Extensions.Time.Testing;
using RackCheck.Api.Catalogue;
using RackCheck.ProductService;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>Circuit breaker and concurrency limit protect a failing product service and its callers.</summary>
public sealed class ProtectionTests
{
    [Fact]
    public async Task Breaker_opens_blocks_calls_and_closes_after_a_trial()
    {
        var time = new FakeTimeProvider();
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, Retries = 0, BreakerMinimumTries = 4, BreakerOpenMs = 5000 }, time);
        rig.Host.Faults.Set(FaultKind.Failed);
        for (var i = 0; i < 4; i++)
        {
            await rig.FailsAsync(Pack(i));
        }

        Assert.Equal((1, 2), (rig.Reading("breaker.openings"), rig.Reading("breaker.state")));
        var fault = await rig.FailsAsync(Pack(1));
        Assert.Equal(4, rig.Host.Faults.Calls);
        Assert.InRange(fault.RetryAfter, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(5));

        // Still failing: one trial attempt passes, and the breaker opens again.
        time.Advance(TimeSpan.FromSeconds(6));
        await rig.FailsAsync(Pack(1));
        await rig.FailsAsync(Pack(1));
        Assert.Equal((5, 2d), (rig.Host.Faults.Calls, rig.Reading("breaker.openings")));

        rig.Host.Faults.Set(FaultKind.None);
        time.Advance(TimeSpan.FromSeconds(6));
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.Equal(0, rig.Reading("breaker.state"));
        Assert.Single(await rig.FindAsync(Pack(2)));
    }

    [Theory]
    [InlineData(FaultKind.NotFound)]
    [InlineData(FaultKind.TruncatedJson)]
    public async Task PermanentFault_does_not_open_the_breaker(FaultKind kind)
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, BreakerMinimumTries = 2 });
        rig.Host.Faults.Set(kind);
        for (var i = 0; i < 4; i++)
        {
            await rig.FailsAsync(Pack(i));
        }

        Assert.Equal((4, 0d), (rig.Host.Faults.Calls, rig.Reading("breaker.openings")));
    }

    [Fact]
    public async Task Calls_beyond_concurrency_and_queue_limits_are_refused()
    {
        await using var rig = await StartAsync(url => new CatalogueOptions
        {
            BaseUrl = url, MaxConcurrentCalls = 1, MaxQueuedCalls = 1, TotalTimeoutMs = 20_000, TryTimeoutMs = 20_000,
        });
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 500 });
        var calls = Enumerable.Range(0, 5).Select(i => rig.Http.FindAsync([Pack(i)], CancellationToken.None).AsTask()).ToArray();
        await Task.WhenAll(calls).ContinueWith(_ => { }, TaskScheduler.Default);
        Assert.Equal((2, 3), (calls.Count(c => c.IsCompletedSuccessfully), calls.Count(c => c.Exception?.InnerException is CatalogueUnavailableException)));
        Assert.Equal((2, 3d), (rig.Host.Faults.Calls, rig.Reading("rejected")));
    }

    [Fact]
    public async Task Wait_in_queue_counts_towards_total_time()
    {
        var time = new FakeTimeProvider();
        await using var rig = await StartAsync(
            url => new CatalogueOptions { BaseUrl = url, MaxConcurrentCalls = 1, TotalTimeoutMs = 600, TryTimeoutMs = 600, Retries = 0 }, time);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 600_000 });
        Task[] calls = [.. Enumerable.Range(0, 4).Select(i => rig.FailsAsync(() => rig.Http.FindAsync([Pack(i)], CancellationToken.None).AsTask()))];

        // One call is under way and three wait. The clock goes on once, and ends them all.
        time.Advance(TimeSpan.FromMilliseconds(600));
        await Task.WhenAll(calls);
    }
}
