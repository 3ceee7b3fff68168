using System.Collections.Frozen;
using Microsoft.Extensions.Options;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Endpoints;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Layouts;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Hosting;

/// <summary>
/// Answers the bundled examples before the service is ready, so that no request waits for code to be compiled. It answers all the while, and is not ready.
/// </summary>
/// <param name="reader">Reads the example racks.</param>
/// <param name="checker">Checks them.</param>
/// <param name="baskets">Reads the example baskets.</param>
/// <param name="planner">Plans them.</param>
/// <param name="proposals">Reads the example requests for proposals.</param>
/// <param name="proposer">Answers them.</param>
/// <param name="catalogue">The catalogue; a product service over HTTP is not called, since it may start later.</param>
/// <param name="options">Path of the catalogue file.</param>
/// <param name="readiness">Records that warm-up is complete.</param>
/// <param name="lifetime">Tells that the service listens.</param>
internal sealed class WarmUp(
    DescriptionReader reader,
    RackChecker checker,
    BasketReader baskets,
    BasketPlanner planner,
    ProposalReader proposals,
    ProposalPlanner proposer,
    IProductCatalogue catalogue,
    IOptions<CatalogueOptions> options,
    Readiness readiness,
    IHostApplicationLifetime lifetime)
    : BackgroundService
{
    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var registration = lifetime.ApplicationStarted.Register(started.SetResult);
        await started.Task.WaitAsync(stoppingToken);
        await Task.WhenAll(OnOwnThread(() => CheckAndDrawAsync(stoppingToken), stoppingToken), OnOwnThread(() => PlanAsync(stoppingToken), stoppingToken));

        // What was made for the examples, and the memory kept for as much again: a replica that waits for load is the smaller for it.
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        readiness.MarkWarm();
    }

    // On one processor the pool has one thread, which requests need. The bundled file is read already, so that nothing here waits.
    private static Task OnOwnThread(Func<Task> work, CancellationToken cancellation) =>
        Task.Factory.StartNew(work, cancellation, TaskCreationOptions.LongRunning, TaskScheduler.Default).Unwrap();

    private Task CheckAndDrawAsync(CancellationToken cancellationToken)
    {
        foreach (var example in Examples.Racks)
        {
            checker.Check(ResolvedRack.Of(reader.Read(example.Json).Document!, FrozenDictionary<string, Product>.Empty), cancellationToken);
        }

        Draw(cancellationToken);
        return Task.CompletedTask;
    }

    private async Task PlanAsync(CancellationToken cancellationToken)
    {
        LayoutSolver.Load(cancellationToken);

        // The examples use products of the bundled file, even if a product service is configured.
        if (Shipped() is { } shipped)
        {
            var offered = await shipped.OfferedAsync(cancellationToken);
            foreach (var example in Examples.Baskets)
            {
                var basket = baskets.Read(example.Json).Document!;
                HashSet<string> numbers = [.. basket.Lines.SelectMany(BasketPlanner.PartNumbers)];
                planner.Plan(basket, await shipped.FindAsync(numbers, cancellationToken), offered, cancellationToken);
            }

            foreach (var example in Examples.Proposals)
            {
                var request = proposals.Read(example.Json).Document!;
                var found = await shipped.FindAsync(ProposalsEndpoints.PartNumbers(request), cancellationToken);
                proposer.Plan(request, found, offered, cancellationToken);
            }
        }
    }

    // Fonts and the library of pictures are loaded with the first drawing.
    private void Draw(CancellationToken cancellation)
    {
        var rack = ResolvedRack.Plain(reader.Read(Examples.Racks[^1].Json).Document!);
        var drawn = DrawnRack.Of(rack, checker, cancellation);
        var drawing = ElevationDrawing.Of([drawn]);
        SvgWriter.Document(drawing);
        SkiaPainter.Png(drawing, ElevationsEndpoints.LeastWidth, ElevationsEndpoints.MostPixels);
        var sheet = OrderSheets.Of(rack, drawn, SheetKind.Specification, []);
        SheetHtml.Document(sheet);
        SheetPdf.Document(sheet);
    }

    // With a product service the file serves for warm-up only. A missing file delays the first basket by half a second; the service still starts.
    private FileCatalogue? Shipped()
    {
        try
        {
            return catalogue as FileCatalogue ?? new FileCatalogue(FileCatalogue.Read(options.Value.File, options.Value.UnknownInFile));
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }
}
