namespace RackCheck.Engineering.Tests;

public sealed class EarthConductorsTests
{
    [Theory]
    [InlineData(1.5, 1.5)] // handbook H7: S up to 16
    [InlineData(16, 16)] // handbook H7: S up to 16
    [InlineData(16.1, 16)] // handbook H7: 16 up to 35
    [InlineData(25, 16)] // handbook H7: 16 up to 35
    [InlineData(35, 16)] // handbook H7: 16 up to 35
    [InlineData(35.1, 17.55)] // handbook H7: S/2
    [InlineData(50, 25)] // handbook H7: S/2
    [InlineData(95, 47.5)] // handbook H7: S/2
    public void The_least_section_goes_by_the_line_conductor(double line, double least) =>
        Assert.Equal(least, EarthConductors.LeastByLineMm2(line), 1e-12);

    [Fact]
    public void It_never_falls_as_the_line_conductor_grows_and_is_between_half_of_it_and_all_of_it()
    {
        for (var line = 0.1; line < 300; line += 0.1)
        {
            var least = EarthConductors.LeastByLineMm2(line);
            Assert.InRange(least, line / 2.2, line);
            Assert.True(EarthConductors.LeastByLineMm2(line + 0.1) >= least, $"{line}");
        }
    }

    [Theory]
    [InlineData(1000, 0.1, 115, 2.7498066610159824)] // checks.csv 7-14
    [InlineData(230 / 0.35, 0.4, 143, 2.9063890582966128)] // checks.csv 7-15: 657.143 A is 230 V over 0.35 ohm
    [InlineData(3000, 0.1, 143, 6.634148937416181)] // checks.csv 7-16
    [InlineData(6000, 0.02, 115, 7.378505542816148)] // checks.csv 7-17
    [InlineData(0, 5, 143, 0)]
    [InlineData(-0.0, 5, 143, 0)]
    [InlineData(1000, 0, 143, 0)]
    public void The_heat_of_a_fault_asks_for_a_section(double fault, double seconds, double k, double section) =>
        Assert.Equal(section, EarthConductors.AdiabaticMm2(fault, seconds, k), 1e-9);

    [Fact]
    public void A_conductor_of_that_section_is_heated_to_its_last_temperature_and_no_further()
    {
        // Step by step: each step's heat I2 rho(T)/S2 dt goes into the copper, 3.45e-3 J/K mm3; PVC, separate, from 30 to 160 C.
        const double Fault = 3000, Seconds = 0.1;
        const int Steps = 100_000;
        var section = EarthConductors.AdiabaticMm2(Fault, Seconds, EarthConductors.SeparateCopperK);
        var temperature = 30.0;
        for (var step = 0; step < Steps; step++)
        {
            var ohmMm = 17.241e-6 * (234.5 + temperature) / (234.5 + 20);
            temperature += Fault * Fault * ohmMm / (section * section) * (Seconds / Steps) / 3.45e-3;
        }

        // k is rounded up from 142.69, which is worth about one kelvin.
        Assert.InRange(temperature, 160, 161.5);
    }

    [Theory]
    [InlineData(EarthConductors.CabledCopperK, 70, 160, 114.83612782557213)] // checks.csv 7-05
    [InlineData(EarthConductors.SeparateCopperK, 30, 160, 142.68607781319076)] // checks.csv 7-07
    public void Each_k_is_that_of_copper_between_its_temperatures(double k, double from, double to, double exact)
    {
        // IEC 60364-5-54 annex: k = sqrt(Qc (B + 20)/rho20 ln((B + tf)/(B + ti))).
        var found = Math.Sqrt(3.45e-3 * (234.5 + 20) / 17.241e-6 * Math.Log((234.5 + to) / (234.5 + from)));
        Assert.Equal(exact, found, 1e-9);
        Assert.Equal(k, Math.Round(found));
    }

    [Theory]
    [InlineData(2, 2.5, 13.7928)] // checks.csv 7-01
    [InlineData(3, 4, 12.93075)] // checks.csv 7-02
    [InlineData(5, 6, 14.3675)] // checks.csv 7-03
    [InlineData(10, 16, 10.775625)] // checks.csv 7-04
    [InlineData(0, 16, 0)]
    public void A_conductor_has_the_resistance_of_copper(double length, double section, double milliohm) =>
        Assert.Equal(milliohm, 1000 * EarthConductors.ResistanceOhm(length, section), 1e-4);

    [Fact]
    public void The_longest_path_of_the_least_protected_section_is_as_long_as_the_handbook_says() =>
        Assert.Equal(EarthConductors.MostPathOhm, EarthConductors.ResistanceOhm(14.500319007018158, EarthConductors.LeastProtectedMm2), 1e-12); // checks.csv 7-27

