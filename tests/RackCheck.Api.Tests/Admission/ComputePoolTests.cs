using System.Diagnostics.Metrics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using RackCheck.Api.Admission;

namespace RackCheck.Api.Tests.Admission;

/// <summary>A pool with one thread and a queue of two.</summary>
public sealed class ComputePoolTests : IDisposable
{
    private readonly FakeTimeProvider time = new();
    private readonly ServiceProvider services = new ServiceCollection().AddMetrics().BuildServiceProvider();
    private readonly AdmissionMetrics metrics;
    private readonly ComputePool pool;
    private readonly Traffic traffic = new();
    private readonly ManualResetEventSlim gate = new();

    public ComputePoolTests()
    {
        metrics = new AdmissionMetrics(services.GetRequiredService<IMeterFactory>(), new MemoryBudget(1));
        pool = new ComputePool("checks", new PoolOptions { Workers = 1, Queue = 2, TargetMs = 5, WaitMs = 1000, WorkMs = 2000 }, time, metrics, traffic);
    }

    public void Dispose()
    {
        gate.Set();
        pool.Dispose();
        gate.Dispose();
        traffic.Dispose();
        metrics.Dispose();
        services.Dispose();
    }

    [Fact]
    public async Task Computation_runs_on_a_thread_of_the_pool_and_the_caller_goes_on_elsewhere()
    {
        Assert.Equal("checks-0", await Run(_ => Thread.CurrentThread.Name));
        Assert.NotEqual("checks-0", Thread.CurrentThread.Name);
    }

