namespace RackCheck.Api.Endpoints;

/// <summary>Readiness for requests: after warm-up and before shutdown.</summary>
/// <param name="lifetime">Signals shutdown.</param>
internal sealed class Readiness(IHostApplicationLifetime lifetime)
{
    private volatile bool warm;

    /// <summary>Whether the start is complete.</summary>
    public bool IsStarted => lifetime.ApplicationStarted.IsCancellationRequested;

    /// <summary>Whether the service is ready.</summary>
    public bool IsReady => warm && !lifetime.ApplicationStopping.IsCancellationRequested;

    /// <summary>Records that warm-up is complete.</summary>
    public void MarkWarm() => warm = true;
}
