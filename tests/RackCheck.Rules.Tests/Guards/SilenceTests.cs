using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>Takes each member of every rule's failing rack away in turn: a finding never goes in silence.</summary>
public sealed partial class SilenceTests
{
    // Members whose absence says something by itself, so that the finding goes rightly and nothing is left to be said.
    private static readonly Dictionary<string, string> Saying = new(StringComparer.Ordinal)
    {
        ["acceptance.unused /acceptances"] = "no acceptance",
        ["cabling.bend-radius /items/*/cables"] = "nothing is said of cables then",
        ["catalogue.contradiction /items/*/massKg"] = "the catalogue's value then, listed under its part number",
        ["catalogue.unknown-part /items/*/partNumber"] = "no part number",
        ["cooling.inlet-limit /items/*/maxInletC"] = "nothing else of that item says that it takes air in",
        ["cooling.ip-conflict /cooling"] = "no opening",
        ["cooling.ip-conflict /cooling/intakeAreaCm2"] = "no opening",
        ["cooling.ip-conflict /site"] = "no protection is asked for",
        ["cooling.ip-conflict /site/requiredIp"] = "no protection is asked for",
        ["delivery.lift /site/delivery/lift"] = "no lift on the way",
        ["depth.cable-arm /items/*/support/usedExtended"] = "a wish; absent is no",
        ["depth.front-clearance /cabinet/uprights"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.front-clearance /cabinet/uprights/frontSetbackMm"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.rear-clearance /cabinet/uprights"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.rear-clearance /cabinet/uprights/frontSetbackMm"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.support-span /cabinet/uprights"] = "the uprights are set where the rails reach",
        ["depth.support-span /cabinet/uprights/spacingMm"] = "the uprights are set where the rails reach",
        ["layout.body-too-high /items/*/body"] = "a body is as high as its units unless told",
        ["layout.body-too-high /items/*/body/heightMm"] = "a body is as high as its units unless told",
        ["layout.hole-type /items/*/fixing"] = "no cage nuts are asked for",
        ["layout.runner-stack /items/*/body"] = "a body is as high as its units unless told",
        ["layout.runner-stack /items/*/body/heightMm"] = "a body is as high as its units unless told",
        ["power.phase-balance /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.plug-mismatch /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.redundancy /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.redundancy /items/*/power/redundant"] = "a wish; absent is no",
        ["power.pdu-loading /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.pdu-loading /pdus/*/groups/*/breakerA"] = "absent is none: the group is judged with its unit",
        ["power.ups-capacity /site"] = "no run time is asked for",
        ["power.ups-capacity /site/upsMinutes"] = "no run time is asked for",
        ["service.remote-power /site"] = "somebody is near unless told",
        ["service.remote-power /site/remote"] = "somebody is near unless told",
        ["service.console-height /items/*/category"] = "nothing else says that it is looked at or typed on",
        ["service.kvm-ports /items/*/console"] = "a wish; absent is no",
        ["service.unlocked-panels /site"] = "the public has no access unless told",
        ["service.unlocked-panels /site/publicAccess"] = "the public has no access unless told",
    };

    public static TheoryData<string> Ids => [.. RuleSet.Default.All.Select(r => r.Descriptor.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_finding_goes_only_with_a_word(string id)
    {
        var whole = JsonNode.Parse(RuleSet.Default.Find(id)!.FailingRack)!;
        var before = Judge.Check(Read(whole)!);
        var silent = new List<string>();
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (var place in Members(whole, "").ToArray())
        {
            var without = whole.DeepClone();
            var parent = place[..place.LastIndexOf('/')].Split('/').Skip(1).Aggregate(without, static (at, token) => at is JsonArray list ? list[int.Parse(token, CultureInfo.InvariantCulture)]! : at[token]!);
            parent.AsObject().Remove(place[(place.LastIndexOf('/') + 1)..]);
            if (Read(without) is not { } rack || Judge.Unsound(rack).Any() || Judge.Resolve(rack) is { IsLookedUp: false } plain && plain.Missing().Count > 0)
            {
                continue;
            }

            var after = Judge.Check(rack);
            var gone = before.Findings.Any(f => f.Rule == id && !after.Findings.Any(a => Judge.IsSame(a, f)));
            var isOther = after.Findings.Any(a => !before.Findings.Any(b => Judge.IsSame(a, b)));
            if (gone && !isOther && Said(before) == Said(after))
            {
                var where = $"{id} {Index().Replace(place, "/*")}";
                if (Saying.ContainsKey(where))
                {
                    said.Add(where);
                }
                else
                {
                    silent.Add(where);
                }
            }
        }

        Assert.True(silent.Count == 0, string.Join('|', silent.Distinct()));
        Assert.Equal(Saying.Keys.Where(k => k.StartsWith(id + " ", StringComparison.Ordinal)).Order(StringComparer.Ordinal), said.Order(StringComparer.Ordinal));
    }

    private static string Said(CheckReport report) =>
        string.Join(' ', report.NotAssessed.Select(n => n.Rule + string.Join(',', n.Missing)).Concat(report.Assumptions.Select(a => a.Pointer + a.Value)));

    private static RackDescription? Read(JsonNode rack)
    {
        try
        {
            return rack.Deserialize(ContractJson.Default.RackDescription);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static IEnumerable<string> Members(JsonNode? node, string at) => node switch
    {
        JsonObject members => members.SelectMany(m => Members(m.Value, $"{at}/{m.Key}").Prepend($"{at}/{m.Key}")),
        JsonArray list => list.SelectMany((element, i) => Members(element, FormattableString.Invariant($"{at}/{i}"))),
        _ => [],
    };

    [GeneratedRegex("/[0-9]+")]
    private static partial Regex Index();
}
