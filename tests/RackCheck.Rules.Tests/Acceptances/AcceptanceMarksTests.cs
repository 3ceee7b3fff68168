using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Acceptances;

/// <summary>What an acceptance and a sign-off lift from the verdict, and what they leave.</summary>
public sealed class AcceptanceMarksTests
{
    private const string Depth = "depth.rear-clearance";
    private const string Reserve = "layout.reserve";

    // A body 400 mm deep with 75 mm behind it needs 475 mm; the cabinet leaves less behind a setback of 150 mm.
    private static RackDescription TooDeepRack(double depthMm) =>
        EmptyRack(24, 600).Uprights(setback: 150).With(Unit("wave-pc", 2).At(2).Body(440, depthMm, 80));

    // On castors at a seismic site: a warning of load.seismic.
    private static RackDescription Seismic { get; } = EmptyRack(24).Base(BaseStyle.Castors, 80) with { Site = new Site { Seismic = true } };

    private static Finding Of(RackDescription rack, string rule) => Judge.Checker.Recheck(Judge.Resolve(rack)).Findings.First(f => f.Rule == rule);

    private static Acceptance Accept(string rule) => new() { Rule = rule, Reason = "agreed at the review", AcceptedBy = "bay planner" };

    [Fact]
    public void By_item_it_covers_every_finding_of_the_rule_on_the_item_wherever_it_stands()
    {
        var rack = TooDeepRack(500) with { Acceptances = [Accept(Depth) with { Item = "wave-pc" }] };
        Assert.NotNull(Of(rack, Depth).Accepted);
        var moved = rack with { Items = [Unit("first", 1).At(20), .. rack.Items] };
        Assert.NotNull(Of(moved, Depth).Accepted);
        Assert.Null(Of(rack with { Acceptances = [Accept(Depth) with { Item = "other" }] }, Depth).Accepted);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(0.002, false)]
    public void Up_to_the_accepted_value_it_holds_and_past_it_the_finding_is_open_again(double moreMm, bool holds)
    {
        var found = Of(TooDeepRack(500), Depth);
        var rack = TooDeepRack(500 + moreMm) with
        {
            Acceptances = [Accept(Depth) with { Item = "wave-pc", UpTo = new AcceptedValue { Value = found.Actual!.Value, Unit = found.Actual.Unit } }],
        };
        var finding = Of(rack, Depth);
        Assert.Equal(holds, finding.Accepted is not null);
        Assert.Equal(holds ? null : LapseReason.Exceeded, finding.LapsedAcceptance?.Reason);
        Assert.Equal(!holds, finding.LapsedAcceptance?.Acceptance.AcceptedBy == "bay planner");
    }

    [Fact]
    public void A_value_in_another_unit_cannot_be_compared()
    {
        var rack = TooDeepRack(500) with { Acceptances = [Accept(Depth) with { Item = "wave-pc", UpTo = new AcceptedValue { Value = 9999, Unit = "U" } }] };
        Assert.Equal(LapseReason.Exceeded, Of(rack, Depth).LapsedAcceptance!.Reason);
    }

    [Fact]
    public void Less_is_worse_where_the_actual_value_is_below_its_limit()
    {
        // 12 of 12 U used: 0 U free of 1.2 U wanted.
        var full = EmptyRack(12).With(Unit("wave-pc", 12).At(1));
        var free = Of(full, Reserve).Actual!;
        Assert.NotNull(Of(full with { Acceptances = [Up(free.Value)] }, Reserve).Accepted);
        Assert.NotNull(Of(full with { Acceptances = [Up(free.Value + 1)] }, Reserve).LapsedAcceptance);
        Acceptance Up(double value) => Accept(Reserve) with { Pointer = "/cabinet/heightU", UpTo = new AcceptedValue { Value = value, Unit = free.Unit } };
    }

    [Theory]
    [InlineData("2026-12-01T00:00:00Z", true)]
    [InlineData("2026-12-01T01:00:00+01:00", true)] // the same instant
    [InlineData("2026-12-01T00:00:01Z", false)]
    public void It_holds_until_it_expires(string asOf, bool holds)
    {
        var rack = TooDeepRack(500) with { AsOf = asOf, Acceptances = [Accept(Depth) with { Item = "wave-pc", ExpiresAt = "2026-12-01T00:00:00Z" }] };
        Assert.Equal(holds, Of(rack, Depth).Accepted is not null);
        Assert.Equal(holds ? null : LapseReason.Expired, Of(rack, Depth).LapsedAcceptance?.Reason);
    }

    [Fact]
    public void A_lapsed_acceptance_leaves_the_finding_to_another_one()
    {
        var old = Accept(Depth) with { Item = "wave-pc", UpTo = new AcceptedValue { Value = 1, Unit = "mm" } };
        var rack = TooDeepRack(500) with { Acceptances = [old, Accept(Depth) with { Item = "wave-pc", AcceptedBy = "site manager" }] };
        Assert.Equal("site manager", Of(rack, Depth).Accepted!.AcceptedBy);
    }

    [Fact]
    public void A_sign_off_lifts_a_safety_warning_from_the_verdict_and_stays_in_the_report()
    {
        var rack = Seismic;
        var before = Judge.Checker.Recheck(Judge.Resolve(rack));
        var warning = before.Findings.Single(f => f.Rule == "load.seismic");
        var after = Judge.Checker.Recheck(Judge.Resolve(rack with { SignOffs = [Signed("load.seismic", warning.Fingerprint)] }));
        Assert.Equal("m. quill", after.Findings.Single(f => f.Rule == "load.seismic").SignedOff!.By);
        Assert.DoesNotContain(after.Findings, f => f.Rule == "acceptance.unused");
        Assert.Null(Of(rack with { SignOffs = [Signed("load.seismic", null)] }, "load.seismic").SignedOff);
    }

    [Fact]
    public void A_safety_error_takes_no_sign_off()
    {
        var rack = Seismic.Severity("load.seismic", PolicySeverity.Error);
        var error = Judge.Checker.Recheck(Judge.Resolve(rack)).Findings.Single(f => f.Rule == "load.seismic");
        var report = Judge.Checker.Recheck(Judge.Resolve(rack with { SignOffs = [Signed("load.seismic", error.Fingerprint)] }));
        Assert.Null(report.Findings.Single(f => f.Rule == "load.seismic").SignedOff);
        Assert.Contains(report.Findings, f => f.Rule == "acceptance.unused");
        Assert.Equal(Verdict.Hold, report.Verdicts.Site);
    }

    [Fact]
    public void A_sign_off_without_a_fingerprint_lifts_a_safety_rule_that_was_not_assessed()
    {
        var rack = EmptyRack(24).With(Unit("wave-pc", 2).At(2));
        var open = Judge.Checker.Recheck(Judge.Resolve(rack)).NotAssessed.First(n => n is { Safety: true, Reason: NotAssessedReason.Missing }).Rule;
        var entry = Judge.Checker.Recheck(Judge.Resolve(rack with { SignOffs = [Signed(open, null)] })).NotAssessed.Single(n => n.Rule == open);
        Assert.Equal("2026-11-20T09:00:00Z", entry.SignedOff!.At);
    }

    private static SignOff Signed(string rule, string? fingerprint) => new()
    {
        Rule = rule, Fingerprint = fingerprint, By = "m. quill", Role = "structural engineer", Reason = "calculated on site", At = "2026-11-20T09:00:00Z",
    };
}
