using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class ReserveTests : RuleTests<Reserve>
{
    [Theory]
    [InlineData(20, 18)] // two of twenty are a tenth
    [InlineData(42, 37)]
    [InlineData(12, 0)]
    public void Ten_percent_free_passes(int rack, int used) => Passes(EmptyRack(rack).With(used == 0 ? [] : [Unit("wave-pc", used).At(1)]));

    [Theory]
    [InlineData(20, 19, 1, 2)]
    [InlineData(42, 38, 4, 4.2)]
    [InlineData(12, 12, 0, 1.2)]
    public void Less_than_ten_percent_is_advice(int rack, int used, double free, double needed)
    {
        var finding = Only(EmptyRack(rack).With(Unit("wave-pc", used).At(1)));
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/cabinet/heightU"], finding.Pointers);
        Numbers(finding, free, needed, "U");
    }

    [Fact]
    public void U_used_on_both_faces_counts_once() =>
        Passes(EmptyRack(20).With(Unit("wave-pc", 18).At(1), Unit("gauge-amp", 18).At(1, Face.Rear)));

    [Fact]
    public void U_behind_panel_is_free_and_U_of_shelf_load_is_not()
    {
        Passes(EmptyRack(20).With(Unit("wave-pc", 18).At(1), Plate("plate", 2, 19)));
        Numbers(Only(EmptyRack(20).With(Unit("wave-pc", 17).At(1), Shelf("tray", 18), ShelfItem("desk-pc", "tray", height: 50))), 0, 2, "U");
    }

    [Fact]
    public void Horizontal_pdu_occupies_one_U() =>
        Numbers(Only(EmptyRack(20).With(Unit("wave-pc", 18).At(1)).With(Strip("strip", PduMounting.Horizontal, 19))), 1, 2, "U");

    [Theory]
    [InlineData(0, 20, false)]
    [InlineData(25, 15, false)]
    [InlineData(25, 16, true)]
    public void Policy_sets_reserve(double percent, int used, bool found) =>
        Assert.Equal(found, Findings(EmptyRack(20).With(Unit("wave-pc", used).At(1)).Limit(Id, "reservePercent", percent)).Count == 1);

    [Fact]
    public void Smallest_sufficient_cabinet_is_remedy()
    {
        // 18 of 18 U are occupied. A 22U cabinet leaves 4 U; the reserve is 2.2 U.
        var rack = EmptyRack(18).With(Unit("wave-pc", 18).At(1));
        Assert.Equal(22, Remedied(rack, Only(rack)).Cabinet!.HeightU);
    }

    [Fact]
    public void Item_above_top_U_occupies_taller_cabinet()
    {
        // 17 of 18 U are occupied, six more from U19 to U24. A 24U cabinet leaves too few, a 27U cabinet is sufficient.
        var rack = EmptyRack(18).With(Unit("wave-pc", 17).At(1), Unit("tower", 6).At(19));
        Assert.Equal(27, Remedied(rack, Only(rack)).Cabinet!.HeightU);
    }

    [Fact]
    public void TopDown_items_keep_their_place_in_taller_cabinet()
    {
        var rack = EmptyRack(20).TopDown().With(Unit("wave-pc", 19).At(20));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((22, 22), (remedied.Cabinet!.HeightU, remedied.Items[0].Position!.U));
    }

    [Fact]
    public void Tallest_cabinet_has_no_remedy() =>
        Assert.Empty(Only(EmptyRack(60).With(Unit("wave-pc", 59).At(1))).Remedies);

    [Fact]
    public void Reserve_of_100_percent_has_no_remedy() =>
        Assert.Empty(Only(EmptyRack(20).With(Unit("wave-pc", 1).At(1)).Limit(Id, "reservePercent", 100)).Remedies);
}
