using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>Less said is never better: taking out a fact, its value inside its bounds, never improves a verdict without a question that names it.</summary>
public sealed class LessSaidTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Rack_without_a_fact_is_not_released()
    {
        var unnamed = new UnnamedFacts();
        AnyRack.All.Sample(
            rack =>
            {
                var before = Check(rack);
                foreach (var pointer in FactPlaces.Given(rack))
                {
                    unnamed.Add(Faults(rack, before, pointer));
                }
            },
            iter: Samples.Of(10_000),
            print: Wording.Of);
        unnamed.AreFew();
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Rack_without_two_facts_is_not_released()
    {
        var unnamed = new UnnamedFacts();
        AnyRack.All.Select(Gen.Int[0, 1_000_000].Array[20], (rack, picks) => (rack, picks)).Sample(
            sample =>
            {
                var (rack, picks) = sample;
                var (before, given) = (Check(rack), FactPlaces.Given(rack));
                for (var i = 0; i + 1 < picks.Length && given.Count > 1; i += 2)
                {
                    var (one, other) = (given[picks[i] % given.Count], given[picks[i + 1] % given.Count]);
                    if (!one.StartsWith(other, StringComparison.Ordinal) && !other.StartsWith(one, StringComparison.Ordinal))
                    {
                        unnamed.Add(Faults(rack, before, one, other));
                    }
                }
            },
            iter: Samples.Of(10_000),
            print: s => Wording.Of(s.rack));
        unnamed.AreFew();
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Verdict_is_the_gravest_of_its_reasons() =>
        AnyRack.WithPolicy.Sample(
            rack =>
            {
                var report = Judge.Check(rack);
                foreach (var (concern, verdict) in new[] { (Concern.Product, report.Verdicts.Product), (Concern.Site, report.Verdicts.Site) })
                {
                    var reasons = report.VerdictReasons.Where(r => r.Concern == concern).ToArray();
                    Assert.Equal(reasons.Select(r => r.Makes).DefaultIfEmpty(Verdict.Release).Max(), verdict);
                    Assert.All(reasons, r => Assert.NotEqual(Verdict.Release, r.Makes));
                }

                // Every reason stands in the report, and everything in the report that keeps it from release is a reason.
                Assert.All(report.VerdictReasons, r => Assert.True(
                    r.Question is { } question ? report.Questions.Any(q => q.Id == question)
                    : r.Fingerprint is { } print
                        ? report.Findings.Any(f => f.Rule == r.Rule && f.Fingerprint == print && f is { Accepted: null, SignedOff: null })
                    : report.NotAssessed.Any(n => n.Rule == r.Rule) || report.FindingsOmitted!.Any(o => o.Rule == r.Rule)));
                Assert.Equal(
                    report.Findings.Count(f => f is { Accepted: null, SignedOff: null, Severity: not Severity.Advice }) + report.Questions.Count,
                    report.VerdictReasons.Count(r => r.Fingerprint is not null)
                        + report.VerdictReasons.Select(r => r.Question).OfType<string>().Distinct().Count());
            },
            iter: Samples.Of(3_000),
            print: Wording.Of);

    // Verdicts and questions do not depend on the remedies, which take most of a check.
    private static CheckReport Check(RackDescription rack) => Judge.Checker.Recheck(Judge.Resolve(rack));

    private static IEnumerable<(bool IsReleased, string Text)> Faults(RackDescription rack, CheckReport before, params string[] pointers)
    {
        var without = FactPlaces.Without(rack, pointers);
        if (Judge.Resolve(without).Missing().Count > 0 || !pointers.All(p => FactPlaces.IsInside(rack, without, p))
            || pointers.Any(p => FactPlaces.IsStillSaid(without, p)))
        {
            yield break;
        }

        var after = Check(without);
        foreach (var (concern, was, now) in new[]
        {
            (Concern.Product, before.Verdicts.Product, after.Verdicts.Product), (Concern.Site, before.Verdicts.Site, after.Verdicts.Site),
        })
        {
            var because = string.Join(", ", before.VerdictReasons.Where(r => r.Concern == concern && r.Makes == was).Select(r => r.Rule ?? r.Question));
            if (now == Verdict.Release && was != Verdict.Release)
            {
                yield return (true, $"{string.Join(" and ", pointers)}: {concern} was {was} by {because} and is released without it");
            }
            else if (was == Verdict.Hold && now == Verdict.Review && !pointers.Any(p => after.Questions.Any(q => q.Pointers.Any(a => Names(a, p)))))
            {
                yield return (false, $"{string.Join(" and ", pointers)}: {concern} was held by {because} and no question names it in {Wording.Of(rack)}");
            }
        }
    }

    // A question for a whole record names its members too.
    private static bool Names(string asked, string pointer) => pointer == asked || pointer.StartsWith(asked + "/", StringComparison.Ordinal);

    // Counts facts taken out and what is not asked for, over all threads.
    private sealed class UnnamedFacts
    {
        private readonly System.Collections.Concurrent.ConcurrentBag<string> texts = [];
        private int facts;

        public void Add(IEnumerable<(bool IsReleased, string Text)> faults)
        {
            Interlocked.Increment(ref facts);
            foreach (var (isReleased, text) in faults)
            {
                Assert.False(isReleased, text);
                texts.Add(text);
            }
        }

        // None is the aim. Rare ones that nobody has found yet must not stop every other change, so one in 2,000 is let through.
        public void AreFew() =>
            Assert.True(texts.Count <= (facts + 1_999) / 2_000, $"{texts.Count} not asked for in {facts} facts: {string.Join("\n", texts)}");
    }
}
