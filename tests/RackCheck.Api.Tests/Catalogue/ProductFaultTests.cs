using System.Collections.Concurrent;
using RackCheck.Api.Catalogue;
using RackCheck.ProductService;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>Faults of a product service over real sockets: number of calls, waits, and no invalid product in the result.</summary>
public sealed class ProductFaultTests
{
    private const int Tries = 3;

    private static CatalogueOptions Options(Uri url) => new()
    {
        BaseUrl = url,
        TotalTimeoutMs = 4000,
        TryTimeoutMs = 2000,
        Retries = Tries - 1,
        RetryDelayMs = 10,
        MaxAnswerBytes = 64 * 1024,
    };

    [Theory]
    [InlineData(FaultKind.Reset, Tries, "no-connection")]
    [InlineData(FaultKind.ResetMidway, Tries, "no-connection")]
    [InlineData(FaultKind.Failed, Tries, "failed")]
    [InlineData(FaultKind.Busy, Tries, "busy")]
    [InlineData(FaultKind.NotFound, 1, "refused")]
    [InlineData(FaultKind.BadRequest, 1, "refused")]
    [InlineData(FaultKind.Redirect, 1, "refused")]
    [InlineData(FaultKind.TruncatedJson, 1, "wrong-content")]
    [InlineData(FaultKind.WrongContentType, 1, "wrong-content")]
    [InlineData(FaultKind.TooLarge, 1, "wrong-content")]
    public async Task Fault_makes_catalogue_unavailable_and_only_transient_is_retried(FaultKind kind, int calls, string outcome)
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(new FaultOrder { Kind = kind, RetryAfterS = 0 });
        var fault = await rig.FailsAsync(Pack(1), Pack(2));
        Assert.Equal(calls, rig.Host.Faults.Calls);
        Assert.Equal(calls, rig.Reading("call.duration:" + outcome));
        Assert.Equal(calls - 1, rig.Reading("retries"));
        Assert.Equal(0, rig.Reading("in_flight"));
    }

    [Theory]
    [InlineData(FaultKind.Reset)]
    [InlineData(FaultKind.ResetMidway)]
    [InlineData(FaultKind.Failed)]
    public async Task TransientFault_does_not_fail_the_look_up(FaultKind kind)
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(kind, times: Tries - 1);
        Assert.Equal([Pack(1)], (await rig.FindAsync(Pack(1))).Keys);
        Assert.Equal(Tries, rig.Host.Faults.Calls);
        Assert.Equal(1, rig.Reading("call.duration:answered"));
    }

    [Fact]
    public async Task SlowAnswer_is_retried_until_total_time()
    {
        await using var rig = await StartAsync(
            url => new CatalogueOptions { BaseUrl = url, TotalTimeoutMs = 900, TryTimeoutMs = 400, Retries = 9, RetryDelayMs = 1 });
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 30_000 });

        // Not through the cache, which releases a call at the same moment: the end of the last attempt must be counted.
        await rig.FailsAsync(() => rig.Http.FindAsync([Pack(1)], CancellationToken.None).AsTask());

        // The last attempt may end before it reaches the product service, which may then receive fewer calls.
        var timedOut = rig.Reading("call.duration:timed-out");
        Assert.InRange(timedOut, 1, 3);
        Assert.InRange(rig.Host.Faults.Calls, 0, timedOut);
        Assert.InRange(rig.Reading("retries"), timedOut - 1, timedOut);
    }

    [Fact]
    public async Task AttemptTimeout_is_retried()
    {
        await using var rig = await StartAsync(
            url => new CatalogueOptions { BaseUrl = url, TotalTimeoutMs = 20_000, TryTimeoutMs = 500, Retries = 5, RetryDelayMs = 1 });
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 30_000, Times = 1 });
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.True(rig.Host.Faults.Calls >= 2);
    }

    [Fact]
    public async Task RetryAfter_within_total_time_is_respected()
    {
        var time = new RecordedWaits();
        await using var rig = await StartAsync(Options, time);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Busy, RetryAfterS = 1, Times = 1 });
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.Contains(TimeSpan.FromSeconds(1), time.Waits);
        Assert.Equal(2, rig.Host.Faults.Calls);
    }

    [Fact]
    public async Task RetryAfter_beyond_total_time_is_passed_on()
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Busy, RetryAfterS = 60 });
        var fault = await rig.FailsAsync(Pack(1));
        Assert.Equal(0, rig.Reading("retries"));
        Assert.Equal((1, TimeSpan.FromSeconds(60)), (rig.Host.Faults.Calls, fault.RetryAfter));
    }

    [Fact]
    public async Task UnknownPartNumber_is_left_out()
    {
        await using var rig = await StartAsync(Options);
        Assert.Equal([Pack(1)], (await rig.FindAsync(Pack(1), "QWL-NONE")).Keys);
        rig.Host.Faults.Set(FaultKind.UnknownPart);
        Assert.Empty(await rig.FindAsync(Pack(2)));
    }

    [Fact]
    public async Task ProductService_not_running_is_unavailable()
    {
        await using var rig = await StartAsync(Options);
        await rig.Host.DisposeAsync();
        await rig.FailsAsync(Pack(1));
        Assert.Equal(Tries, rig.Reading("call.duration:no-connection"));
    }

    [Fact]
    public async Task OfferedProducts_are_read_strictly()
    {
        await using var rig = await StartAsync(Options, products: Packs(12));
        var offered = await rig.Http.OfferedAsync(CancellationToken.None);
        Assert.Equal(Packs(12).Select(p => p.PartNumber).Order(StringComparer.Ordinal), offered.Select(p => p.PartNumber));
        rig.Host.Faults.Set(FaultKind.TruncatedJson);
        await rig.FailsAsync(() => rig.Cached.OfferedAsync(CancellationToken.None).AsTask());
        Assert.Equal(1, rig.Host.Faults.Calls);
    }

    [Theory]
    [InlineData(1000, 200, 5)]
    [InlineData(1001, 500, 3)]
    public async Task ManyPartNumbers_are_sent_in_batches(int count, int batch, int calls)
    {
        await using var rig = await StartAsync(
            url => new CatalogueOptions { BaseUrl = url, BatchSize = batch, TotalTimeoutMs = 20_000, TryTimeoutMs = 20_000 }, products: Packs(count));
        var wanted = Packs(count).Select(p => p.PartNumber).ToArray();
        Assert.Equal(wanted.ToHashSet(), (await rig.FindAsync(wanted)).Keys.ToHashSet());
        Assert.Equal(calls, rig.Host.Faults.Calls);
        Assert.Equal((count, batch), (rig.Host.Faults.Asked.Sum(), rig.Host.Faults.Asked.Max()));
    }

    [Fact]
    public async Task FailedBatch_fails_the_look_up()
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, BatchSize = 2, Retries = 0 });
        rig.Host.Faults.Set(FaultKind.Failed, times: 1);
        await rig.FailsAsync(Pack(1), Pack(2), Pack(3), Pack(4));
    }

    /// <summary>The system's clock, and how long each of its timers was to wait.</summary>
    private sealed class RecordedWaits : TimeProvider
    {
        public ConcurrentQueue<TimeSpan> Waits { get; } = [];

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            Waits.Enqueue(dueTime);
            return base.CreateTimer(callback, state, dueTime, period);
        }
    }
}
