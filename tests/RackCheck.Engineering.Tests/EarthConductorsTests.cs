namespace RackCheck.Engineering.Tests;

public sealed class EarthConductorsTests
{
    [Theory]
    [InlineData(1.5, 1.5)] // IEC 60364-5-54: S up to 16
    [InlineData(16, 16)] // IEC 60364-5-54: S up to 16
    [InlineData(16.1, 16)] // IEC 60364-5-54: 16 up to 35
    [InlineData(25, 16)] // IEC 60364-5-54: 16 up to 35
    [InlineData(35, 16)] // IEC 60364-5-54: 16 up to 35
    [InlineData(35.1, 17.55)] // IEC 60364-5-54: S/2
    [InlineData(50, 25)] // IEC 60364-5-54: S/2
    [InlineData(95, 47.5)] // IEC 60364-5-54: S/2
    public void Minimum_area_by_line_conductor_matches_table(double line, double least) =>
        Assert.Equal(least, EarthConductors.LeastByLineMm2(line), 1e-12);

    [Fact]
    public void Minimum_area_never_falls_and_is_half_to_all_of_line_conductor()
    {
        for (var line = 0.1; line < 300; line += 0.1)
        {
            var least = EarthConductors.LeastByLineMm2(line);
            Assert.InRange(least, line / 2.2, line);
            Assert.True(EarthConductors.LeastByLineMm2(line + 0.1) >= least, $"{line}");
        }
    }

    [Theory]
    [InlineData(1000, 0.1, 115, 2.7498066610159824)] // IEC 60364-5-54
    [InlineData(230 / 0.35, 0.4, 143, 2.9063890582966128)] // IEC 60364-5-54: 657.143 A is 230 V over 0.35 ohm
    [InlineData(3000, 0.1, 143, 6.634148937416181)] // IEC 60364-5-54
    [InlineData(6000, 0.02, 115, 7.378505542816148)] // IEC 60364-5-54
    [InlineData(0, 5, 143, 0)]
    [InlineData(-0.0, 5, 143, 0)]
    [InlineData(1000, 0, 143, 0)]
    public void Adiabatic_area_matches_reference_values(double fault, double seconds, double k, double section) =>
        Assert.Equal(section, EarthConductors.AdiabaticMm2(fault, seconds, k), 1e-9);

    [Fact]
    public void Conductor_of_adiabatic_area_reaches_final_temperature()
    {
        // In time steps: the heat I2 rho(T)/S2 dt warms the copper, 3.45e-3 J/K mm3; separate PVC-insulated conductor from 30 to 160 C.
        const double Fault = 3000, Seconds = 0.1;
        const int Steps = 100_000;
        var section = EarthConductors.AdiabaticMm2(Fault, Seconds, EarthConductors.SeparateCopperK);
        var temperature = 30.0;
        for (var step = 0; step < Steps; step++)
        {
            var ohmMm = 17.241e-6 * (234.5 + temperature) / (234.5 + 20);
            temperature += Fault * Fault * ohmMm / (section * section) * (Seconds / Steps) / 3.45e-3;
        }

        // k is rounded up from 142.69, a difference of about 1 K.
        Assert.InRange(temperature, 160, 161.5);
    }

    [Theory]
    [InlineData(EarthConductors.CabledCopperK, 70, 160, 114.83612782557213)] // IEC 60364-5-54
    [InlineData(EarthConductors.SeparateCopperK, 30, 160, 142.68607781319076)] // IEC 60364-5-54
    public void K_matches_copper_between_its_temperatures(double k, double from, double to, double exact)
    {
        // IEC 60364-5-54 annex: k = sqrt(Qc (B + 20)/rho20 ln((B + tf)/(B + ti))).
        var found = Math.Sqrt(3.45e-3 * (234.5 + 20) / 17.241e-6 * Math.Log((234.5 + to) / (234.5 + from)));
        Assert.Equal(exact, found, 1e-9);
        Assert.Equal(k, Math.Round(found));
    }

    [Theory]
    [InlineData(2, 2.5, 13.7928)] // IEC 60028
    [InlineData(3, 4, 12.93075)] // IEC 60028
    [InlineData(5, 6, 14.3675)] // IEC 60028
    [InlineData(10, 16, 10.775625)] // IEC 60028
    [InlineData(0, 16, 0)]
    public void Resistance_matches_copper(double length, double section, double milliohm) =>
        Assert.Equal(milliohm, 1000 * EarthConductors.ResistanceOhm(length, section), 1e-4);

    [Fact]
    public void Longest_lead_of_minimum_area_matches_reference_value() =>
        Assert.Equal(
            EarthConductors.MostPathOhm,
            EarthConductors.ResistanceOhm(14.500319007018158, EarthConductors.LeastProtectedMm2), // IEC 60028
            1e-12);

    [Fact]
    public void Resistivity_matches_IEC_60028() =>
        Assert.Equal(1 / 58.0, EarthConductors.CopperOhmMm2PerM, 1e-6); // IEC 60028: 1/58

