namespace RackCheck.Api.Tests.Acceptance;

/// <summary>The acceptance cases, posted to the service in this process and compared as <c>run.py</c> does with a running service.</summary>
public sealed class AcceptanceTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Names => [.. AcceptanceCase.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Case_gets_the_expected_response(string name)
    {
        var complaints = await AcceptanceJudge.Of(service).ComplaintsAsync(AcceptanceCase.Read(name));
        Assert.True(complaints.Count == 0, Listed(name, complaints));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Case_makes_no_rule_fail(string name)
    {
        // A rule that throws reports nothing, so a case that expects no finding would pass.
        var @case = AcceptanceCase.Read(name);
        var answer = await AcceptanceJudge.PostAsync(service, @case, @case.Request);
        var failed = answer.Json["notAssessed"]?.AsArray().Where(n => n!["reason"]!.GetValue<string>() == "failed").Select(n => n!["rule"]!.GetValue<string>());
        Assert.Empty(failed ?? []);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Case_names_existing_rules_only(string name)
    {
        // A misspelt rule id has no findings, so a case that expects none would always pass.
        var expect = AcceptanceCase.Read(name).Expect;
        var rules = await RulesAsync();
        string[] known = [.. rules, .. rules.Select(r => r[..r.IndexOf('.', StringComparison.Ordinal)] + ".*")];
        string[] named = [.. expect.Findings.Select(f => f.Rule), .. expect.NoFinding, .. expect.NotAssessed, .. expect.RemedyClears];
        Assert.Empty(named.Except(known));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Case_has_description_and_expectations(string name)
    {
        var @case = AcceptanceCase.Read(name);
        var expect = @case.Expect;
        Assert.False(string.IsNullOrWhiteSpace(@case.About));
        Assert.True(
            expect.Status != 200 || expect.Verdict is not null
            || expect.Findings.Count + expect.NoFinding.Count + expect.Figures.Count + expect.NotAssessed.Count > 0);
    }

    [Fact]
    public async Task Rule_has_a_failing_and_a_passing_case()
    {
        Expectation[] expected = [.. AcceptanceCase.Names.Select(n => AcceptanceCase.Read(n).Expect)];
        var rules = await RulesAsync();
        var missing = rules.Except(expected.SelectMany(e => e.Findings).Select(f => f.Rule)).Select(r => $"{r} reports in no case")
            .Concat(rules.Except(expected.SelectMany(e => e.NoFinding)).Select(r => $"{r} is wanted silent in no case"))
            .ToList();
        Assert.True(missing.Count == 0, Listed("tests/acceptance/cases", missing));
    }

    private static string Listed(string what, IEnumerable<string> complaints) =>
        string.Join(Environment.NewLine, complaints.Select(c => "  " + c).Prepend(what + ":"));

    private async Task<string[]> RulesAsync() =>
        [.. (await service.GetAsync("/v1/rules")).Json["rules"]!.AsArray().Select(r => r!["id"]!.GetValue<string>())];
}
