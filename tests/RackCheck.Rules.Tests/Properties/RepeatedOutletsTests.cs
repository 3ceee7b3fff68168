using CsCheck;
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
    [Fact]
    [Trait("Kind", "property")]
    public void Repeated_outlets_are_those_that_a_search_finds()
    {
        var compared = 0;
        AnyRack.All.Sample(
            rack =>
            {
                var resolved = Judge.Resolve(rack);
                if (resolved.Missing().Count > 0)
                {
                    return;
                }

                var facts = new MissingFacts(resolved, new RackSurvey(resolved));
                foreach (var end in new[] { End.Adverse, End.Favourable, End.Middle })
                {
                    for (var i = -1; i < FactTable.Bounded.Length; i++)
                    {
                        if ((i < 0 || facts.Set.Has(i)) && facts.At(end, i) is { Power.Cords.Length: > 0 } survey)
                        {
                            Assert.Equal(OutletsOf(new RackSurvey(resolved.Completed(survey.Description)).Power), OutletsOf(survey.Power));
                            Interlocked.Increment(ref compared);
                        }
                    }
                }
            },
            iter: Samples.Of(400),
            print: Wording.Of);
        Assert.True(compared > 100, $"{compared}");
    }

    private static IEnumerable<string> OutletsOf(PowerTree power) => power.Cords
        .Select(c => $"{c.Item.Id} {c.Plug} {c.Group?.Unit.Id} {c.Group?.Id} {c.Socket} {c.Switched} {c.WorstWatts}")
        .Append($"{power.IsSearchCutShort}");
}
