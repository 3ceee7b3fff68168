using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Catalogue;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Catalogue;

/// <summary>Doors and earth bar with part numbers of their own: products beside the cabinet's.</summary>
public sealed class CabinetPartTests
{
    [Fact]
    public void Door_and_bar_products_do_not_contradict_cabinet()
    {
        var rack = Rack(c => c with { FrontDoor = Door("QWL-T-FD"), RearDoor = Door("QWL-T-RD"), EarthBar = new EarthBar { PartNumber = "QWL-T-EB" } });
        var cabinet = rack.Description.Cabinet!;
        Assert.Equal((DoorStyle.Solid, 40d, null), (cabinet.FrontDoor!.Style, cabinet.FrontDoor.DepthMm, cabinet.FrontDoor.OpenAreaPercent));
        Assert.Equal((DoorStyle.Glazed, 24), (cabinet.RearDoor!.Style, cabinet.EarthBar!.Terminals));
        Assert.Equal(["/cabinet/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber", "/cabinet/earthBar/partNumber"],
            rack.Filled.Select(f => f.Pointer));
        Assert.Empty(rack.Of<Contradiction>());
        Assert.Empty(rack.Of<UnknownPart>());
        Assert.Equal(["QWL-T-CAB", "QWL-T-EB", "QWL-T-FD", "QWL-T-RD"], ResolvedRack.PartNumbers(rack.Posted).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Door_values_are_compared_with_door_product()
    {
        var rack = Rack(c => c with { FrontDoor = Door("QWL-T-FD") with { DepthMm = 60, Style = DoorStyle.Solid } });
        var finding = Assert.Single(rack.Of<Contradiction>());
        Assert.Equal(["/cabinet/frontDoor/depthMm", "/cabinet/frontDoor/partNumber"], finding.Pointers);
        var report = Judge.Checker.Check(rack);
        Assert.Equal(2, finding.Remedies.Count);
        Assert.All(finding.Remedies, r => Assert.Empty(Judge.Faults(rack, report, finding, r)));
        Assert.Equal(new Door { PartNumber = "QWL-T-FD", Style = DoorStyle.Solid, DepthMm = 40 }, RackPatch.Apply(rack.Posted, finding.Remedies[0])
            .Cabinet!.FrontDoor! with { Bonded = null });
    }

    [Theory]
    [InlineData(601, 42, 0)]
    [InlineData(602, 42, 1)]
    [InlineData(598, 42, 1)]
    [InlineData(600, 41, 1)]
    [InlineData(800, 24, 2)]
    public void A_door_is_made_for_a_cabinet_of_its_size(double widthMm, int heightU, int findings)
    {
        var rack = Rack(_ => new Cabinet { HeightU = heightU, WidthMm = widthMm, DepthMm = 800, FrontDoor = Door("QWL-T-FD") });
        var found = rack.Of<Contradiction>();
        Assert.Equal(findings, found.Length);
        Assert.All(found, f => Assert.Equal("/cabinet/frontDoor/partNumber", f.Pointers[0]));
        var report = Judge.Checker.Check(rack);
        Assert.All(found, f => Assert.All(f.Remedies, r => Assert.Empty(Judge.Faults(rack, report, f, r))));
        Assert.All(found, f => Assert.NotEmpty(f.Remedies));
    }

    [Fact]
    public void Door_of_wrong_kind_or_unknown_is_error()
    {
        var rack = Rack(c => c with
        {
            FrontDoor = Door("QWL-T-RD") with { Style = DoorStyle.Glazed }, RearDoor = Door("QWL-T-EB") with { Style = DoorStyle.Solid },
                EarthBar = new EarthBar { PartNumber = "QWL-NONE" },
        });
        var found = rack.Of<UnknownPart>();
        Assert.Equal(["/cabinet/earthBar/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber"], found.Select(f => f.Pointers[0])
            .Order(StringComparer.Ordinal));
        Assert.Equal(
            ["front-door: rear-door", "rear-door: earth-bar"],
            found.Where(f => f.MessageData.ContainsKey("kind")).Select(f => $"{f.MessageData["neededKind"].Text}: {f.MessageData["kind"].Text}")
                .Order(StringComparer.Ordinal));
        var report = Judge.Checker.Check(rack);
        Assert.All(found, f => Assert.Empty(Judge.Faults(rack, report, f, f.Remedies[0])));
    }

    [Fact]
    public void Door_without_style_leaves_data_missing()
    {
        var rack = Rack(c => c with { RearDoor = Door("QWL-NONE") });
        Assert.Equal(["/cabinet/rearDoor/style"], rack.Missing());
        Assert.NotNull(Assert.Single(rack.Of<UnknownPart>()).NoRemedy);
    }

    [Fact]
    public void Fans_in_the_roof_bring_their_opening_with_them()
    {
        var posted = Rack(c => c with { Roof = new Roof { Style = RoofStyle.Vented } });
        Assert.Equal("/cabinet/roof/style", Assert.Single(posted.Of<Contradiction>()).Pointers[0]);
        var fans = new Model.Cooling { RoofFans = [new FanSet { Count = 1, FreeFlowM3h = 100, MaxPressurePa = 50 }] };
        Assert.Empty(posted.With(posted.Posted with { Cooling = fans }).Of<Contradiction>());
    }

    [Fact]
    public void Door_remedy_keeps_part_number()
    {
        var rack = Rack(c => c with { FrontDoor = Door("QWL-T-FD") with { Bonded = false }, RearDoor = Door("QWL-T-RD") });
        var report = Judge.Checker.Check(rack);
        var finding = Assert.Single(report.Findings, f => f.Pointers.Contains("/cabinet/frontDoor/bonded"));
        Assert.Empty(Judge.Faults(rack, report, finding, finding.Remedies[0]));
        Assert.Equal(Door("QWL-T-FD") with { Bonded = true }, RackPatch.Apply(rack.Posted, finding.Remedies[0]).Cabinet!.FrontDoor);
    }

    [Fact]
    public void New_door_remedy_removes_part_number()
    {
        // Solid in front and glazed behind, 900 W inside: no air comes through.
        var rack = Rack(c => c with { FrontDoor = Door("QWL-T-FD"), RearDoor = Door("QWL-T-RD") }, Parts.Pc("a"), Parts.Pc("b", 6), Parts.Pc("c", 11));
        var report = Judge.Checker.Check(rack);
        var remedies = report.Findings.SelectMany(f => f.Remedies.Select(r => (Finding: f, Remedy: r, RackPatch.Apply(rack.Posted, r).Cabinet)))
            .Where(x => x.Cabinet!.FrontDoor?.PartNumber is null).ToArray();
        Assert.NotEmpty(remedies);
        Assert.All(remedies, x => Assert.Empty(Judge.Faults(rack, report, x.Finding, x.Remedy)));
    }

    private static Door Door(string partNumber) => new() { PartNumber = partNumber };

    private static ResolvedRack Rack(Func<Cabinet, Cabinet> change, params Item[] items) => Parts.Rack(change(new Cabinet { PartNumber = "QWL-T-CAB" }), items);
}
