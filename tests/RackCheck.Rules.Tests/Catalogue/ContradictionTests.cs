using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Catalogue;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Catalogue;

public sealed class ContradictionTests : RuleTests<Contradiction>
{
    // rules.md: a value that differs from the catalogue's by more than 1 % or 1 mm.
    [Theory]
    [InlineData(450, false)]
    [InlineData(451, false)]
    [InlineData(449, false)]
    [InlineData(451.5, true)]
    [InlineData(448.9, true)]
    public void A_length_may_differ_by_a_millimetre(double depthMm, bool isFound) =>
        Assert.Equal(isFound ? 1 : 0, Parts.Rack(Parts.Pc("a") with { Body = new Body { DepthMm = depthMm } }).Of<Contradiction>().Length);

    [Theory]
    [InlineData(15, false)]
    [InlineData(15.15, false)]
    [InlineData(14.85, false)]
    [InlineData(15.16, true)]
    [InlineData(14.84, true)]
    [InlineData(0, true)]
    public void Another_number_by_one_percent(double massKg, bool isFound) =>
        Assert.Equal(isFound ? 1 : 0, Parts.Rack(Parts.Pc("a") with { MassKg = massKg }).Of<Contradiction>().Length);

    [Fact]
    public void Given_value_is_used_and_either_remedy_clears_it()
    {
        var rack = Parts.Rack(Parts.Pc("a") with { MassKg = 40 });
        Assert.Equal(40, rack.Description.Items[0].MassKg);
        var report = Judge.Checker.Check(rack);
        var finding = Assert.Single(rack.Of<Contradiction>());
        Assert.Equal((Severity.Warning, "/items/0/massKg"), (finding.Severity, finding.Pointers[0]));
        Assert.Equal((new Quantity { Value = 40, Unit = "kg" }, new Quantity { Value = 15.15, Unit = "kg" }), (finding.Actual, finding.Limit));
        Assert.Equal(2, finding.Remedies.Count);
        Assert.All(finding.Remedies, r => Assert.Empty(Judge.Faults(rack, report, finding, r)));
        Assert.Equal(15, RackPatch.Apply(rack.Posted, finding.Remedies[0]).Items[0].MassKg);
        var other = RackPatch.Apply(rack.Posted, finding.Remedies[1]).Items[0];
        Assert.Equal((null, 40d, 4, 450d), (other.PartNumber, other.MassKg, other.HeightU, other.Body!.DepthMm));
    }

    // Common practice, no source: an inlet takes a cord with the plug of the country; equipment for two feeds can be fed once.
    [Theory]
    [InlineData(ConnectorCode.Bs1363, false)]
    [InlineData(ConnectorCode.Cee77, false)]
    [InlineData(ConnectorCode.C16, true)]
    public void Cord_with_a_mains_plug_is_no_contradiction(ConnectorCode plug, bool isFound) =>
        Assert.Equal(isFound ? 1 : 0, Parts.Rack(Parts.Pc("a") with { Power = new ItemPower { Plugs = [plug] } }).Of<Contradiction>().Length);

    [Fact]
    public void Words_lists_and_truth_values_are_compared_too()
    {
        Assert.Equal("/items/0/power/plugs", Assert.Single(Parts.Rack(Parts.Pc("a") with { Power = new ItemPower { Plugs = [ConnectorCode.C20] } })
            .Of<Contradiction>()).Pointers[0]);
        Assert.Empty(Parts.Rack(Parts.Pc("a") with { Power = new ItemPower { Plugs = [ConnectorCode.C14] } }).Of<Contradiction>());
        var finding = Assert.Single(Parts.Rack(Parts.Pc("a") with { Airflow = new Airflow { Direction = AirflowDirection.Side } }).Of<Contradiction>());
        Assert.Equal(("side", "front-to-rear"), (finding.MessageData["given"].Text, finding.MessageData["catalogueValue"].Text));
        Assert.Equal("/cabinet/frontDoor/style", Assert.Single(Parts.Rack(new Cabinet { PartNumber = "QWL-T-CAB",
            FrontDoor = new Door { Style = DoorStyle.Solid } }, []).Of<Contradiction>()).Pointers[0]);
        Assert.Equal(
            "/pdus/0/ratedA",
            Assert.Single(Parts.Rack(new Cabinet { PartNumber = "QWL-T-CAB" }, [], new Pdu { Id = "s", Supply = "A", PartNumber = "QWL-T-DU", RatedA = 10 })
                .Of<Contradiction>()).Pointers[0]);
    }

    [Fact]
    public void Options_are_no_contradiction() =>
        Assert.Empty(Parts.Rack(Parts.Pc("a") with { Description = "other words", Console = true, Fixing = Fixing.CageNut,
            Cables = [new CableBundle { Count = 3, DiameterMm = 6 }], Support = new Support { Style = SupportStyle.Panel } }).Of<Contradiction>());

    [Fact]
    public void Each_value_is_a_finding_of_its_own()
    {
        var found = Parts.Rack(Parts.Pc("a") with { MassKg = 1, HeightU = 3 }, Parts.Pc("b", 10) with { MassKg = 2 }).Of<Contradiction>();
        Assert.Equal(["/items/0/heightU", "/items/0/massKg", "/items/1/massKg"], found.Select(f => f.Pointers[0]));
        Assert.Equal(3, found.Select(f => f.Fingerprint).Distinct().Count());
    }
}
