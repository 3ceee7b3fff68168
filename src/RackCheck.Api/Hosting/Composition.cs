using System.Buffers;
using System.Globalization;
using FluentValidation;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using Serilog;

namespace RackCheck.Api.Hosting;

/// <summary>Composes the service.</summary>
internal static partial class Composition
{
    /// <summary>Registers the parts of the service.</summary>
    public static void AddRackCheck(this WebApplicationBuilder builder)
    {
        builder.AddLogging();
        builder.WebHost.ConfigureKestrel((context, kestrel) =>
        {
            var most = context.Configuration.GetValue($"{ServiceOptions.Section}:{nameof(ServiceOptions.MaxBodyBytes)}", new ServiceOptions().MaxBodyBytes);

            // Above the service's own limit, so that the service answers with a problem document.
            kestrel.Limits.MaxRequestBodySize = 2L * most;
            kestrel.AddServerHeader = false;
        });

        var services = builder.Services;
        services.AddOptions<ServiceOptions>().BindConfiguration(ServiceOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.ConfigureHttpJsonOptions(o => o.SerializerOptions.TypeInfoResolverChain.Insert(0, ContractJson.Default));
        services.AddSingleton(RuleSet.Default);
        services.AddValidatorsFromAssemblyContaining<DescriptionValidator>(ServiceLifetime.Singleton);
        services.AddSingleton(ArrayPool<byte>.Shared);
        services.AddSingleton<DescriptionReader>();
        services.AddSingleton<BasketReader>();
        services.AddSingleton(provider =>
        {
            var logger = provider.GetRequiredService<ILogger<RackChecker>>();
            return new RackChecker(provider.GetRequiredService<RuleSet>(), (rule, fault) => LogRuleFault(logger, rule.Id, fault));
        });
        services.AddSingleton(provider => new BasketPlanner(provider.GetRequiredService<RackChecker>()));
        services.AddSingleton<Readiness>();
        services.AddHostedService<WarmUp>();
        services.AddCatalogue();
        services.AddMetricsPage();
        services.AddOpenApiDocument();
    }

    /// <summary>Sets up the request pipeline: log, exceptions, statuses without a body, documentation, endpoints.</summary>
    public static void UseRackCheck(this WebApplication app)
    {
        app.UseRequestLog();
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = FaultHandler.HandleAsync,

            // An unavailable catalogue is not an error of this service. The request log has the 503 and the metrics have the reason.
            SuppressDiagnosticsCallback = static fault => fault.Exception is CatalogueUnavailableException,
        });
        app.UseStatusCodePages(status => Problems.WriteAsync(status.HttpContext, status.HttpContext.Response.StatusCode));
        app.UseDocsPage();
        app.MapChecks();
        app.MapBaskets();
        app.MapRules();
        app.MapReference();
        app.MapHealth();
        app.MapMetrics();
        app.MapGet("/", () => Results.Redirect("/docs/")).ExcludeFromDescription();
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

    // Readable lines for a developer at a terminal; JSON for a log store.
    private static void AddLogging(this WebApplicationBuilder builder) => builder.Services.AddSerilog(
        (services, logger) => logger
            .ReadFrom.Configuration(builder.Configuration)
            .Enrich.FromLogContext()
            .WriteTo.Async(sink => _ = builder.Environment.IsDevelopment()
                ? sink.Console(outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}", formatProvider: CultureInfo.InvariantCulture)
                : sink.Console(new Serilog.Formatting.Compact.RenderedCompactJsonFormatter())),
        preserveStaticLogger: true);

    // Calls of probes and scrapers are logged only if they fail.
    private static void UseRequestLog(this WebApplication app) => app.UseSerilogRequestLogging(options =>
    {
        // The logger of this host. The static logger belongs to the last host built in the process.
        options.Logger = app.Services.GetRequiredService<Serilog.ILogger>();
        options.IncludeQueryInRequestPath = false;
        options.GetLevel = static (context, _, fault) =>
            fault is not null || context.Response.StatusCode >= 500 ? Serilog.Events.LogEventLevel.Error
            : IsProbe(context.Request.Path) ? Serilog.Events.LogEventLevel.Verbose
            : Serilog.Events.LogEventLevel.Information;
    });

    private static bool IsProbe(PathString path) =>
        path.StartsWithSegments("/health", StringComparison.Ordinal) || path.StartsWithSegments(Metrics.Address, StringComparison.Ordinal);

    [LoggerMessage(Level = LogLevel.Error, Message = "Rule {Rule} failed; the rack is not checked against it")]
    private static partial void LogRuleFault(Microsoft.Extensions.Logging.ILogger logger, string rule, Exception fault);

    [LoggerMessage(Level = LogLevel.Information, Message = "The docs page is at {Url}/docs")]
    private static partial void LogDocsPage(Microsoft.Extensions.Logging.ILogger logger, string url);
}
