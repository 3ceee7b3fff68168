using System.Globalization;
using System.Text;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>
/// Sound racks are released, racks with one serious defect are not, and a practitioner has judged every finding. <c>tests/acceptance/racks/README.md</c> is
/// the table of it.
/// </summary>
public sealed class RackCaseTests(RackReports reports) : IClassFixture<RackReports>
{
    private static readonly string[] Severities = ["error", "warning", "advice"];

    public static TheoryData<string> Sound => [.. RackCase.All.Where(c => c.IsSound).Select(c => c.Name)];

    public static TheoryData<string> Defects => [.. RackCase.All.Where(c => !c.IsSound).Select(c => c.Name)];

    private static RackCase Case(string name) => RackCase.All.Single(c => c.Name == name);

    [Theory]
    [MemberData(nameof(Sound))]
    public void Sound_rack_is_released(string name)
    {
        var @case = Case(name);
        var held = reports.Of(@case)["findings"]!.AsArray().Where(f => f!["severity"]!.GetValue<string>() != "advice").Select(f => f!["message"]!.ToString());
        Assert.True(!held.Any(), $"{name}: {string.Join(" ", held)}");
        Assert.Equal(("release", "release"), (reports.Verdict(@case, "product"), reports.Verdict(@case, "site")));
    }

    [Theory]
    [MemberData(nameof(Defects))]
    public void Defect_is_found_and_the_rack_not_released(string name)
    {
        var @case = Case(name);
        var expect = @case.Expect!;
        var found = reports.Findings(@case);
        Assert.True(
            expect.Asked ? reports.Asked(@case).Contains(expect.Rule) : found.Any(f => (f.Rule, f.Severity) == (expect.Rule, expect.Severity)),
            $"{name}: no {expect.Severity} of {expect.Rule} among {string.Join(", ", found.Select(f => $"{f.Severity} {f.Rule}"))}");
        Assert.NotEqual("release", reports.Verdict(@case, expect.Concern));
    }

    // A defect that the sound rack has as well would be found whatever the patch does.
    [Theory]
    [MemberData(nameof(Defects))]
    public void Sound_rack_lacks_the_defect(string name)
    {
        var @case = Case(name);
        var expect = @case.Expect!;
        Assert.DoesNotContain(reports.Findings(@case.Origin), f => (f.Rule, f.Severity) == (expect.Rule, expect.Severity));
        Assert.DoesNotContain(expect.Rule, expect.Asked ? reports.Asked(@case.Origin) : []);
    }

    [Fact]
    public void Cases_are_complete()
    {
        Assert.True(RackCase.All.Count(c => c.IsSound) >= 30 && RackCase.All.Count(c => !c.IsSound) >= 60);
        Assert.All(RackCase.All, c => Assert.True(c.IsSound ? c is { Request: not null, Base: null, Patch: null } : c is { Request: null, Patch: not null }));
        Assert.All(RackCase.All.Where(c => !c.IsSound), c => Assert.True(c.Origin.IsSound && c.Expect!.Asked == c.Expect.Severity is null));
        var ids = RuleSet.Default.All.Select(r => r.Descriptor.Id).ToHashSet();
        var judged = RackCase.All.SelectMany(c => c.Judgements.Select(j => j.Rule));
        Assert.Subset(ids, judged.Concat(RackCase.All.Select(c => c.Expect?.Rule).OfType<string>()).ToHashSet());
        string[] themes = [.. RackCase.All.Where(c => !c.IsSound).Select(c => c.Expect!.Rule.Split('.')[0]).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(["cabling", "catalogue", "cooling", "delivery", "depth", "earthing", "layout", "load", "power", "service"], themes);
    }

    [Fact]
    public void Finding_has_a_judgement_and_judgement_a_finding()
    {
        var open = RackCase.All.SelectMany(
            c => reports.Findings(c).Where(f => c.Of(f.Rule, f.Severity) is null).Select(f => $"{c.Name}: {f.Severity} {f.Rule}"));
        Assert.Empty(open);
        var idle = RackCase.All.SelectMany(c => c.Judgements.Where(j => !reports.Findings(c).Any(f => (f.Rule, f.Severity) == (j.Rule, j.Severity)))
            .Select(j => $"{c.Name}: {j.Severity} {j.Rule}"));
        Assert.Empty(idle);
    }

    [Fact]
    public void At_most_one_rack_in_ten_has_a_disputable_finding() =>
        Assert.True(RackCase.All.Count(IsDisputable) * 10 <= RackCase.All.Count, string.Join(", ", RackCase.All.Where(IsDisputable).Select(c => c.Name)));

    [Fact]
    public void Table_is_current()
    {
        var file = Repository.PathOf("tests", "acceptance", "racks", "README.md");
        var page = Page();
        if (Repository.IsRegenerating)
        {
            File.WriteAllText(file, page);
        }

        var known = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        Assert.True(known == page, "The findings of the rack cases have changed. If this is intended, run tests/regenerate and commit the table.");
    }

    private bool IsDisputable(RackCase @case) => reports.Findings(@case).Any(f => @case.Of(f.Rule, f.Severity) is { Agrees: false });

    private string Page()
    {
        var page = new StringBuilder();
        RackCase[] sound = [.. RackCase.All.Where(c => c.IsSound)], defects = [.. RackCase.All.Where(c => !c.IsSound)];
        const string Head = "| rack | product | site | findings | would a practitioner agree? |\n| --- | --- | --- | --- | --- |\n";
        page.Append(CultureInfo.InvariantCulture, $"""
            # Racks as practitioners draw them

            {sound.Length} sound racks must be released; {defects.Length} racks with one serious defect must not. A rack with a defect is a sound one with a
            patch. `RackCaseTests` posts them all and compares this table, which `tests/regenerate` writes. The last column says whether a practitioner agrees
            with each finding and why. Disputable findings: {RackCase.All.Count(IsDisputable)} of {RackCase.All.Count} racks; at most one in ten.


            """);
        page.Append("## Sound racks\n\n" + Head);
        foreach (var @case in sound)
        {
            page.Append(Row(@case, $"{@case.Name}: {@case.About}" + (@case.Corrected is { } corrected ? $" *{corrected}*" : "")));
        }

        page.Append("\n## Racks with one serious defect\n\n" + Head);
        foreach (var @case in defects)
        {
            page.Append(Row(@case, $"{@case.Name} (of {@case.Base!["sound-".Length..]}): {@case.About}"));
        }

        return page.ToString();
    }

    private string Row(RackCase @case, string title)
    {
        var found = reports.Findings(@case).OrderBy(f => Array.IndexOf(Severities, f.Severity)).ToArray();
        var asked = @case.Expect is { Asked: true } expect ? new[] { $"asks: {expect.Rule}" } : [];
        var findings = asked.Concat(found.Select(f => $"{f.Severity} {f.Rule}{(f.Count > 1 ? $" x{f.Count}" : "")}"));
        var judged = found.Select(f => @case.Of(f.Rule, f.Severity)).OfType<Judgement>()
            .Select(j => (j.Rule == @case.Expect?.Rule && j.Severity == @case.Expect.Severity ? "Yes: the defect." : $"{(j.Agrees ? "Yes" : "No")}: {j.Why}"))
            .Distinct();
        return $"| {title} | {reports.Verdict(@case, "product")} | {reports.Verdict(@case, "site")} | {Cell(findings)} | {Cell(judged)} |\n";
    }

    private static string Cell(IEnumerable<string> lines) => lines.Any() ? string.Join("<br>", lines) : "none";
}
