using RackCheck.Model;
using RackCheck.Planning;
using RackCheck.Rules.Remedies;
using RackCheck.Rules.Tests.Harness;
using static RackCheck.Rules.Tests.Harness.Bays;

namespace RackCheck.Rules.Tests.Remedies;

public sealed class CureTrialsTests
{
    private static readonly RackDescription Rack = Bay().With(Unit("wave-pc", 4).At(1), Unit("gauge-amp", 2).At(10));

    [Fact]
    public void Only_what_clears_the_finding_and_brings_no_error_is_offered()
    {
        var remedies = Remedies(
            new Cure("Leave all as it is", Rack),
            new Cure("Bring an error", Rack with { Reference = "cured", Items = [.. Rack.Items, Unit("late", 4).At(2)] }),
            new Cure("Cure it", Rack with { Reference = "cured" }));
        Assert.Equal(["Cure it"], remedies.Select(r => r.Title));
    }

    [Fact]
    public void Of_one_kind_the_first_that_holds_is_offered_and_three_in_all()
    {
        var cured = Rack with { Reference = "cured" };
        Assert.Equal(
            ["more", "other", "third"],
            Remedies(new("little", Rack, "measure"), new("more", cured, "measure"), new("most", cured, "measure"), new("other", cured), new("third", cured), new("fourth", cured)).Select(r => r.Title));
    }

    [Fact]
    public void Cures_are_not_read_past_the_last_that_is_offered_nor_while_one_is_tried()
    {
        var read = 0;
        IEnumerable<Cure> Endless()
        {
            while (true)
            {
                read++;
                yield return new Cure($"cure {read}", Rack with { Reference = "cured" });
            }
        }

        Remedies(Endless());
        Assert.Equal(3, read);
    }

    [Fact]
    public void Trials_end()
    {
        var read = 0;
        IEnumerable<Cure> Vain()
        {
            while (true)
            {
                read++;
                yield return new Cure("in vain", Rack);
            }
        }

        Assert.Empty(Remedies(Vain()));
        Assert.Equal(CureTrials.MostTrials + 1, read);
    }

    [Fact]
    public void Where_nothing_holds_it_is_said_why()
    {
        Assert.Equal("No change of the order is known that would mend it.", Found().NoRemedy);
        Assert.Equal("No change of the order is known that would mend it.", Found(new Cure("Leave all as it is", Rack)).NoRemedy);
        Assert.Equal(
            "\"Bring an error\" would clear it, but brings layout.overlap.",
            Found(new("Leave it", Rack), new("Bring an error", Rack with { Reference = "cured", Items = [.. Rack.Items, Unit("late", 4).At(2)] })).NoRemedy);
        Assert.Null(Found(new Cure("Cure it", Rack with { Reference = "cured" })).NoRemedy);
    }

    private static IReadOnlyList<Remedy> Remedies(params IEnumerable<Cure> cures) => Found(cures).Remedies;

    private static Finding Found(params IEnumerable<Cure> cures) =>
        new RackChecker(RuleSet.Of(RuleSet.Default.All.Where(r => r.Descriptor.Theme == "layout").Append(new Uncured(cures))), (rule, fault) => throw new InvalidOperationException(rule.Id, fault))
            .Check(Rack).Findings.Single(f => f.Rule == "test.uncured");

    /// <summary>Finds fault with every rack but those that are called cured.</summary>
    private sealed class Uncured(IEnumerable<Cure> cures) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = RuleSet.Default.All[0].Descriptor with { Id = "test.uncured", Title = "Uncured", Severity = Severity.Error };

        public override void Check(RuleContext context)
        {
            if (context.Survey.Description.Reference != "cured")
            {
                context.Report(new FindingDraft { Message = "It is not cured.", Data = [], Subject = "rack", Identity = [], Pointers = ["/items"], Cures = cures });
            }
        }
    }
}
