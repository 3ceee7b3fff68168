using System.Diagnostics;
using RackCheck.Api.Catalogue;
using RackCheck.ProductService;
using static RackCheck.Api.Tests.Catalogue.CatalogueRig;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>What a product service can get wrong, over real sockets: how often it is asked, how long that takes, and that nothing wrong comes through.</summary>
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
    [InlineData(FaultKind.WrongSchema, 1, "wrong-content")]
    [InlineData(FaultKind.WrongValue, 1, "wrong-content")]
    [InlineData(FaultKind.TooLarge, 1, "wrong-content")]
    [InlineData(FaultKind.NotAskedFor, 1, "wrong-content")]
    public async Task A_fault_makes_the_catalogue_unavailable_and_only_what_may_pass_is_asked_again(FaultKind kind, int calls, string outcome)
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(new FaultOrder { Kind = kind, RetryAfterS = 0 });
        var fault = await rig.FailsInTimeAsync(Pack(1), Pack(2));
        Assert.Equal(calls, rig.Host.Faults.Calls);
        Assert.Equal(calls, rig.Reading("call.duration:" + outcome));
        Assert.Equal(calls - 1, rig.Reading("retries"));
        Assert.Equal(0, rig.Reading("in_flight"));
        Assert.DoesNotContain("price", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("TFL", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FaultKind.TruncatedJson, "not-json")]
    [InlineData(FaultKind.WrongSchema, "/products")]
    [InlineData(FaultKind.WrongValue, "/products/0")]
    public async Task What_is_wrong_with_an_answer_is_said_by_place_and_code_for_those_who_mend_it(FaultKind kind, string expected)
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(kind);
        var fault = await rig.FailsInTimeAsync(Pack(1), Pack(2));
        Assert.Contains(expected, fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FaultKind.Reset)]
    [InlineData(FaultKind.ResetMidway)]
    [InlineData(FaultKind.Failed)]
    public async Task A_fault_that_passes_is_not_noticed(FaultKind kind)
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(kind, times: Tries - 1);
        Assert.Equal([Pack(1)], (await rig.FindAsync(Pack(1))).Keys);
        Assert.Equal(Tries, rig.Host.Faults.Calls);
        Assert.Equal(1, rig.Reading("call.duration:answered"));
    }

    [Fact]
    public async Task A_slow_answer_is_asked_for_again_until_the_total_time_is_over()
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, TotalTimeoutMs = 900, TryTimeoutMs = 400, Retries = 9, RetryDelayMs = 1 });
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 30_000 });

        // Not through the cache, which lets go of a call at the same moment: the end of the last try has to be counted.
        await rig.FailsInTimeAsync(() => rig.Http.FindAsync([Pack(1)], CancellationToken.None).AsTask());

        // The last try may end before it reaches the product service, so that there may be less calls there.
        var timedOut = rig.Reading("call.duration:timed-out");
        Assert.InRange(timedOut, 1, 3);
        Assert.InRange(rig.Host.Faults.Calls, 0, timedOut);
        Assert.InRange(rig.Reading("retries"), timedOut - 1, timedOut);
    }

    [Fact]
    public async Task A_try_that_takes_too_long_is_no_reason_to_give_up()
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, TotalTimeoutMs = 20_000, TryTimeoutMs = 500, Retries = 5, RetryDelayMs = 1 });
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Slow, DelayMs = 30_000, Times = 1 });
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.True(rig.Host.Faults.Calls >= 2);
    }

    [Fact]
    public async Task A_wait_that_the_product_service_asks_for_is_kept()
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Busy, RetryAfterS = 1, Times = 1 });
        var watch = Stopwatch.StartNew();
        Assert.Single(await rig.FindAsync(Pack(1)));
        Assert.InRange(watch.Elapsed, TimeSpan.FromSeconds(0.95), rig.Options.TotalTimeout);
        Assert.Equal(2, rig.Host.Faults.Calls);
    }

    [Fact]
    public async Task A_wait_past_the_total_time_is_not_begun_but_handed_on()
    {
        await using var rig = await StartAsync(Options);
        rig.Host.Faults.Set(new FaultOrder { Kind = FaultKind.Busy, RetryAfterS = 60 });
        var watch = Stopwatch.StartNew();
        var fault = await rig.FailsInTimeAsync(Pack(1));
        Assert.True(watch.Elapsed < rig.Options.TotalTimeout);
        Assert.Equal((1, TimeSpan.FromSeconds(60)), (rig.Host.Faults.Calls, fault.RetryAfter));
    }

    [Fact]
    public async Task A_part_number_that_is_not_known_is_left_out()
    {
        await using var rig = await StartAsync(Options);
        Assert.Equal([Pack(1)], (await rig.FindAsync(Pack(1), "QWL-NONE")).Keys);
        rig.Host.Faults.Set(FaultKind.UnknownPart);
        Assert.Empty(await rig.FindAsync(Pack(2)));
    }

    [Fact]
    public async Task Nobody_there_is_unavailable()
    {
        await using var rig = await StartAsync(Options);
        await rig.Host.DisposeAsync();
        await rig.FailsInTimeAsync(Pack(1));
        Assert.Equal(Tries, rig.Reading("call.duration:no-connection"));
    }

    [Fact]
    public async Task The_offered_products_are_read_as_strictly()
    {
        await using var rig = await StartAsync(Options, products: Packs(12));
        Assert.Equal(Packs(12).Select(p => p.PartNumber).Order(StringComparer.Ordinal), (await rig.Http.OfferedAsync(CancellationToken.None)).Select(p => p.PartNumber));
        rig.Host.Faults.Set(FaultKind.WrongValue);
        await rig.FailsInTimeAsync(() => rig.Cached.OfferedAsync(CancellationToken.None).AsTask());
        Assert.Equal(1, rig.Host.Faults.Calls);
    }

    [Theory]
    [InlineData(1000, 200, 5)]
    [InlineData(1001, 500, 3)]
    public async Task Many_part_numbers_go_in_batches(int count, int batch, int calls)
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, BatchSize = batch, TotalTimeoutMs = 20_000, TryTimeoutMs = 20_000 }, products: Packs(count));
        var wanted = Packs(count).Select(p => p.PartNumber).ToArray();
        Assert.Equal(wanted.ToHashSet(), (await rig.FindAsync(wanted)).Keys.ToHashSet());
        Assert.Equal(calls, rig.Host.Faults.Calls);
        Assert.Equal((count, batch), (rig.Host.Faults.Asked.Sum(), rig.Host.Faults.Asked.Max()));
    }

    [Fact]
    public async Task One_batch_that_fails_fails_the_look_up()
    {
        await using var rig = await StartAsync(url => new CatalogueOptions { BaseUrl = url, BatchSize = 2, Retries = 0 });
        rig.Host.Faults.Set(FaultKind.Failed, times: 1);
        await rig.FailsInTimeAsync(Pack(1), Pack(2), Pack(3), Pack(4));
    }
}
