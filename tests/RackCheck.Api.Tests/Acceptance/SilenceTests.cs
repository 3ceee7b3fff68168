using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>
/// Removes each optional member of a fully described rack in turn. A missing member must cause an assumption, a request for data, or no change for a
/// known reason.
/// </summary>
public sealed partial class SilenceTests(Service service) : IClassFixture<Service>
{
    // Members whose removal changes only the figures of that rack, with the reason. A star stands for an index.
    private static readonly Dictionary<string, string> Irrelevant = new(StringComparer.Ordinal)
    {
        ["/reference"] = "echoed only",
        ["/cabinet/base/stabiliserMm"] = "no stabiliser by default",
        ["/cabinet/earthBar/crossSectionMm2"] = "no rule uses it",
        ["/cabinet/earthBar/lengthMm"] = "no rule uses it",
        ["/cabinet/frontDoor/bonded"] = "the list of bonded parts includes it",
        ["/cabinet/rearDoor/bonded"] = "the list of bonded parts includes it",
        ["/cabinet/rearDoor/leaves"] = "the aisle is wider than one leaf",
        ["/cabinet/lockable"] = "no public access",
        ["/cabinet/placement"] = "a cabinet cooled through its doors needs no surface area",
        ["/cabinet/roof"] = "no fans and no vent in it",
        ["/cabinet/roof/style"] = "no fans and no vent in it",
        ["/cabinet/uprights/hole"] = "no cage nuts requested",
        ["/cabinet/uprights/pitchMm"] = "the uprights stay in place",
        ["/cooling"] = "default no permitted rise through perforated doors",
        ["/cooling/filters"] = "no fans",
        ["/cooling/riseK"] = "default no permitted rise through perforated doors",
        ["/pdus/*/groups/*/phase"] = "single-phase supply",
        ["/pdus/*/groups/*/breakerA"] = "no group breaker by default; the upstream breaker applies",
        ["/pdus/*/remoteSwitched"] = "default not switched",
        ["/earthing/secondaryEarth"] = "optional; the studs need the bar as well",
        ["/items/*/body/heightMm"] = "default the height of its U positions",
        ["/items/*/category"] = "its other members define its use",
        ["/items/*/console"] = "optional requirement",
        ["/items/*/position/face"] = "the contract's default",
        ["/items/*/power/inrushA"] = "fed from a UPS, which limits the inrush",
        ["/items/*/power/typicalW"] = "the heat then depends on the rated power",
        ["/items/*/massKg"] = "the mass of a blanking panel is not needed",
        ["/items/*/support"] = "light enough for front-panel mounting",
        ["/items/*/support/style"] = "light enough for front-panel mounting",
        ["/items/*/ups/runMinutes"] = "no run time required",
        ["/items/*/ups/chargeW"] = "default 10 % of the rated power",
        ["/items/*/ups/runLoadW"] = "no run time required",
        ["/site/delivery/openings/*/name"] = "then it is named by its number",
        ["/site/requiredIp"] = "optional requirement",
        ["/supplies/*/disconnectionTimeS"] = "the breaker limits the energy of a fault",
        ["/supplies/*/faultCurrentA"] = "at the end of the cable no current of its range needs more than the conductors have",
    };

    [Fact]
    public async Task MissingMember_changes_the_report_or_has_a_known_reason()
    {
        var bay = JsonNode.Parse(Repository.Read("openapi", "examples", "rack-sound.json"))!;

        // Without part numbers, since product data would replace the removed member.
        WithoutPartNumbers(bay);
        var reference = Said((await service.PostAsync(bay.ToJsonString())).Json);
        var silent = new SortedSet<string>(StringComparer.Ordinal);
        var tried = 0;
        foreach (var place in Members(bay, "").ToArray())
        {
            var without = bay.DeepClone();
            var parent = place[..place.LastIndexOf('/')].Split('/').Skip(1).Aggregate(
                without,
                static (at, token) => at is JsonArray list ? list[int.Parse(token, System.Globalization.CultureInfo.InvariantCulture)]! : at[token]!);
            parent.AsObject().Remove(place[(place.LastIndexOf('/') + 1)..]);
            var answer = await service.PostAsync(without.ToJsonString());
            if (answer.Status == 200)
            {
                tried++;
                if (Said(answer.Json) == reference)
                {
                    silent.Add(Index().Replace(place, "/*"));
                }
            }
        }

        Assert.True(tried > 200, $"{tried}");
        Assert.Equal(Irrelevant.Keys.Order(StringComparer.Ordinal), silent);
    }

    private static string Said(JsonNode report) =>
        string.Join(' ', new[] { "verdict", "findings", "notAssessed", "assumptions", "questions" }.Select(m => report[m]!.ToJsonString()));

    private static void WithoutPartNumbers(JsonNode? node)
    {
        if (node is JsonObject members)
        {
            members.Remove("partNumber");
        }

        foreach (var below in node switch { JsonObject o => o.Select(m => m.Value), JsonArray list => list, _ => [] })
        {
            WithoutPartNumbers(below);
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
