using System.Diagnostics.Metrics;
using RackCheck.Model;

namespace RackCheck.Api.Telemetry;

/// <summary>Metrics of what the checks find. Tags are ids of rules and fixed values; nothing of a description is a tag.</summary>
internal sealed class CheckMetrics : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "RackCheck.Checks";

    private const string Prefix = "rack_check.";

    private readonly Meter meter;
    private readonly Counter<long> checks;
    private readonly Counter<long> findings;
    private readonly Counter<long> notAssessed;

    /// <summary>Creates the instruments.</summary>
    /// <param name="factory">Creates the meter.</param>
    public CheckMetrics(IMeterFactory factory)
    {
        meter = factory.Create(MeterName);
        checks = meter.CreateCounter<long>(Prefix + "checks", description: "Reports, by verdict.");
        findings = meter.CreateCounter<long>(Prefix + "findings", description: "Findings, by rule and severity.");
        notAssessed = meter.CreateCounter<long>(Prefix + "rules.failed", description: "Rules that failed in a check, by rule.");
    }

    /// <summary>Counts a report.</summary>
    public void Count(CheckReport report)
    {
        checks.Add(1, new KeyValuePair<string, object?>("verdict", report.Verdict.ToString().ToLowerInvariant()));
        foreach (var finding in report.Findings)
        {
            findings.Add(1, new("rule", finding.Rule), new("severity", finding.Severity.ToString().ToLowerInvariant()));
        }

        foreach (var entry in report.NotAssessed)
        {
            if (entry.Reason == NotAssessedReason.Failed)
            {
                notAssessed.Add(1, new KeyValuePair<string, object?>("rule", entry.Rule));
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => meter.Dispose();
}
