using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;

namespace RackCheck.Api.Telemetry;

/// <summary>Metrics and traces, by OpenTelemetry.</summary>
internal static class TelemetryServices
{
    // The variable of the OpenTelemetry specification; the exporter reads it, and its relatives, itself.
    private const string OtlpEndpoint = "OTEL_EXPORTER_OTLP_ENDPOINT";

    private static readonly string[] Meters =
    [
        CatalogueMetrics.MeterName, AdmissionMetrics.MeterName, CheckMetrics.MeterName,

        // The framework keeps these figures anyway. They are read on a scrape and cost requests nothing.
        "System.Runtime", "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "Microsoft.AspNetCore.RateLimiting",
    ];

    /// <summary>Registers the metrics page and, where a collector is named, the export of metrics and traces to it.</summary>
    public static void AddTelemetry(this WebApplicationBuilder builder)
    {
        var isExported = !string.IsNullOrEmpty(builder.Configuration[OtlpEndpoint]);
        builder.Services.AddSingleton<CheckMetrics>();
        builder.Services.AddSingleton<PrometheusPage>();
        var telemetry = builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("rack-check", autoGenerateServiceInstanceId: false))
            .WithMetrics(metrics =>
            {
                metrics.AddMeter(Meters).AddReader(services => new BaseExportingMetricReader(services.GetRequiredService<PrometheusPage>()));
                if (isExported)
                {
                    metrics.AddOtlpExporter();
                }
            });
        if (isExported)
        {
            telemetry.WithTracing(traces => traces.AddAspNetCoreInstrumentation().AddSource(ComputePool.TraceSource, "System.Net.Http").AddOtlpExporter());
        }
    }

    /// <summary>Maps GET /metrics.</summary>
    public static void MapMetrics(this IEndpointRouteBuilder routes) => routes
        .MapGet(PrometheusPage.Path, (PrometheusPage page) => Results.Text(page.Read(), PrometheusPage.MediaType))
        .ExcludeFromDescription();
}