    [Fact]
    public async Task All_threads_but_one_give_way_to_other_computations()
    {
        using var behind = new ComputePool("streams", new PoolOptions { Workers = 2, Queue = 8 }, time, metrics, traffic, givesWay: true);
        using var both = new Barrier(2);
        bool Meet(CancellationToken cancellation) => both.SignalAndWait(TimeSpan.FromSeconds(60), cancellation);
        Assert.All(await Task.WhenAll(behind.Run(Meet, CancellationToken.None), behind.Run(Meet, CancellationToken.None)), Assert.True);

        var busy = Run(cancellation => gate.Wait(TimeSpan.FromSeconds(60), cancellation));
        var names = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => behind.Run(_ => Thread.CurrentThread.Name, CancellationToken.None)));

        // The other thread may have been about to take one.
        Assert.True(names.Count(n => n != "streams-0") <= 1, string.Join(' ', names));
        gate.Set();
        Assert.True(await busy);
        Assert.All(await Task.WhenAll(behind.Run(Meet, CancellationToken.None), behind.Run(Meet, CancellationToken.None)), Assert.True);
    }

    [Fact]
    public async Task Failure_goes_to_the_caller_and_the_thread_serves_the_next()
    {
        await Assert.ThrowsAsync<FormatException>(() => Run<int>(_ => throw new FormatException()));
        Assert.Equal(2, await Run(_ => 2));
    }

    [Fact]
    public async Task Queue_that_is_full_refuses_at_once_and_accepts_again()
    {
        var running = await BlockAsync();
        Assert.False(pool.IsFull);
        Task<int>[] queued = [Run(_ => 1), Run(_ => 2)];
        Assert.True(pool.IsFull);
        Assert.Null(pool.TryRun(_ => 3, CancellationToken.None));
        gate.Set();
        await running;
        int[] expected = [1, 2];
        Assert.Equal(expected, await Task.WhenAll(queued));
        Assert.Equal(4, await Run(_ => 4));
    }

    [Fact]
    public async Task Queue_that_stays_filled_lets_in_only_what_is_served_within_the_target()
    {
        await Run(_ => Take(10));
        var running = await BlockAsync();
        var first = Run(_ => Take(10));
        Assert.False(pool.IsFull);
        Take(101);
        Assert.True(pool.IsFull);
        Assert.Null(pool.TryRun(_ => 0, CancellationToken.None));
        gate.Set();
        await running;
        await first;
        Assert.False(pool.IsFull);
        Assert.Equal(1, await Run(_ => 1));
    }

    [Fact]
    public async Task Pool_that_has_just_refused_lets_in_no_burst()
    {
        using var large = new ComputePool("large", new PoolOptions { Workers = 1, Queue = 64, TargetMs = 15 }, time, metrics, traffic);
        await large.TryRun(_ => Take(10), CancellationToken.None)!;
        var running = await BlockAsync(large);
        var queued = Enumerable.Range(0, 2).Select(i => large.TryRun(_ => i, CancellationToken.None)!).ToList();
        Assert.False(large.IsFull);
        large.RefuseAsFull();
        Assert.True(large.IsFull);
        Take(501);
        Assert.False(large.IsFull);
        queued.AddRange(Enumerable.Range(2, 6).Select(i => large.TryRun(_ => i, CancellationToken.None)!));
        Assert.True(large.IsFull);
        gate.Set();
        await running;
        Assert.Equal(Enumerable.Range(0, 8), await Task.WhenAll(queued));
    }

    [Fact]
    public async Task Computation_that_waited_too_long_is_not_started()
    {
        var running = await BlockAsync();
        var isStarted = false;
        var late = Run(_ => isStarted = true);
        time.Advance(TimeSpan.FromMilliseconds(1001));
        gate.Set();
        await running;
        await Assert.ThrowsAsync<OverloadedException>(() => late);
        Assert.False(isStarted);
    }

    [Fact]
    public async Task Computation_that_waited_too_long_is_refused_while_the_thread_still_computes()
    {
        var running = await BlockAsync();
        var late = Run(_ => 1);
        time.Advance(TimeSpan.FromMilliseconds(600));
        var later = Run(_ => 2);
        time.Advance(TimeSpan.FromMilliseconds(600));
        await Assert.ThrowsAsync<OverloadedException>(() => late.WaitAsync(TimeSpan.FromSeconds(60)));
        Assert.False(later.IsCompleted);
        Assert.False(running.IsCompleted);

        // Its place in the queue is free again.
        var next = pool.TryRun(_ => 3, CancellationToken.None);
        gate.Set();
        await running;
        int[] expected = [2, 3];
        Assert.Equal(expected, await Task.WhenAll(later, next!));
    }

    [Fact]
    public async Task Computation_has_the_context_of_its_request()
    {
        var running = await BlockAsync();
        var local = new AsyncLocal<string> { Value = "request" };
        var queued = Run(_ => local.Value);
        local.Value = "later";
        gate.Set();
        await running;
        Assert.Equal("request", await queued);
    }

    [Fact]
    public async Task Computation_that_takes_too_long_is_stopped()
    {
        using var started = new ManualResetEventSlim();
        var endless = Run<int>(cancellation =>
        {
            started.Set();
            cancellation.WaitHandle.WaitOne();
            throw new OperationCanceledException(cancellation);
        });
        started.Wait();
        time.Advance(TimeSpan.FromMilliseconds(2000));
        await Assert.ThrowsAsync<OverloadedException>(() => endless);
    }

    [Fact]
    public async Task Computation_of_a_client_that_has_left_is_not_started()
    {
        var running = await BlockAsync();
        using var left = new CancellationTokenSource();
        var isStarted = false;
        var abandoned = pool.TryRun(_ => isStarted = true, left.Token)!;
        await left.CancelAsync();
        gate.Set();
        await running;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => abandoned);
        Assert.False(isStarted);
    }

    private int Take(int ms)
    {
        time.Advance(TimeSpan.FromMilliseconds(ms));
        return ms;
    }

    private Task<T> Run<T>(Func<CancellationToken, T> compute) => pool.TryRun(compute, CancellationToken.None)!;

    // Occupies the one thread until the gate opens.
    private async Task<Task<bool>> BlockAsync(ComputePool? other = null)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var running = (other ?? pool).TryRun(
            _ =>
            {
                started.SetResult();
                gate.Wait(CancellationToken.None);
                return true;
            },
            CancellationToken.None)!;
        await started.Task;
        return running;
    }
}
