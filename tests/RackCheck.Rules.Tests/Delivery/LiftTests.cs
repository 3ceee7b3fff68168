using RackCheck.Model;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class LiftTests : RuleTests<Rules.Delivery.Lift>
{
    private static RackDescription Lifted(double? width = 620, double? depth = 820, double? height = 2170, double? rated = 135, double? pc = 10) =>
        OnRoute().Route(d => d with { Lift = new Lift { WidthMm = width, DepthMm = depth, HeightMm = height, RatedKg = rated } })
            .With(Unit("wave-pc", 2).At(1) with { MassKg = pc });

    // 100 + 10 + 25 = 135 kg; 600 x 800 x 2150 and 20 each way (common practice, no source).
    [Fact]
    public void Car_of_required_size_passes() => Passes(Lifted());

    [Fact]
    public void Car_with_sides_swapped_passes() => Passes(Lifted(width: 820, depth: 620));

    [Theory]
    [InlineData(619, 820, 2170, 620, 619, "/site/delivery/lift/widthMm", "/cabinet/widthMm")]
    [InlineData(620, 819, 2170, 820, 819, "/site/delivery/lift/depthMm", "/cabinet/depthMm")]
    [InlineData(820, 619, 2170, 620, 619, "/site/delivery/lift/depthMm", "/cabinet/widthMm")]
    [InlineData(620, 820, 2169, 2170, 2169, "/site/delivery/lift/heightMm", "/cabinet/heightMm")]
    public void Car_too_small_is_error(double width, double depth, double height, double actual, double limit, string pointer, string side)
    {
        var finding = Only(Lifted(width, depth, height));
        Assert.Equal((Severity.Error, true), (finding.Severity, finding.Safety));
        Assert.Equal([pointer, side], finding.Pointers);
        Numbers(finding, actual, limit, "mm");
    }

    [Fact]
    public void Remedies_are_no_pallet_and_another_route()
    {
        var rack = Lifted(height: 2020);
        Assert.Equal(0, Remedied(rack, Only(rack)).Site!.Delivery!.PalletHeightMm);
        rack = Lifted(width: 300, depth: 300);
        Assert.Null(Remedied(rack, Only(rack)).Site!.Delivery!.Lift);
    }

    [Fact]
    public void Mass_above_rating_transports_equipment_separately()
    {
        var rack = Lifted(pc: 11).With(Unit("gauge-amp", 2).At(4).Weighs(1), Unit("flume-daq", 2).At(7).Weighs(30));
        var finding = Only(rack);
        Assert.Equal(["/site/delivery/lift/ratedKg", "/cabinet/massKg"], finding.Pointers);
        Numbers(finding, 167, 135, "kg");
        Assert.Equal("100 + 42 + 25 = 167 > 135", finding.Calculation);
        Assert.False(Remedied(rack, finding).Site!.Delivery!.Loaded);
        Assert.Null(Remedied(rack, finding, 1).Site!.Delivery!.Lift);
        Assert.Equal(["gauge-amp"], Remedied(rack, finding, 2).Items.Select(i => i.Id));
    }

    // The second pointer is the heaviest part: 120 kg of equipment, unless the cabinet of 100 kg is delivered empty.
    [Fact]
    public void Mass_above_rating_names_the_heaviest_part()
    {
        var rack = Lifted(pc: 120, rated: 120);
        Assert.Equal(["/site/delivery/lift/ratedKg", "/items/0/massKg"], Only(rack).Pointers);
        Assert.Equal(["/site/delivery/lift/ratedKg", "/cabinet/massKg"], Only(rack.Route(d => d with { Loaded = false })).Pointers);
    }

    // Of equally heavy items the first by id, wherever it stands in the list.
    [Fact]
    public void Heaviest_of_equals_is_the_first_by_id()
    {
        var rack = Lifted(pc: 120, rated: 120).With(Unit("flume-daq", 2).At(7).Weighs(120));
        Assert.Equal("/items/1/massKg", Only(rack).Pointers[1]);
    }

    [Fact]
    public void Cabinet_delivered_empty_weighs_no_equipment()
    {
        // 100 + 25 = 125 kg; 30 kg of equipment are carried beside it.
        var rack = Lifted(pc: 30, rated: 130);
        Numbers(Only(rack), 155, 130, "kg");
        Passes(rack.Route(d => d with { Loaded = false }));
        var finding = Only(Lifted(pc: 30, rated: 124).Route(d => d with { Loaded = false }));
        Numbers(finding, 125, 124, "kg");
        Assert.Equal("100 + 25 = 125 > 124", finding.Calculation);
        Assert.Contains("cabinet and pallet weigh 125 kg", finding.Message, StringComparison.Ordinal);
        Passes(Lifted(pc: null).Route(d => d with { Loaded = false }));
    }

    [Fact]
    public void Empty_delivery_comes_before_single_items()
    {
        var rack = Lifted(pc: 11).With(Unit("flume-daq", 2).At(7).Weighs(30));
        var finding = Only(rack);
        Assert.Equal([false, null, null], finding.Remedies.Select((_, i) => Remedied(rack, finding, i).Site!.Delivery!.Loaded));
        Assert.Equal([2, 2, 0], finding.Remedies.Select((_, i) => Remedied(rack, finding, i).Items.Count));
    }

    [Fact]
    public void Height_below_mounting_space_is_not_believed()
    {
        // 42U and a base of 150 need 42 x 44.45 + 150 = 2016.9 mm; on the pallet 2166.9 mm.
        var rack = Lifted(height: 2150).Cabinet(c => c with { HeightMm = 1800, Base = new CabinetBase { Style = BaseStyle.Feet, HeightMm = 150 } });
        Numbers(Only(rack), 2186.9, 2150, "mm");
        Assert.Contains(Report(rack).Assumptions, a => a.Pointers.Contains("/cabinet/heightMm") && a.Value == 2016.9);
    }

    [Fact]
    public void Size_and_mass_are_two_findings() => Assert.Equal(2, Findings(Lifted(width: 300, rated: 50)).Select(f => f.Fingerprint).Distinct().Count());

    [Fact]
    public void Sizes_and_masses_missing_are_not_assessed()
    {
        ReportsMissing(Lifted(width: null, rated: null), "/site/delivery/lift/ratedKg", "/site/delivery/lift/widthMm");
        ReportsMissing(Lifted(pc: null), "/items/0/massKg");
        ReportsMissing(Lifted().Cabinet(c => c with { MassKg = null, HeightMm = null }), "/cabinet/heightMm", "/cabinet/massKg");
        Passes(OnRoute());
    }

    [Fact]
    public void Known_values_above_limit_are_reported()
    {
        Numbers(Only(Lifted(pc: null, rated: 100)), 125, 100, "kg");
        Numbers(Only(Lifted(width: 619, depth: null)), 620, 619, "mm");
    }

    [Fact]
    public void Panels_without_mass_count_as_zero() => Passes(Lifted().With(Plate("plate", 1, 10)));

    [Theory]
    [InlineData(21, 1)]
    [InlineData(20, 0)]
    public void Policy_sets_clearance(double clearance, int count) => Assert.Equal(count, Findings(Lifted().Limit(Id, "clearanceMm", clearance)).Count);
}
