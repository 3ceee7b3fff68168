using System.Globalization;
using System.Text;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>What every rule says of its failing rack, on a page, so that a change of wording is seen in review.</summary>
public sealed class SampleFindingsTests
{
    [Fact]
    public void The_page_of_sample_findings_is_what_the_rules_say()
    {
        var file = Repository.PathOf("tests", "RackCheck.Rules.Tests", "Guards", "sample-findings.md");
        var page = Page();
        if (Environment.GetEnvironmentVariable("RACKCHECK_REGENERATE") == "1")
        {
            File.WriteAllText(file, page);
        }

        var known = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        Assert.True(known == page, "The rules word their findings otherwise. Look at the change; where it is meant, run tests/regenerate and commit sample-findings.md.");
    }

    private static string Page()
    {
        var page = new StringBuilder("# Sample findings\n\nMade of the failing racks of all rules; `SampleFindingsTests` compares it and says how to write it anew.\n");
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

                page.Append(CultureInfo.InvariantCulture, $"\n{(finding.Remedies.Count > 0 ? "Remedy: " + finding.Remedies[0].Title + "." : finding.NoRemedy)}\n");
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
