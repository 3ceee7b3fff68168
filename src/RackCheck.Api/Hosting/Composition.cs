using System.Buffers;
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

/// <summary>Puts the service together.</summary>
internal static partial class Composition
{
    /// <summary>Registers what the service is made of.</summary>
    public static void AddRackCheck(this WebApplicationBuilder builder)
    {
        builder.AddLogging();
        builder.WebHost.ConfigureKestrel((context, kestrel) =>
        {
            var most = context.Configuration.GetValue($"{ServiceOptions.Section}:{nameof(ServiceOptions.MaxBodyBytes)}", new ServiceOptions().MaxBodyBytes);

            // A little above the service's own limit, so that it is the service that answers, with a problem document.
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

    /// <summary>Lays the way of a request: log, faults, statuses without a body, documentation, endpoints.</summary>
    public static void UseRackCheck(this WebApplication app)
    {
        app.UseRequestLog();
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = FaultHandler.HandleAsync,

            // A catalogue that is down is no fault of this service: the request log has the 503 and the metrics have why.
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
                LogDocsPage(app.Logger, url);
            }
        });
    }

    private static void AddLogging(this WebApplicationBuilder builder) => builder.Services.AddSerilog(
        (services, logger) => logger
            .ReadFrom.Configuration(builder.Configuration)
            .Enrich.FromLogContext()
            .WriteTo.Async(sink => sink.Console(new Serilog.Formatting.Compact.RenderedCompactJsonFormatter())),
        preserveStaticLogger: true);

    // Calls of probes and scrapers say nothing; whatever fails is kept.
    private static void UseRequestLog(this WebApplication app) => app.UseSerilogRequestLogging(options =>
    {
        // This host's own logger: the static one belongs to whichever host in the process was built last.
        options.Logger = app.Services.GetRequiredService<Serilog.ILogger>();
        options.IncludeQueryInRequestPath = false;
        options.GetLevel = static (context, _, fault) =>
            fault is not null || context.Response.StatusCode >= 500 ? Serilog.Events.LogEventLevel.Error
            : context.Request.Path.StartsWithSegments("/health", StringComparison.Ordinal) || context.Request.Path.StartsWithSegments(Metrics.Address, StringComparison.Ordinal) ? Serilog.Events.LogEventLevel.Verbose
            : Serilog.Events.LogEventLevel.Information;
    });

    [LoggerMessage(Level = LogLevel.Error, Message = "Rule {Rule} failed and says nothing of this rack")]
    private static partial void LogRuleFault(Microsoft.Extensions.Logging.ILogger logger, string rule, Exception fault);

    [LoggerMessage(Level = LogLevel.Information, Message = "The docs page is at {Url}/docs")]
    private static partial void LogDocsPage(Microsoft.Extensions.Logging.ILogger logger, string url);
}
