using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>Removes each member of every rule's failing rack in turn: a finding never goes without an entry for missing data.</summary>
public sealed partial class SilenceTests
{
    // Members with a default or a meaning when absent, so that the finding goes and no data is missing.
    private static readonly Dictionary<string, string> Saying = new(StringComparer.Ordinal)
    {
        ["acceptance.unused /acceptances"] = "no acceptance",
        ["cabling.bend-radius /items/*/cables"] = "no cables given",
        ["catalogue.contradiction /items/*/massKg"] = "the catalogue's value then, listed under its part number",
        ["catalogue.inconsistent-values /items/*/power/typicalW"] = "no second value to contradict",
        ["catalogue.inconsistent-values /site/ambientMinC"] = "no second value to contradict",
        ["catalogue.unknown-part /items/*/partNumber"] = "no part number",
        ["cooling.airflow /cooling"] = "default none through doors: the equipment's own fans set the rise",
        ["cooling.airflow /cooling/riseK"] = "default none through doors: the equipment's own fans set the rise",
        ["cooling.fan-bypass /cooling"] = "no roof fans",
        ["cooling.fan-bypass /cooling/roofFans"] = "no roof fans",
        ["cooling.too-cold /site/ambientMinC"] = "default: a heated room",
        ["cooling.inlet-limit /items/*/maxInletC"] = "no other inlet data",
        ["cooling.ip-conflict /cooling"] = "no opening",
        ["cooling.ip-conflict /cooling/intakeAreaCm2"] = "no opening",
        ["cooling.ip-conflict /site"] = "no protection required",
        ["cooling.ip-conflict /site/requiredIp"] = "no protection required",
        ["delivery.lift /site/delivery/lift"] = "no lift on the way",
        ["depth.pdu-places /pdus/*/lengthMm"] = "a PDU of unknown length takes one place",
        ["load.seismic /site"] = "default: no seismic zone",
        ["load.seismic /site/seismic"] = "default: no seismic zone",
        ["depth.cable-arm /items/*/support/usedExtended"] = "default no",
        ["depth.front-clearance /cabinet/uprights"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.front-clearance /cabinet/uprights/frontSetbackMm"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.rear-clearance /cabinet/uprights"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.rear-clearance /cabinet/uprights/frontSetbackMm"] = "the uprights are set where everything fits: figures.depth says where",
        ["depth.support-span /cabinet/uprights"] = "the uprights are set where the rails reach",
        ["depth.support-span /cabinet/uprights/spacingMm"] = "the uprights are set where the rails reach",
        ["layout.body-too-high /items/*/body"] = "the height of the body defaults to its U",
        ["layout.body-too-high /items/*/body/heightMm"] = "the height of the body defaults to its U",
        ["layout.hole-type /items/*/fixing"] = "no cage nuts required",
        ["power.ups-idle /items/*/ups"] = "no output data, so it is no UPS",
        ["power.phase-balance /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.plug-mismatch /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.redundancy /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.redundancy /items/*/power/redundant"] = "default no",
        ["power.pdu-loading /connections"] = "the service finds the outlets: figures.power.assignment says which",
        ["power.ups-capacity /site"] = "no run time required",
        ["power.ups-capacity /site/upsMinutes"] = "no run time required",
        ["service.remote-power /site"] = "default: attended site",
        ["service.remote-power /site/remote"] = "default: attended site",
        ["service.kvm-ports /items/*/console"] = "default no",
        ["service.unlocked-panels /site"] = "default: no public access",
        ["service.unlocked-panels /site/publicAccess"] = "default: no public access",
    };

    public static TheoryData<string> Ids => [.. RuleSet.Default.All.Select(r => r.Descriptor.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Finding_never_goes_in_silence(string id)
    {
        var whole = JsonNode.Parse(RuleSet.Default.Find(id)!.FailingRack)!;
        var before = Judge.Check(Read(whole)!);
        var silent = new List<string>();
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (var place in Members(whole, "").ToArray())
        {
            var without = whole.DeepClone();
            var parent = place[..place.LastIndexOf('/')].Split('/').Skip(1)
                .Aggregate(without, static (at, token) => at is JsonArray list ? list[int.Parse(token, CultureInfo.InvariantCulture)]! : at[token]!);
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
        Assert.Equal(Saying.Keys.Where(k => k.StartsWith(id + " ", StringComparison.Ordinal)).Order(StringComparer.Ordinal),
            said.Order(StringComparer.Ordinal));
    }

    private static string Said(CheckReport report) =>
        string.Join(' ', report.NotAssessed.Select(n => n.Rule + string.Join(',', n.Missing))
            .Concat(report.Assumptions.SelectMany(a => a.Pointers.Select(p => $"{p}{a.Value}{a.From}{a.To}")))
            .Concat(report.Questions.SelectMany(q => q.Pointers)));

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
