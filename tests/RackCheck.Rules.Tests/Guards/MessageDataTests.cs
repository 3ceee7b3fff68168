using CsCheck;
using RackCheck.Rules.Tests.Properties;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>What a client that words findings anew relies on.</summary>
public sealed class MessageDataTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Message_data_name_has_one_type_in_all_findings()
    {
        var kinds = new System.Collections.Concurrent.ConcurrentDictionary<string, bool>();
        AnyRack.All.Sample(
            rack => Assert.All(Judge.Check(rack).Findings.SelectMany(f => f.MessageData, (f, d) => (f.Rule, d.Key, IsNumber: d.Value.Number is not null)), d =>
                Assert.True(kinds.GetOrAdd(d.Key, d.IsNumber) == d.IsNumber, $"{d.Rule} has {d.Key} otherwise than others")),
            iter: Samples.Of(1_400),
            print: Wording.Of);
        Assert.True(kinds.Count > 50);
    }
}
