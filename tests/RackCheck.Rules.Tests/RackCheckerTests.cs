using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Remedies.Verification;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests;

public sealed class RackCheckerTests
{
    private static readonly MessageWording Said = new("test", "A finding.");

    private static readonly Item Tall = Unit("wave-pc", 4).At(40);

    [Fact]
    public void An_empty_rack_is_released()
    {
        var report = Judge.Geometry.Check(EmptyRack());
        Assert.Equal(Verdict.Release, report.Verdict);
        Assert.Empty(report.Findings);
        Assert.Empty(report.NotAssessed);
        Assert.Equal([Cautions.General.Text, Cautions.NotJudged(Judge.GeometryRules)!.Text], report.Cautions);
        Assert.Equal(RuleSet.CurrentVersion, report.Ruleset.Version);
    }

    [Fact]
    public void The_reference_is_echoed_and_absent_where_there_is_none()
    {
        Assert.Equal("bay 7", Judge.Geometry.Check(EmptyRack() with { Reference = "bay 7" }).Reference);
        Assert.Null(Judge.Geometry.Check(EmptyRack()).Reference);
    }

    [Fact]
    public void Verdict_follows_the_most_severe_finding()
    {
        Assert.Equal(Verdict.Hold, Judge.Geometry.Check(EmptyRack().With(Tall)).Verdict);
        Assert.Equal(Verdict.Review, Judge.Geometry.Check(EmptyRack().With(Unit("wave-pc", 4))).Verdict);
        Assert.Equal(Verdict.Release, Judge.Geometry.Check(EmptyRack(12).With(Unit("wave-pc", 12).At(1))).Verdict);
    }

    [Fact]
    public void Findings_come_errors_first_then_by_rule_then_by_pointer()
    {
        var report = Judge.Geometry.Check(EmptyRack(12).With(
            [.. Enumerable.Range(0, 12).Select(i => Unit($"u{i:00}", 1).At(13 + i)), Unit("late", 1), Unit("full", 12).At(1)]));
        Assert.Equal(report.Findings.OrderBy(f => f.Severity).ThenBy(f => f.Rule, StringComparer.Ordinal).Select(f => f.Fingerprint),
            report.Findings.Select(f => f.Fingerprint));
        var outside = report.Findings.Where(f => f.Rule == "layout.outside-rack").Select(f => f.Pointers[0]);
        Assert.Equal(Enumerable.Range(0, 12).Select(i => $"/items/{i}/position"), outside);
        Assert.Equal([Severity.Error, Severity.Warning, Severity.Advice], report.Findings.Select(f => f.Severity).Distinct());
    }

    [Fact]
    public void An_accepted_error_stays_in_the_report_and_no_longer_holds()
    {
        var found = Judge.Geometry.Check(EmptyRack().With(Tall)).Findings.Single();
        foreach (var accepted in new[] { EmptyRack().With(Tall).Accept(found.Rule, found.Fingerprint), EmptyRack().With(Tall)
            .Accept(found.Rule, pointer: "/items/0/position") })
        {
            var report = Judge.Geometry.Check(accepted);
            Assert.Equal(Verdict.Release, report.Verdict);
            Assert.Equal(new AcceptedMark { Reason = "agreed at the review", AcceptedBy = "bay planner" }, Assert.Single(report.Findings).Accepted);
        }
    }

    [Fact]
    public void One_acceptance_does_not_cover_another_finding_of_its_rule()
    {
        var report = Judge.Geometry.Check(EmptyRack().With(Tall, Unit("gauge-pc", 2).At(0)).Accept("layout.outside-rack", pointer: "/items/1/position"));
        Assert.Equal(Verdict.Hold, report.Verdict);
        Assert.Equal([null, "bay planner"], report.Findings.Select(f => f.Accepted?.AcceptedBy));
    }

