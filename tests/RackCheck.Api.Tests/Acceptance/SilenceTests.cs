using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>Takes each optional member of a bay that is described in full away in turn: what is absent is assumed, asked for, or of no matter there.</summary>
public sealed partial class SilenceTests(Service service) : IClassFixture<Service>
{
    // Members whose absence changes nothing but figures in that bay, with the reason. A star stands for an index.
    private static readonly Dictionary<string, string> OfNoMatter = new(StringComparer.Ordinal)
    {
        ["/reference"] = "echoed only",
        ["/cabinet/base/stabiliserMm"] = "absent is none: the rack is judged without",
        ["/cabinet/earthBar/crossSectionMm2"] = "no rule goes by it",
        ["/cabinet/earthBar/lengthMm"] = "no rule goes by it",
        ["/cabinet/frontDoor/bonded"] = "the list of bonded parts says it too",
        ["/cabinet/rearDoor/bonded"] = "the list of bonded parts says it too",
        ["/cabinet/lockable"] = "the public has no access",
        ["/cabinet/placement"] = "nothing goes by the surface of a cabinet cooled through its doors",
        ["/cabinet/roof"] = "no fans and no vent in it",
        ["/cabinet/roof/style"] = "no fans and no vent in it",
        ["/cabinet/uprights/hole"] = "no cage nuts are asked for",
        ["/cabinet/uprights/pitchMm"] = "the uprights need not move",
        ["/cooling/filters"] = "no fans",
        ["/pdus/*/groups/*/phase"] = "one phase: there is one line",
        ["/pdus/*/groups/*/breakerA"] = "absent is none: the unit is judged by the breaker before it",
        ["/pdus/*/remoteSwitched"] = "absent is not switched",
        ["/earthing/secondaryEarth"] = "a wish; the studs ask for the bar as well",
        ["/items/*/airflow"] = "absent is none where nothing is said to breathe",
        ["/items/*/airflow/direction"] = "of what moves no air",
        ["/items/*/body/heightMm"] = "a unit is as high as its units unless told",
        ["/items/*/category"] = "what it is for is told by its other members",
        ["/items/*/console"] = "a wish",
        ["/items/*/position/face"] = "the contract's default",
        ["/items/*/power/inrushA"] = "behind a UPS, which takes the inrush of its own",
        ["/items/*/power/typicalW"] = "heat goes by the rated power then",
        ["/items/*/massKg"] = "a blanking panel is not weighed",
        ["/items/*/support"] = "so light that its panel carries it",
        ["/items/*/support/style"] = "so light that its panel carries it",
        ["/items/*/ups/runMinutes"] = "no run time is asked for",
        ["/items/*/ups/runLoadW"] = "no run time is asked for",
        ["/site/delivery"] = "nothing is said of the way in then",
        ["/site/delivery/openings/*/name"] = "it is named by its number then",
        ["/site/requiredIp"] = "a wish",
    };

    [Fact]
    public async Task Nothing_that_matters_goes_in_silence()
    {
        var bay = JsonNode.Parse(Repository.Read("openapi", "examples", "rack-sound.json"))!;

        // Written out: what a part number tells would stand in for what is taken away.
        WithoutPartNumbers(bay);
        var reference = Said((await service.PostAsync(bay.ToJsonString())).Json);
        var silent = new SortedSet<string>(StringComparer.Ordinal);
        var tried = 0;
        foreach (var place in Members(bay, "").ToArray())
        {
            var without = bay.DeepClone();
            var parent = place[..place.LastIndexOf('/')].Split('/').Skip(1).Aggregate(without, static (at, token) => at is JsonArray list ? list[int.Parse(token, System.Globalization.CultureInfo.InvariantCulture)]! : at[token]!);
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
        Assert.Equal(OfNoMatter.Keys.Order(StringComparer.Ordinal), silent);
    }

    private static string Said(JsonNode report) => string.Join(' ', new[] { "verdict", "findings", "notAssessed", "assumptions" }.Select(m => report[m]!.ToJsonString()));

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
