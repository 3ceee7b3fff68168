using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Placement of a closed cabinet, which determines the heat dissipated by its faces.</summary>
public enum CabinetStanding
{
    /// <summary>Free-standing, all sides exposed.</summary>
    Free,

    /// <summary>Rear against a wall.</summary>
    Wall,

    /// <summary>End of a row, rear exposed.</summary>
    RowEnd,

    /// <summary>End of a row, rear against a wall.</summary>
    RowEndWall,

    /// <summary>Middle of a row, rear exposed.</summary>
    RowMiddle,

    /// <summary>Middle of a row, rear against a wall.</summary>
    RowMiddleWall,

    /// <summary>Middle of a row, rear against a wall, roof covered.</summary>
    RowMiddleWallCovered,
}

/// <summary>Surface factors of the cabinet faces.</summary>
/// <param name="Front">Factor of the front.</param>
/// <param name="Rear">Factor of the rear.</param>
/// <param name="Left">Factor of one side.</param>
/// <param name="Right">Factor of the other side.</param>
/// <param name="Top">Factor of the roof.</param>
public readonly record struct FaceFactors(double Front, double Rear, double Left, double Right, double Top);

/// <summary>Heat dissipated by the surface of closed cabinets.</summary>
/// <remarks>
/// Effective surface: IEC TR 60890, VDE 0660 part 507 (secondary source): each face has a factor; the floor is not counted. The heat transfer coefficient is
/// for painted sheet steel with circulated internal air (secondary source). A cabinet without an internal fan dissipates less and is hotter at the top (value
/// from memory). Not valid for perforated, insulated or double-walled cabinets.
/// </remarks>
public static class Enclosures
{
    /// <summary>Heat transfer coefficient of painted sheet steel with circulated internal air, W/(m2 K); published values are 4 to 6.</summary>
    public const double StirredWM2K = 5.5;

    /// <summary>Overall heat transfer coefficient without an internal fan, W/(m2 K): from a worked example of IEC TR 60890.</summary>
    public const double StillWM2K = 3.4;

    /// <summary>Ratio of the temperature rise at the top to that at mid-height without an internal fan: from the same example.</summary>
    public const double StillTopFactor = 1.44;

    /// <summary>Heat transfer coefficient from the internal air to the wall, W/(m2 K); 5 to 10 is usual.</summary>
    public const double InnerFilmWM2K = 8;

    /// <summary>Factor of an exposed front, rear or side.</summary>
    public const double ExposedFactor = 0.9;

    /// <summary>Factor of a side or rear against a wall or an adjacent cabinet.</summary>
    public const double CoveredFactor = 0.5;

    /// <summary>Factor of an exposed roof.</summary>
    public const double TopFactor = 1.4;

    /// <summary>Factor of a covered roof.</summary>
    public const double CoveredTopFactor = 0.7;

    /// <summary>All placements.</summary>
    public static ImmutableArray<CabinetStanding> Standings { get; } = [.. Enum.GetValues<CabinetStanding>()];

    /// <summary>Surface factors of a placement.</summary>
    /// <param name="standing">Placement of the cabinet.</param>
    /// <returns>The factors. Example: end of a row, rear against a wall: front 0.9, rear 0.5, sides 0.9 and 0.5, roof 1.4.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unknown placement.</exception>
    public static FaceFactors FactorsOf(CabinetStanding standing)
    {
        if (standing is < CabinetStanding.Free or > CabinetStanding.RowMiddleWallCovered)
        {
            throw new ArgumentOutOfRangeException(nameof(standing), standing, "Unknown placement.");
        }

        var backCovered = standing is CabinetStanding.Wall
            or CabinetStanding.RowEndWall
            or CabinetStanding.RowMiddleWall
            or CabinetStanding.RowMiddleWallCovered;
        return new(
            ExposedFactor,
            Factor(backCovered),
            Factor(standing >= CabinetStanding.RowMiddle),
            Factor(standing >= CabinetStanding.RowEnd),
            standing == CabinetStanding.RowMiddleWallCovered ? CoveredTopFactor : TopFactor);

        static double Factor(bool covered) => covered ? CoveredFactor : ExposedFactor;
    }

