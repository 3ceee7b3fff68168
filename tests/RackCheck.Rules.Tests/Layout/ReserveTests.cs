using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class ReserveTests : RuleTests<Reserve>
{
    [Theory]
    [InlineData(20, 18)] // two of twenty are a tenth
    [InlineData(42, 37)]
    [InlineData(12, 0)]
    public void A_tenth_free_passes(int rack, int used) => Passes(Bay(rack).With(used == 0 ? [] : [Unit("wave-pc", used).At(1)]));

    [Theory]
    [InlineData(20, 19, 1, 2)]
    [InlineData(42, 38, 4, 4.2)]
    [InlineData(12, 12, 0, 1.2)]
    public void Less_is_advice(int rack, int used, double free, double needed)
    {
        var finding = Only(Bay(rack).With(Unit("wave-pc", used).At(1)));
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/cabinet/heightU"], finding.Pointers);
        Numbers(finding, free, needed, "U");
    }

    [Fact]
    public void A_unit_taken_on_either_face_is_taken_once() =>
        Passes(Bay(20).With(Unit("wave-pc", 18).At(1), Unit("gauge-amp", 18).At(1, Face.Rear)));

    [Fact]
    public void A_unit_behind_a_plate_is_free_and_one_under_a_thing_on_a_shelf_is_not()
    {
        Passes(Bay(20).With(Unit("wave-pc", 18).At(1), Plate("plate", 2, 19)));
        Numbers(Only(Bay(20).With(Unit("wave-pc", 17).At(1), Shelf("tray", 18), Thing("desk-pc", "tray", height: 50))), 0, 2, "U");
    }

    [Fact]
    public void A_distribution_unit_across_takes_one() =>
        Numbers(Only(Bay(20).With(Unit("wave-pc", 18).At(1)).With(Strip("strip", PduMounting.Horizontal, 19))), 1, 2, "U");

    [Theory]
    [InlineData(0, 20, false)]
    [InlineData(25, 15, false)]
    [InlineData(25, 16, true)]
    public void A_policy_sets_the_share(double percent, int used, bool found) =>
        Assert.Equal(found, Findings(Bay(20).With(Unit("wave-pc", used).At(1)).Limit(Id, "reservePercent", percent)).Count == 1);

    [Fact]
    public void The_least_cabinet_on_sale_with_the_reserve_is_the_remedy()
    {
        // 18 of 18 taken; 22 leave 4, of which 2.2 are the reserve.
        var rack = Bay(18).With(Unit("wave-pc", 18).At(1));
        Assert.Equal(22, Cured(rack, Only(rack)).Cabinet!.HeightU);
    }

    [Fact]
    public void What_hangs_above_the_top_today_takes_units_of_the_higher_cabinet()
    {
        // 16 within 18, six more from 19 to 24: 22 of 24 taken, so 24 keep too few and 27 it is.
        var rack = Bay(18).With(Unit("wave-pc", 17).At(1), Unit("tower", 6).At(19));
        Assert.Equal(27, Cured(rack, Only(rack)).Cabinet!.HeightU);
    }

    [Fact]
    public void Counted_from_the_top_everything_stays_where_it_hangs()
    {
        var rack = Bay(20).TopDown().With(Unit("wave-pc", 19).At(20));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((22, 22), (cured.Cabinet!.HeightU, cured.Items[0].Position!.U));
    }

    [Fact]
    public void The_highest_cabinet_has_no_remedy() =>
        Assert.Empty(Only(Bay(60).With(Unit("wave-pc", 59).At(1))).Remedies);

    [Fact]
    public void A_whole_rack_free_is_never_had() =>
        Assert.Empty(Only(Bay(20).With(Unit("wave-pc", 1).At(1)).Limit(Id, "reservePercent", 100)).Remedies);
}
