using System.Collections.Concurrent;
using System.Diagnostics;

namespace RackCheck.Api.Admission;

/// <summary>
/// Computes on a few threads of its own behind a short queue. The threads of the server, which answer probes, never compute, and a request that finds
/// the queue full is refused at once.
/// </summary>
/// <remarks>
/// A burst may fill the queue. A queue that stays filled only makes all wait, so after a while seven eighths of it admit only what is served in time,
/// and after a refusal all of it but two places a thread.
/// </remarks>
internal sealed class ComputePool : IDisposable
{
    /// <summary>Name of the source of traces.</summary>
    public const string TraceSource = "RackCheck.Compute";

    private static readonly ActivitySource Traces = new(TraceSource);

    // From then on a queue that was never empty counts as overload instead of a burst.
    private static readonly TimeSpan Burst = TimeSpan.FromMilliseconds(100);

    // After a refusal no burst is let in for this time: requests that come whatever the answers do would fill the queue whenever it has just emptied.
    private static readonly TimeSpan Shedding = TimeSpan.FromMilliseconds(500);

    // How often the queue is looked through for those that have waited too long, within the time that they may wait.
    private const int SweepsInWait = 20;

    // How long a thread that gives way waits before it looks again whether the pool ends.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    // An eighth of the queue stays open, so that a few callers who each wait for their answers are not refused. Others fill it and are refused; from then
    // on fewer places are open for each thread, so that what is accepted is served soon.
    private const int LeastShare = 8;
    private const int LeastPerThread = 2;

    private readonly PoolOptions options;
    private readonly TimeProvider time;
    private readonly AdmissionMetrics metrics;
    private readonly KeyValuePair<string, object?> tag;
    private readonly Traffic traffic;
    private readonly bool givesWay;
    private readonly TimeSpan mostWait;
    private readonly ConcurrentQueue<Computation> order = new();
    private readonly BlockingCollection<Computation> queue;
    private readonly Thread[] threads;
    private readonly ITimer sweep;

    // Of those in the queue; the rest were refused there.
    private int waiting;
    private long lastEmpty;
    private long lastFull;
    private long meanWorkTicks;

    /// <summary>Starts the threads.</summary>
    /// <param name="name">Name, for metrics and thread names.</param>
    /// <param name="options">Settings.</param>
    /// <param name="time">Measures waiting and working.</param>
    /// <param name="metrics">Metrics of all pools.</param>
    /// <param name="traffic">Computations that a caller waits for by itself, in all pools.</param>
    /// <param name="givesWay">Whether all threads but one rest while there are such computations; else its own are such.</param>
    public ComputePool(string name, PoolOptions options, TimeProvider time, AdmissionMetrics metrics, Traffic traffic, bool givesWay = false)
    {
        (this.options, this.time, this.metrics, tag) = (options, time, metrics, new("pool", name));
        (this.traffic, this.givesWay) = (traffic, givesWay);
        mostWait = TimeSpan.FromMilliseconds(options.WaitMs);
        queue = new BlockingCollection<Computation>(order);
        metrics.Watch(tag, () => Volatile.Read(ref waiting));
        threads =
        [
            .. Enumerable.Range(0, options.WorkersInForce)
                .Select(i => new Thread(givesWay && i > 0 ? WorkWhileIdle : Work) { IsBackground = true, Name = $"{name}-{i}" }),
        ];
        Array.ForEach(threads, t => t.Start());
        var period = TimeSpan.FromMilliseconds(Math.Max(1, options.WaitMs / SweepsInWait));
        sweep = time.CreateTimer(static own => ((ComputePool)own!).RefuseLate(), this, period, period);
    }

    /// <summary>Whether the queue is full. A request is refused before its body is read.</summary>
    public bool IsFull
    {
        get
        {
            var waiting = Volatile.Read(ref this.waiting);
            if (waiting == 0)
            {
                Volatile.Write(ref lastEmpty, time.GetTimestamp());
                return false;
            }

            var isShedding = time.GetElapsedTime(Volatile.Read(ref lastFull)) < Shedding;
            var open = isShedding ? Math.Min(options.Queue, LeastPerThread * threads.Length) : Math.Max(1, options.Queue / LeastShare);
            return waiting >= options.Queue
                || (waiting >= open
                    && (isShedding || time.GetElapsedTime(Volatile.Read(ref lastEmpty)) > Burst)
                    && waiting * Volatile.Read(ref meanWorkTicks) > threads.Length * options.TargetMs * TimeSpan.TicksPerMillisecond);
        }
    }

