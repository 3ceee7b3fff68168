using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>How a closed cabinet stands, which decides how its faces shed heat.</summary>
public enum CabinetStanding
{
    /// <summary>Free on all sides.</summary>
    Free,

    /// <summary>Its back to a wall.</summary>
    Wall,

    /// <summary>End of a row, back free.</summary>
    RowEnd,

    /// <summary>End of a row, back to a wall.</summary>
    RowEndWall,

    /// <summary>Middle of a row, back free.</summary>
    RowMiddle,

    /// <summary>Middle of a row, back to a wall.</summary>
    RowMiddleWall,

    /// <summary>Middle of a row, back to a wall, roof covered.</summary>
    RowMiddleWallCovered,
}

/// <summary>What each face of a cabinet counts for in the surface that sheds heat.</summary>
/// <param name="Front">Factor of the front.</param>
/// <param name="Rear">Factor of the rear.</param>
/// <param name="Left">Factor of one side.</param>
/// <param name="Right">Factor of the other side.</param>
/// <param name="Top">Factor of the roof.</param>
public readonly record struct FaceFactors(double Front, double Rear, double Left, double Right, double Top);

/// <summary>Closed cabinets that shed heat through their surface.</summary>
/// <remarks>
/// Surface: IEC TR 60890, VDE 0660 part 507 (secondary source): each face counts by a factor, the floor not at all. The service's heat transfer is for painted
/// sheet steel with the air inside stirred (secondary source); a still cabinet sheds less and is hotter at the top (value from memory). Not for perforated,
/// insulated or double-walled cabinets.
/// </remarks>
public static class Enclosures
{
    /// <summary>Heat that painted sheet steel passes with the air inside stirred, W/(m2 K); 4 to 6 are in print.</summary>
    public const double StirredWM2K = 5.5;

    /// <summary>Heat that a still cabinet passes, over all of its surface, W/(m2 K): from one worked example of IEC TR 60890.</summary>
    public const double StillWM2K = 3.4;

    /// <summary>Rise at the top of a still cabinet to that half way up: from the same example.</summary>
    public const double StillTopFactor = 1.44;

    /// <summary>Heat that passes from the air inside to the wall, W/(m2 K); 5 to 10 are usual.</summary>
    public const double InnerFilmWM2K = 8;

    /// <summary>Factor of a side, front or back that is free.</summary>
    public const double ExposedFactor = 0.9;

    /// <summary>Factor of a side or back at a wall or a neighbour.</summary>
    public const double CoveredFactor = 0.5;

    /// <summary>Factor of a free roof.</summary>
    public const double TopFactor = 1.4;

    /// <summary>Factor of a covered roof.</summary>
    public const double CoveredTopFactor = 0.7;

    /// <summary>All ways to stand.</summary>
    public static ImmutableArray<CabinetStanding> Standings { get; } = [.. Enum.GetValues<CabinetStanding>()];

    /// <summary>What the faces count for.</summary>
    /// <param name="standing">How the cabinet stands.</param>
    /// <returns>The factors. Example: end of a row at a wall: front 0.9, rear 0.5, sides 0.9 and 0.5, roof 1.4.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such way to stand.</exception>
    public static FaceFactors FactorsOf(CabinetStanding standing)
    {
        if (standing is < CabinetStanding.Free or > CabinetStanding.RowMiddleWallCovered)
        {
            throw new ArgumentOutOfRangeException(nameof(standing), standing, "No such way to stand.");
        }

        var backCovered = standing is CabinetStanding.Wall or CabinetStanding.RowEndWall or CabinetStanding.RowMiddleWall or CabinetStanding.RowMiddleWallCovered;
        return new(
            ExposedFactor,
            Factor(backCovered),
            Factor(standing >= CabinetStanding.RowMiddle),
            Factor(standing >= CabinetStanding.RowEnd),
            standing == CabinetStanding.RowMiddleWallCovered ? CoveredTopFactor : TopFactor);

        static double Factor(bool covered) => covered ? CoveredFactor : ExposedFactor;
    }

    /// <summary>Surface that sheds heat: <c>A = sum of b A0</c> over front, rear, sides and roof.</summary>
    /// <param name="standing">How the cabinet stands.</param>
    /// <param name="heightMm">Height, mm, over 0.</param>
    /// <param name="widthMm">Width, mm, over 0.</param>
    /// <param name="depthMm">Depth, mm, over 0.</param>
    /// <returns>Surface, m2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not over 0, or no such way to stand.</exception>
    /// <example>2000 x 600 x 500, free: 4.38; at a wall: 3.90; in the middle of a row at a wall, roof covered: 2.89.</example>
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

    /// <summary>Rise of the air inside over the room: <c>dT = Q/(k A)</c>.</summary>
    /// <param name="heatW">Heat inside Q, W, 0 or more.</param>
    /// <param name="surfaceM2">Surface that sheds heat A, m2, over 0.</param>
    /// <param name="transferWM2K">Heat transfer k, W/(m2 K), over 0.</param>
    /// <returns>Rise, K.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>At 5.5 for stirred air; say so, and that a still cabinet has <see cref="StillWM2K"/> and <see cref="StillTopFactor"/> at the top.</remarks>
    /// <example>300 W, 4.38 m2, 5.5: 12.45; 900 W, 5.072 m2, 5.5: 32.26.</example>
    public static double RiseK(double heatW, double surfaceM2, double transferWM2K = StirredWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(surfaceM2, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(transferWM2K, 0);
        return heatW / (transferWM2K * surfaceM2);
    }

    /// <summary>Heat that the surface sheds: <c>Q = k A (T_in - T_amb)</c>.</summary>
    /// <param name="surfaceM2">Surface that sheds heat A, m2, over 0.</param>
    /// <param name="insideC">Temperature inside T_in, C.</param>
    /// <param name="ambientC">Temperature of the room T_amb, C.</param>
    /// <param name="transferWM2K">Heat transfer k, W/(m2 K), over 0.</param>
    /// <returns>Heat, W; negative where the room is the hotter and heats the cabinet.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or no number.</exception>
    /// <example>4.4 m2, 35 inside, 25 outside, 5.5: 242; 3.384 m2, 35 inside, 40 outside: -93.06.</example>
    public static double ShedW(double surfaceM2, double insideC, double ambientC, double transferWM2K = StirredWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(surfaceM2, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(transferWM2K, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(insideC, -Air.ZeroC);
        ArgumentOutOfRangeException.ThrowIfLessThan(ambientC, -Air.ZeroC);
        return transferWM2K * surfaceM2 * (insideC - ambientC);
    }

    /// <summary>Temperature of the wall's inner face: <c>T_s = T_in - (k/h_i)(T_in - T_amb)</c>; water settles on it under the dew point of the air inside.</summary>
    /// <param name="insideC">Temperature inside T_in, C.</param>
    /// <param name="ambientC">Temperature of the room T_amb, C.</param>
    /// <param name="transferWM2K">Heat transfer of the wall k, W/(m2 K), over 0 up to h_i, of which it is a part.</param>
    /// <param name="innerFilmWM2K">Heat transfer from the air to the wall h_i, W/(m2 K), over 0.</param>
    /// <returns>Temperature, C. Example: 35 inside, 5 outside, 5.5, 8: 14.375.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or no number.</exception>
    public static double InnerFaceC(double insideC, double ambientC, double transferWM2K = StirredWM2K, double innerFilmWM2K = InnerFilmWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(innerFilmWM2K, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(transferWM2K, innerFilmWM2K);
        return insideC - (ShedW(1, insideC, ambientC, transferWM2K) / innerFilmWM2K);
    }
}
