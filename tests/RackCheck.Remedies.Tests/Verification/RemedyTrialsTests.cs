using RackCheck.Model;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Remedies.Tests.Verification;

public sealed class RemedyTrialsTests
{
    private static readonly MessageWording Said = new("test", "It is wrong.");

    private static readonly RackDescription Rack = EmptyRack().With(Unit("wave-pc", 4).At(1), Unit("gauge-amp", 2).At(10));

    [Fact]
    public void Only_what_clears_the_finding_and_brings_no_error_is_offered()
    {
        var remedies = Remedies(
            new RemedyCandidate(Titled("Leave all as it is"), Rack),
            new RemedyCandidate(Titled("Bring an error"), Rack with { Reference = "cured", Items = [.. Rack.Items, Unit("late", 4).At(2)] }),
            new RemedyCandidate(Titled("Clear it"), Rack with { Reference = "cured" }));
        Assert.Equal(["Clear it"], remedies.Select(r => r.Title));
    }

    [Theory]
    [InlineData(Severity.Error, 150, "gauge-pc", Severity.Error, 150, true)] // the other error stands as it stood
    [InlineData(Severity.Error, 150, "gauge-pc", Severity.Error, 140, true)] // and may become milder
    [InlineData(Severity.Error, 150, "gauge-pc", Severity.Error, 151, false)] // but no worse
    [InlineData(Severity.Warning, 90, "gauge-pc", Severity.Error, 120, false)] // a warning that becomes an error is a new error
    [InlineData(Severity.Error, 150, "next", Severity.Error, 110, false)] // the next of several takes the place of the worst
    [InlineData(Severity.Error, 150, "next", Severity.Advice, 90, true)] // milder than what was cleared: the defect is gone
    public void New_or_worse_errors_refuse_a_change(
        Severity severityBefore, double before, string itemAfter, Severity severityAfter, double after, bool helps)
    {
        var cleared = Of("wave-pc", Severity.Error, 200);
        Finding[] findings = [cleared, Of("gauge-pc", severityBefore, before)];
        Finding[] later = [Of(itemAfter, severityAfter, after)];
        Assert.Equal(helps, RemedyTrials.Helps(cleared, findings, ErrorsOf(findings), later, ErrorsOf(later)));
        Assert.False(RemedyTrials.Helps(cleared, findings, ErrorsOf(findings), findings, ErrorsOf(findings)));
    }

    [Fact]
    public void Of_one_kind_the_first_that_holds_is_offered_and_three_in_all()
    {
        Assert.Equal(
            ["more", "other", "third"],
            Remedies(
                new(Titled("little"), Rack, "measure"), new(Titled("more"), Remedied(1), "measure"), new(Titled("most"), Remedied(2), "measure"),
                new(Titled("other"), Remedied(3)),
                new(Titled("third"), Remedied(4)), new(Titled("fourth"), Remedied(5))).Select(r => r.Title));
    }

    // One item for another leaves their number as it is.
    [Fact]
    public void What_takes_items_out_names_them_and_comes_last()
    {
        var remedies = Remedies(
            new(Titled("exchange"), Remedied(1) with { Items = [Rack.Items[0], Unit("flume-daq", 2).At(10)] }),
            new(Titled("take out"), Remedied(2) with { Items = [] }),
            new(Titled("keep"), Remedied(3)));
        Assert.Equal(
            ["keep: ", "exchange: gauge-amp", "take out: gauge-amp, wave-pc"], remedies.Select(r => $"{r.Title}: {string.Join(", ", r.RemovesItems)}"));
    }

    [Fact]
    public void The_same_change_is_offered_once_whatever_it_is_called() =>
        Assert.Equal(
            ["one", "another"],
            Remedies(
                new(Titled("one"), Remedied(1)), new(Titled("the same"), Remedied(1)), new(Titled("another"), Remedied(2)),
                new(Titled("the same again"), Remedied(2))).Select(r => r.Title));

    [Fact]
    public void A_last_resort_is_offered_only_where_nothing_before_it_holds()
    {
        Assert.Equal(["cheap"], Remedies(new(Titled("cheap"), Remedied(1)), new(Titled("dear"), Remedied(2), IsLastResort: true)).Select(r => r.Title));
        Assert.Equal(["dear", "out"],
            Remedies(new(Titled("in vain"), Rack), new(Titled("dear"), Remedied(2), IsLastResort: true), new(Titled("out"), Remedied(3))).Select(r => r.Title));
    }

    [Fact]
    public void Trials_end_sooner_where_each_finds_much()
    {
        // 99 items, each found three times: a trial counts for 99 / 40 + 298 / 10 of one of a usual rack.
        var many = Rack.With([.. Enumerable.Range(0, 99).Select(i => Unit($"u{i:00}", 1).At(50 + i))]);
        var read = 0;
        IEnumerable<RemedyCandidate> Vain()
        {
            while (true)
            {
                read++;
                yield return new RemedyCandidate(Titled("in vain"), many);
            }
        }

        var checker = new RackChecker(
            RuleSet.Of(new Unremedied(Vain()), new FindsThree()), (rule, fault) => throw new InvalidOperationException(rule.Id, fault));
        Assert.All(checker.Check(many).Findings, f => Assert.Empty(f.Remedies));
        Assert.Equal((int)(RemedyTrials.MostWork / ((99 / 40.0) + (298 / 10.0))) + 1, read);
    }

    [Fact]
    public void Rule_that_throws_in_a_trial_makes_it_not_helping()
    {
        var checker = new RackChecker(
            RuleSet.Of(new Unremedied([new RemedyCandidate(Titled("Clear it"), Remedied(1))]), new BrokenWhenRemedied()), (_, _) => { });
        var finding = Assert.Single(checker.Check(Rack).Findings);
        Assert.Empty(finding.Remedies);
        Assert.NotNull(finding.NoRemedy);
    }

