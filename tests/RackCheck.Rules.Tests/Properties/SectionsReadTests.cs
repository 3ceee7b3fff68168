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
                Assert.Equal(Text(Judge.Whole.Check(resolved)), Text(Judge.Checker.Check(resolved)));
            },
            iter: Samples.Of(10_000),
            print: Wording.Of);

    // Descriptions are compared as posted: what a part number fills in is made anew for each rack.
    [Fact]
    [Trait("Kind", "property")]
    public void Remedies_of_racks_with_part_numbers_are_the_same_where_all_rules_judge_them()
    {
        var compared = 0;
        AnyRack.All.Select(Gen.Int[0, 1_000_000].Array[16], Numbered).Sample(
            rack =>
            {
                var resolved = Judge.Resolve(rack);
                if (!Judge.Unsound(rack).Any() && resolved.Missing().Count == 0 && resolved.Parts.Count > 0)
                {
                    Interlocked.Increment(ref compared);
                    Assert.Equal(Text(Judge.Whole.Check(resolved)), Text(Judge.Checker.Check(resolved)));
                }
            },
            iter: Samples.Of(3_000),
            print: Wording.Of);
        Assert.True(compared > 0, "No rack has a part number.");
    }

    private static readonly Product[] Cabinets = [.. DemoProducts.All.Where(p => p.Cabinet is not null)];
    private static readonly Product[] Equipment = [.. DemoProducts.All.Where(p => p.Item is not null)];
    private static readonly Product[] Strips = [.. DemoProducts.All.Where(p => p.Pdu is not null)];

    // Every other item, PDU and cabinet gets a part number; of these every other one leaves more of its data to the catalogue.
    private static RackDescription Numbered(RackDescription rack, int[] picks)
    {
        int Pick(int at) => picks[at % picks.Length];
        string? NumberOf(Product[] products, int at) => (Pick(at) & 1) == 0 ? products[Pick(at) / 4 % products.Length].PartNumber : null;
        bool LeavesMore(int at) => (Pick(at) & 2) == 0;
        return rack with
        {
            Cabinet = rack.Cabinet is { } cabinet && NumberOf(Cabinets, 0) is { } own ? cabinet with { PartNumber = own } : rack.Cabinet,
            Items =
            [
                .. rack.Items.Select((item, i) => NumberOf(Equipment, i + 1) is not { } number ? item
                    : LeavesMore(i + 1) ? item with { PartNumber = number, Body = null, MassKg = null, Power = null }
                    : item with { PartNumber = number }),
            ],
            Pdus = rack.Pdus is not { } units ? null :
            [
                .. units.Select((unit, i) => NumberOf(Strips, i + 5) is not { } number ? unit
                    : LeavesMore(i + 5) ? unit with { PartNumber = number, Groups = null, Plug = null }
                    : unit with { PartNumber = number }),
            ],
        };
    }

    private static string Text(CheckReport report) => JsonSerializer.Serialize(report, ContractJson.Default.CheckReport);

    private static ILookup<string, string> Answers(RackDescription rack)
    {
        var report = Judge.AsGiven.Recheck(Judge.Resolve(rack));
        return report.Findings.Select(f => (f.Rule, Text: FormattableString.Invariant($"{f.Fingerprint} {f.Severity} {f.UtilisationPercent}")))
            .Concat(report.NotAssessed.Select(n => (n.Rule, Text: string.Join(',', n.Missing))))
            .OrderBy(a => a.Text, StringComparer.Ordinal).ToLookup(a => a.Rule, a => a.Text);
    }
}
