namespace RackCheck.Api.Admission;

/// <summary>Counts the computations, waiting and running, whose callers wait for them alone.</summary>
internal sealed class Traffic : IDisposable
{
    private readonly Lock change = new();
    private readonly ManualResetEventSlim idle = new(initialState: true);
    private int count;

    /// <summary>Counts one more.</summary>
    public void Begin()
    {
        lock (change)
        {
            if (++count == 1)
            {
                idle.Reset();
            }
        }
    }

    /// <summary>Counts one less.</summary>
    public void End()
    {
        lock (change)
        {
            if (--count == 0)
            {
                idle.Set();
            }
        }
    }

    /// <summary>Waits until there is none.</summary>
    /// <param name="most">Maximum wait.</param>
    /// <returns>Whether there is none.</returns>
    public bool WaitUntilIdle(TimeSpan most) => idle.Wait(most);

    /// <inheritdoc/>
    public void Dispose() => idle.Dispose();
}
