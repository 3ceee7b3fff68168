using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class OutsideRackTests : RuleTests<OutsideRack>
{
    [Theory]
    [InlineData(1)]
    [InlineData(39)]
    public void Item_inside_rack_passes(int unit) => Passes(EmptyRack(42).With(Unit("wave-pc", 4).At(unit)));

    [Theory]
    [InlineData(40, 43, 42)]
    [InlineData(43, 46, 42)]
    [InlineData(200, 203, 42)]
    public void Item_above_top_U_is_error(int unit, double actual, double limit)
    {
        var finding = Only(EmptyRack(42).With(Unit("wave-pc", 4).At(unit)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0/position"], finding.Pointers);
        Numbers(finding, actual, limit, "U");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void Item_below_U1_is_error(int unit) =>
        Numbers(Only(EmptyRack(42).With(Unit("wave-pc", 4).At(unit))), unit, 1, "U");

    [Theory]
    [InlineData(42)] // the lowest place: U39 to U42 from the top
    [InlineData(4)] // the highest place: U1 to U4 from the top
    public void TopDown_item_inside_rack_passes(int unit) =>
        Passes(EmptyRack(42).TopDown().With(Unit("wave-pc", 4).At(unit)));

    [Fact]
    public void TopDown_item_outside_rack_is_error()
    {
        var above = Only(EmptyRack(42).TopDown().With(Unit("wave-pc", 4).At(3)));
        Numbers(above, 43, 42, "U");
        Assert.Equal("0, 3", above.MessageData["units"].ToString());

        var below = Only(EmptyRack(42).TopDown().With(Unit("wave-pc", 4).At(43)));
        Numbers(below, 0, 1, "U");
        Assert.Equal("40, 43", below.MessageData["units"].ToString());
    }

    [Fact]
    public void Item_higher_than_cabinet_gets_taller_cabinet()
    {
        var rack = EmptyRack(6).With(Unit("tower", 8).At(1));
        Assert.Equal(15, Remedied(rack, Only(rack)).Cabinet!.HeightU);
    }

    [Theory]
    [InlineData(13, true)]
    [InlineData(12, false)]
    public void Horizontal_pdu_is_checked(int unit, bool found)
    {
        var findings = Findings(EmptyRack(12).With(Strip("strip", PduMounting.Horizontal, unit)));
        Assert.Equal(found ? ["/pdus/0/position"] : [], findings.SelectMany(f => f.Pointers));
    }

    [Fact]
    public void Vertical_pdu_is_not_checked() => Passes(EmptyRack(12).With(Strip("strip", PduMounting.Vertical, 13)));

    [Fact]
    public void Item_and_pdu_of_same_id_are_separate_findings()
    {
        var rack = EmptyRack(12).With(Unit("a", 1).At(13)).With(Strip("a", PduMounting.Horizontal, 13, Face.Rear));
        Assert.Equal(2, Findings(rack).Select(f => f.Fingerprint).Distinct().Count());
    }

    [Fact]
    public void Shelf_load_is_not_checked() =>
        Passes(EmptyRack(12).With(Shelf("tray", 4), Unit("wave-pc", 4) with { OnShelf = "tray", Position = new Position { U = 99 } }));

    [Fact]
    public void Item_moves_to_nearest_free_U_on_same_face()
    {
        var rack = EmptyRack(42).With(Unit("gauge-pc", 2).At(41), Unit("wave-pc", 4).At(39, Face.Rear), Unit("flume-daq", 4).At(41));
        var finding = Only(rack);
        Assert.Equal(new Position { U = 37, Face = Face.Front }, Remedied(rack, finding).Items[2].Position);
    }

    [Fact]
    public void Taller_cabinet_keeps_other_items_in_place()
    {
        var rack = EmptyRack(12).TopDown().Cabinet(c => c with { HeightMm = 700 }).With(Unit("wave-pc", 12).At(12), Unit("gauge-amp", 2).At(0));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(15, remedied.Cabinet!.HeightU);
        Assert.Equal(700 + (3 * 44.45), remedied.Cabinet.HeightMm!.Value, 1e-9);
        Assert.Equal(15, remedied.Items[0].Position!.U);
        Assert.Equal(3, remedied.Items[1].Position!.U);
    }

    [Fact]
    public void Full_tallest_cabinet_unplaces_or_removes_item()
    {
        var rack = EmptyRack(60).With(Unit("wave-pc", 60).At(1), Unit("gauge-amp", 2).At(61));
        var finding = Only(rack);
        Assert.Null(Remedied(rack, finding).Items[1].Position);
        Assert.Equal(["wave-pc"], RackPatch.Apply(rack, finding.Remedies[1]).Items.Select(i => i.Id));
    }
}
