namespace RackCheck.Engineering.Tests;

public sealed class PduPlacingTests
{
    // 42U: 42 x 44.45 = 1866.9, IEC 60297-3-100.
    private const double Upright = 1866.9;

    [Fact]
    public void Pdus_share_a_place_where_their_lengths_fit()
    {
        Assert.Equal(0, PduPlacing.PlacesFor([], Upright));
        Assert.Equal(1, PduPlacing.PlacesFor([900, 900], Upright));
        Assert.Equal(1, PduPlacing.PlacesFor([933.45, 933.45], Upright)); // exactly
        Assert.Equal(2, PduPlacing.PlacesFor([950, 950], Upright));
        Assert.Equal(2, PduPlacing.PlacesFor([600, 1200, 1200, 600], Upright));
        Assert.Equal(5, PduPlacing.PlacesFor([1700, 1700, 1700, 1700, 1700], Upright));
    }

    [Fact]
    public void Unknown_and_too_long_pdus_take_a_place() => Assert.Equal(4, PduPlacing.PlacesFor([null, 100, null, 2000], Upright));

    [Fact]
    public void Out_of_range_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PduPlacing.PlacesFor([0], Upright));
        Assert.Throws<ArgumentOutOfRangeException>(() => PduPlacing.PlacesFor([double.NaN], Upright));
        Assert.Throws<ArgumentOutOfRangeException>(() => PduPlacing.PlacesFor([100], 0));
    }
}
