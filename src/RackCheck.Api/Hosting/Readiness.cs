using System.Collections.Frozen;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Rules.Catalogue;

namespace RackCheck.Api.Hosting;

/// <summary>Ready once the bundled examples have been checked, so that no caller waits for code to be compiled; not ready while stopping.</summary>
/// <param name="reader">Reads the examples.</param>
/// <param name="checker">Checks them.</param>
/// <param name="lifetime">Tells of the end.</param>
internal sealed class Readiness(DescriptionReader reader, RackChecker checker, IHostApplicationLifetime lifetime) : IHostedService
{
    private volatile bool warm;

    /// <summary>Whether requests can be sent.</summary>
    public bool IsReady => warm && !lifetime.ApplicationStopping.IsCancellationRequested;

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var example in Examples.Racks)
        {
            checker.Check(ResolvedRack.Of(reader.Read(example.Json).Document!, FrozenDictionary<string, Product>.Empty), cancellationToken);
        }

        warm = true;
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