    [Fact]
    public void Fingerprint_survives_change_of_numbers_and_indices()
    {
        var one = Judge.Geometry.Check(EmptyRack().With(Tall)).Findings.Single();
        var other = Judge.Geometry.Check(EmptyRack().With(Unit("gauge-pc", 2).At(1), Tall with { Position = new Position { U = 41 } })).Findings.Single();
        Assert.Equal(one.Fingerprint, other.Fingerprint);
        Assert.NotEqual(one.Fingerprint, Judge.Geometry.Check(EmptyRack().With(Tall with { Id = "other" })).Findings.Single().Fingerprint);
    }

    [Theory]
    [InlineData(PolicySeverity.Error, Severity.Error, Verdict.Hold)]
    [InlineData(PolicySeverity.Warning, Severity.Warning, Verdict.Review)]
    [InlineData(PolicySeverity.Advice, Severity.Advice, Verdict.Release)]
    public void A_policy_sets_the_severity_of_every_finding_of_a_rule(PolicySeverity asked, Severity severity, Verdict verdict)
    {
        var report = Judge.Geometry.Check(EmptyRack().With(Tall).Severity("layout.outside-rack", asked));
        Assert.Equal(severity, Assert.Single(report.Findings).Severity);
        Assert.Equal(verdict, report.Verdict);
    }

    [Fact]
    public void A_policy_switches_a_rule_off_with_what_it_would_not_assess()
    {
        Assert.Empty(Judge.Geometry.Check(EmptyRack().With(Tall).Severity("layout.outside-rack", PolicySeverity.Off)).Findings);
        var missing = Judge.Geometry.Check(EmptyRack().With(Unit("wave-pc", 4).At(1)));
        Assert.Contains(missing.NotAssessed, n => n.Rule == "layout.body-too-wide");
        var off = Judge.Geometry.Check(EmptyRack().With(Unit("wave-pc", 4).At(1)).Severity("layout.body-too-wide", PolicySeverity.Off));
        var entry = Assert.Single(off.NotAssessed, n => n.Rule == "layout.body-too-wide");
        Assert.Equal(["/policy/rules/layout.body-too-wide/severity"], entry.Missing);
    }

