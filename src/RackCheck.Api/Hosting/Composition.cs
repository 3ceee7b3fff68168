using System.Buffers;
using System.Globalization;
using FluentValidation;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Api.Streaming;
using RackCheck.Api.Telemetry;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;
using Serilog;
using Serilog.Configuration;
using Serilog.Formatting.Compact;

namespace RackCheck.Api.Hosting;

/// <summary>Registers the parts of the service.</summary>
internal static partial class Composition
{
    // What a server reads of a refused body, so that a client that sends before it reads gets the answer.
    private const long MostBytesDrained = 32 * 1024 * 1024;

    // The log keeps up with more than that; what waits beyond it is dropped, not the service.
    private const int MostLinesOfBatch = 1000;
    private const int MostLinesWaiting = 10_000;
    private static readonly TimeSpan LogDelay = TimeSpan.FromMilliseconds(200);

    /// <summary>Registers the parts of the service.</summary>
    public static void AddRackCheck(this WebApplicationBuilder builder)
    {
        builder.AddLogging();
        builder.AddTelemetry();
        builder.WebHost.ConfigureKestrel((context, kestrel) =>
        {
            var limits = context.Configuration.GetSection(ServiceOptions.Section).Get<ServiceOptions>() ?? new ServiceOptions();

            // Above the service's own limit, so that the service answers with a problem document.
            kestrel.Limits.MaxRequestBodySize = Math.Max(MostBytesDrained, 2L * limits.MaxBodyBytes);
            kestrel.AddServerHeader = false;
            kestrel.UseHttp2Port(limits.Http2Port);
        });

        var services = builder.Services;
        services.AddOptions<ServiceOptions>().BindConfiguration(ServiceOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddOptions<ManagementOptions>().BindConfiguration(ManagementOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.ConfigureHttpJsonOptions(o => o.SerializerOptions.TypeInfoResolverChain.Insert(0, ContractJson.Default));
        services.AddSingleton(static _ => RuleSet.Default);
        services.AddValidatorsFromAssemblyContaining<DescriptionValidator>(ServiceLifetime.Singleton);
        services.AddSingleton(ArrayPool<byte>.Shared);
        services.AddSingleton<JsonRequest>();
        services.AddSingleton<DescriptionReader>();
        services.AddSingleton<RackJudge>();
        services.AddSingleton<Streams>();
        services.AddSingleton<BasketReader>();
        services.AddSingleton<ProposalReader>();
        services.AddSingleton<ComparisonReader>();
        services.AddSingleton<ElevationReader>();
        services.AddSingleton(provider =>
        {
            var logger = provider.GetRequiredService<ILogger<RackChecker>>();
            return new RackChecker(provider.GetRequiredService<RuleSet>(), (rule, fault) => LogRuleFault(logger, rule.Id, fault));
        });
        services.AddSingleton(provider => new BasketPlanner(provider.GetRequiredService<RackChecker>()));
        services.AddSingleton(provider => new ProposalPlanner(provider.GetRequiredService<RackChecker>()));
        services.AddSingleton<Readiness>();
        services.AddHostedService<WarmUp>();
        ShutdownDelay.Add(services);
        services.AddProtocol();
        services.AddAdmission();
        services.AddAccess();
        services.AddCatalogue();
        services.AddOpenApiDocument();
    }

    // Readable lines for a developer at a terminal; JSON for a log store. What prevents a start is one line on standard error instead.
    private static void AddLogging(this WebApplicationBuilder builder) => builder.Services.AddSerilog(
        (services, logger) => logger
            .ReadFrom.Configuration(builder.Configuration)
            .MinimumLevel.Override(typeof(ApiKeyHandler).FullName!, Serilog.Events.LogEventLevel.Warning)
            .Enrich.FromLogContext()
            .Filter.ByExcluding(line => line.Exception is not null && !services.GetRequiredService<Readiness>().IsStarted)
            .WriteToConsole(builder.Environment.IsDevelopment()),
        preserveStaticLogger: true);

    private static LoggerConfiguration WriteToConsole(this LoggerConfiguration logger, bool isDevelopment) => isDevelopment
        ? logger.WriteTo.Console(
            outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}{Exception}", formatProvider: CultureInfo.InvariantCulture)
        : logger.WriteTo.Sink(
            new ConsoleBatches(new RenderedCompactJsonFormatter()),
            new BatchingOptions { BatchSizeLimit = MostLinesOfBatch, BufferingTimeLimit = LogDelay, QueueLimit = MostLinesWaiting });

    [LoggerMessage(Level = LogLevel.Error, Message = "Rule {Rule} failed; the rack is not checked against it")]
    private static partial void LogRuleFault(Microsoft.Extensions.Logging.ILogger logger, string rule, Exception fault);
}
