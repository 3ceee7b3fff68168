using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Cables from the equipment: how far they fill the side channels, and the bend space behind the equipment.</summary>
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
    }

    /// <summary>Cross-sectional area of all given cables, mm2.</summary>
    public double AreaMm2 { get; }

    /// <summary>Cross-sectional area of the channels on both sides, mm2; 0 if the cabinet is too narrow for channels.</summary>
    public double SideChannelsMm2 { get; }

    /// <summary>The item with the largest cable area; null if no cables are given.</summary>
    public MountedItem? Most { get; }

    /// <summary>Whether the cables of every item with plugs are given.</summary>
    public bool IsKnown { get; }

    /// <summary>Whether the space behind an item depends on the setback.</summary>
    internal bool NeedsSetback { get; }

    /// <summary>The cabling figures of the report; null if no cables are given.</summary>
    public CablingFigures? Figures => Most is null ? null : new CablingFigures
    {
        AreaMm2 = IsKnown ? Quantities.Round(AreaMm2) : null,
        SideSpaceMm2 = Quantities.Round(SideChannelsMm2),
        FillPercent = IsKnown && SideChannelsMm2 > 0 ? Quantities.Round(CableFill.Percent(AreaMm2, SideChannelsMm2)) : null,
    };

    /// <summary>Whether an item has at least one cord and its cables are missing.</summary>
    /// <returns>Whether its cables are reported as missing.</returns>
    public static bool HidesCables(MountedItem item) => item.Item is { Cables: null, Power.Plugs.Count: > 0 };

    /// <summary>Cross-sectional area of the cables of an item.</summary>
    /// <returns>Area, mm2.</returns>
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
    /// <returns>Diameter, mm; 0 if no cables are given.</returns>
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

    /// <summary>Clearance from the back of a body to the door behind it.</summary>
    /// <returns>Clearance, mm, negative if the body passes the door; null if the body or the setback (on the rear uprights, the spacing) is missing.</returns>
    public double? SpaceBehindMm(MountedItem item) => depth.SetbackMm is not { } setback || item.BodyDepthMm is not { } body ? null
        : item.Face == Face.Front ? cabinet.Depth.RearLimitMm - setback - body
        : cabinet.SpacingMm is { } spacing ? setback + spacing - body - cabinet.Depth.FrontDoorMm
        : null;

    /// <summary>Setbacks that leave a clearance behind a body.</summary>
    /// <param name="roomMm">The clearance, mm.</param>
    /// <param name="other">Depth and doors of the cabinet.</param>
    public SetbackInterval SetbacksFor(MountedItem item, double roomMm, CabinetDepth other) => item.Face == Face.Front
        ? new(0, other.RearLimitMm - (item.BodyDepthMm ?? 0) - roomMm)
        : new((item.BodyDepthMm ?? 0) + roomMm + other.FrontDoorMm - (cabinet.SpacingMm ?? 0), double.PositiveInfinity);
}
