namespace RackCheck.Api.Admission;

/// <summary>A computation in the queue of a pool. Whoever takes it, a thread that runs it or the sweep that refuses it, has it alone.</summary>
/// <param name="queued">Time stamp of its entry.</param>
internal abstract class Computation(long queued)
{
    private readonly ExecutionContext? context = ExecutionContext.Capture();
    private int isTaken;

    /// <summary>Time stamp of its entry.</summary>
    public long Queued => queued;

    /// <summary>Takes it.</summary>
    /// <returns>Whether nobody has before.</returns>
    public bool TryTake() => Interlocked.Exchange(ref isTaken, 1) == 0;

    /// <summary>Runs it, in the context of the request. Its failure goes to the caller.</summary>
    public void Run()
    {
        if (context is null)
        {
            Finish();
        }
        else
        {
            ExecutionContext.Run(context, static own => ((Computation)own!).Finish(), this);
        }
    }

    /// <summary>Ends it without having run.</summary>
    /// <param name="reason">What the caller gets.</param>
    public abstract void Refuse(Exception reason);

    /// <summary>Runs it and gives the result to the caller.</summary>
    protected abstract void Finish();
}

/// <summary>A computation with a result.</summary>
/// <typeparam name="T">Type of the result.</typeparam>
/// <param name="queued">Time stamp of its entry.</param>
/// <param name="compute">The computation; takes the time stamp.</param>
internal sealed class Computation<T>(long queued, Func<long, T> compute) : Computation(queued)
{
    // The awaiting request goes on in the server's threads; the pool's thread takes the next computation.
    private readonly TaskCompletionSource<T> result = new(TaskCreationOptions.RunContinuationsAsynchronously);

    // Dropped when it is done: one that was refused stays in the queue until a thread passes it over, and its body must not stay as long.
    private Func<long, T>? compute = compute;

    /// <summary>The result, once it is there.</summary>
    public Task<T> Answer => result.Task;

    /// <inheritdoc/>
    public override void Refuse(Exception reason)
    {
        compute = null;
        result.SetException(reason);
    }

    /// <inheritdoc/>
    protected override void Finish()
    {
        try
        {
            result.SetResult(compute!(Queued));
        }
#pragma warning disable CA1031 // Whatever it is, it is the caller's, and the thread serves the next.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            result.SetException(fault);
        }
        finally
        {
            compute = null;
        }
    }
}
