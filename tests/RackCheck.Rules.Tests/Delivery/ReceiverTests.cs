using RackCheck.Model;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class ReceiverTests : RuleTests<Receiver>
{
    [Fact]
    public void Receiver_arranged_passes() => Passes(OnRoute());

    [Fact]
    public void No_receiver_is_advice()
    {
        var rack = OnRoute().Route(d => d with { ReceiverArranged = false });
        var finding = Only(rack);
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/site/delivery/receiverArranged"], finding.Pointers);
        Assert.True(Remedied(rack, finding).Site!.Delivery!.ReceiverArranged);
    }

    [Fact]
    public void Receiver_missing_is_not_assessed()
    {
        ReportsMissing(OnRoute().Route(d => d with { ReceiverArranged = null }), "/site/delivery/receiverArranged");
        Passes(TestRacks.EmptyRack());
    }
}
