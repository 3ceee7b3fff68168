using System.Collections.Frozen;
using Microsoft.Extensions.Options;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Endpoints;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Hosting;

/// <summary>Checks the bundled examples before the service calls itself ready, so that no caller waits for code to be compiled.</summary>
/// <param name="reader">Reads the example racks.</param>
/// <param name="checker">Checks them.</param>
/// <param name="baskets">Reads the example baskets.</param>
/// <param name="planner">Makes racks of them.</param>
/// <param name="catalogue">The catalogue; one over HTTP is not asked, since it may come up later.</param>
/// <param name="options">Where the file is.</param>
/// <param name="readiness">Is told when it is done.</param>
internal sealed class WarmUp(
    DescriptionReader reader, RackChecker checker, BasketReader baskets, BasketPlanner planner, IProductCatalogue catalogue, IOptions<CatalogueOptions> options, Readiness readiness)
    : IHostedService
{
    /// <inheritdoc/>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var example in Examples.Racks)
        {
            checker.Check(ResolvedRack.Of(reader.Read(example.Json).Document!, FrozenDictionary<string, Product>.Empty), cancellationToken);
        }

        // The examples name products of the file that comes with the service, wherever the products of callers are.
        if (Shipped() is { } shipped)
        {
            var offered = await shipped.OfferedAsync(cancellationToken);
            foreach (var example in Examples.Baskets)
            {
                var basket = baskets.Read(example.Json).Document!;
                planner.Plan(basket, await shipped.FindAsync([.. basket.Lines.Select(l => l.PartNumber).Distinct(StringComparer.Ordinal)], cancellationToken), offered, cancellationToken);
            }
        }

        readiness.MarkWarm();
    }

    // Beside a product service the file is for warming up only: one that was taken away costs the first basket half a second, not the start.
    private FileCatalogue? Shipped()
    {
        try
        {
            return catalogue as FileCatalogue ?? new FileCatalogue(FileCatalogue.Read(options.Value.File));
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
