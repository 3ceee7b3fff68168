using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Power;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>
/// At the ends of ranges cords keep the outlets of the rack as described, where nothing missing moves a cord. A search from the start gives the same.
/// </summary>
public sealed class RepeatedOutletsTests
{
    // What a UPS loses is drawn by its own cords.
    private const string UpsOfUnknownHeat = """
        {
          "cabinet": { "heightU": 6, "widthMm": 600, "depthMm": 700 },
          "items": [
            {
              "id": "ups", "heightU": 3, "position": { "u": 1 }, "category": "ups", "power": { "ratedW": 350, "plugs": ["C14", "C14", "C14"] },
              "ups": { "ratedW": 500, "feeds": ["behind"] }
            }
          ],
          "supplies": [ { "id": "A", "voltageV": 230, "phases": 3, "ratedA": 32 }, { "id": "B", "voltageV": 230, "phases": 3, "ratedA": 32 } ],
          "pdus": [
            { "id": "behind", "supply": "A", "ratedA": 32, "groups": [ { "id": "g0", "phase": "L2", "outlets": [ { "socket": "C13", "count": 1 } ] } ] },
            {
              "id": "strip", "supply": "B", "ratedA": 16,
              "groups": [
                { "id": "g0", "breakerA": 6, "outlets": [ { "socket": "C13", "count": 5, "switched": true } ] },
                { "id": "g1", "phase": "L2", "breakerA": 16, "outlets": [ { "socket": "C13", "count": 5 } ] }
              ]
            }
          ],
          "site": { "region": "uk" }
        }
        """;

    [Fact]
    [Trait("Kind", "property")]
    public void Repeated_outlets_are_those_that_a_search_finds()
    {
        var compared = 0;
        AnyRack.All.Sample(rack => Interlocked.Add(ref compared, Compared(rack)), iter: Samples.Of(400), print: Wording.Of);
        Assert.True(compared > 100, $"{compared}");
    }

    // The share of a breaker that may be used depends on the region.
    private const string UnknownRegion = """
        {
          "cabinet": { "heightU": 12, "widthMm": 700, "depthMm": 1000 },
          "items": [
            {
              "id": "one", "position": { "u": 3 }, "heightU": 2,
              "power": { "ratedW": 1500, "powerFactor": 1, "plugs": ["C14", "C14", "C14"], "redundant": true }
            },
            { "id": "two", "position": { "u": 9 }, "heightU": 2, "power": { "ratedW": 350, "powerFactor": 0.9, "plugs": ["C14"], "redundant": true } }
          ],
          "supplies": [ { "id": "A", "voltageV": 208, "ratedA": 10, "socket": "IEC60309-16A-3P" } ],
          "pdus": [
            {
              "id": "strip", "supply": "A", "ratedA": 10,
              "groups": [
                { "id": "g1", "phase": "L1", "breakerA": 6, "outlets": [ { "socket": "C15", "count": 2 } ] },
                { "id": "g2", "phase": "L2", "outlets": [ { "socket": "C13", "count": 5 } ] }
              ]
            }
          ]
        }
        """;

    [Theory]
    [InlineData(UpsOfUnknownHeat)]
    [InlineData(UnknownRegion)]
    public void What_moves_cords_is_searched_anew(string rack) =>
        Assert.NotEqual(0, Compared(JsonSerializer.Deserialize(rack, ContractJson.Default.RackDescription)!));

    // The number of surveys compared.
    private static int Compared(RackDescription rack)
    {
        var (resolved, compared) = (Judge.Resolve(rack), 0);
        if (resolved.Missing().Count > 0)
        {
            return 0;
        }

        var facts = new MissingFacts(resolved, new RackSurvey(resolved));
        foreach (var end in new[] { End.Adverse, End.Favourable, End.Middle })
        {
            for (var i = -1; i < FactTable.Bounded.Length; i++)
            {
                if ((i < 0 || facts.Set.Has(i)) && facts.At(end, i) is { Power.Cords.Length: > 0 } survey)
                {
                    Assert.Equal(OutletsOf(new RackSurvey(resolved.Completed(survey.Description)).Power), OutletsOf(survey.Power));
                    compared++;
                }
            }
        }

        return compared;
    }

    private static IEnumerable<string> OutletsOf(PowerTree power) => power.Cords
        .Select(c => $"{c.Item.Id} {c.Plug} {c.Group?.Unit.Id} {c.Group?.Id} {c.Socket} {c.Switched} {c.WorstWatts}")
        .Append($"{power.IsSearchCutShort}");
}
