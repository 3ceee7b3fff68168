using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>What a client that words findings anew relies on.</summary>
public sealed class MessageDataTests
{
    [Fact]
    public void Message_data_name_has_one_type_in_all_findings()
    {
        var kinds = new System.Collections.Concurrent.ConcurrentDictionary<string, bool>();
        AnyRack.All.Sample(
            rack => Assert.All(Judge.Check(rack).Findings.SelectMany(f => f.MessageData, (f, d) => (f.Rule, d.Key, IsNumber: d.Value.Number is not null)), d =>
                Assert.True(kinds.GetOrAdd(d.Key, d.IsNumber) == d.IsNumber, $"{d.Rule} has {d.Key} otherwise than others")),
            iter: 700,
            print: Wording.Of);
        Assert.True(kinds.Count > 50);
    }

    [Fact]
    public void Every_finding_of_every_generator_is_whole() =>
        AnyRack.All.Sample(
            rack =>
            {
                var request = JsonNode.Parse(Wording.Of(rack))!;
                Assert.All(Judge.Check(rack).Findings, f => FindingShape.Check(f, RuleSet.Default.Find(f.Rule)!, request));
            },
            iter: 1_500,
            print: Wording.Of);
}
