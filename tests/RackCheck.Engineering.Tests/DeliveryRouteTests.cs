using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class DeliveryRouteTests
{
    private static readonly TransportSize Eur = TransportSize.Of(1200, 800, 150);

    private static readonly Gen<TransportSize> Bodies =
        Gen.Select(Gen.Double[300, 1300], Gen.Double[300, 1300], Gen.Double[300, 2600]).Select(TransportSize.Of);

    [Theory]
    [InlineData(2000, 800, 10, 2108.53404815796)] // geometry
    [InlineData(2000, 800, 30, 2132.050807568877)] // geometry
    [InlineData(2200, 1000, 45, 2262.741699796952)] // geometry
    [InlineData(2200, 1000, 0, 2200)]
    [InlineData(2200, 1000, 90, 1000)]
    public void Tilted_height_is_that_of_highest_corner(double height, double depth, double tilt, double envelope)
    {
        Assert.Equal(envelope, DeliveryRoute.TiltedHeightMm(height, depth, tilt), 1e-9);
        var corners = Corners(height, depth, tilt);
        Assert.Equal(envelope, corners.Max(c => c.Z) - corners.Min(c => c.Z), 1e-9);
    }

    [Theory]
    [InlineData(2100, 800, 45.65300914217733, 2060.9529693174595)] // geometry
    [InlineData(2100, 1000, 56.161674078797944, 2301.1369041922235)] // geometry
    [InlineData(2200, 800, 52.1779350182632, 2228.390664020848)] // geometry
    public void Tilted_length_runs_from_first_to_last_corner(double height, double depth, double tilt, double length)
    {
        Assert.Equal(length, DeliveryRoute.TiltedLengthMm(height, depth, tilt), 1e-9);
        var corners = Corners(height, depth, tilt);
        Assert.Equal(length, corners.Max(c => c.X) - corners.Min(c => c.X), 1e-9);
    }

    [Theory]
    [InlineData(2000, 600, 2088.06130178211, 16.69924423399362, 33.39848846798724)] // geometry
    [InlineData(2000, 800, 2154.0659228538016, 21.80140948635181, 43.60281897270362)] // geometry
    [InlineData(2100, 1000, 2325.9406699226015, 25.463345061871614, 50.92669012374323)] // geometry
    [InlineData(2200, 1200, 2505.9928172283335, 28.610459665965216, 57.22091933193043)] // geometry
    public void Raising_needs_diagonal_and_small_tilt_adds_height(double height, double depth, double diagonal, double tallest, double back)
    {
        Assert.Equal(diagonal, DeliveryRoute.DiagonalMm(height, depth), 1e-9);
        Assert.Equal(diagonal, Enumerable.Range(0, 90_001).Max(t => DeliveryRoute.TiltedHeightMm(height, depth, t / 1000.0)), 1e-5);
        Assert.Equal(diagonal, DeliveryRoute.TiltedHeightMm(height, depth, tallest), 1e-9);
        Assert.Equal(height, DeliveryRoute.TiltedHeightMm(height, depth, back), 1e-9);
        Assert.Equal(back, DeliveryRoute.LeastTiltDeg(height, depth, height - 1e-7)!.Value, 1e-6);
    }

    [Theory]
    [InlineData(600, 800, 1000)] // geometry
    [InlineData(800, 1000, 1280.6248474865697)] // geometry
    [InlineData(800, 1200, 1442.2205101855957)] // geometry
    public void Turning_needs_diagonal_of_footprint(double width, double depth, double circle) =>
        Assert.Equal(circle, DeliveryRoute.DiagonalMm(width, depth), 1e-9);

    [Theory]
    [InlineData(2100, 800, 2040, 45.65300914217733)] // geometry
    [InlineData(2100, 1000, 2000, 56.161674078797944)] // geometry
    [InlineData(2200, 800, 1981, 52.1779350182632)] // geometry
    [InlineData(2000, 800, 2000, 0.0)]
    [InlineData(2000, 800, 800, 90.0)]
    [InlineData(2000, 800, 799, null)]
    [InlineData(800, 1000, 790, null)] // clear height below the depth: tilting does not help
    public void Minimum_tilt_under_lintel_matches_reference_values(double height, double depth, double clear, double? tilt)
    {
        var found = DeliveryRoute.LeastTiltDeg(height, depth, clear);
        Assert.Equal(tilt is null, found is null);
        Assert.Equal(tilt ?? 0, found ?? 0, 1e-9);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Minimum_tilt_matches_search() =>
        Gen.Select(Gen.Double[300, 2600], Gen.Double[300, 1300], Gen.Double[200, 2600]).Sample(
            (height, depth, clear) =>
            {
                var found = DeliveryRoute.LeastTiltDeg(height, depth, clear);
                var searched = Enumerable.Range(0, 9001)
                    .Where(t => DeliveryRoute.TiltedHeightMm(height, depth, t / 100.0) <= clear)
                    .Select(t => t / 100.0)
                    .Cast<double?>()
                    .FirstOrDefault();

                // The search step is 0.01 degrees, so it misses a tilt within 0.01 of 90 degrees.
                Assert.True(searched is { } s ? found <= s && s - found <= 0.0100001 : found is null or > 89.99, $"{found} {searched}");
            },
            iter: Samples.Of(400));

    [Theory]
    [InlineData(600, 1000, 2000, 800, 1200, 2150)]
    [InlineData(1000, 600, 2000, 800, 1200, 2150)] // sides are matched by length, not by name
    [InlineData(900, 1300, 2000, 900, 1300, 2150)] // the load overhangs the pallet
    [InlineData(1000, 1000, 2000, 1000, 1200, 2150)]
    public void Load_on_pallet_has_the_larger_sides(double width, double depth, double height, double shorter, double longer, double total)
    {
        // Common practice: height + pallet, the larger of the two.
        var packed = TransportSize.Of(width, depth, height).OnPallet(Eur);
        Assert.Equal(new TransportSize(shorter, longer, total), packed);

        // Neither orientation on the pallet needs less width or less area.
        foreach (var (one, other) in new[] { (Math.Max(width, 1200), Math.Max(depth, 800)), (Math.Max(width, 800), Math.Max(depth, 1200)) })
        {
            Assert.True(packed.ShortMm <= Math.Min(one, other) && packed.ShortMm * packed.LongMm <= one * other);
        }
    }

    [Theory]
    [InlineData(820, 2170, true)] // 800 + 20 and 2150 + 20
    [InlineData(819, 2170, false)]
    [InlineData(820, 2169, false)]
    [InlineData(819.9999, 2170, true)] // within the tolerance of lengths
    public void Opening_needs_clearance(double width, double height, bool passes) =>
        Assert.Equal(passes, DeliveryRoute.Passes(new(800, 1200, 2150), new(width, height)));

    [Theory]
    [InlineData(900, 2270, true, 0.0)] // on the pallet: 2100 + 150 + 20
    [InlineData(900, 2269, false, 0.0)]
    [InlineData(900, 2120, false, 0.0)] // off the pallet: 2100 + 20
    [InlineData(700, 2200, false, 0.0)] // off the pallet: 600 + 20 across
    [InlineData(900, 2080, false, 44.4)] // tilted: 20.854 + acos(2060/2247.2) = 20.854 + 23.55
    [InlineData(900, 2060, false, null)] // 45.65 is over 45
    [InlineData(610, 2070, false, null)] // too narrow
    public void Passage_through_opening_matches_reference_values(double width, double height, bool pallet, double? tilt)
    {
        var bare = TransportSize.Of(600, 800, 2100);
        var ways = DeliveryRoute.Through(bare.OnPallet(Eur), bare, new(width, height));
        Assert.Equal(pallet, ways.OnPallet);
        Assert.Equal(tilt is null, ways.TiltDeg is null);
        Assert.Equal((tilt == 0, tilt > 0, tilt is null && !pallet), (ways.OffPallet, ways.Tilted, ways.Blocked));
        if (tilt > 0)
        {
            Assert.Equal(tilt.Value, ways.TiltDeg!.Value, 1e-1);
            var searched = Enumerable.Range(0, 90_000).First(t => DeliveryRoute.TiltedHeightMm(2100, 800, t / 1000.0) <= height - 20) / 1000.0;
            Assert.InRange(searched - ways.TiltDeg!.Value, 0, 0.001);
        }
    }

    [Fact]
    public void Maximum_tilt_is_set_by_caller()
    {
        var bare = TransportSize.Of(600, 800, 2100);
        var lintel = new ClearOpening(900, 2060);
        Assert.Equal(45.65300914217733, DeliveryRoute.Through(bare.OnPallet(Eur), bare, lintel, greatestTiltDeg: 60).TiltDeg!.Value, 1e-9); // geometry
        Assert.True(DeliveryRoute.Through(bare.OnPallet(Eur), bare, lintel with { HeightMm = 2070 }, greatestTiltDeg: 0).Blocked);
    }

    [Fact]
    public void Opening_lower_than_clearance_is_not_passable() =>
        Assert.True(DeliveryRoute.Through(Eur, new(100, 100, 100), new(900, 10)).Blocked);

    [Fact]
    [Trait("Kind", "property")]
    public void Wider_opening_is_still_passable() =>
        Gen.Select(Bodies, Gen.Double[300, 2500], Gen.Double[300, 2800], Gen.Double[0, 500], Gen.Double[0, 500]).Sample((bare, width, height, wider, higher) =>
        {
            var narrow = DeliveryRoute.Through(bare.OnPallet(Eur), bare, new(width, height));
            var wide = DeliveryRoute.Through(bare.OnPallet(Eur), bare, new(width + wider, height + higher));
            Assert.True(!narrow.OnPallet || wide.OnPallet);
            Assert.True(narrow.TiltDeg is null || wide.TiltDeg <= narrow.TiltDeg);
            Assert.True(narrow.Blocked || !wide.Blocked);
            Assert.True(!narrow.OnPallet || narrow.OffPallet); // the pallet only adds size
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Constants_match_reference_values() =>
        Assert.Equal( // common practice
            (20, 45, 150, 1200, 800),
            (DeliveryRoute.ClearanceMm, DeliveryRoute.GreatestTiltDeg, DeliveryRoute.PalletHeightMm, DeliveryRoute.PalletLongMm, DeliveryRoute.PalletShortMm));

    [Theory]
    [InlineData(0, 800, 10)]
    [InlineData(2000, 0, 10)]
    [InlineData(2000, 800, -1)]
    [InlineData(2000, 800, 91)]
    [InlineData(2000, 800, double.NaN)]
    [InlineData(double.NaN, 800, 10)]
    [InlineData(2000, double.PositiveInfinity, 10)]
    public void Tilt_out_of_range_throws(double height, double depth, double tilt)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DeliveryRoute.TiltedHeightMm(height, depth, tilt));
        Assert.Throws<ArgumentOutOfRangeException>(() => DeliveryRoute.TiltedLengthMm(height, depth, tilt));
    }

    [Theory]
    [InlineData(0, 800, 2000)]
    [InlineData(2000, -1, 2000)]
    [InlineData(2000, 800, 0)]
    [InlineData(2000, 800, double.NaN)]
    public void Lintel_out_of_range_throws(double height, double depth, double clear)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DeliveryRoute.LeastTiltDeg(height, depth, clear));
        Assert.Throws<ArgumentOutOfRangeException>(() => TransportSize.Of(height, depth, clear));
    }

    [Theory]
    [InlineData(0, 2000)]
    [InlineData(600, double.NaN)]
    public void Diagonal_out_of_range_throws(double one, double other) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DeliveryRoute.DiagonalMm(one, other));

    [Theory]
    [InlineData(0, 2000, 20, 45)]
    [InlineData(900, 0, 20, 45)]
    [InlineData(900, 2000, -1, 45)]
    [InlineData(900, 2000, double.NaN, 45)]
    [InlineData(900, 2000, 20, -1)]
    [InlineData(900, 2000, 20, 91)]
    public void Opening_out_of_range_throws(double width, double height, double clearance, double tilt) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DeliveryRoute.Through(Eur, Eur, new(width, height), clearance, tilt));

    // A rectangle in side view, rotated about its lower corner.
    private static (double X, double Z)[] Corners(double height, double depth, double tilt)
    {
        var turn = System.Numerics.Complex.FromPolarCoordinates(1, tilt * Math.PI / 180);
        System.Numerics.Complex[] corners = [0, depth, new(depth, height), new(0, height)];
        return [.. corners.Select(c => c * turn).Select(c => (c.Real, c.Imaginary))];
    }
}
