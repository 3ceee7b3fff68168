using RackCheck.Engineering;

namespace RackCheck.Engineering.Tests;

public sealed class FaultLoopsTests
{
    // BS 7671 411.4.4 (value from memory), by hand: 230 / (230/I0 + 1.2 x 2 x 0.017241 x L/S).
    [Theory]
    [InlineData(230, 800, 15, 2.5, 429.29)]
    [InlineData(230, 200, 20, 2.5, 155.298)]
    [InlineData(230, 3000, 30, 4, 594.31)]
    [InlineData(230, 1000, 0, 2.5, 1000)]
    public void Fault_current_at_the_end_of_a_cable(double voltage, double origin, double length, double section, double current) =>
        Assert.Equal(current, FaultLoops.EndA(voltage, origin, length, section), 0.01);

    [Theory]
    [InlineData("B", 16, 80)] // IEC 60898-1, upper limits 5, 10 and 20
    [InlineData("C", 16, 160)]
    [InlineData("D", 32, 640)]
    public void Certain_trip_current(string curve, double rated, double current) => Assert.Equal(current, FaultLoops.CertainTripA(curve, rated));

    [Theory]
    [InlineData(0, 1, 1, 1)]
    [InlineData(1, 0, 1, 1)]
    [InlineData(1, 1, -1, 1)]
    [InlineData(1, 1, 1, 0)]
    public void Out_of_range_throws(double voltage, double origin, double length, double section) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FaultLoops.EndA(voltage, origin, length, section));

    // BS 7671 tables 4B1 and 4C1, values from memory; between the rows by interpolation.
    [Theory]
    [InlineData(20, 1.03)]
    [InlineData(30, 1)]
    [InlineData(42.5, 0.83)]
    [InlineData(60, 0.5)]
    [InlineData(65, 0.25)]
    [InlineData(80, 0)]
    public void Ambient_factor(double ambient, double factor) => Assert.Equal(factor, Cables.AmbientFactor(ambient), 1e-9);

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 0.7)]
    [InlineData(6, 0.57)]
    [InlineData(9, 0.57)]
    public void Group_factor(int circuits, double factor) => Assert.Equal(factor, Cables.GroupFactor(circuits));

    // Circuit theory: equal pairs give sqrt(3), one pair alone two lines, and the phasor sum of the lines is zero.
    [Theory]
    [InlineData(10, 10, 10, 17.3205)]
    [InlineData(15.7212, 15.7212, 15.7212, 27.2299)]
    [InlineData(10, 0, 0, 10)]
    [InlineData(10, 5, 0, 10)]
    public void Lines_of_pairs(double a, double b, double c, double first)
    {
        var (one, two, three) = Currents.LinesOfPairs(a, b, c);
        Assert.Equal(first, one.Magnitude, 1e-3);
        Assert.Equal(0, (one + two + three).Magnitude, 1e-9);
        Assert.Equal(Currents.LineOfPairsA(a, c), one.Magnitude, 1e-9);
    }
}
