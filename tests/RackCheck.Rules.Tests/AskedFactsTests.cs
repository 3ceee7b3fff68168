using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests;

/// <summary>Which facts a question asks for, and in which order it names their owners.</summary>
public sealed class AskedFactsTests
{
    private static readonly MessageWording Said = new("test", "A finding.");

    [Fact]
    public void Questions_list_2_before_10()
    {
        var report = Judge.Checker.Check(EmptyRack().With([.. new[] { 10, 2 }.Select(n => Unit($"pc-{n}", 4).At(4 * n).On(SupportStyle.Slides))]));
        Assert.Equal("How much does each of pc-2 and pc-10 weigh?", report.Questions.Single(q => q.Id == "items.massKg").Ask);
    }

    [Fact]
    public void Where_no_fact_alone_decides_a_smallest_set_is_asked_for()
    {
        var report = new RackChecker(RuleSet.Of(new TwoOfThree()), (_, _) => { }).Check(EmptyRack() with { Site = new Site() });
        string[] asked = [.. report.Questions.SelectMany(q => q.Pointers)];
        Assert.Equal(2, asked.Length);
        Assert.Subset(new HashSet<string> { "/site/ambientMaxC", "/site/altitudeM", "/site/humidityMaxPercent" }, asked.ToHashSet(StringComparer.Ordinal));
    }

    /// <summary>Finds fault with two of three adverse facts, and reads one fact more, which decides nothing.</summary>
    private sealed class TwoOfThree : Rule
    {
        private static readonly string[] Reads = ["/site/ambientMaxC", "/site/altitudeM", "/site/humidityMaxPercent", "/site/aisleFrontMm"];

        public override RuleDescriptor Descriptor { get; } = new()
        {
            Id = "layout.two-of-three", Title = "-", Severity = Severity.Error, What = "-", Why = "-", Formula = "-", Sources = [Sources.Geometry],
            Needs = Reads, Remedies = [],
        };

        public override void Check(RuleContext context)
        {
            var site = context.Survey.Description.Site!;
            double?[] given = [site.AmbientMaxC, site.AltitudeM, site.HumidityMaxPercent, site.AisleFrontMm];
            for (var i = 0; i < given.Length; i++)
            {
                if (given[i] is null)
                {
                    context.ReportMissing(Reads[i], new MissingData("test.missing", "A fact is missing."));
                }
            }

            bool[] adverse = [site.AmbientMaxC > 25, site.AltitudeM > 450, site.HumidityMaxPercent > 50];
            if (adverse.Count(a => a) >= 2)
            {
                context.Report(new FindingDraft { Message = Said, Data = [], Subject = Subjects.Rack, Identity = [], Pointers = ["/site"] });
            }
        }
    }
}