    [Fact]
    public void Themes_without_rules_are_named()
    {
        Assert.Contains(
            "does not check these themes: load, power, cooling, earthing, cabling, service, delivery.", Cautions.NotJudged(Judge.GeometryRules)!.Text,
            StringComparison.Ordinal);
        Assert.Contains("layout, depth, load", Cautions.NotJudged(RuleSet.Of())!.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_policy_for_one_rule_leaves_the_others_alone() =>
        Assert.Equal(Severity.Error, Judge.Geometry.Check(EmptyRack().With(Tall).Severity("layout.overlap", PolicySeverity.Off)).Findings.Single().Severity);

    [Fact]
    public void Rack_without_masses_lists_missing_data()
    {
        // No member tells of any load: that it is borne is not known all the same, and not for an ERP to release.
        var report = Judge.Checker.Check(EmptyRack().With(Unit("wave-pc", 4).At(1).On(SupportStyle.Slides)));
        var asked = report.Questions.Single(q => q.Id == "items.massKg");
        Assert.Equal("How much does wave-pc weigh?", asked.Ask);
        Assert.Subset(asked.Rules.ToHashSet(StringComparer.Ordinal), new HashSet<string> { "load.support-rating", "load.floor-distributed" });

        // The heaviest item that takes four U is no load for the weakest cabinet of this size: the ranges are assumptions.
        Assert.DoesNotContain(report.NotAssessed, n => n.Rule == "load.rack-rating");
        Assert.Equal((250, 1500), report.Assumptions.Where(a => a.Pointers[0] == "/cabinet/ratedLoadKg").Select(a => (a.From, a.To)).Single());
        Assert.Equal(Verdict.Review, report.Verdict);

        // Panels alone weigh next to nothing: only the place is asked about.
        var panels = Judge.Checker.Check(EmptyRack().With(Unit("panel", 1).At(1) with { Category = ItemCategory.BlankingPanel }));
        Assert.DoesNotContain(panels.Questions, q => q.Decides == Concern.Product && q.Rules.Any(r => r.StartsWith("load.", StringComparison.Ordinal)));
    }

    [Fact]
    public void Handling_caution_is_listed_once() =>
        Assert.Equal([Cautions.General.Text, Cautions.NotJudged(Judge.GeometryRules)!.Text, Cautions.Handling.Text],
            Judge.Geometry.Check(EmptyRack().With(Tall, Unit("gauge-pc", 2).At(41))).Cautions);

    [Fact]
    public void Defaults_are_assumptions_in_pointer_order()
    {
        var assumptions = Judge.Geometry.Check(EmptyRack().Cabinet(c => c with { SidePanels = true }).With(
            Unit("wave-pc", 4).At(1).Body(width: 440, depth: 300).On(SupportStyle.Runners), Plate("plate", 1, 5))
                .With(Strip("strip", PduMounting.Horizontal, 42))).Assumed();
        Assert.Equal(
            [
                ("/cabinet/frontDoor/depthMm", 25, "mm"), ("/cabinet/rearDoor/depthMm", 25, "mm"), ("/cabinet/uprights/openingMm", 450, "mm"),
                ("/items/0/frontProjectionMm", 40, "mm"), ("/items/0/rearProjectionMm", 25, "mm"), ("/items/0/support/thicknessMm", 2, "mm"),
                    ("/pdus/0", 60, "mm"),
                ("/supplies/0/breaker/ratedA", 16, "A"), ("/supplies/0/faultCurrentA", 287, "A"), ("/supplies/0/phases", 1, null),
            ],
            assumptions.Where(a => a.Value.Number is not null).Select(a => (a.Pointer, (int)a.Value.Number!, a.Unit)));
        Assert.Equal([("/site/region", "eu"), ("/supplies/0/rcdMa", "none")], assumptions.Where(a => a.Value.Number is null)
            .Select(a => (a.Pointer, a.Value.Text)));
        Assert.All(assumptions, a => Assert.NotEqual("", a.Basis.Text));
    }

    [Fact]
    public void What_is_given_is_not_assumed()
    {
        var door = new Door { Style = DoorStyle.Solid, DepthMm = 30 };
        var rack = EmptyRack().Uprights(opening: 450).Cabinet(c => c with { FrontDoor = door, RearDoor = new Door { Style = DoorStyle.None } })
            .With(Unit("wave-pc", 4).At(1).Body(440, 300, 170).Room(40, 75).On(SupportStyle.Slides, thickness: 9.5, min: 400, max: 800));
        Assert.Empty(Judge.Geometry.Check(rack).Assumed());
    }

    [Fact]
    public void Position_with_shelf_is_listed_as_unused()
    {
        var assumption = Assert.Single(
            Judge.Geometry.Check(EmptyRack().With(Shelf("tray", 4).Room(0, 0), ShelfItem("desk-pc", "tray", 180, 400, 100).Room(0, 0).At(9))).Assumed(), a =>
                a.Pointer.StartsWith("/items", StringComparison.Ordinal));
        Assert.Equal(("/items/1/position", "not used", null), (assumption.Pointer, assumption.Value.Text, assumption.Unit));
    }

    [Fact]
    public void Space_is_figured_by_units_taken_on_either_face()
    {
        var space = Judge.Geometry.Check(
            EmptyRack(20).With(Unit("a", 4).At(1), Unit("b", 2).At(3, Face.Rear), Unit("c", 2).At(7, Face.Rear), Plate("plate", 2, 9)))
            .Figures.Space!;
        Assert.Equal((20, 6, 14, 12), (space.UnitsTotal, space.UnitsUsed, space.UnitsFree, space.LargestGapU));
    }

    [Fact]
    public void Rule_that_throws_is_not_assessed_and_reported()
    {
        var told = new List<(string Rule, string Message)>();
        var checker = new RackChecker(RuleSet.Of(new Broken("layout.broken"), new Layouts()), (rule, fault) => told.Add((rule.Id, fault.Message)));
        var report = checker.Check(EmptyRack());
        Assert.Equal(["layout.sound"], report.Findings.Select(f => f.Rule));
        var entry = Assert.Single(report.NotAssessed);
        Assert.Equal("layout.broken", entry.Rule);
        Assert.Empty(entry.Missing);
        Assert.Equal(NotAssessedReason.Failed, entry.Reason);
        Assert.Equal([("layout.broken", "on purpose")], told);
    }

    [Theory]
    [InlineData(Severity.Error, Verdict.Hold)]
    [InlineData(Severity.Warning, Verdict.Review)]
    [InlineData(Severity.Advice, Verdict.Review)]
    public void Rule_that_throws_keeps_the_order_from_release(Severity severity, Verdict verdict)
    {
        var checker = new RackChecker(RuleSet.Of(new Broken("layout.broken", severity)), (_, _) => { });
        Assert.Equal(verdict, checker.Check(EmptyRack()).Verdict);
    }

    [Fact]
    public void Number_not_finite_fails_its_rule()
    {
        var checker = new RackChecker(RuleSet.Of(new Endless(double.PositiveInfinity), new Layouts()), (_, _) => { });
        var report = checker.Check(EmptyRack());
        Assert.Equal(["layout.sound"], report.Findings.Select(f => f.Rule));
        Assert.Equal(NotAssessedReason.Failed, Assert.Single(report.NotAssessed).Reason);
        Assert.Null(Assert.Single(new RackChecker(RuleSet.Of(new Endless(1)), (_, _) => { }).Check(EmptyRack()).Findings).UtilisationPercent);
    }

    [Fact]
    public void Findings_past_the_most_of_a_rule_are_counted_and_judged()
    {
        var report = new RackChecker(RuleSet.Of(new Many(FindingList.MostOfOneRule, Severity.Error)), (_, _) => { }).Check(EmptyRack());
        Assert.Equal(FindingList.MostOfOneRule, report.Findings.Count);
        var omitted = Assert.Single(report.FindingsOmitted!);
        Assert.Equal(("layout.many", 1), (omitted.Rule, omitted.Count));
        Assert.Equal(Verdict.Hold, report.Verdict);
        Assert.Equal(Verdict.Review,
            new RackChecker(RuleSet.Of(new Many(FindingList.MostOfOneRule, Severity.Warning)), (_, _) => { }).Check(EmptyRack()).Verdict);
        var all = new RackChecker(RuleSet.Of(new Many(FindingList.MostOfOneRule - 1, Severity.Error)), (_, _) => { }).Check(EmptyRack());
        Assert.Null(all.FindingsOmitted);
    }

    [Fact]
    public void Report_rule_that_throws_is_not_assessed()
    {
        var checker = new RackChecker(RuleSet.Of(new Layouts(), new BrokenReport()), (_, _) => { });
        var report = checker.Check(EmptyRack());
        Assert.Equal("acceptance.broken", Assert.Single(report.NotAssessed).Rule);
        Assert.Single(report.Findings);
    }

    [Fact]
    public void Safety_rule_with_missing_data_needs_review()
    {
        var checker = new RackChecker(RuleSet.Of(new Guarding()), (_, _) => { });
        Assert.Equal(Verdict.Review, checker.Check(EmptyRack()).Verdict);
        var found = checker.Check(EmptyRack().With(Unit("wave-pc", 4).At(1)).Accept("load.guarding", pointer: "/items/0"));
        Assert.Null(Assert.Single(found.Findings).Accepted);
        Assert.True(found.Findings[0].Safety);
        Assert.Equal(Verdict.Hold, found.Verdict);
    }

    [Fact]
    public void A_cancelled_check_stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => Judge.Geometry.Check(EmptyRack(), source.Token));
    }

