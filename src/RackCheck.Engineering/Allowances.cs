namespace RackCheck.Engineering;

/// <summary>Default clearances and thicknesses where the data sheet gives none. Common practice, no source.</summary>
public static class Allowances
{
    /// <summary>Projection of handles, knobs and front cables in front of the mounting plane, mm.</summary>
    public const double FrontProjectionMm = 40;

    /// <summary>Space for mains and data cables behind a body, mm.</summary>
    public const double RearProjectionCabledMm = 75;

    /// <summary>Space behind a body with neither plugs nor cables, mm.</summary>
    public const double RearProjectionBareMm = 25;

    /// <summary>Thickness of a fixed chassis runner under an item, mm.</summary>
    public const double RunnerThicknessMm = 2;

    /// <summary>Thickness of one telescopic slide rail, mm.</summary>
    public const double SlideThicknessMm = 9.5;

    /// <summary>Difference between the opening of the uprights and the usable width of a shelf, mm.</summary>
    public const double ShelfWidthLossMm = 10;

    /// <summary>Depth of a cable-management arm behind a body, mm.</summary>
    public const double CableArmMm = 100;

    /// <summary>Height of a horizontal PDU, U.</summary>
    public const int HorizontalUnitHeightU = 1;

    /// <summary>Depth of a horizontal PDU behind its mounting plane, mm.</summary>
    public const double HorizontalUnitDepthMm = 60;

    /// <summary>Width of a vertical PDU, mm.</summary>
    public const double VerticalPduWidthMm = 60;

    /// <summary>Width taken by the cable fingers beside the panel on one side, mm.</summary>
    public const double SideChannelLossMm = 20;

    /// <summary>Width of the cable channel beside the panel on one side of the cabinet: <c>(W - 482.6)/2 - 20</c>.</summary>
    /// <param name="cabinetWidthMm">Overall width W, mm.</param>
    /// <returns>Width, mm; 0 where no channel remains. Example: 600 gives 38.7, 800 gives 138.7.</returns>
    public static double SideChannelMm(double cabinetWidthMm) =>
        Math.Max(0, ((cabinetWidthMm - RackGeometry.PanelWidthMm) / 2) - SideChannelLossMm);
}
