namespace RackCheck.Engineering.Tests;

public sealed class CablesTests
{
    [Theory]
    [InlineData(1.5, 29, 12.1)] // BS 7671 table 4D2B and IEC 60228 class 2, this row and the following
    [InlineData(2.5, 18, 7.41)]
    [InlineData(4, 11, 4.61)]
    [InlineData(6, 7.3, 3.08)]
    [InlineData(10, 4.4, 1.83)]
    [InlineData(16, 2.8, 1.15)]
    public void VoltageDrop_and_resistance_match_reference_values(double section, double drop, double resistance)
    {
        var cable = Cables.Find(section);
        Assert.NotNull(cable);
        Assert.Equal((section, drop, resistance), (cable.CrossSectionMm2, cable.DropMvPerAM, cable.ResistanceMilliohmPerM));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2.49)]
    [InlineData(25)]
    [InlineData(-1.5)]
    [InlineData(double.NaN)]
    public void Area_outside_table_is_not_found(double section) => Assert.Null(Cables.Find(section));

    [Fact]
    public void Area_is_found_despite_binary_rounding() => Assert.Same(Cables.Find(1.5), Cables.Find(0.1 * 3 * 5));

    [Theory]
    [InlineData(1.5, 28.95442043222004)] // IEC 60228
    [InlineData(2.5, 17.731591355599214)] // IEC 60228
    [InlineData(4, 11.031394891944991)] // IEC 60228
    [InlineData(6, 7.370216110019647)] // IEC 60228
    [InlineData(10, 4.379056974459726)] // IEC 60228
    [InlineData(16, 2.751866404715128)] // IEC 60228
    public void VoltageDrop_equals_resistance_at_70_C_to_two_digits(double section, double hot)
    {
        var cable = Cables.Find(section)!;
        Assert.Equal(hot, HotLoopMilliohmPerM(cable), 1e-9);

        // The table has 7.3 for 6 mm2, the resistance gives 7.37. The table value is used.
        Assert.Equal(section == 6 ? 7.3 : TwoFigures(hot), cable.DropMvPerAM, 1e-9);
        Assert.InRange(cable.DropMvPerAM / hot, 0.985, 1.02);
    }

    [Fact]
    public void Larger_area_has_lower_drop_and_higher_capacity() =>
        Assert.All(Cables.All.Zip(Cables.All.Skip(1)), p =>
        {
            Assert.True(p.First.CrossSectionMm2 < p.Second.CrossSectionMm2);
            Assert.True(p.First.DropMvPerAM > p.Second.DropMvPerAM);
            Assert.True(p.First.ResistanceMilliohmPerM > p.Second.ResistanceMilliohmPerM);
            Assert.True(p.First.CapacityA < p.Second.CapacityA);
        });

    [Fact]
    public void Capacity_matches_table_and_falls_per_square_millimetre()
    {
        // BS 7671 table 4D2A, reference method C, two loaded conductors, value from memory.
        Assert.Equal([19.5, 27, 36, 46, 63, 85], Cables.All.Select(c => c.CapacityA));
        Assert.All(
            Cables.All.Zip(Cables.All.Skip(1)),
            p => Assert.True(p.First.CapacityA / p.First.CrossSectionMm2 > p.Second.CapacityA / p.Second.CrossSectionMm2));
    }

    [Theory]
    [InlineData(2.5, 18, 16, 5.184, 2.253913043478261)] // BS 7671 table 4D2B
    [InlineData(4, 25, 20, 5.5, 2.391304347826087)] // BS 7671 table 4D2B
    [InlineData(6, 30, 32, 7.008, 3.0469565217391303)] // BS 7671 table 4D2B
    public void VoltageDrop_single_phase_is_table_value_times_length_and_current(
        double section,
        double length,
        double current,
        double drop,
        double percentOf230)
    {
        var found = Cables.DropV(Cables.Find(section)!.DropMvPerAM, length, current, 1);
        Assert.Equal(drop, found, 1e-9);
        Assert.Equal(percentOf230, 100 * found / 230, 1e-9);
    }

    [Fact]
    public void VoltageDrop_three_phase_is_root_three_times_one_conductor()
    {
        foreach (var cable in Cables.All)
        {
            // Line to line: sqrt(3) I R; single phase over both conductors: 2 I R.
            var oneConductor = cable.DropMvPerAM / 2;
            Assert.Equal(1, Cables.DropV(cable.DropMvPerAM, 20, 16, 3) / (Math.Sqrt(3) * oneConductor * 20 * 16 / 1000), 1e-4);
        }
    }

    [Theory]
    [InlineData(1.5, 25)] // BS 7671 table 4D2A, reference method C, this row and the following
    [InlineData(2.5, 15)]
    [InlineData(4, 9.5)]
    [InlineData(6, 6.4)]
    [InlineData(10, 3.8)]
    [InlineData(16, 2.4)]
    public void VoltageDrop_three_phase_is_within_5_percent_of_standard(double section, double column) =>
        Assert.InRange(Cables.DropV(Cables.Find(section)!.DropMvPerAM, 1, 1000, 3) / column, 0.98, 1.05);

    [Theory]
    [InlineData(0, 16)]
    [InlineData(18, 0)]
    [InlineData(-0.0, 16)]
    public void VoltageDrop_without_length_or_current_is_zero(double length, double current) => Assert.Equal(0, Cables.DropV(18, length, current, 1), 1e-12);

    [Theory]
    [InlineData(-18, 18, 16, 1)]
    [InlineData(18, -18, 16, 1)]
    [InlineData(18, 18, -16, 1)]
    [InlineData(double.NaN, 18, 16, 1)]
    [InlineData(18, double.NaN, 16, 1)]
    [InlineData(18, 18, double.NaN, 1)]
    [InlineData(18, 18, 16, 0)]
    [InlineData(18, 18, 16, 2)]
    [InlineData(18, 18, 16, -1)]
    public void Cable_out_of_range_throws(double drop, double length, double current, int phases) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Cables.DropV(drop, length, current, phases));

    // Two legs in parallel, each of half the length: 1 / (1/30 + 1/30) = 15 m; On-Site Guide to BS 7671, value from memory.
    [Theory]
    [InlineData(60, true, 15)]
    [InlineData(60, false, 60)]
    [InlineData(0, true, 0)]
    public void Far_point_of_a_ring_is_a_quarter_away(double length, bool ring, double loop) =>
        Assert.Equal(loop, Cables.LoopLengthM(length, ring), 1e-12);

    [Fact]
    public void Negative_length_of_a_ring_throws() => Assert.Throws<ArgumentOutOfRangeException>(() => Cables.LoopLengthM(-1, true));

    // IEC 60228 gives the resistance at 20 C. Extrapolated, copper has zero resistance at -234.5 C.
    private static double HotLoopMilliohmPerM(CopperCable cable) => 2 * cable.ResistanceMilliohmPerM * (234.5 + 70) / (234.5 + 20);

    private static double TwoFigures(double value) => value >= 10 ? Math.Round(value) : Math.Round(value, 1);
}
