namespace RackCheck.Engineering;

/// <summary>Dimensions of a load in transport: the sides of its footprint by length, and its height.</summary>
/// <param name="ShortMm">Shorter side of the footprint, mm.</param>
/// <param name="LongMm">Longer side of the footprint, mm.</param>
/// <param name="HeightMm">Height, mm.</param>
public readonly record struct TransportSize(double ShortMm, double LongMm, double HeightMm)
{
    /// <summary>A load that may be turned on the floor.</summary>
    /// <param name="widthMm">Width, mm, over 0.</param>
    /// <param name="depthMm">Depth, mm, over 0.</param>
    /// <param name="heightMm">Height, mm, over 0.</param>
    /// <returns>The dimensions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static TransportSize Of(double widthMm, double depthMm, double heightMm)
    {
        Require.Positive(widthMm);
        Require.Positive(depthMm);
        Require.Positive(heightMm);
        return new(Math.Min(widthMm, depthMm), Math.Max(widthMm, depthMm), heightMm);
    }

    /// <summary>The load on a pallet, long side along long side: the larger of each side, the heights added.</summary>
    /// <param name="pallet">The pallet.</param>
    /// <returns>The dimensions of both together.</returns>
    /// <example>600 x 1000 x 2000 on 1200 x 800 x 150: 800 x 1200 x 2150.</example>
    public TransportSize OnPallet(TransportSize pallet) =>
        new(Math.Max(ShortMm, pallet.ShortMm), Math.Max(LongMm, pallet.LongMm), HeightMm + pallet.HeightMm);
}

/// <summary>An opening on the delivery route, clear of leaf, stops and handles.</summary>
/// <param name="WidthMm">Clear width, mm.</param>
/// <param name="HeightMm">Clear height, mm.</param>
public readonly record struct ClearOpening(double WidthMm, double HeightMm);

/// <summary>How a cabinet passes an opening.</summary>
/// <param name="OnPallet">Whether it passes on its pallet.</param>
/// <param name="TiltDeg">Minimum tilt to pass off the pallet, degrees; 0 upright; null where it does not pass at any permitted tilt.</param>
public readonly record struct OpeningPassage(bool OnPallet, double? TiltDeg)
{
    /// <summary>Whether it passes upright, off the pallet.</summary>
    public bool OffPallet => TiltDeg == 0;

    /// <summary>Whether it passes only when tilted.</summary>
    public bool Tilted => TiltDeg > 0;

    /// <summary>Whether it does not pass at all.</summary>
    public bool Blocked => !OnPallet && TiltDeg is null;
}

/// <summary>Whether a cabinet passes openings, upright or tilted.</summary>
/// <remarks>
/// Geometry. Clearance, maximum tilt and height of a pallet are common practice; the sides of a pallet are those of EN 13698-1. Ramps and thresholds are not
/// included.
/// </remarks>
public static class DeliveryRoute
{
    /// <summary>Minimum clearance of an opening in width and height, mm. Common practice, no source.</summary>
    public const double ClearanceMm = 20;

    /// <summary>Maximum tilt, degrees. Common practice, no source.</summary>
    public const double GreatestTiltDeg = 45;

    /// <summary>Default height of a pallet, mm. Common practice, no source; the EUR pallet has 144 mm.</summary>
    public const double PalletHeightMm = 150;

    /// <summary>Default mass of a pallet, kg; the EUR pallet has 20 to 25 kg.</summary>
    public const double PalletKg = 25;

    /// <summary>Longer side of the EUR pallet, mm.</summary>
    public const double PalletLongMm = 1200;

    /// <summary>Shorter side of the EUR pallet, mm.</summary>
    public const double PalletShortMm = 800;

