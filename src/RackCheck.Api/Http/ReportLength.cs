using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Http;

/// <summary>Shortens reports that would be longer than an answer may be: the findings at the end, the least grave, are counted instead of written out.</summary>
internal static class ReportLength
{
    // A new member and an entry of it for every rule.
    private const int BytesForOmissions = 8 * 1024;

    /// <summary>A report that is shorter by so many bytes; by all its findings where that is not enough.</summary>
    /// <param name="report">The report.</param>
    /// <param name="bytes">Bytes to save.</param>
    /// <returns>The shorter one.</returns>
    public static CheckReport Shorten(CheckReport report, int bytes)
    {
        var kept = report.Findings.Count;
        for (var saved = -BytesForOmissions; saved < bytes && kept > 0; kept--)
        {
            saved += JsonAnswer.Length(report.Findings[kept - 1], ContractJson.Default.Finding);
        }

        var counts = (report.FindingsOmitted ?? []).ToDictionary(o => o.Rule, o => o.Count, StringComparer.Ordinal);
        foreach (var finding in report.Findings.Skip(kept))
        {
            counts[finding.Rule] = counts.GetValueOrDefault(finding.Rule) + 1;
        }

        return report with
        {
            Findings = [.. report.Findings.Take(kept)],
            FindingsOmitted = [.. counts.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => new FindingsOmitted { Rule = c.Key, Count = c.Value })],
        };
    }

    /// <summary>An answer to a basket whose report is shorter by so many bytes.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="bytes">Bytes to save.</param>
    /// <returns>The shorter one.</returns>
    public static BasketReport Shorten(BasketReport answer, int bytes)
    {
        var report = Shorten(answer.Report, bytes);
        return answer with { Report = report, FindingLines = [.. answer.FindingLines.Take(report.Findings.Count)] };
    }
}
