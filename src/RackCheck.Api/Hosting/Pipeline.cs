using RackCheck.Documents.Pages;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Streaming;
using RackCheck.Api.Telemetry;
using Serilog;
using Serilog.Events;

namespace RackCheck.Api.Hosting;

/// <summary>The way of a request through the service.</summary>
internal static partial class Pipeline
{
    /// <summary>Sets up the way: headers, routing, door, log, exceptions, statuses without a body, addresses, access, endpoints.</summary>
    public static void UseRackCheck(this WebApplication app)
    {
        app.UseCommonHeaders(app.Lifetime.ApplicationStopping);
        app.UseHead();
        app.UseRouting();
        app.UseDoor();
        app.UseRequestLog();
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = FaultHandler.HandleAsync,

            // An unavailable catalogue, too much work and bodies that are not valid HTTP are no errors of this service. The request log has the status, and
            // the metrics have the reason of a 503.
            SuppressDiagnosticsCallback = static fault =>
                fault.Exception is CatalogueUnavailableException or OverloadedException || ClientFaults.IsBadBody(fault.Exception),
        });
        app.UseStatusCodePages(status => WriteStatusAsync(status.HttpContext));
        app.UseManagementPort();
        app.UseFormerDocsAddresses();
        app.UseExactAddresses();
        app.UseOrigins();
        app.UseAccess();
        app.UseRequestDecompression();
        app.UseResponseCompression();
        app.UseDocs();
        app.MapChecks();
        app.MapStreams();
        app.MapBaskets();
        app.MapProposals();
        app.MapComparisons();
        app.MapElevations();
        app.MapRules();
        app.MapReference();
        app.MapPartsLists();
        app.MapSpecifications();
        app.MapHealth();
        app.MapVersion();
        app.MapMetrics();
        app.MapGet("/", () => Results.Redirect("docs")).ExcludeFromDescription();
        app.AddFurtherPorts();
        app.Lifetime.ApplicationStarted.Register(() =>
        {
            foreach (var url in app.Urls)
            {
                if (app.Environment.IsDevelopment())
                {
                    Console.WriteLine($"Docs page: {url}/docs");
                }
                else
                {
                    LogDocsPage(app.Logger, url);
                }
            }
        });
    }

    // A wrong method has the header Allow. OPTIONS only asks for it.
    private static Task WriteStatusAsync(HttpContext context)
    {
        var response = context.Response;
        if (response.StatusCode == StatusCodes.Status405MethodNotAllowed && response.Headers.Allow.ToString() is { Length: > 0 } allowed)
        {
            response.Headers.Allow = $"{allowed.Replace("GET", "GET, HEAD", StringComparison.Ordinal)}, OPTIONS";
            if (HttpMethods.IsOptions(context.Request.Method))
            {
                response.StatusCode = StatusCodes.Status204NoContent;
                return Task.CompletedTask;
            }
        }

        return Problems.WriteAsync(context, response.StatusCode, response.StatusCode switch
        {
            StatusCodes.Status401Unauthorized => $"Send a valid API key in the header {Credentials.KeyHeader}, or a bearer token.",
            StatusCodes.Status404NotFound => $"No resource has this address. /{Paths.Operations} lists the operations.",
            StatusCodes.Status415UnsupportedMediaType => "Send the header Content-Type: application/json; to a stream, application/x-ndjson.",
            _ => null,
        });
    }

    // Calls of probes and scrapers are logged only if they fail. Refusals because of overload are counted by the metrics; lines would add to the load.
    private static void UseRequestLog(this WebApplication app) => app.UseSerilogRequestLogging(options =>
    {
        // The logger of this host. The static logger belongs to the last host built in the process.
        options.Logger = app.Services.GetRequiredService<Serilog.ILogger>();
        options.IncludeQueryInRequestPath = false;
        options.GetMessageTemplateProperties = static (context, _, elapsed, status) =>
        [
            new LogEventProperty("RequestMethod", new ScalarValue(ShownText.Of(context.Request.Method))),
            new LogEventProperty("RequestPath", new ScalarValue(ShownText.Of(context.Request.Path.Value ?? ""))),
            new LogEventProperty("StatusCode", new ScalarValue(status)),
            new LogEventProperty("Elapsed", new ScalarValue(elapsed)),
        ];
        options.GetLevel = static (context, _, fault) =>
            Problems.IsOverloaded(context) ? LogEventLevel.Debug
            : fault is not null || context.Response.StatusCode >= 500 ? LogEventLevel.Error
            : ManagementPort.Has(context.Request.Path) ? LogEventLevel.Verbose
            : LogEventLevel.Information;
    });

    [LoggerMessage(Level = LogLevel.Information, Message = "The docs page is at {Url}/docs")]
    private static partial void LogDocsPage(Microsoft.Extensions.Logging.ILogger logger, string url);
}
