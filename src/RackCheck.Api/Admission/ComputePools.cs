using Microsoft.Extensions.Options;

namespace RackCheck.Api.Admission;

/// <summary>The pools of the service. Each kind of work has its own, so that none waits for another.</summary>
/// <param name="options">Settings.</param>
/// <param name="time">Measures waiting and working.</param>
/// <param name="metrics">Metrics of all pools.</param>
/// <param name="traffic">What threads of streams give way to.</param>
internal sealed class ComputePools(IOptions<AdmissionOptions> options, TimeProvider time, AdmissionMetrics metrics, Traffic traffic) : IDisposable
{
    /// <summary>Checks of racks.</summary>
    public ComputePool Checks { get; } = new("checks", options.Value.Checks, time, metrics, traffic);

    /// <summary>Baskets, comparisons and quick proposals.</summary>
    public ComputePool Planning { get; } = new("planning", options.Value.Planning, time, metrics, traffic);

    /// <summary>Thorough proposals.</summary>
    public ComputePool Searches { get; } = new("searches", options.Value.Searches, time, metrics, traffic);

    /// <summary>Drawings, lists and sheets.</summary>
    public ComputePool Documents { get; } = new("documents", options.Value.Documents, time, metrics, traffic);

    /// <summary>Lines of streams of checks: on all processors while nothing else is computed, else on one.</summary>
    public ComputePool Streams { get; } = new("streams", options.Value.Streams.Pool, time, metrics, traffic, givesWay: true);

    /// <inheritdoc/>
    public void Dispose()
    {
        Streams.Dispose();
        Checks.Dispose();
        Planning.Dispose();
        Searches.Dispose();
        Documents.Dispose();
    }
}
