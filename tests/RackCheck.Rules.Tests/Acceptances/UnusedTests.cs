using RackCheck.Model;
using RackCheck.Rules.Acceptances;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Acceptances;

public sealed class UnusedTests : RuleTests<Unused>
{
    private static readonly RackDescription Full = EmptyRack(12).With(Unit("wave-pc", 12).At(1));

    private static IEnumerable<Finding> Unused(RackDescription rack) => Judge.Geometry.Check(rack).Findings.Where(f => f.Rule == Id);

    [Fact]
    public void One_by_fingerprint_that_fits_is_used()
    {
        var fingerprint = Judge.Geometry.Check(Full).Findings.Single(f => f.Rule == "layout.reserve").Fingerprint;
        Assert.Empty(Unused(Full.Accept("layout.reserve", fingerprint)));
    }

    [Fact]
    public void One_by_pointer_that_fits_is_used() => Assert.Empty(Unused(Full.Accept("layout.reserve", pointer: "/cabinet/heightU")));

    [Theory]
    [InlineData("layout.reserve", null, "/cabinet/depthMm")]
    [InlineData("layout.reserve", null, "/cabinet")] // a pointer has to be one of the finding's
    [InlineData("layout.reserve", "0123456789abcdef", null)]
    [InlineData("layout.overlap", null, "/cabinet/heightU")]
    public void One_that_fits_nothing_is_advice(string rule, string? fingerprint, string? pointer)
    {
        var finding = Unused(Full.Accept("layout.reserve", pointer: "/cabinet/heightU").Accept(rule, fingerprint, pointer)).Single();
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/acceptances/1"], finding.Pointers);
        Assert.Equal((rule, "bay planner"), (finding.MessageData["rule"].Text, finding.MessageData["acceptedBy"].Text));
    }

    [Fact]
    public void Sign_offs_that_match_nothing_are_one_advice_with_a_remedy()
    {
        var signOff = new SignOff
        {
            Rule = "load.heavy-high", Fingerprint = "0123456789abcdef", By = "m. quill", Role = "safety engineer", Reason = "lifted by crane",
            At = "2026-11-20T09:00:00Z",
        };
        var rack = Full with { SignOffs = [signOff, signOff] };
        var finding = Findings(rack).Single();
        Assert.Equal(["/signOffs/0", "/signOffs/1"], finding.Pointers);
        Assert.Empty(Findings(Remedied(rack, finding)));
    }

    [Fact]
    public void The_fingerprint_goes_before_the_pointer() =>
        Assert.Single(Unused(Full.Accept("layout.reserve", "0123456789abcdef", "/cabinet/heightU")));

    [Fact]
    public void A_rule_that_is_off_finds_nothing_to_accept() =>
        Assert.Single(Unused(Full.Accept("layout.reserve", pointer: "/cabinet/heightU").Severity("layout.reserve", PolicySeverity.Off)));

    [Fact]
    public void Taking_it_out_is_the_remedy()
    {
        var rack = Full.Accept("layout.overlap", pointer: "/items/0").Accept("layout.reserve", pointer: "/cabinet/heightU");
        Assert.Equal(["layout.reserve"], Remedied(rack, Unused(rack).Single()).Acceptances!.Select(a => a.Rule));
    }

    [Fact]
    public void Identical_acceptances_are_one_finding_and_one_remedy_clears_it()
    {
        var rack = Full.Accept("layout.overlap", pointer: "/items/0").Accept("layout.reserve", pointer: "/cabinet/heightU")
            .Accept("layout.overlap", pointer: "/items/0");
        var finding = Unused(rack).Single();
        Assert.Equal(["/acceptances/0", "/acceptances/2"], finding.Pointers);
        Assert.Equal(["layout.reserve"], Remedied(rack, finding).Acceptances!.Select(a => a.Rule));
        Assert.Empty(Unused(Remedied(rack, finding)));
    }

    [Fact]
    public void One_of_this_rule_is_never_used() => Assert.Single(Findings(Full.Accept(Id, pointer: "/acceptances/0")));
}
