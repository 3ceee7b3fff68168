using RackCheck.Model;

namespace RackCheck.Survey;

/// <summary>Equipment that has neither power nor air of its own, so that its plugs, heat and inlet limit are not asked for.</summary>
public static class PassiveEquipment
{
    /// <summary>Depth of the deepest patch panel, mm. Common practice, no source.</summary>
    private const double DeepestPanelMm = 200;

    /// <summary>
    /// Whether an item is passive: a blanking panel, a cable manager or a shelf, or a patch panel: network equipment at most 200 mm deep, or without airflow,
    /// of which nothing electrical is given.
    /// </summary>
    /// <param name="item">The item.</param>
    public static bool IsPassive(Item item) => item is { Power: null, Ups: null, HeatW: null or 0, MaxInletC: null } && item.Category switch
    {
        ItemCategory.BlankingPanel or ItemCategory.CableManager or ItemCategory.Shelf => true,
        ItemCategory.Network => item.Airflow is { Direction: AirflowDirection.None, FlowM3h: null or 0 }
            || (item.Airflow is null && item.Body?.DepthMm <= DeepestPanelMm),
        _ => false,
    };
}
