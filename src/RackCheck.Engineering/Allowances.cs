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

    /// <summary>Thickness of the plate of a shelf under an item, mm.</summary>
    public const double ShelfThicknessMm = 3;

    /// <summary>Difference between the opening of the uprights and the usable width of a shelf, mm.</summary>
    public const double ShelfWidthLossMm = 10;

    /// <summary>Depth of a cable-management arm behind a body, mm.</summary>
    public const double CableArmMm = 100;

    /// <summary>Height of a horizontal PDU, U.</summary>
    public const int HorizontalUnitHeightU = 1;

    /// <summary>Depth of a horizontal PDU behind its mounting plane, mm.</summary>
    public const double HorizontalUnitDepthMm = 60;

    /// <summary>Width of a vertical PDU, mm.</summary>
    public const double VerticalPduWidthMm = 56;

    /// <summary>Places for vertical PDUs in a cabinet, two on each side.</summary>
    public const int VerticalPduPlaces = 4;

    /// <summary>Width taken by the cable fingers beside the panel on one side, mm.</summary>
    public const double SideChannelLossMm = 20;

    /// <summary>Width of the cable channel beside the panel on one side of the cabinet: <c>(W - 482.6)/2 - 20</c>.</summary>
    /// <param name="cabinetWidthMm">Overall width W, mm.</param>
    /// <returns>Width, mm; 0 where no channel remains. Example: 600 gives 38.7, 800 gives 138.7.</returns>
    public static double SideChannelMm(double cabinetWidthMm) =>
        BesideMm(cabinetWidthMm, RackGeometry.PanelWidthMm);

    /// <summary>Clear width beside a body behind the rear uprights, on one side of the cabinet: <c>(W - body width)/2 - 20</c>.</summary>
    /// <param name="cabinetWidthMm">Overall width W, mm.</param>
    /// <param name="bodyWidthMm">Width of the body, mm.</param>
    /// <returns>Width, mm; 0 where none remains. Example: 600 with a body of 440 gives 60, of 450 gives 55.</returns>
    public static double BesideMm(double cabinetWidthMm, double bodyWidthMm) =>
        Math.Max(0, ((cabinetWidthMm - bodyWidthMm) / 2) - SideChannelLossMm);
}
