namespace RackCheck.Engineering;

/// <summary>Room that cables take beside the equipment, and how tightly they bend.</summary>
/// <remarks>Fill: EN 50174; bend: ANSI/TIA-568.0 (values from memory). The depth of the channel is common practice.</remarks>
public static class CableFill
{
    /// <summary>Greatest fill of a channel, percent of its section: EN 50174.</summary>
    public const double MostPercent = 40;

    /// <summary>Usable depth of the channel beside the uprights, mm. Common practice, no source.</summary>
    public const double ChannelDepthMm = 100;

    /// <summary>Least bend radius of a four-pair cable at rest, diameters.</summary>
    public const double BendDiameters = 4;

    /// <summary>Section of cables alike: <c>n pi d2/4</c>.</summary>
    /// <param name="diameterMm">Diameter d over the sheath, mm, over 0.</param>
    /// <param name="count">How many n, 0 or more.</param>
    /// <returns>Section, mm2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>24 of 6 mm: 678.6.</example>
    public static double AreaMm2(double diameterMm, int count)
    {
        Require.Positive(diameterMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 0);
        return count * Math.PI * diameterMm * diameterMm / 4;
    }

    /// <summary>Section of the channels on both sides of a cabinet: <c>2 x 100 x ((W - 482.6)/2 - 20)</c>.</summary>
    /// <param name="cabinetWidthMm">Overall width W, mm, over 0.</param>
    /// <returns>Section, mm2; 0 where the width leaves no channel, under 522.6.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A width not over 0, or no number.</exception>
    /// <remarks>A vertical PDU in a channel takes of it; that is the caller's to count.</remarks>
    /// <example>600 wide: 7740; 800 wide: 27740.</example>
    public static double SideChannelsMm2(double cabinetWidthMm)
    {
        Require.Positive(cabinetWidthMm);
        return 2 * ChannelDepthMm * Allowances.SideChannelMm(cabinetWidthMm);
    }

    /// <summary>Fill of a channel: <c>100 A / channel</c>.</summary>
    /// <param name="areaMm2">Section of the cables A, mm2, 0 or more.</param>
    /// <param name="channelMm2">Section of the channel, mm2, over 0.</param>
    /// <returns>Fill, percent. Round cables laid by hand fill a channel at about 75, laid best at 90.7: more than that does not go in.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>3096 in 7740: 40.</example>
    public static double Percent(double areaMm2, double channelMm2)
    {
        Require.NotNegative(areaMm2);
        Require.Positive(channelMm2);
        return 100 * areaMm2 / channelMm2;
    }

    /// <summary>Section of channel that cables need: <c>A / fill</c>.</summary>
    /// <param name="areaMm2">Section of the cables A, mm2, 0 or more.</param>
    /// <param name="fillPercent">Greatest fill, percent, over 0 to 100.</param>
    /// <returns>Section, mm2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>48 of 7.5 mm at 40 %: 5301.4.</example>
    public static double NeededMm2(double areaMm2, double fillPercent = MostPercent)
    {
        Require.NotNegative(areaMm2);
        Require.Positive(fillPercent);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fillPercent, 100);
        return 100 * areaMm2 / fillPercent;
    }

    /// <summary>Least bend radius of a cable at rest, on its inside: <c>4 d</c>.</summary>
    /// <param name="diameterMm">Diameter d over the sheath, mm, over 0.</param>
    /// <returns>Radius, mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not over 0, or no number.</exception>
    /// <remarks>For balanced cables of four pairs; a maker's own figure counts before it, and fibre and power cables have others.</remarks>
    /// <example>7.5 mm: 30.</example>
    public static double BendRadiusMm(double diameterMm)
    {
        Require.Positive(diameterMm);
        return BendDiameters * diameterMm;
    }
}
