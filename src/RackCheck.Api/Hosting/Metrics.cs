using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using RackCheck.Api.Catalogue;

namespace RackCheck.Api.Hosting;

/// <summary>GET /metrics, for a Prometheus scraper.</summary>
internal static class Metrics
{
    /// <summary>Where a scraper reads.</summary>
    public const string Address = "/metrics";

    // The runtime keeps these figures anyway; they are read when somebody scrapes, and cost a request nothing.
    private const string Runtime = "System.Runtime";

    /// <summary>Registers the reader of the meters.</summary>
    public static void AddMetricsPage(this IServiceCollection services) => services
        .AddOpenTelemetry()
        .ConfigureResource(resource => resource.AddService("rack-check", autoGenerateServiceInstanceId: false))
        .WithMetrics(metrics => metrics.AddMeter(CatalogueMetrics.MeterName, Runtime).AddPrometheusExporter());

    /// <summary>Maps the address.</summary>
    public static void MapMetrics(this IEndpointRouteBuilder routes) => routes.MapPrometheusScrapingEndpoint(Address).ExcludeFromDescription();
}
