namespace RackCheck.Engineering.Tests;

public sealed class AllowancesTests
{
    [Theory]
    [InlineData(600, 38.7)] // handbook H12: (600 - 482.6)/2 - 20
    [InlineData(800, 138.7)] // handbook H12
    [InlineData(700, 88.7)] // handbook H12
    [InlineData(522.6, 0)]
    [InlineData(500, 0)]
    public void A_side_channel_is_what_is_left_beside_the_panel(double width, double channel) =>
        Assert.Equal(channel, Allowances.SideChannelMm(width), 1e-9);

    [Fact]
    public void Two_channels_their_loss_and_the_panel_make_up_the_cabinet()
    {
        for (var width = 600.0; width <= 1200; width += 12.5)
        {
            Assert.Equal(width, (2 * (Allowances.SideChannelMm(width) + Allowances.SideChannelLossMm)) + RackGeometry.PanelWidthMm, 1e-9);
        }
    }

    [Fact]
    public void Allowances_are_those_of_the_handbook()
    {
        // Handbook H1, common practice, no source.
        Assert.Equal(40, Allowances.FrontProjectionMm);
        Assert.Equal(75, Allowances.RearProjectionCabledMm);
        Assert.Equal(25, Allowances.RearProjectionBareMm);
        Assert.Equal(2, Allowances.RunnerThicknessMm);

        // Handbook H1: a chassis on slides is at most about 431 wide.
        Assert.Equal(431, RackGeometry.OpeningMm - (2 * Allowances.SlideThicknessMm));
    }
}
