namespace RackCheck.Api.Endpoints;

/// <summary>Whether requests can be sent: once the service is warm, and not while it stops.</summary>
/// <param name="lifetime">Tells of the end.</param>
internal sealed class Readiness(IHostApplicationLifetime lifetime)
{
    private volatile bool warm;

    /// <summary>Whether requests can be sent.</summary>
    public bool IsReady => warm && !lifetime.ApplicationStopping.IsCancellationRequested;

    /// <summary>Notes that the service is warm.</summary>
    public void MarkWarm() => warm = true;
}
