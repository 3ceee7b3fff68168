using System.Globalization;
using System.Text;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>One page with the findings of all failing racks, so that a change of wording is seen in review.</summary>
public sealed class SampleFindingsTests
{
    [Fact]
    public void Sample_findings_page_is_current()
    {
        var file = Repository.PathOf("tests", "RackCheck.Rules.Tests", "Guards", "sample-findings.md");
        var page = Page();
        if (Environment.GetEnvironmentVariable("RACKCHECK_REGENERATE") == "1")
        {
            File.WriteAllText(file, page);
        }

        var known = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        Assert.True(known == page, "The wording of the findings has changed. If this is intended, run tests/regenerate and commit sample-findings.md.");
    }

    private static string Page()
    {
        var page = new StringBuilder(
            "# Sample findings\n\nFindings of the failing racks of all rules. `SampleFindingsTests` compares this page and says how to regenerate it.\n");
        foreach (var rule in RuleSet.Default.All.Select(r => r.Descriptor).OrderBy(r => r.Id, StringComparer.Ordinal))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {rule.Id}\n");
            var rack = JsonSerializer.Deserialize(rule.FailingRack, ContractJson.Default.RackDescription)!;
            foreach (var finding in Judge.Check(rack).Findings.Where(f => f.Rule == rule.Id))
            {
                page.Append(CultureInfo.InvariantCulture, $"\n{Word(finding.Severity)}: {finding.Message}\n");
                if (finding.Calculation is { } calculation)
                {
                    page.Append(CultureInfo.InvariantCulture, $"\n    {calculation}\n");
                }

                page.Append(CultureInfo.InvariantCulture,
                    $"\n{(finding.Remedies.Count > 0 ? "Remedy: " + finding.Remedies[0].Title + "." : finding.NoRemedy)}\n");
            }
        }

        return page.ToString();
    }

    private static string Word(Severity severity) => severity switch
    {
        Severity.Error => "Error",
        Severity.Warning => "Warning",
        _ => "Advice",
    };
}
