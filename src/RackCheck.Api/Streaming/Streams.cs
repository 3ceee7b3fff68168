using Microsoft.Extensions.Options;
using RackCheck.Api.Admission;

namespace RackCheck.Api.Streaming;

/// <summary>The streams under way.</summary>
/// <param name="options">Settings.</param>
internal sealed class Streams(IOptions<AdmissionOptions> options) : IDisposable
{
    private readonly SemaphoreSlim free = new(options.Value.Streams.Most);

    /// <summary>Lines of one stream that are in work at a time.</summary>
    public int Window => options.Value.Streams.Window;

    /// <summary>Takes a place for a stream.</summary>
    /// <returns>Gives the place back; null if all are taken.</returns>
    public IDisposable? TryEnter() => free.Wait(0) ? new Place(free) : null;

    /// <inheritdoc/>
    public void Dispose() => free.Dispose();

    private sealed class Place(SemaphoreSlim free) : IDisposable
    {
        public void Dispose() => free.Release();
    }
}
