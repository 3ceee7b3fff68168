namespace RackCheck.Engineering.Tests;

public sealed class AllowancesTests
{
    [Theory]
    [InlineData(600, 38.7)] // common practice: (600 - 482.6)/2 - 20
    [InlineData(800, 138.7)] // common practice
    [InlineData(700, 88.7)] // common practice
    [InlineData(522.6, 0)]
    [InlineData(500, 0)]
    public void SideChannel_width_matches_reference_values(double width, double channel) =>
        Assert.Equal(channel, Allowances.SideChannelMm(width), 1e-9);

    [Theory]
    [InlineData(600, 440, 60)] // common practice: (600 - 440)/2 - 20
    [InlineData(600, 448, 56)]
    [InlineData(800, 450, 155)]
    [InlineData(450, 440, 0)]
    public void Clear_width_beside_a_body(double width, double body, double beside) => Assert.Equal(beside, Allowances.BesideMm(width, body), 1e-9);

    [Fact]
    public void SideChannels_losses_and_panel_add_up_to_cabinet_width()
    {
        for (var width = 600.0; width <= 1200; width += 12.5)
        {
            Assert.Equal(width, (2 * (Allowances.SideChannelMm(width) + Allowances.SideChannelLossMm)) + RackGeometry.PanelWidthMm, 1e-9);
        }
    }

    [Fact]
    public void Allowances_match_reference_values()
    {
        // Common practice, no source.
        Assert.Equal(40, Allowances.FrontProjectionMm);
        Assert.Equal(75, Allowances.RearProjectionCabledMm);
        Assert.Equal(25, Allowances.RearProjectionBareMm);
        Assert.Equal(2, Allowances.RunnerThicknessMm);
        Assert.Equal((3, 56, 4), (Allowances.ShelfThicknessMm, Allowances.VerticalPduWidthMm, Allowances.VerticalPduPlaces));

        // Common practice: a chassis on slides is at most about 431 wide.
        Assert.Equal(431, RackGeometry.OpeningMm - (2 * Allowances.SlideThicknessMm));
    }
}
