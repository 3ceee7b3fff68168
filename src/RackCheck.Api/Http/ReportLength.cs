using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Http;

/// <summary>Shortens reports that exceed the maximum response length. The last, least severe findings are counted instead of listed.</summary>
internal static class ReportLength
{
    // One further member with an entry for every rule.
    private const int BytesForOmissions = 8 * 1024;

    /// <summary>Shortens a report by a number of bytes, at most by all of its findings.</summary>
    /// <returns>The shorter report.</returns>
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

    /// <summary>Shortens the report in a basket response by a number of bytes.</summary>
    /// <returns>The shorter report.</returns>
    public static BasketReport Shorten(BasketReport answer, int bytes)
    {
        CheckedRack[] racks = [.. answer.Racks.Select(r => r with { Report = Shorten(r.Report, bytes) })];
        var first = racks.FirstOrDefault()?.Report;

        // The lines are those of all racks, one rack after the other.
        List<FindingLines> lines = [];
        var at = 0;
        foreach (var (before, after) in answer.Racks.Zip(racks))
        {
            lines.AddRange(answer.FindingLines.Skip(at).Take(after.Report.Findings.Count));
            at += before.Report.Findings.Count;
        }

        return answer with
        {
            Racks = racks,
            Report = first,
            FindingLines = lines,
            CompletedReport = answer.CompletedReport is { } completed ? Shorten(completed, bytes) : null,
        };
    }

    /// <summary>Shortens the reports in a response with proposals by a number of bytes together.</summary>
    /// <returns>The shorter reports.</returns>
    public static ProposalAnswer Shorten(ProposalAnswer answer, int bytes) => answer with
    {
        Alternatives =
        [
            .. answer.Alternatives.Select(a => a with
            {
                Report = a.Report is { } report ? Shorten(report, bytes) : null,
                Racks = a.Racks is { } racks ? [.. racks.Select(r => r with { Report = Shorten(r.Report, bytes) })] : null,
            }),
        ],
    };

    /// <summary>Shortens the lists of findings in a comparison by a number of bytes: shared findings first.</summary>
    /// <returns>The shorter answer.</returns>
    public static ComparisonAnswer Shorten(ComparisonAnswer answer, int bytes)
    {
        var (shared, gone, added) = (answer.SharedFindings.Count, answer.GoneFindings.Count, answer.NewFindings.Count);
        for (var saved = 0; saved < bytes && shared + gone + added > 0;)
        {
            saved += JsonAnswer.Length(
                shared > 0 ? answer.SharedFindings[--shared].Finding : gone > 0 ? answer.GoneFindings[--gone] : answer.NewFindings[--added],
                ContractJson.Default.Finding);
        }

        return answer with
        {
            SharedFindings = [.. answer.SharedFindings.Take(shared)],
            GoneFindings = [.. answer.GoneFindings.Take(gone)],
            NewFindings = [.. answer.NewFindings.Take(added)],
        };
    }
}
