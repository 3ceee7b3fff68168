namespace RackCheck.Engineering;

/// <summary>Room and thickness taken where a data sheet says nothing. Common practice, no source.</summary>
public static class Allowances
{
    /// <summary>Handles, knobs and front cables before the mounting plane, mm.</summary>
    public const double FrontProjectionMm = 40;

    /// <summary>Mains and data cables behind a body, mm.</summary>
    public const double RearProjectionCabledMm = 75;

    /// <summary>Behind a body with neither plugs nor cables, mm.</summary>
    public const double RearProjectionBareMm = 25;

    /// <summary>Thickness of a fixed angle runner under a unit, mm.</summary>
    public const double RunnerThicknessMm = 2;

    /// <summary>Thickness of one telescopic slide, mm.</summary>
    public const double SlideThicknessMm = 9.5;

    /// <summary>What a shelf loses of the opening between the uprights, mm.</summary>
    public const double ShelfWidthLossMm = 10;

    /// <summary>Depth that a cable-management arm takes behind a body, mm.</summary>
    public const double CableArmMm = 100;

    /// <summary>Height of a horizontal PDU, units.</summary>
    public const int HorizontalUnitHeightU = 1;

    /// <summary>Body of a horizontal PDU behind its plane, mm.</summary>
    public const double HorizontalUnitDepthMm = 60;

    /// <summary>Width of a vertical PDU, mm.</summary>
    public const double VerticalPduWidthMm = 60;

    /// <summary>What a finger of the cable channel loses of the space beside the panel on one side, mm.</summary>
    public const double SideChannelLossMm = 20;

    /// <summary>Width of the channel beside the panel on one side of the cabinet: <c>(W - 482.6)/2 - 20</c>.</summary>
    /// <param name="cabinetWidthMm">Overall width W, mm.</param>
    /// <returns>Width, mm, 0 where nothing is left. Example: 600 gives 38.7, 800 gives 138.7.</returns>
    public static double SideChannelMm(double cabinetWidthMm) =>
        Math.Max(0, ((cabinetWidthMm - RackGeometry.PanelWidthMm) / 2) - SideChannelLossMm);
}
