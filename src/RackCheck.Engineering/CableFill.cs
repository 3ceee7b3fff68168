namespace RackCheck.Engineering;

/// <summary>Cable fill of the side channels, and bend radius of cables.</summary>
/// <remarks>Fill: EN 50174; bend: ANSI/TIA-568.0 (values from memory). The depth of the channel is common practice.</remarks>
public static class CableFill
{
    /// <summary>Maximum fill of a channel, percent of its cross-sectional area: EN 50174.</summary>
    public const double MostPercent = 40;

    /// <summary>Usable depth of the cable channel beside the uprights, mm. Common practice, no source.</summary>
    public const double ChannelDepthMm = 100;

    /// <summary>Minimum bend radius of an installed four-pair cable, in cable diameters.</summary>
    public const double BendDiameters = 4;

    /// <summary>Cross-sectional area of identical cables: <c>n pi d2/4</c>.</summary>
    /// <param name="diameterMm">Outer diameter d, mm, above 0.</param>
    /// <param name="count">Number of cables n, 0 or more.</param>
    /// <returns>Cross-sectional area, mm2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>24 cables of 6 mm: 678.6.</example>
    public static double AreaMm2(double diameterMm, int count)
    {
        Require.Positive(diameterMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 0);
        return count * Math.PI * diameterMm * diameterMm / 4;
    }

    /// <summary>Cross-sectional area of the channels on both sides of a cabinet: <c>2 x 100 x ((W - 482.6)/2 - 20)</c>.</summary>
    /// <param name="cabinetWidthMm">Overall width W, mm, above 0.</param>
    /// <returns>Cross-sectional area, mm2; 0 for widths below 522.6, which leave no channel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A width of 0 or less, or not a finite number.</exception>
    /// <remarks>A vertical PDU reduces the channel. The caller must subtract it.</remarks>
    /// <example>600 wide: 7740; 800 wide: 27740.</example>
    public static double SideChannelsMm2(double cabinetWidthMm)
    {
        Require.Positive(cabinetWidthMm);
        return 2 * ChannelDepthMm * Allowances.SideChannelMm(cabinetWidthMm);
    }

    /// <summary>Fill of a channel: <c>100 A / channel</c>.</summary>
    /// <param name="areaMm2">Cross-sectional area of the cables A, mm2, 0 or more.</param>
    /// <param name="channelMm2">Cross-sectional area of the channel, mm2, above 0.</param>
    /// <returns>Fill, percent. Round cables laid by hand fill a channel completely at about 75 %; the theoretical maximum is 90.7 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>3096 mm2 in 7740 mm2: 40 %.</example>
    public static double Percent(double areaMm2, double channelMm2)
    {
        Require.NotNegative(areaMm2);
        Require.Positive(channelMm2);
        return 100 * areaMm2 / channelMm2;
    }

    /// <summary>Channel cross-sectional area required for cables: <c>A / fill</c>.</summary>
    /// <param name="areaMm2">Cross-sectional area of the cables A, mm2, 0 or more.</param>
    /// <param name="fillPercent">Maximum fill, percent, above 0 to 100.</param>
    /// <returns>Cross-sectional area, mm2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>48 cables of 7.5 mm at 40 %: 5301.4.</example>
    public static double NeededMm2(double areaMm2, double fillPercent = MostPercent)
    {
        Require.NotNegative(areaMm2);
        Require.Positive(fillPercent);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fillPercent, 100);
        return 100 * areaMm2 / fillPercent;
    }

    /// <summary>Minimum inner bend radius of an installed cable: <c>4 d</c>.</summary>
    /// <param name="diameterMm">Outer diameter d, mm, above 0.</param>
    /// <returns>Radius, mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">0 or less, or not a finite number.</exception>
    /// <remarks>For balanced four-pair cables. The manufacturer's value takes precedence. Fibre and power cables have other values.</remarks>
    /// <example>7.5 mm: 30.</example>
    public static double BendRadiusMm(double diameterMm)
    {
        Require.Positive(diameterMm);
        return BendDiameters * diameterMm;
    }
}
