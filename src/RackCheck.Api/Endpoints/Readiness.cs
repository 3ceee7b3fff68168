namespace RackCheck.Api.Endpoints;

/// <summary>Readiness for requests: after warm-up and before shutdown.</summary>
/// <param name="lifetime">Signals shutdown.</param>
internal sealed class Readiness(IHostApplicationLifetime lifetime)
{
    private readonly TaskCompletionSource warm = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Whether the start is complete.</summary>
    public bool IsStarted => lifetime.ApplicationStarted.IsCancellationRequested;

    /// <summary>Ends when warm-up is complete.</summary>
    public Task Warm => warm.Task;

    /// <summary>Whether the service is ready.</summary>
    public bool IsReady => warm.Task.IsCompleted && !lifetime.ApplicationStopping.IsCancellationRequested;

    /// <summary>Records that warm-up is complete.</summary>
    public void MarkWarm() => warm.TrySetResult();
}
