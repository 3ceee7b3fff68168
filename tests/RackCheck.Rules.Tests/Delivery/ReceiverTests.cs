using RackCheck.Model;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Ways;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class ReceiverTests : RuleTests<Receiver>
{
    [Fact]
    public void Receiver_arranged_passes() => Passes(OnTheWay());

    [Fact]
    public void No_receiver_is_advice()
    {
        var rack = OnTheWay().Way(d => d with { ReceiverArranged = false });
        var finding = Only(rack);
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/site/delivery/receiverArranged"], finding.Pointers);
        Assert.True(Cured(rack, finding).Site!.Delivery!.ReceiverArranged);
    }

    [Fact]
    public void Receiver_missing_is_not_assessed()
    {
        Lacks(OnTheWay().Way(d => d with { ReceiverArranged = null }), "/site/delivery/receiverArranged");
        Passes(Bays.Bay());
    }
}