    /// <summary>Height of a tilted body: <c>H cos a + D sin a</c>.</summary>
    /// <param name="heightMm">Upright height H, mm, above 0.</param>
    /// <param name="depthMm">Side D in the tilting direction, mm, above 0.</param>
    /// <param name="tiltDeg">Tilt a, degrees, 0 to 90.</param>
    /// <returns>Height, mm. Below a tilt of twice atan(D/H) the body is taller than upright.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>2000 x 800 at 30 degrees: 2132.1.</example>
    public static double TiltedHeightMm(double heightMm, double depthMm, double tiltDeg)
    {
        CheckTilt(heightMm, depthMm, tiltDeg);
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(tiltDeg));
        return (heightMm * cos) + (depthMm * sin);
    }

    /// <summary>Floor length of a tilted body: <c>H sin a + D cos a</c>.</summary>
    /// <param name="heightMm">Upright height H, mm, above 0.</param>
    /// <param name="depthMm">Side D in the tilting direction, mm, above 0.</param>
    /// <param name="tiltDeg">Tilt a, degrees, 0 to 90.</param>
    /// <returns>Length, mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>2100 x 800 at 45.653 degrees: 2061.0.</example>
    public static double TiltedLengthMm(double heightMm, double depthMm, double tiltDeg)
    {
        CheckTilt(heightMm, depthMm, tiltDeg);
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(tiltDeg));
        return (heightMm * sin) + (depthMm * cos);
    }

    /// <summary>Room height to raise a laid or tilted body, or circle to turn it on the floor: <c>sqrt(A2 + B2)</c>.</summary>
    /// <param name="oneMm">Side A, mm, above 0.</param>
    /// <param name="otherMm">Side B at right angles to A, mm, above 0.</param>
    /// <returns>Diagonal, mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>2000 x 800: 2154.1 to raise; 800 x 1000: 1280.6 to turn.</example>
    public static double DiagonalMm(double oneMm, double otherMm)
    {
        Require.Positive(oneMm);
        Require.Positive(otherMm);
        return Math.Sqrt((oneMm * oneMm) + (otherMm * otherMm));
    }

    /// <summary>Minimum tilt under a lintel: <c>atan(D/H) + acos(h/sqrt(H2 + D2))</c> where h is below H, otherwise 0.</summary>
    /// <param name="heightMm">Upright height H, mm, above 0.</param>
    /// <param name="depthMm">Side D in the tilting direction, mm, above 0.</param>
    /// <param name="clearMm">Clear height h, mm, above 0.</param>
    /// <returns>
    /// Tilt, degrees, 0 to 90; null where the body is too high even when laid down. From this tilt to 90 degrees the body is no taller than h.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>2100 x 800 under 2040: 45.653.</example>
    public static double? LeastTiltDeg(double heightMm, double depthMm, double clearMm)
    {
        Require.Positive(clearMm);
        var diagonal = DiagonalMm(heightMm, depthMm);
        if (heightMm <= clearMm)
        {
            return 0;
        }

        return depthMm > clearMm ? null : double.RadiansToDegrees(Math.Atan2(depthMm, heightMm) + Math.Acos(clearMm / diagonal));
    }

    /// <summary>Whether a load passes an opening upright, with the shorter side of its footprint across the opening.</summary>
    /// <param name="body">The load.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="clearanceMm">Clearance of the opening in width and height, mm, 0 or more.</param>
    /// <returns>True where it passes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative clearance, or not a finite number.</exception>
    /// <example>800 x 1200 x 2150 through 820 x 2170: true.</example>
    public static bool Passes(TransportSize body, ClearOpening opening, double clearanceMm = ClearanceMm)
    {
        Require.NotNegative(clearanceMm);
        return Fits(body.ShortMm + clearanceMm, opening.WidthMm) && Fits(body.HeightMm + clearanceMm, opening.HeightMm);
    }

    /// <summary>How a cabinet passes an opening: on its pallet, off the pallet, or off the pallet and tilted along its longer side.</summary>
    /// <param name="onPallet">The cabinet on its pallet.</param>
    /// <param name="bare">The cabinet off its pallet.</param>
    /// <param name="opening">The opening, width and height above 0.</param>
    /// <param name="clearanceMm">Clearance of the opening in width and height, mm, 0 or more.</param>
    /// <param name="greatestTiltDeg">Maximum tilt, degrees, 0 to 90; 0 where tilting is not permitted.</param>
    /// <returns>How the cabinet passes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// The tilted body is assumed to pass with its full height at once; manoeuvring it corner by corner round a thin lintel may need less tilt. The room
    /// height needed for tilting in front of the opening is <see cref="DiagonalMm"/>.
    /// </remarks>
    /// <example>600 x 800 x 2100 through 900 x 2060: not on the pallet and not upright, but tilted by 45.653 degrees where this is permitted.</example>
    public static OpeningPassage Through(
        TransportSize onPallet,
        TransportSize bare,
        ClearOpening opening,
        double clearanceMm = ClearanceMm,
        double greatestTiltDeg = GreatestTiltDeg)
    {
        Require.Positive(opening.WidthMm);
        Require.Positive(opening.HeightMm);
        Require.NotNegative(greatestTiltDeg);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(greatestTiltDeg, 90);
        var pallet = Passes(onPallet, opening, clearanceMm);
        if (Passes(bare, opening, clearanceMm))
        {
            return new(pallet, 0);
        }

        var clear = opening.HeightMm - clearanceMm;
        var tilt = Fits(bare.ShortMm + clearanceMm, opening.WidthMm) && clear > 0 ? LeastTiltDeg(bare.HeightMm, bare.LongMm, clear) : null;
        return new(pallet, tilt <= greatestTiltDeg ? tilt : null);
    }

    private static bool Fits(double neededMm, double haveMm) => !Comparison.IsOver(neededMm, haveMm);

    private static void CheckTilt(double heightMm, double depthMm, double tiltDeg)
    {
        Require.Positive(heightMm);
        Require.Positive(depthMm);
        Require.NotNegative(tiltDeg);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tiltDeg, 90);
    }
}