    /// <summary>Computes on a thread of the pool.</summary>
    /// <typeparam name="T">Type of the result.</typeparam>
    /// <param name="compute">The computation; stops when its token is cancelled.</param>
    /// <param name="aborted">Cancelled when the client has left.</param>
    /// <returns>The running computation, which can fail with <see cref="OverloadedException"/>; null if the queue is full.</returns>
    public Task<T>? TryRun<T>(Func<CancellationToken, T> compute, CancellationToken aborted)
    {
        if (!IsFull && TryQueue(compute, aborted) is { } task)
        {
            return task;
        }

        RefuseAsFull();
        return null;
    }

    /// <summary>Computes on a thread of the pool, for callers who keep to the places of the queue themselves.</summary>
    /// <typeparam name="T">Type of the result.</typeparam>
    /// <param name="compute">The computation; stops when its token is cancelled.</param>
    /// <param name="aborted">Cancelled when the client has left.</param>
    /// <returns>The running computation, which can fail with <see cref="OverloadedException"/>.</returns>
    /// <exception cref="InvalidOperationException">The queue has no place.</exception>
    public Task<T> Run<T>(Func<CancellationToken, T> compute, CancellationToken aborted) =>
        TryQueue(compute, aborted) ?? throw new InvalidOperationException("The queue has no place.");

    private Task<T>? TryQueue<T>(Func<CancellationToken, T> compute, CancellationToken aborted)
    {
        if (Interlocked.Increment(ref waiting) > options.Queue)
        {
            Interlocked.Decrement(ref waiting);
            return null;
        }

        var computation = new Computation<T>(time.GetTimestamp(), queued => Compute(compute, queued, aborted));
        if (!givesWay)
        {
            traffic.Begin();
        }

        queue.Add(computation, CancellationToken.None);
        return computation.Answer;
    }

    /// <summary>Counts a refusal because the queue is full.</summary>
    public void RefuseAsFull()
    {
        Volatile.Write(ref lastFull, time.GetTimestamp());
        Refuse("full");
    }

    /// <summary>Counts a refusal.</summary>
    /// <param name="reason">Why, for metrics.</param>
    public void Refuse(string reason) => metrics.Refused(tag, reason);

    /// <inheritdoc/>
    public void Dispose()
    {
        queue.CompleteAdding();
        Array.ForEach(threads, t => t.Join());
        sweep.Dispose();
        queue.Dispose();
    }

    // Threads that compute for long look at nobody who waits.
    private void RefuseLate()
    {
        if (Volatile.Read(ref waiting) == 0)
        {
            return;
        }

        foreach (var computation in order)
        {
            var waited = time.GetElapsedTime(computation.Queued);
            if (waited < mostWait)
            {
                return;
            }

            if (TryTake(computation))
            {
                metrics.Waited(tag, waited);
                Refuse("wait");
                computation.Refuse(WaitedTooLong());
                End();
            }
        }
    }

    private bool TryTake(Computation computation)
    {
        if (!computation.TryTake())
        {
            return false;
        }

        if (Interlocked.Decrement(ref waiting) == 0)
        {
            Volatile.Write(ref lastEmpty, time.GetTimestamp());
        }

        return true;
    }

    private void End()
    {
        if (!givesWay)
        {
            traffic.End();
        }
    }

    private static OverloadedException WaitedTooLong() => new("The service is busy; the request waited too long.");

    private void Work()
    {
        foreach (var computation in queue.GetConsumingEnumerable())
        {
            Run(computation);
        }
    }

    // Threads of the system have no rank that could be given back, so a thread that gives way takes nothing while others compute.
    private void WorkWhileIdle()
    {
        while (!queue.IsCompleted)
        {
            if (traffic.WaitUntilIdle(Pause) && queue.TryTake(out var computation, Pause))
            {
                Run(computation);
            }
        }
    }

    private void Run(Computation computation)
    {
        if (TryTake(computation))
        {
            computation.Run();
            End();
        }
    }

    private T Compute<T>(Func<CancellationToken, T> compute, long queued, CancellationToken aborted)
    {
        aborted.ThrowIfCancellationRequested();
        var waited = time.GetElapsedTime(queued);
        metrics.Waited(tag, waited);
        if (waited > mostWait)
        {
            Refuse("wait");
            throw WaitedTooLong();
        }

        using var trace = Traces.StartActivity((string)tag.Value!);
        trace?.SetTag("queue.ms", waited.TotalMilliseconds);
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(options.WorkMs), time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(aborted, limit.Token);
        var started = time.GetTimestamp();
        try
        {
            return compute(either.Token);
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested && !aborted.IsCancellationRequested)
        {
            Refuse("work");
            throw new OverloadedException("The computation took too long.");
        }
        finally
        {
            var took = time.GetElapsedTime(started);
            metrics.Worked(tag, took);

            // A moving mean over about 16 computations. An update lost to another thread does not matter.
            var mean = Volatile.Read(ref meanWorkTicks);
            Volatile.Write(ref meanWorkTicks, mean == 0 ? took.Ticks : mean + ((took.Ticks - mean) / 16));
        }
    }
}