    [Fact]
    public void Copper_conducts_as_the_standard_of_resistance_says() =>
        Assert.Equal(1 / 58.0, EarthConductors.CopperOhmMm2PerM, 1e-6); // handbook-detail 7: 1/58

    [Fact]
    public void Stranded_conductors_of_the_cable_table_resist_a_little_more_than_their_nominal_copper() =>
        Assert.All(Cables.All, c => Assert.InRange(c.ResistanceMilliohmPerM / (1000 * EarthConductors.ResistanceOhm(1, c.CrossSectionMm2)), 1.0, 1.08));

    [Theory]
    [InlineData(30, 9)] // checks.csv 7-18
    [InlineData(100, 30)] // checks.csv 7-19
    [InlineData(300, 90)] // checks.csv 7-20
    public void Standing_leakage_may_take_three_tenths_of_an_rcd(double rated, double leakage) =>
        Assert.Equal(leakage, rated * EarthConductors.RcdSharePercent / 100, 1e-12);

    [Theory]
    [InlineData(0.75, 12)] // checks.csv 7-24
    [InlineData(1, 9)] // checks.csv 7-25
    [InlineData(3.5, 2)] // checks.csv 7-26
    public void So_many_items_go_on_an_rcd_of_30_mA(double each, double items) =>
        Assert.Equal(items, Math.Floor(30 * EarthConductors.RcdSharePercent / 100 / each));

    [Theory]
    [InlineData(0, 1.5)]
    [InlineData(2.5, 2.5)]
    [InlineData(6.634, 10d)] // checks.csv 7-16
    [InlineData(17.5, 25d)] // handbook H7: half of 35
    [InlineData(120.1, 150d)]
    [InlineData(1000, 1000d)]
    [InlineData(1000.1, null)]
    public void The_next_section_on_offer_is_no_less_than_what_is_asked_for(double least, double? section) =>
        Assert.Equal(section, EarthConductors.NextSectionMm2(least));

    [Fact]
    public void Sections_and_ratings_on_offer_rise_and_hold_those_of_the_cable_table()
    {
        Assert.Equal(EarthConductors.SectionsMm2.Order().Distinct(), EarthConductors.SectionsMm2);
        Assert.Equal(EarthConductors.RcdRatingsMa.Order().Distinct(), EarthConductors.RcdRatingsMa);
        Assert.All(Cables.All, c => Assert.Contains(c.CrossSectionMm2, EarthConductors.SectionsMm2));

        // Value from memory: the series of preferred numbers R10, which the sections round, grows by about a quarter a step, the small ones by up to two thirds.
        Assert.All(EarthConductors.SectionsMm2.Zip(EarthConductors.SectionsMm2.Skip(1)), p => Assert.InRange(p.Second / p.First, 1.2, 1.7));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NegativeInfinity)]
    public void A_section_under_nothing_throws(double least) => Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.NextSectionMm2(least));

    [Fact]
    public void Limits_are_those_of_the_handbook()
    {
        // Handbook H7; the times from handbook-detail 7.
        Assert.Equal((2.5, 4), (EarthConductors.LeastProtectedMm2, EarthConductors.LeastUnprotectedMm2));
        Assert.Equal((3.5, 10, 10), (EarthConductors.SecuredFromMa, EarthConductors.HighIntegrityFromMa, EarthConductors.HighIntegrityMm2));
        Assert.Equal((0.1, 5), (EarthConductors.AdiabaticFromS, EarthConductors.AdiabaticToS));
        Assert.Equal(0.1, EarthConductors.MostPathOhm);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-16)]
    [InlineData(double.NaN)]
    public void A_line_conductor_that_is_none_throws(double line) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.LeastByLineMm2(line));

    [Theory]
    [InlineData(-1, 0.1, 143)]
    [InlineData(1000, -0.1, 143)]
    [InlineData(1000, 0.1, 0)]
    [InlineData(1000, 0.1, -143)]
    [InlineData(double.NaN, 0.1, 143)]
    [InlineData(1000, double.NaN, 143)]
    [InlineData(1000, 0.1, double.NaN)]
    public void A_fault_that_is_none_throws(double fault, double seconds, double k) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.AdiabaticMm2(fault, seconds, k));

    [Theory]
    [InlineData(-1, 6)]
    [InlineData(5, 0)]
    [InlineData(5, -6)]
    [InlineData(double.NaN, 6)]
    [InlineData(5, double.NaN)]
    public void A_conductor_that_is_none_throws(double length, double section) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthConductors.ResistanceOhm(length, section));
}
