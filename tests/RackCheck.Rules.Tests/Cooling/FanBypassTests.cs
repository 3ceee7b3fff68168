using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// Practice: no source beyond it.
public sealed class FanBypassTests : RuleTests<FanBypass>
{
    private static RackDescription Rack(Door front, Door? rear) =>
        Cool(front, rear).RoofFans(Curved(3)).With(Warm("wave-pc", 1, 500, AirflowDirection.FrontToRear, 200, 35));

    [Fact]
    public void Roof_fans_above_a_perforated_rear_door_are_advice()
    {
        var finding = Only(Rack(Aired, Aired));
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/cooling/roofFans", "/cabinet/rearDoor"], finding.Pointers);
        Assert.Single(Findings(Rack(Aired, Open)));
    }

    [Fact]
    public void Roof_fans_between_perforated_doors_bring_this_advice_alone()
    {
        // Through perforated doors the equipment's own fans set the rise (practice): 4000 W needs far more than the roof fans move at 15 K.
        var pc = Warm("wave-pc", 1, 4000, AirflowDirection.FrontToRear, 900, 35);
        var without = Judge.Checker.Check(Cool(Aired, Aired).With(pc));
        var fans = Cool(Aired, Aired).RoofFans(Curved(1)).With(pc);
        var with = Judge.Checker.Check(fans.Cooled(c => c with { RiseK = null }));
        Assert.DoesNotContain(without.Findings, f => f.Rule == "cooling.airflow");
        Assert.Equal(
            without.Findings.Select(f => f.Rule).Where(r => r.StartsWith("cooling", StringComparison.Ordinal)).Append("cooling.fan-bypass").Order(),
            with.Findings.Select(f => f.Rule).Where(r => r.StartsWith("cooling", StringComparison.Ordinal)).Order());

        // Where the caller sets the rise, the doors are held against it.
        Assert.Contains(Judge.Checker.Check(fans.Cooled(c => c with { RiseK = 5 })).Findings, f => f.Rule == "cooling.airflow");
    }

    [Fact]
    public void Solid_rear_door_or_no_roof_fans_pass()
    {
        Passes(Rack(Aired, Closed));
        Passes(Cool(Aired, Aired).Trays(Curved(3)).With(Warm("wave-pc", 1, 500)));
        Passes(Rack(Aired, Aired).Cabinet(c => c with { SidePanels = false }));
        Passes(Cool(Aired, Aired).RoofFans(Curved(0)).With(Warm("wave-pc", 1, 500)));
    }

    [Fact]
    public void The_rear_door_is_asked_for() => ReportsMissing(Rack(Aired, null), "/cabinet/rearDoor/style");

    [Fact]
    public void Remedies_are_a_solid_rear_door_or_no_fans()
    {
        var rack = Rack(Aired, Aired);
        Assert.Equal(DoorStyle.Solid, Remedied(rack, Only(rack)).Cabinet!.RearDoor!.Style);
        Assert.Null(Remedied(rack, Only(rack), 1).Cooling!.RoofFans);
    }

    [Fact]
    public void No_rule_offers_roof_fans_between_perforated_doors()
    {
        var rack = Cool(Aired, Aired).Cooled(c => c with { RiseK = 5 }).With(Warm("wave-pc", 1, 1000, AirflowDirection.FrontToRear, 200, 35));
        var finding = Assert.Single(Judge.Checker.Check(rack).Findings, f => f.Rule == "cooling.airflow");
        Assert.All(finding.Remedies, r => Assert.DoesNotContain("roof", r.Title, StringComparison.Ordinal));
    }
}
