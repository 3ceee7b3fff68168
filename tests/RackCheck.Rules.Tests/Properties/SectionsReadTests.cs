using System.Collections.Concurrent;
using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>A remedy is judged by the rules that read what it changes. The others would say what they said before.</summary>
public sealed class SectionsReadTests
{
    private static readonly (Sections Section, Func<RackDescription, RackDescription, RackDescription> Take)[] Parts =
    [
        (Sections.Supplies | Sections.Faults | Sections.Cables, static (r, o) => r with { Supplies = o.Supplies }),
        (Sections.Faults, static (r, o) => Mixed(r, o, static (s, t) => s with
        {
            RcdMa = t.RcdMa, FaultCurrentA = t.FaultCurrentA, DisconnectionTimeS = t.DisconnectionTimeS,
            Breaker = s.Breaker is { } own ? own with { Curve = t.Breaker?.Curve, BreakingKa = t.Breaker?.BreakingKa } : null,
        })),
        (Sections.Cables, static (r, o) => Mixed(r, o, static (s, t) => s with { Cable = t.Cable })),
        (Sections.Pdus, static (r, o) => r with { Pdus = o.Pdus }),
        (Sections.Connections, static (r, o) => r with { Connections = o.Connections }),
        (Sections.Cooling, static (r, o) => r with { Cooling = o.Cooling }),
        (Sections.Earthing, static (r, o) => r with { Earthing = o.Earthing }),
        (Sections.Site | Sections.Access, static (r, o) => r with { Site = o.Site }),
        (Sections.Access, static (r, o) => r.Site is null ? r : r with
        {
            Site = r.Site with
            {
                Delivery = o.Site?.Delivery, Floor = o.Site?.Floor, Handling = o.Site?.Handling, AisleFrontMm = o.Site?.AisleFrontMm,
                AisleRearMm = o.Site?.AisleRearMm,
            },
        }),
        (Sections.Site, static (r, o) => r.Site is null ? r : r with
        {
            Site = (o.Site ?? new()) with
            {
                Delivery = r.Site.Delivery, Floor = r.Site.Floor, Handling = r.Site.Handling, AisleFrontMm = r.Site.AisleFrontMm,
                AisleRearMm = r.Site.AisleRearMm,
            },
        }),
    ];

    private static RackDescription Mixed(RackDescription rack, RackDescription other, Func<Supply, Supply, Supply> mix) =>
        rack.Supplies is null || other.Supplies is not { Count: > 0 } theirs
            ? rack
            : rack with { Supplies = [.. rack.Supplies.Select((s, i) => mix(s, theirs[i % theirs.Count]))] };

    private static readonly RackChecker OneEnd = new(RuleSet.Default, static (rule, fault) => throw new InvalidOperationException(rule.Id, fault))
    {
        AssessesRanges = false,
    };

    private static readonly RackChecker Whole = new(RuleSet.Default, static (rule, fault) => throw new InvalidOperationException(rule.Id, fault))
    {
        JudgesWholeRacks = true,
    };

    [Fact]
    [Trait("Kind", "property")]
    public void Rules_name_a_member_of_every_section_that_changes_their_answer()
    {
        var unnamed = new ConcurrentDictionary<string, string>();
        AnyRack.All.Select(AnyRack.All, (rack, other) => (rack, other)).Sample(
            sample =>
            {
                if (Judge.Resolve(sample.rack).Missing().Count > 0)
                {
                    return;
                }

                var before = Answers(sample.rack);
                foreach (var (section, take) in Parts)
                {
                    var mixed = take(sample.rack, sample.other);
                    Assert.Equal(Sections.None, SectionTable.Changed(sample.rack, mixed) & ~section);
                    if (Judge.Unsound(mixed).Any() || Judge.Resolve(mixed).Missing().Count > 0)
                    {
                        continue;
                    }

                    var after = Answers(mixed);
                    foreach (var rule in RuleSet.Default.RackRules.Where(r => (SectionTable.ReadBy(r.Descriptor.Needs) & section) == 0))
                    {
                        var id = rule.Descriptor.Id;
                        if (!before[id].SequenceEqual(after[id]))
                        {
                            unnamed.TryAdd($"{id} {section}", Wording.Of(mixed));
                        }
                    }
                }
            },
            iter: Samples.Of(10_000),
            print: s => Wording.Of(s.rack));
        Assert.True(unnamed.IsEmpty, string.Join("\n", unnamed.OrderBy(u => u.Key, StringComparer.Ordinal).Select(u => $"{u.Key} in {u.Value}")));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Remedies_are_the_same_where_all_rules_judge_them() =>
        AnyRack.All.Sample(
            rack =>
            {
                var resolved = Judge.Resolve(rack);
                Assert.Equal(Text(Whole.Check(resolved)), Text(Judge.Checker.Check(resolved)));
            },
            iter: Samples.Of(10_000),
            print: Wording.Of);

    private static string Text(CheckReport report) => JsonSerializer.Serialize(report, ContractJson.Default.CheckReport);

    private static ILookup<string, string> Answers(RackDescription rack)
    {
        var report = OneEnd.Recheck(Judge.Resolve(rack));
        return report.Findings.Select(f => (f.Rule, Text: FormattableString.Invariant($"{f.Fingerprint} {f.Severity} {f.UtilisationPercent}")))
            .Concat(report.NotAssessed.Select(n => (n.Rule, Text: string.Join(',', n.Missing))))
            .OrderBy(a => a.Text, StringComparer.Ordinal).ToLookup(a => a.Rule, a => a.Text);
    }
}
