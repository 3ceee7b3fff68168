using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using RackCheck.Api.Telemetry;
using RackCheck.Api.Tests.Hosting;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Telemetry;

/// <summary>Metrics page and export to a collector.</summary>
public sealed class TelemetryTests
{
    [Fact]
    public void Page_has_the_text_format_of_Prometheus()
    {
        using var meter = new Meter("Telemetry." + Guid.NewGuid());
        using var page = new PrometheusPage();
        using var provider = Sdk.CreateMeterProviderBuilder().AddMeter(meter.Name).AddReader(new BaseExportingMetricReader(page)).Build();
        meter.CreateCounter<long>("some.calls", description: "Calls,\nby kind.").Add(3, new KeyValuePair<string, object?>("kind", "a\"b\\c\nd"));
        meter.CreateUpDownCounter<long>("some.open").Add(-2);
        meter.CreateObservableGauge("some.size", () => 1.5, "By", "Size.");
        var time = meter.CreateHistogram("some.time", "s", "Time.", advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = [0.5, 1] });
        time.Record(0.25);
        time.Record(0.75);
        time.Record(8);
        Assert.Equal(
            """
            # HELP some_calls_total Calls, by kind.
            # TYPE some_calls_total counter
            some_calls_total{kind="a\"b\\c\nd"} 3
            # HELP some_open 
            # TYPE some_open gauge
            some_open -2
            # HELP some_size_bytes Size.
            # TYPE some_size_bytes gauge
            some_size_bytes 1.5
            # HELP some_time_seconds Time.
            # TYPE some_time_seconds histogram
            some_time_seconds_bucket{le="0.5"} 1
            some_time_seconds_bucket{le="1"} 2
            some_time_seconds_bucket{le="+Inf"} 3
            some_time_seconds_sum 9
            some_time_seconds_count 3

            """,
            page.Read());
        Assert.Equal(page.Read(), page.Read());
    }

    [Fact]
    public async Task Page_counts_requests_computations_verdicts_and_findings()
    {
        await using var service = await KestrelService.StartAsync();
        Assert.Equal(200, (await service.PostAsync("/v1/checks", Repository.Read("openapi", "examples", "rack-doors-do-not-close.json"))).Status);

        // The server counts a request after it has sent the answer, so the first page may come too soon.
        var page = "";
        for (var i = 0; i < 1000 && !page.Contains("http_route=\"/v1/checks\"", StringComparison.Ordinal); i++)
        {
            page = (await service.GetAsync("/metrics")).Text;
        }

        // Other services of this test run are counted too.
        foreach (var sample in new[]
        {
            "http_server_request_duration_seconds_count{[^}]*http_route=\"/v1/checks\"[^}]*}",
            "rack_check_admission_wait_duration_seconds_count{pool=\"checks\"}",
            "rack_check_admission_work_duration_seconds_count{pool=\"checks\"}",
            "rack_check_admission_queue_length{pool=\"planning\"}",
            "rack_check_admission_memory_bytes",
            "rack_check_checks_total{verdict=\"hold\"}",
            "rack_check_findings_total{rule=\"depth.cabinet-too-shallow\",severity=\"error\"}",
        })
        {
            Assert.Matches(new Regex($"^{sample} [0-9.]+$", RegexOptions.Multiline), page);
        }
    }

    // The alerts and the dashboard ask for metrics that there are.
    [Theory]
    [InlineData("alerts.yaml")]
    [InlineData("dashboard.json")]
    public void Metric_of_alerts_and_dashboard_exists(string file)
    {
        var asked = Regex.Matches(Repository.Read("deploy", "monitoring", file), @"rack_check_[a-z_]+").Select(m => m.Value).Distinct().ToArray();
        Assert.NotEmpty(asked);
        var sources = string.Join('\n', Repository.Sources("src").Where(f => f.EndsWith("Metrics.cs", StringComparison.Ordinal)).Select(File.ReadAllText));
        var made = Regex.Matches(sources, "Prefix \\+ \"([a-z_.]+)\"").Select(m => m.Groups[1].Value.Replace('.', '_')).ToArray();
        const string Ending = "(_seconds)?(_total|_bucket|_count|_sum)?$";
        Assert.All(asked, a => Assert.Contains(made, m => Regex.IsMatch(a, $"^rack_check_(admission_|catalogue_)?{m}{Ending}")));
    }

    [Fact]
    public async Task Traces_and_metrics_go_to_the_collector_that_is_named()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        await using var collector = builder.Build();
        var received = new ConcurrentDictionary<string, string>();
        collector.MapPost("/v1/{kind}", async (string kind, HttpRequest request) =>
        {
            using var body = new MemoryStream();
            await request.Body.CopyToAsync(body);
            received.AddOrUpdate(kind, _ => Text(body), (_, before) => before + Text(body));
        });
        await collector.StartAsync();

        await using (var service = await KestrelService.StartAsync(
            $"OTEL_EXPORTER_OTLP_ENDPOINT={collector.Urls.First()}", "OTEL_EXPORTER_OTLP_PROTOCOL=http/protobuf"))
        {
            var rack = Repository.Read("openapi", "examples", "rack-sound.json");
            Assert.Equal(200, (await service.PostAsync("/v1/checks", rack)).Status);
        }

        Assert.Contains("rack_check.admission.work.duration", received["metrics"], StringComparison.Ordinal);
        Assert.Contains("/v1/checks", received["traces"], StringComparison.Ordinal);
        Assert.Contains("RackCheck.Compute", received["traces"], StringComparison.Ordinal);
    }

    private static string Text(MemoryStream body) => System.Text.Encoding.Latin1.GetString(body.ToArray());
}
