using System.Globalization;
using System.Text;
using OpenTelemetry;
using OpenTelemetry.Metrics;

namespace RackCheck.Api.Telemetry;

/// <summary>Metrics in the text format of Prometheus, collected when they are asked for. The exporter of OpenTelemetry has only test versions.</summary>
[ExportModes(ExportModes.Pull)]
internal sealed class PrometheusPage : BaseExporter<Metric>, IPullMetricExporter
{
    /// <summary>Path of the page.</summary>
    public const string Path = "/metrics";

    /// <summary>Media type of the page.</summary>
    public const string MediaType = "text/plain; version=0.0.4; charset=utf-8";

    private const int CollectTimeoutMs = 10_000;

    private readonly Lock scrape = new();
    private readonly StringBuilder page = new();

    /// <inheritdoc/>
    public Func<int, bool>? Collect { get; set; }

    /// <summary>The current values of all metrics.</summary>
    public string Read()
    {
        lock (scrape)
        {
            page.Clear();
            Collect?.Invoke(CollectTimeoutMs);
            return page.ToString();
        }
    }

    /// <inheritdoc/>
    public override ExportResult Export(in Batch<Metric> batch)
    {
        foreach (var metric in batch)
        {
            Write(metric);
        }

        return ExportResult.Success;
    }

    private void Write(Metric metric)
    {
        var (kind, suffix) = metric.MetricType switch
        {
            MetricType.LongSum or MetricType.DoubleSum => ("counter", "_total"),
            MetricType.Histogram => ("histogram", ""),
            _ => ("gauge", ""),
        };
        var name = Name(metric.Name, metric.Unit) + suffix;
        page.Append(CultureInfo.InvariantCulture, $"# HELP {name} {metric.Description.ReplaceLineEndings(" ")}\n# TYPE {name} {kind}\n");
        foreach (ref readonly var point in metric.GetMetricPoints())
        {
            var labels = Labels(point.Tags);
            switch (metric.MetricType)
            {
                case MetricType.LongSum or MetricType.LongSumNonMonotonic:
                    Sample(name, labels, point.GetSumLong());
                    break;
                case MetricType.DoubleSum or MetricType.DoubleSumNonMonotonic:
                    Sample(name, labels, point.GetSumDouble());
                    break;
                case MetricType.LongGauge:
                    Sample(name, labels, point.GetGaugeLastValueLong());
                    break;
                case MetricType.DoubleGauge:
                    Sample(name, labels, point.GetGaugeLastValueDouble());
                    break;
                case MetricType.Histogram:
                    Histogram(name, labels, point);
                    break;
            }
        }
    }

    private void Histogram(string name, string labels, in MetricPoint point)
    {
        var count = 0L;
        var before = labels.Length > 0 ? labels + "," : "";
        foreach (var bucket in point.GetHistogramBuckets())
        {
            count += bucket.BucketCount;
            var bound = double.IsPositiveInfinity(bucket.ExplicitBound) ? "+Inf" : bucket.ExplicitBound.ToString("R", CultureInfo.InvariantCulture);
            Sample(name + "_bucket", $"{before}le=\"{bound}\"", count);
        }

        Sample(name + "_sum", labels, point.GetHistogramSum());
        Sample(name + "_count", labels, point.GetHistogramCount());
    }

    private void Sample(string name, string labels, double value) =>
        page.Append(CultureInfo.InvariantCulture, $"{name}{(labels.Length > 0 ? $"{{{labels}}}" : "")} {value:R}\n");

    // The unit ends the name, as Prometheus has it.
    private static string Name(string name, string unit)
    {
        var plain = string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_'));
        var ending = unit switch { "s" => "_seconds", "By" => "_bytes", _ => "" };
        return plain.EndsWith(ending, StringComparison.Ordinal) ? plain : plain + ending;
    }

    private static string Labels(ReadOnlyTagCollection tags)
    {
        var labels = new StringBuilder();
        foreach (var (name, value) in tags)
        {
            var text = Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
            labels.Append(labels.Length > 0 ? "," : "").Append(Name(name, "")).Append("=\"").Append(Escaped(text)).Append('"');
        }

        return labels.ToString();
    }

    private static string Escaped(string text) => text
        .Replace("\\", @"\\", StringComparison.Ordinal)
        .Replace("\"", "\\\"", StringComparison.Ordinal)
        .Replace("\n", "\\n", StringComparison.Ordinal);
}
