using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class CornerTurnTests
{
    [Theory]
    [InlineData(1200, 1200, 2000, 697.0562748477141)] // geometry: a sqrt(2) - L/2
    [InlineData(1000, 1200, 1200, 943.6275028457634)] // geometry
    [InlineData(900, 1200, 1600, 671.7609082664727)] // geometry
    [InlineData(1500, 1500, 2100, 1071.3203435596427)] // geometry
    public void Maximum_width_matches_reference_values(double from, double into, double length, double width)
    {
        Assert.Equal(width, CornerTurn.TurningWidthMm(from, into, length), 1e-9);
        Assert.Equal(width, CornerTurn.TurningWidthMm(into, from, length), 1e-9);
    }

    [Theory]
    [InlineData(1200, 1200, 3394.112549695427)] // geometry
    [InlineData(1000, 1500, 3511.7411896099816)] // geometry
    [InlineData(900, 1200, 2959.6987666305263)] // geometry
    public void Ladder_passes_up_to_classical_length(double from, double into, double length)
    {
        Assert.Equal(0, CornerTurn.TurningWidthMm(from, into, length), 1e-9);
        Assert.True(CornerTurn.TurningWidthMm(from, into, length + 1) < 0);
        Assert.False(CornerTurn.Round(from, into, length + 1, 1).Passes);
        Assert.True(CornerTurn.Round(from, into, length - 10, 1).Passes);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Maximum_width_in_equal_corridors_matches_closed_form() =>
        Gen.Select(Gen.Double[300, 4000], Gen.Double[1, 3]).Sample((corridor, times) =>
            Assert.Equal((corridor * Math.Sqrt(2)) - (corridor * times / 2), CornerTurn.TurningWidthMm(corridor, corridor, corridor * times), 1e-8),
                iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Maximum_width_matches_dense_search_over_angles() =>
        Gen.Select(Gen.Double[300, 4000], Gen.Double[300, 4000], Gen.Double[1, 3]).Sample(
            (from, into, times) =>
            {
                var length = Math.Max(from, into) * times;
                var found = CornerTurn.TurningWidthMm(from, into, length);
                var least = double.PositiveInfinity;
                for (var i = 0; i <= 20_000; i++)
                {
                    var (sin, cos) = Math.SinCos(Math.PI / 2 * i / 20_000);
                    least = Math.Min(least, (from * sin) + (into * cos) - (length * sin * cos));
                }

                // Half the maximum curvature times the square of half a search step.
                Assert.InRange(least - found, -1e-9, (from + into + (2 * length)) / 2 * Math.Pow(Math.PI / 80_000, 2));
            },
            iter: Samples.Of(200));

    [Fact]
    [Trait("Kind", "property")]
    public void Rectangle_of_maximum_width_meets_no_wall() =>
        Gen.Select(Gen.Double[600, 2000], Gen.Double[600, 2000], Gen.Double[1.01, 1.9]).Sample(
            (from, into, times) =>
            {
                var length = Math.Max(from, into) * times;
                var found = CornerTurn.TurningWidthMm(from, into, length);
                if (found > 5)
                {
                    Assert.True(Clears(from, into, length, found - 0.5));
                }

                Assert.False(Clears(from, into, length, Math.Max(found, 0) + 0.5));
            },
            iter: Samples.Of(100));

    [Theory]
    [InlineData(1200, 1200, 1200, 1200, true, 1200)] // as wide as both
    [InlineData(1000, 1200, 1200, 1000, true, 1000)] // L <= b and w <= a
    [InlineData(1200, 1000, 1200, 1000, true, 1000)] // the mirror image
    [InlineData(1200, 1000, 1000, 1200, true, 1000)] // sides in either order
    [InlineData(700, 2000, 1000, 600, true, 700)]
    [InlineData(2000, 700, 1000, 600, true, 700)]
    [InlineData(1500, 1200, 1000, 800, true, 1500)] // both sides fit into both
    public void Footprint_that_fits_across_passes_without_turning(double from, double into, double one, double other, bool passes, double greatest) =>
        Assert.Equal(new CornerPassage(greatest, Straight: true, passes), CornerTurn.Round(from, into, one, other));

    [Fact]
    public void Footprint_too_wide_for_both_corridors_does_not_pass() =>
        Assert.Equal(new CornerPassage(700, Straight: true, Passes: false), CornerTurn.Round(700, 2000, 1000, 800));

    [Theory]
    [InlineData(1200, 1200, 2000, 690, true)]
    [InlineData(1200, 1200, 2000, 697.0562748477141, true)] // geometry, at the limit
    [InlineData(1200, 1200, 2000, 700, false)]
    [InlineData(900, 1200, 1600, 671, true)] // geometry
    [InlineData(900, 1200, 672, 1600, false)]
    public void Long_footprint_passes_by_turning_up_to_maximum_width(double from, double into, double one, double other, bool passes)
    {
        var passage = CornerTurn.Round(from, into, one, other);
        Assert.Equal((false, passes), (passage.Straight, passage.Passes));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Turning_of_short_footprint_passes_no_more_than_going_straight() =>
        Gen.Select(Gen.Double[300, 4000], Gen.Double[300, 4000], Gen.Double[0.05, 1]).Sample(
            (from, into, share) =>
            {
                var length = Math.Max(from, into) * share;
                var least = Enumerable.Range(0, 2001)
                    .Select(i => Math.SinCos(Math.PI / 2 * i / 2000))
                    .Min(t => (from * t.Sin) + (into * t.Cos) - (length * t.Sin * t.Cos));
                Assert.True(CornerTurn.Round(from, into, length, 1).GreatestWidthMm >= least - 1e-9);
            },
            iter: Samples.Of(400));

    [Fact]
    [Trait("Kind", "property")]
    public void Wider_corridor_or_shorter_footprint_still_passes() =>
        Gen.Select(
                Gen.Double[500, 2500],
                Gen.Double[500, 2500],
                Gen.Double[300, 3000],
                Gen.Double[300, 1500],
                Gen.Double[0, 400],
                Gen.Double[0, 400],
                Gen.Double[0, 250])
            .Sample((from, into, length, width, wider, widerToo, shorter) =>
            {
                var before = CornerTurn.Round(from, into, length, width);
                Assert.True(!before.Passes || CornerTurn.Round(from + wider, into + widerToo, length, width).Passes);
                Assert.True(!before.Passes || CornerTurn.Round(from, into, length - shorter, width).Passes);
            }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(0, 1200, 1600, 600)]
    [InlineData(900, -1, 1600, 600)]
    [InlineData(900, 1200, 0, 600)]
    [InlineData(900, 1200, 1600, 0)]
    [InlineData(double.NaN, 1200, 1600, 600)]
    [InlineData(900, double.PositiveInfinity, 1600, 600)]
    [InlineData(900, 1200, double.NaN, 600)]
    [InlineData(900, 1200, 1600, double.NaN)]
    public void Corridor_out_of_range_throws(double from, double into, double one, double other) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CornerTurn.Round(from, into, one, other));

    [Theory]
    [InlineData(900, 1200, 1199)] // turning is not needed
    [InlineData(1200, 900, 1199)]
    [InlineData(0, 1200, 1600)]
    [InlineData(900, 0, 1600)]
    [InlineData(900, 1200, double.NaN)]
    [InlineData(900, 1200, double.PositiveInfinity)]
    public void Length_out_of_range_throws(double from, double into, double length) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CornerTurn.TurningWidthMm(from, into, length));

    // The footprint is turned in steps from one corridor to the other, against the outer corner each time. No part of it may pass the inner corner.
    private static bool Clears(double from, double into, double length, double width)
    {
        for (var step = 0; step <= 900; step++)
        {
            var (sin, cos) = Math.SinCos(Math.PI / 2 * step / 900);
            (double X, double Y)[] body =
            [
                (0, 0),
                (length * cos, -length * sin),
                ((length * cos) + (width * sin), (width * cos) - (length * sin)),
                (width * sin, width * cos),
            ];
            var (left, low) = (body.Min(p => p.X), body.Min(p => p.Y));
            body = [.. body.Select(p => (p.X - left, p.Y - low))];
            if (Area(Cut(Cut(body, p => p.X - from), p => p.Y - into)) > 1e-6)
            {
                return false;
            }
        }

        return true;
    }

    // The part of a convex polygon on the positive side.
    private static (double X, double Y)[] Cut((double X, double Y)[] polygon, Func<(double X, double Y), double> side)
    {
        List<(double X, double Y)> kept = [];
        for (var i = 0; i < polygon.Length; i++)
        {
            var (a, b) = (polygon[i], polygon[(i + 1) % polygon.Length]);
            var (da, db) = (side(a), side(b));
            if (da > 0)
            {
                kept.Add(a);
            }

            if (da > 0 != db > 0)
            {
                var t = da / (da - db);
                kept.Add((a.X + (t * (b.X - a.X)), a.Y + (t * (b.Y - a.Y))));
            }
        }

        return [.. kept];
    }

    private static double Area((double X, double Y)[] polygon) =>
        Math.Abs(polygon.Select((p, i) => (p.X * polygon[(i + 1) % polygon.Length].Y) - (p.Y * polygon[(i + 1) % polygon.Length].X)).Sum()) / 2;
}