    [Fact]
    public void Candidates_are_not_read_past_the_last_that_is_offered_nor_while_one_is_tried()
    {
        var read = 0;
        IEnumerable<RemedyCandidate> Endless()
        {
            while (true)
            {
                read++;
                yield return new RemedyCandidate(Titled($"remedy {read}"), Remedied(read));
            }
        }

        Remedies(Endless());
        Assert.Equal(3, read);
    }

    [Fact]
    public void Changes_that_are_not_to_be_made_are_not_tried()
    {
        var checker = new RackChecker(
            RuleSet.Of(new Unremedied([new(Titled("Cool"), Remedied(1)), new(Titled("Rename"), Rack with { Reference = "cured" })])), (_, _) => { });
        var (all, few) = (new TrialBudget(RemedyTrials.MostWork), new TrialBudget(RemedyTrials.MostWork));
        var rack = ResolvedRack.Plain(Rack);
        Assert.Equal(["Cool", "Rename"], Assert.Single(checker.CheckWithin(rack, all).Findings).Remedies.Select(r => r.Title));
        Assert.Equal(["Rename"], Assert.Single(checker.CheckWithin(rack, few, after => after.Site is null).Findings).Remedies.Select(r => r.Title));
        Assert.Equal(all.Used - 1, few.Used);
    }

    [Fact]
    public void Trials_end()
    {
        var read = 0;
        IEnumerable<RemedyCandidate> Vain()
        {
            while (true)
            {
                read++;
                yield return new RemedyCandidate(Titled("in vain"), Rack);
            }
        }

        Assert.Empty(Remedies(Vain()));
        Assert.Equal(RemedyTrials.MostWork + 1, read);
    }

    [Fact]
    public void Where_nothing_holds_it_is_said_why()
    {
        Assert.Equal("No change to the rack is known that would clear it.", Found().NoRemedy);
        Assert.Equal("No change to the rack is known that would clear it.", Found(new RemedyCandidate(Titled("Leave all as it is"), Rack)).NoRemedy);
        Assert.Equal(
            "\"Bring an error\" would clear it, but causes layout.overlap.",
            Found(
                new(Titled("Leave it"), Rack),
                new(Titled("Bring an error"), Rack with { Reference = "cured", Items = [.. Rack.Items, Unit("late", 4).At(2)] })).NoRemedy);
        Assert.Null(Found(new RemedyCandidate(Titled("Clear it"), Rack with { Reference = "cured" })).NoRemedy);
    }

    private static Finding Of(string item, Severity severity, double percent) => Found() with
    {
        Fingerprint = item, Subject = item, Severity = severity, UtilisationPercent = percent,
    };

    private static ErrorList ErrorsOf(Finding[] findings)
    {
        var list = new FindingList();
        list.Written.AddRange(findings);
        return list.Errors();
    }

    private static WordedText Titled(string title) => new("test", title);

    private static IReadOnlyList<Remedy> Remedies(params IEnumerable<RemedyCandidate> candidates) => Found(candidates).Remedies;

    // Racks that are cured, each by another change.
    private static RackDescription Remedied(int way) => Rack with { Reference = "cured", Site = new Site { AmbientMaxC = way } };

    private static Finding Found(params IEnumerable<RemedyCandidate> candidates) => FoundIn(Rack, candidates);

    private static Finding FoundIn(RackDescription rack, IEnumerable<RemedyCandidate> candidates) =>
        new RackChecker(
            RuleSet.Of(RuleSet.Default.All.Where(r => r.Descriptor.Theme == "layout").Append(new Unremedied(candidates))),
            (rule, fault) => throw new InvalidOperationException(rule.Id, fault))
            .Check(rack).Findings.Single(f => f.Rule == "test.uncured");

    /// <summary>Finds fault with every rack but those that are called cured.</summary>
    private sealed class Unremedied(IEnumerable<RemedyCandidate> candidates) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = RuleSet.Default.All[0].Descriptor with
        {
            Id = "test.uncured", Title = "Uncured", Severity = Severity.Error,
        };

        public override void Check(RuleContext context)
        {
            if (context.Survey.Description.Reference != "cured")
            {
                context.Report(new FindingDraft
                {
                    Message = Said, Data = [], Subject = Subjects.Rack, Identity = [], Pointers = ["/items"], Candidates = candidates,
                });
            }
        }
    }

    /// <summary>Finds fault with every item three times and knows no remedy.</summary>
    private sealed class FindsThree : Rule
    {
        public override RuleDescriptor Descriptor { get; } = RuleSet.Default.All[0].Descriptor with { Id = "test.three", Title = "Three" };

        public override void Check(RuleContext context)
        {
            foreach (var name in context.Survey.Items.SelectMany(i => (string[])["a" + i.Id, "b" + i.Id, "c" + i.Id]).Take(FindingList.MostOfOneRule + 97))
            {
                context.Report(new FindingDraft { Message = Said, Data = [], Subject = Subjects.Id(name), Identity = [name], Pointers = ["/items"] });
            }
        }
    }

    /// <summary>Fails in every rack that is called cured.</summary>
    private sealed class BrokenWhenRemedied : Rule
    {
        public override RuleDescriptor Descriptor { get; } = RuleSet.Default.All[0].Descriptor with { Id = "test.broken", Title = "Broken" };

        public override void Check(RuleContext context)
        {
            if (context.Survey.Description.Reference == "cured")
            {
                throw new InvalidOperationException("on purpose");
            }
        }
    }
}
