using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using RackCheck.Api.Catalogue;

namespace RackCheck.Api.Hosting;

/// <summary>GET /metrics, for a Prometheus scraper.</summary>
internal static class Metrics
{
    /// <summary>Path of the metrics page.</summary>
    public const string Address = "/metrics";

    // The runtime keeps these figures anyway. They are read on a scrape and cost requests nothing.
    private const string Runtime = "System.Runtime";

    /// <summary>Registers the meters and the exporter.</summary>
    public static void AddMetricsPage(this IServiceCollection services) => services
        .AddOpenTelemetry()
        .ConfigureResource(resource => resource.AddService("rack-check", autoGenerateServiceInstanceId: false))
        .WithMetrics(metrics => metrics.AddMeter(CatalogueMetrics.MeterName, Runtime).AddPrometheusExporter());

    /// <summary>Maps the page.</summary>
    public static void MapMetrics(this IEndpointRouteBuilder routes) => routes.MapPrometheusScrapingEndpoint(Address).ExcludeFromDescription();
}
