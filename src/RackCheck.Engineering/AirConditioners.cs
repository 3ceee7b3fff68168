namespace RackCheck.Engineering;

/// <summary>Air conditioners of closed cabinets: required capacity, and derated capacity at higher ambient temperatures.</summary>
/// <remarks>
/// Required capacity: heat balance. Derating: common practice without a source. An air conditioner is rated for one inside and one ambient temperature, often
/// 35 C each. Each kelvin above the rated ambient temperature reduces the capacity by 1 to 2 %; 1.5 % is used here. The manufacturer's curve takes precedence.
/// </remarks>
public static class AirConditioners
{
    /// <summary>Default setpoint of the temperature inside the cabinet, C.</summary>
    public const double UsualSetpointC = 35;

    /// <summary>Loss of capacity per kelvin above the rated ambient temperature, percent.</summary>
    public const double DeratingPercentPerK = 1.5;

    /// <summary>Maximum difference above the rated ambient temperature for the linear derating, K. Few air conditioners operate beyond it.</summary>
    public const double DeratingToK = 20;

    /// <summary>Required capacity: <c>Q - k A (T_in - T_amb)</c>.</summary>
    /// <param name="heatW">Heat load inside Q, W, 0 or more.</param>
    /// <param name="surfaceM2">Effective surface A, m2, above 0.</param>
    /// <param name="insideC">Setpoint inside T_in, C.</param>
    /// <param name="ambientC">Room temperature T_amb, C.</param>
    /// <param name="transferWM2K">Heat transfer coefficient k, W/(m2 K), above 0.</param>
    /// <returns>Capacity, W; above the heat load where the room is hotter than the inside; 0 or less where the surface alone dissipates the heat.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or not a finite number.</exception>
    /// <example>
    /// 1500 W, 5.712 m2, 35 C inside, 25 C outside: 1185.84; 800 W, 3.384 m2, 35 C inside, 40 C outside: 893.06; 500 W, 6.656 m2, 40 C inside, 20 C
    /// outside: -232.16.
    /// </example>
    public static double NeededW(double heatW, double surfaceM2, double insideC, double ambientC, double transferWM2K = Enclosures.StirredWM2K)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        return heatW - Enclosures.ShedW(surfaceM2, insideC, ambientC, transferWM2K);
    }

    /// <summary>Derated capacity: <c>C (1 - 0.015 (T_amb - T_rated))</c> above the rated ambient temperature, otherwise the full capacity.</summary>
    /// <param name="capacityW">Rated capacity C, W, 0 or more.</param>
    /// <param name="ratedAmbientC">Rated ambient temperature T_rated, C.</param>
    /// <param name="ambientC">Room temperature T_amb, C; valid up to 20 K above the rated ambient temperature, see <see cref="IsWithinDerating"/>.</param>
    /// <returns>Capacity, W. A colder room adds no capacity. The capacity is 0 from 66.7 K above the rated ambient temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or not a finite number.</exception>
    /// <example>1000 W rated at 35 C: 1000 W at 25 C, 925 W at 40 C, 700 W at 55 C.</example>
    public static double LeftW(double capacityW, double ratedAmbientC, double ambientC)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacityW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(ratedAmbientC, -Air.ZeroC);
        ArgumentOutOfRangeException.ThrowIfLessThan(ambientC, -Air.ZeroC);
        var over = Math.Max(0, ambientC - ratedAmbientC);
        return capacityW * Math.Max(0, 1 - (DeratingPercentPerK / 100 * over));
    }

    /// <summary>Whether a room temperature is within the valid range of the linear derating.</summary>
    /// <param name="ratedAmbientC">Rated ambient temperature, C.</param>
    /// <param name="ambientC">Temperature of the room, C.</param>
    /// <returns>True up to 20 K above the rated ambient temperature.</returns>
    public static bool IsWithinDerating(double ratedAmbientC, double ambientC) => ambientC - ratedAmbientC <= DeratingToK;
}