    [Fact]
    public void A_check_is_stopped_between_two_rules()
    {
        using var source = new CancellationTokenSource();
        var checker = new RackChecker(RuleSet.Of(new Cancelling(source), new Layouts()), (_, _) => { });
        Assert.Throws<OperationCanceledException>(() => checker.Check(EmptyRack(), source.Token));
    }

    [Fact]
    public void Invalid_description_throws()
    {
        Assert.Throws<ArgumentException>(() => Judge.Geometry.Check(EmptyRack() with { Cabinet = null }));
        Assert.Throws<ArgumentException>(() => Judge.Geometry.Check(EmptyRack().Cabinet(c => c with { HeightU = null })));
        Assert.Throws<ArgumentException>(() => Judge.Geometry.Check(EmptyRack().Cabinet(c => c with { WidthMm = null })));
        Assert.Throws<ArgumentException>(() => Judge.Geometry.Check(EmptyRack().Cabinet(c => c with { DepthMm = null })));
        Assert.Throws<ArgumentException>(() => Judge.Geometry.Check(EmptyRack().With(Unit("a", 1) with { HeightU = null })));
    }

    [Fact]
    public void Message_with_id_like_a_placeholder_is_kept()
    {
        var finding = Judge.Geometry.Check(EmptyRack().With(Unit("{other}", 4).At(10), Unit("{units}", 4).At(12))).Findings.Single();
        Assert.Contains("{other}", finding.Message, StringComparison.Ordinal);
        Assert.Contains("{units}", finding.Message, StringComparison.Ordinal);
    }

