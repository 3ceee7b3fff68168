namespace RackCheck.Engineering;

/// <summary>Pressure drop of filter mats in air intakes.</summary>
/// <remarks>
/// The flow in a mat is laminar, so its loss is proportional to the flow and does not depend on the density: <c>dp = L V</c>. The loss per velocity is
/// common practice without a source; the data sheet of the mat takes precedence.
/// </remarks>
public static class FilterMats
{
    /// <summary>Pressure drop of a clean mat at <see cref="FaceVelocityMS"/>, Pa.</summary>
    public const double CleanPa = 40;

    /// <summary>Pressure drop at which a mat is changed, at <see cref="FaceVelocityMS"/>, Pa.</summary>
    public const double ChangePa = 80;

    /// <summary>Face velocity of both pressure drops, m/s.</summary>
    public const double FaceVelocityMS = 0.5;

    /// <summary>Airflow through a mat at <see cref="FaceVelocityMS"/>.</summary>
    /// <param name="areaM2">Area of the mat, m2, above 0.</param>
    /// <returns>Airflow, m3/h. Example: 0.08 m2: 144.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An area of 0 or less.</exception>
    public static double RatedM3h(double areaM2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(areaM2, 0);
        return 3600 * FaceVelocityMS * areaM2;
    }

    /// <summary>Linear loss of a mat: <c>L = dp1/V1</c>.</summary>
    /// <param name="lossPa">Pressure drop dp1, Pa, 0 or more.</param>
    /// <param name="atM3h">Airflow V1 at which it is specified, m3/h, above 0.</param>
    /// <returns>L, Pa/(m3/h). Examples: 40 Pa at 144 m3/h: 0.2778; 80 Pa at 144 m3/h: 0.5556; 30 Pa at 300 m3/h: 0.1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Linear(double lossPa, double atM3h)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lossPa, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(atM3h, 0);
        return lossPa / atM3h;
    }
}
