using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Cables that leave the equipment: what they fill beside it, and the room behind it to bend them.</summary>
public sealed class CableSurvey
{
    private readonly CabinetFacts cabinet;
    private readonly DepthSurvey depth;

    internal CableSurvey(CabinetFacts cabinet, MountedItem[] items, DepthSurvey depth)
    {
        (this.cabinet, this.depth) = (cabinet, depth);
        SideChannelsMm2 = CableFill.SideChannelsMm2(cabinet.WidthMm);
        IsKnown = true;
        var most = 0.0;
        foreach (var item in items)
        {
            IsKnown &= !HidesCables(item);
            if (AreaMm2Of(item) is > 0 and var area)
            {
                AreaMm2 += area;
                NeedsSetback |= item.BodyDepthMm is not null;
                if (area > most || (area == most && string.CompareOrdinal(item.Id, Most!.Id) < 0))
                {
                    (Most, most) = (item, area);
                }
            }
        }

        Figures = Most is null ? null : new CablingFigures
        {
            AreaMm2 = IsKnown ? Quantities.Round(AreaMm2) : null,
            SideSpaceMm2 = Quantities.Round(SideChannelsMm2),
            FillPercent = IsKnown && SideChannelsMm2 > 0 ? Quantities.Round(CableFill.Percent(AreaMm2, SideChannelsMm2)) : null,
        };
    }

    /// <summary>Section of all cables, mm2, as far as they are given.</summary>
    public double AreaMm2 { get; }

    /// <summary>Section of the channels on both sides, mm2; 0 where the cabinet is too narrow for any.</summary>
    public double SideChannelsMm2 { get; }

    /// <summary>The item with the most cables by section; null where no cables are given.</summary>
    public MountedItem? Most { get; }

    /// <summary>Whether the cables of all that has plugs are given.</summary>
    public bool IsKnown { get; }

    /// <summary>Whether the room behind something hangs on the setback.</summary>
    internal bool NeedsSetback { get; }

    /// <summary>The cabling figures of the report; null where no cables are given.</summary>
    public CablingFigures? Figures { get; }

    /// <summary>Whether an item has a cord at least, and nothing says what cables.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Whether its cables are to be asked for.</returns>
    public static bool HidesCables(MountedItem item) => item.Item is { Cables: null, Power.Plugs.Count: > 0 };

    /// <summary>Section of an item's cables.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Section, mm2.</returns>
    public static double AreaMm2Of(MountedItem item)
    {
        var area = 0.0;
        if (item.Item?.Cables is { } bundles)
        {
            for (var i = 0; i < bundles.Count; i++)
            {
                area += CableFill.AreaMm2(bundles[i].DiameterMm, bundles[i].Count);
            }
        }

        return area;
    }

    /// <summary>The thickest cable of an item.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Diameter, mm; 0 where no cables are given.</returns>
    public static double ThickestMm(MountedItem item)
    {
        var thickest = 0.0;
        if (item.Item?.Cables is { } bundles)
        {
            for (var i = 0; i < bundles.Count; i++)
            {
                thickest = bundles[i].Count > 0 ? Math.Max(thickest, bundles[i].DiameterMm) : thickest;
            }
        }

        return thickest;
    }

    /// <summary>Room from the back of a body to the door behind it.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Room, mm, under 0 where the body passes the door; null where body, setback or, on the rear uprights, spacing is not known.</returns>
    public double? SpaceBehindMm(MountedItem item) => depth.SetbackMm is not { } setback || item.BodyDepthMm is not { } body ? null
        : item.Face == Face.Front ? cabinet.Depth.RearLimitMm - setback - body
        : cabinet.SpacingMm is { } spacing ? setback + spacing - body - cabinet.Depth.FrontDoorMm
        : null;

    /// <summary>Setbacks that leave room behind a body.</summary>
    /// <param name="item">The item.</param>
    /// <param name="roomMm">The room, mm.</param>
    /// <param name="other">Depth and doors of the cabinet.</param>
    /// <returns>The interval.</returns>
    public SetbackInterval SetbacksFor(MountedItem item, double roomMm, CabinetDepth other) => item.Face == Face.Front
        ? new(0, other.RearLimitMm - (item.BodyDepthMm ?? 0) - roomMm)
        : new((item.BodyDepthMm ?? 0) + roomMm + other.FrontDoorMm - (cabinet.SpacingMm ?? 0), double.PositiveInfinity);
}