    private static RuleDescriptor Facts(string id, bool safety = false, Severity severity = Severity.Error) => new()
    {
        Id = id, Title = id, Severity = severity, Safety = safety, What = "-", Why = "-", Formula = "-", Sources = [Sources.Geometry],
        Needs = [], Remedies = [],
    };

    private static FindingDraft Draft(string pointer) =>
        new() { Message = Said, Data = [], Subject = Subjects.Rack, Identity = [], Pointers = [pointer], Severity = Severity.Advice };

    private sealed class Layouts : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("layout.sound");

        public override void Check(RuleContext context) => context.Report(Draft("/items"));
    }

    /// <summary>Reports so much advice and then one finding more.</summary>
    private sealed class Many(int advice, Severity last) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("layout.many");

        public override void Check(RuleContext context)
        {
            for (var i = 0; i < advice; i++)
            {
                context.Report(Draft($"/items/{i}"));
            }

            context.Report(new FindingDraft { Message = Said, Data = [], Subject = Subjects.Rack, Identity = ["last"], Pointers = ["/cabinet"],
                Severity = last });
        }
    }

    /// <summary>Reports a ratio to nothing, and an actual value.</summary>
    private sealed class Endless(double actual) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("layout.endless");

        public override void Check(RuleContext context) => context.Report(new FindingDraft
        {
            Message = Said, Data = [], Subject = Subjects.Rack, Identity = [], Pointers = ["/items"],
            UtilisationPercent = double.PositiveInfinity, Actual = new Quantity { Value = actual, Unit = "mm" },
        });
    }

    private sealed class Broken(string id, Severity severity = Severity.Error) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts(id, severity: severity);

        public override void Check(RuleContext context)
        {
            context.Report(Draft("/items"));
            context.ReportMissing("/site", new MissingData("test.missing", "lost with the rest"));
            throw new InvalidOperationException("on purpose");
        }
    }

    private sealed class BrokenReport : ReportRule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("acceptance.broken");

        public override void Check(RuleContext context, IReadOnlyList<Finding> findings, IReadOnlyList<NotAssessed> notAssessed) =>
            throw new InvalidOperationException("on purpose");
    }

    private sealed class Guarding : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("load.guarding", safety: true);

        public override void Check(RuleContext context)
        {
            if (context.Survey.Items.Length == 0)
            {
                context.ReportMissing("/items", new MissingData("test.missing", "Nothing to guard."));
            }
            else
            {
                context.Report(new FindingDraft { Message = Said, Data = [], Subject = Subjects.Rack, Identity = [], Pointers = ["/items/0"] });
            }
        }
    }

    private sealed class Cancelling(CancellationTokenSource source) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("layout.cancelling");

        public override void Check(RuleContext context) => source.Cancel();
    }
}
