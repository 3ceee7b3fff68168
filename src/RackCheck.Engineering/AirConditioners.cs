namespace RackCheck.Engineering;

/// <summary>Air conditioners of closed cabinets: what is asked of one, and what it has left where it is hotter than it was rated for.</summary>
/// <remarks>
/// Need: balance of heat. Derating: common practice without a source. Units are rated for one pair of temperatures inside and outside, often 35 and 35 C; each
/// kelvin that the outside is hotter takes one to two hundredths of the capacity, and the greater share is taken here. Its maker's curve counts for more.
/// </remarks>
public static class AirConditioners
{
    /// <summary>Temperature that it holds inside where nothing is said, C.</summary>
    public const double UsualSetpointC = 35;

    /// <summary>Capacity lost for each kelvin that the room is hotter than the unit was rated for, percent.</summary>
    public const double DeratingPercentPerK = 2;

    /// <summary>How far over the rated temperature the straight line is taken as good, K; past it few units run at all.</summary>
    public const double DeratingToK = 20;

    /// <summary>Capacity needed: <c>Q - k A (T_in - T_amb)</c>.</summary>
    /// <param name="heatW">Heat inside Q, W, 0 or more.</param>
    /// <param name="surfaceM2">Surface that sheds heat A, m2, over 0.</param>
    /// <param name="insideC">Setpoint inside T_in, C.</param>
    /// <param name="ambientC">Temperature of the room T_amb, C.</param>
    /// <param name="transferWM2K">Heat transfer k, W/(m2 K), over 0.</param>
    /// <returns>Capacity, W; more than the heat where the room is the hotter; 0 or less where the surface does it alone.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or no number.</exception>
    /// <example>1500 W, 5.712 m2, 35 inside, 25 outside: 1185.84; 800 W, 3.384 m2, 35 inside, 40 outside: 893.06; 500 W, 6.656 m2, 40 inside, 20 outside: -232.16.</example>
    public static double NeededW(double heatW, double surfaceM2, double insideC, double ambientC, double transferWM2K = Enclosures.StirredWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        return heatW - Enclosures.ShedW(surfaceM2, insideC, ambientC, transferWM2K);
    }

    /// <summary>Capacity left at a room temperature: <c>C (1 - 0.02 (T_amb - T_rated))</c> above the rated one, all of it up to there.</summary>
    /// <param name="capacityW">Rated capacity C, W, 0 or more.</param>
    /// <param name="ratedAmbientC">Temperature outside that it is rated for T_rated, C.</param>
    /// <param name="ambientC">Temperature of the room T_amb, C; valid up to 20 K above the rated one, see <see cref="IsWithinDerating"/>.</param>
    /// <returns>Capacity, W. What a colder room would add is not counted; 50 K above the rated temperature nothing is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or no number.</exception>
    /// <example>1000 W rated at 35: 1000 at 25, 900 at 40, 600 at 55.</example>
    public static double LeftW(double capacityW, double ratedAmbientC, double ambientC)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacityW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(ratedAmbientC, -Air.ZeroC);
        ArgumentOutOfRangeException.ThrowIfLessThan(ambientC, -Air.ZeroC);
        var over = Math.Max(0, ambientC - ratedAmbientC);
        return capacityW * Math.Max(0, 1 - (DeratingPercentPerK / 100 * over));
    }

    /// <summary>Whether a room is no more than 20 K hotter than the unit was rated for, so that the straight line is taken as good.</summary>
    /// <param name="ratedAmbientC">Temperature outside that it is rated for, C.</param>
    /// <param name="ambientC">Temperature of the room, C.</param>
    /// <returns>Whether it is.</returns>
    public static bool IsWithinDerating(double ratedAmbientC, double ambientC) => ambientC - ratedAmbientC <= DeratingToK;
}
