using Microsoft.Extensions.Options;

namespace RackCheck.Api.Admission;

/// <summary>The pools of the service. Each kind of work has its own, so that none waits for another.</summary>
/// <param name="options">Settings.</param>
/// <param name="time">Measures waiting and working.</param>
/// <param name="metrics">Metrics of all pools.</param>
internal sealed class ComputePools(IOptions<AdmissionOptions> options, TimeProvider time, AdmissionMetrics metrics) : IDisposable
{
    /// <summary>Checks of racks.</summary>
    public ComputePool Checks { get; } = new("checks", options.Value.Checks, time, metrics);

    /// <summary>Baskets and proposals.</summary>
    public ComputePool Planning { get; } = new("planning", options.Value.Planning, time, metrics);

    /// <summary>Drawings, lists and sheets.</summary>
    public ComputePool Documents { get; } = new("documents", options.Value.Documents, time, metrics);

    /// <summary>Lines of streams of checks, behind everything else.</summary>
    public ComputePool Streams { get; } = new("streams", options.Value.Streams.Pool, time, metrics, ThreadPriority.BelowNormal);

    /// <inheritdoc/>
    public void Dispose()
    {
        Streams.Dispose();
        Checks.Dispose();
        Planning.Dispose();
        Documents.Dispose();
    }
}