    [Fact]
    public void Stranded_conductors_have_slightly_more_resistance_than_copper() =>
        Assert.All(Cables.All, c => Assert.InRange(c.ResistanceMilliohmPerM / (1000 * EarthConductors.ResistanceOhm(1, c.CrossSectionMm2)), 1.0, 1.08));

    [Theory]
    [InlineData(30, 9)] // BS 7671 531.3.2
    [InlineData(100, 30)] // BS 7671 531.3.2
    [InlineData(300, 90)] // BS 7671 531.3.2
    public void Standing_leakage_limit_is_30_percent_of_rcd_rating(double rated, double leakage) =>
        Assert.Equal(leakage, rated * EarthConductors.RcdSharePercent / 100, 1e-12);

    [Theory]
    [InlineData(0.75, 12)] // BS 7671 531.3.2
    [InlineData(1, 9)] // BS 7671 531.3.2
    [InlineData(3.5, 2)] // BS 7671 531.3.2
    public void Maximum_number_of_items_on_30_mA_rcd(double each, double items) =>
        Assert.Equal(items, Math.Floor(30 * EarthConductors.RcdSharePercent / 100 / each));

    [Theory]
    [InlineData(0, 1.5)]
    [InlineData(2.5, 2.5)]
    [InlineData(6.634, 10d)] // IEC 60364-5-54
    [InlineData(17.5, 25d)] // IEC 60364-5-54: half of 35
    [InlineData(120.1, 150d)]
    [InlineData(1000, 1000d)]
    [InlineData(1000.1, null)]
    public void Next_nominal_area_is_at_least_required_area(double least, double? section) =>
        Assert.Equal(section, EarthConductors.NextSectionMm2(least));

    [Fact]
    public void Nominal_areas_and_ratings_ascend_and_include_cable_table()
    {
        Assert.Equal(EarthConductors.SectionsMm2.Order().Distinct(), EarthConductors.SectionsMm2);
        Assert.Equal(EarthConductors.RcdRatingsMa.Order().Distinct(), EarthConductors.RcdRatingsMa);
        Assert.All(Cables.All, c => Assert.Contains(c.CrossSectionMm2, EarthConductors.SectionsMm2));

        // Value from memory: the areas are rounded from the R10 series of preferred numbers. Steps are about a quarter, for small areas up to two thirds.
        Assert.All(EarthConductors.SectionsMm2.Zip(EarthConductors.SectionsMm2.Skip(1)), p => Assert.InRange(p.Second / p.First, 1.2, 1.7));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NegativeInfinity)]
    public void Negative_area_throws(double least) => Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.NextSectionMm2(least));

    [Fact]
    public void Limits_match_reference_values()
    {
        // BS 7671 543.7 and 531.3.2, IEC 60364-5-54.
        Assert.Equal((2.5, 4), (EarthConductors.LeastProtectedMm2, EarthConductors.LeastUnprotectedMm2));
        Assert.Equal((3.5, 10, 10), (EarthConductors.SecuredFromMa, EarthConductors.HighIntegrityFromMa, EarthConductors.HighIntegrityMm2));
        Assert.Equal((0.1, 5), (EarthConductors.AdiabaticFromS, EarthConductors.AdiabaticToS));
        Assert.Equal(0.1, EarthConductors.MostPathOhm);
    }

    [Theory]
    [InlineData(16, 2.5)] // BS 7671 543.7.1.202, value from memory
    [InlineData(16.1, 4)]
    [InlineData(32, 4)]
    [InlineData(63, 4)]
    public void Industrial_plug_needs_an_earth_conductor_by_its_rating(double plugA, double least) =>
        Assert.Equal(least, EarthConductors.LeastByIndustrialPlugMm2(plugA));

    [Theory]
    [InlineData(0)]
    [InlineData(-16)]
    [InlineData(double.NaN)]
    public void Plug_out_of_range_throws(double plugA) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.LeastByIndustrialPlugMm2(plugA));

    [Theory]
    [InlineData(0)]
    [InlineData(-16)]
    [InlineData(double.NaN)]
    public void Line_conductor_out_of_range_throws(double line) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.LeastByLineMm2(line));

    [Theory]
    [InlineData(-1, 0.1, 143)]
    [InlineData(1000, -0.1, 143)]
    [InlineData(1000, 0.1, 0)]
    [InlineData(1000, 0.1, -143)]
    [InlineData(double.NaN, 0.1, 143)]
    [InlineData(1000, double.NaN, 143)]
    [InlineData(1000, 0.1, double.NaN)]
    public void Fault_out_of_range_throws(double fault, double seconds, double k) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.AdiabaticMm2(fault, seconds, k));

    [Theory]
    [InlineData(-1, 6)]
    [InlineData(5, 0)]
    [InlineData(5, -6)]
    [InlineData(double.NaN, 6)]
    [InlineData(5, double.NaN)]
    public void Conductor_out_of_range_throws(double length, double section) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.ResistanceOhm(length, section));
}