    /// <summary>Effective surface: <c>A = sum of b A0</c> over front, rear, sides and roof.</summary>
    /// <param name="standing">Placement of the cabinet.</param>
    /// <param name="heightMm">Height, mm, above 0.</param>
    /// <param name="widthMm">Width, mm, above 0.</param>
    /// <param name="depthMm">Depth, mm, above 0.</param>
    /// <returns>Surface, m2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A dimension of 0 or less, or an unknown placement.</exception>
    /// <example>2000 x 600 x 500, free-standing: 4.38; rear against a wall: 3.90; middle of a row, rear against a wall, roof covered: 2.89.</example>
    public static double SurfaceM2(CabinetStanding standing, double heightMm, double widthMm, double depthMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(heightMm, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(widthMm, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(depthMm, 0);
        var factors = FactorsOf(standing);
        return (((factors.Front + factors.Rear) * heightMm * widthMm)
            + ((factors.Left + factors.Right) * heightMm * depthMm)
            + (factors.Top * widthMm * depthMm)) / 1e6;
    }

    /// <summary>Temperature rise of the internal air above the room: <c>dT = Q/(k A)</c>.</summary>
    /// <param name="heatW">Heat load inside Q, W, 0 or more.</param>
    /// <param name="surfaceM2">Effective surface A, m2, above 0.</param>
    /// <param name="transferWM2K">Heat transfer coefficient k, W/(m2 K), above 0.</param>
    /// <returns>Temperature rise, K.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// The default 5.5 is for circulated internal air. Without an internal fan use <see cref="StillWM2K"/>, and <see cref="StillTopFactor"/> for the top.
    /// </remarks>
    /// <example>300 W, 4.38 m2, 5.5: 12.45; 900 W, 5.072 m2, 5.5: 32.26.</example>
    public static double RiseK(double heatW, double surfaceM2, double transferWM2K = StirredWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(surfaceM2, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(transferWM2K, 0);
        return heatW / (transferWM2K * surfaceM2);
    }

    /// <summary>Heat dissipated by the surface: <c>Q = k A (T_in - T_amb)</c>.</summary>
    /// <param name="surfaceM2">Effective surface A, m2, above 0.</param>
    /// <param name="insideC">Temperature inside T_in, C.</param>
    /// <param name="ambientC">Room temperature T_amb, C.</param>
    /// <param name="transferWM2K">Heat transfer coefficient k, W/(m2 K), above 0.</param>
    /// <returns>Heat, W; negative where the room is hotter and heats the cabinet.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or not a finite number.</exception>
    /// <example>4.4 m2, 35 C inside, 25 C outside, 5.5: 242; 3.384 m2, 35 C inside, 40 C outside: -93.06.</example>
    public static double ShedW(double surfaceM2, double insideC, double ambientC, double transferWM2K = StirredWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(surfaceM2, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(transferWM2K, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(insideC, -Air.ZeroC);
        ArgumentOutOfRangeException.ThrowIfLessThan(ambientC, -Air.ZeroC);
        return transferWM2K * surfaceM2 * (insideC - ambientC);
    }

    /// <summary>
    /// Inner surface temperature of the wall: <c>T_s = T_in - (k/h_i)(T_in - T_amb)</c>. Condensation occurs below the dew point of the internal air.
    /// </summary>
    /// <param name="insideC">Temperature inside T_in, C.</param>
    /// <param name="ambientC">Room temperature T_amb, C.</param>
    /// <param name="transferWM2K">Heat transfer coefficient of the wall k, W/(m2 K), above 0 to h_i; k includes the inner film.</param>
    /// <param name="innerFilmWM2K">Heat transfer coefficient from the internal air to the wall h_i, W/(m2 K), above 0.</param>
    /// <returns>Temperature, C. Example: 35 C inside, 5 C outside, 5.5, 8: 14.375.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or not a finite number.</exception>
    public static double InnerFaceC(double insideC, double ambientC, double transferWM2K = StirredWM2K, double innerFilmWM2K = InnerFilmWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(innerFilmWM2K, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(transferWM2K, innerFilmWM2K);
        return insideC - (ShedW(1, insideC, ambientC, transferWM2K) / innerFilmWM2K);
    }
}
