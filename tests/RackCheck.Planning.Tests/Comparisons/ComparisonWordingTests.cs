using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Comparisons;
using RackCheck.Testing;

namespace RackCheck.Planning.Tests.Comparisons;

/// <summary>A comparison has no sentence of its own; a client words its findings from key and data.</summary>
public sealed class ComparisonWordingTests
{
    private readonly WordingKeys keys = ServedKeys.Make();

    [Fact]
    [Trait("Kind", "property")]
    public void Every_text_of_a_comparison_is_made_from_its_key_and_data() => RackGenerator.AllRacks.Select(RackGenerator.AllRacks).Sample(
        (before, after) =>
        {
            var answer = RackComparison.Of(new ComparedRack(Judge.Check(before), before, null), new ComparedRack(Judge.Check(after), after, null));

            // What content and figures have are ids and paths.
            answer = answer with { Content = null, Figures = [] };
            keys.CheckAnswer(JsonSerializer.Serialize(answer, ContractJson.Default.ComparisonAnswer), Text(before) + Text(after));
        },
        iter: Samples.Of(500));

    private static string Text(RackDescription rack) => JsonSerializer.Serialize(rack, ContractJson.Default.RackDescription);
}
