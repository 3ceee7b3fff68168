using System.Collections.Concurrent;
using CsCheck;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>
/// A rule names under <c>Needs</c> every fact with a plausible range that can change its answer. Questions ask for what is named there alone, so that a fact
/// that is not named would decide in silence.
/// </summary>
public sealed class FactsReadTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Rules_name_every_fact_that_changes_their_answer()
    {
        var unnamed = new ConcurrentDictionary<string, string>();
        AnyRack.All.Sample(
            rack =>
            {
                var resolved = Judge.Resolve(rack);
                if (resolved.Missing().Count > 0)
                {
                    return;
                }

                var facts = new MissingFacts(resolved, new RackSurvey(resolved));
                foreach (var end in new[] { End.Adverse, End.Favourable })
                {
                    var straight = Answers(resolved.Completed(facts.At(end).Description));
                    for (var i = 0; i < FactTable.Bounded.Length; i++)
                    {
                        if (facts.Set.Has(i))
                        {
                            var turned = Answers(resolved.Completed(facts.At(end, i).Description));
                            foreach (var rule in RuleSet.Default.RackRules)
                            {
                                var id = rule.Descriptor.Id;
                                if (!FactTable.ReadBy(rule.Descriptor.Needs).Has(i) && !straight[id].SequenceEqual(turned[id]))
                                {
                                    unnamed.TryAdd($"{id} {FactTable.Bounded[i].Key}", Wording.Of(rack));
                                }
                            }
                        }
                    }
                }
            },
            iter: Samples.Of(2_000),
            print: Wording.Of);
        Assert.True(unnamed.IsEmpty, string.Join("\n", unnamed.OrderBy(u => u.Key, StringComparer.Ordinal).Select(u => $"{u.Key} in {u.Value}")));
    }

    private static ILookup<string, (string Fingerprint, Severity Severity)> Answers(ResolvedRack rack) =>
        Judge.AsGiven.Recheck(rack).Findings.OrderBy(f => f.Fingerprint, StringComparer.Ordinal).ToLookup(f => f.Rule, f => (f.Fingerprint, f.Severity));
}
