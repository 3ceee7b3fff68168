using RackCheck.Engineering;

namespace RackCheck.Survey;

/// <summary>The filter mat in the airflow path.</summary>
/// <param name="LossPa">Pressure drop before it is changed, Pa.</param>
/// <param name="AtM3h">Airflow at that pressure drop, m3/h.</param>
/// <param name="CleanPa">Pressure drop of the clean mat at the same airflow, Pa; null if unknown.</param>
/// <param name="AssumedAreaM2">Area of the opening that it covers, m2, where its own is not given.</param>
public sealed record FilterMat(double LossPa, double AtM3h, double? CleanPa, double? AssumedAreaM2)
{
    /// <summary>Linear loss before it is changed, Pa/(m3/h).</summary>
    public double Linear => FilterMats.Linear(LossPa, AtM3h);

    /// <summary>Linear loss when clean, Pa/(m3/h); null if unknown.</summary>
    public double? CleanLinear => CleanPa is { } clean ? FilterMats.Linear(clean, AtM3h) : null;

    /// <summary>Whether the intake has a mat.</summary>
    public static bool IsFitted(Model.Cooling? cooling) => cooling is not null && (cooling.Filters ?? cooling.Filter is not null);

    /// <summary>The mat over an opening.</summary>
    /// <param name="cooling">The cooling data.</param>
    /// <param name="openingM2">Area of the opening, m2; null if unknown.</param>
    /// <returns>The mat; null without one, or if neither its data nor the opening is known.</returns>
    public static FilterMat? Of(Model.Cooling? cooling, double? openingM2)
    {
        if (!IsFitted(cooling))
        {
            return null;
        }

        if (cooling!.Filter is { LossPa: { } loss, AtM3h: { } at })
        {
            return new(loss, at, null, null);
        }

        var own = cooling.Filter?.AreaCm2 / 1e4;
        return (own ?? openingM2) is { } area and > 0
            ? new(FilterMats.ChangePa, FilterMats.RatedM3h(area), FilterMats.CleanPa, own is null ? area : null)
            : null;
    }
}
