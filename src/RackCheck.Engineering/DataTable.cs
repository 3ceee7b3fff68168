using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A reference table with its sources.</summary>
/// <param name="Name">Name in the URL, lower-case words joined by hyphens.</param>
/// <param name="Title">Title of the table.</param>
/// <param name="Columns">Columns of the table.</param>
/// <param name="Rows">Rows of the table, each with one cell per column.</param>
/// <param name="Sources">Sources of the data.</param>
public sealed record DataTable(
    string Name,
    string Title,
    ImmutableArray<DataColumn> Columns,
    ImmutableArray<ImmutableArray<DataCell>> Rows,
    ImmutableArray<Source> Sources);

/// <summary>A column of a reference table.</summary>
/// <param name="Name">Name, camelCase.</param>
/// <param name="Unit">Unit of measure; null for text.</param>
public sealed record DataColumn(string Name, string? Unit = null);

/// <summary>A cell of a reference table: a number or a text.</summary>
public readonly record struct DataCell
{
    private DataCell(double? number, string? text) => (Number, Text) = (number, text);

    /// <summary>The number, where the cell is a number.</summary>
    public double? Number { get; }

    /// <summary>The text, where the cell is a text.</summary>
    public string? Text { get; }

    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator DataCell(double value) => new(value, null);

    /// <summary>A text.</summary>
    /// <param name="value">The text.</param>
    public static implicit operator DataCell(string value) => new(null, value);
}

/// <summary>Reference tables of the rules, built from the same constants as the calculations.</summary>
public static partial class DataTables
{
    /// <summary>All tables, sorted by name.</summary>
    public static ImmutableArray<DataTable> All { get; } =
    [
        AirTable,
        new(
            "allowances",
            "Default clearances and thicknesses where the data sheet gives none",
            [new("quantity"), new("value", "mm"), new("use")],
            [
                ["front projection", Allowances.FrontProjectionMm, "handles, knobs and cables in front of the mounting plane"],
                ["rear projection, cabled", Allowances.RearProjectionCabledMm, "mains and data cables behind the body"],
                ["rear projection, bare", Allowances.RearProjectionBareMm, "behind a body without plugs or cables"],
                ["door depth", CabinetSizes.DoorDepthMm, "depth of one door, included in the cabinet depth"],
                ["upright pitch", CabinetSizes.UprightPitchMm, "depth adjustment of the uprights"],
                ["runner thickness", Allowances.RunnerThicknessMm, "angle under the item, raises it"],
                ["slide thickness", Allowances.SlideThicknessMm, "one telescopic slide rail"],
                ["shelf thickness", Allowances.ShelfThicknessMm, "plate of an item's own shelf, under its body"],
                ["shelf width loss", Allowances.ShelfWidthLossMm, "opening between uprights less usable shelf width"],
                ["cable arm", Allowances.CableArmMm, "behind an item used in the extended position"],
                ["horizontal PDU", Allowances.HorizontalUnitDepthMm, "depth behind the mounting plane"],
                ["vertical PDU", Allowances.VerticalPduWidthMm, "width beside the bodies, behind the rear uprights"],
                ["side channel loss", Allowances.SideChannelLossMm, "cable fingers beside the panel, per side"],
            ],
            [Sources.ClearancePractice, Sources.SupportPractice, Sources.ShelfPractice, Sources.CabinetSizePractice]),
        new(
            "breakers",
            "Circuit breakers: instantaneous trip and continuous load",
            [new("quantity"), new("value"), new("unit"), new("use")],
            [
                .. Breakers.Curves.Select(c => Row($"curve {c.Curve}, lower limit", c.Least, "x rated current", "no instantaneous trip below it")),
                .. Breakers.Curves.Select(c => Row($"curve {c.Curve}, upper limit", c.Greatest, "x rated current", "instantaneous trip from it upwards")),
                ["continuous load", Breakers.ContinuousSharePercent, "% of rated current", "maximum, North America"],
            ],
            [Sources.Iec60898, Sources.Nec210]),
        new(
            "cabinet-sizes",
            "Common cabinet sizes, overall",
            [new("dimension"), new("value"), new("unit")],
            [
                .. CabinetSizes.WidthsMm.Select(w => Row("width", w, "mm")),
                .. CabinetSizes.DepthsMm.Select(d => Row("depth", d, "mm")),
                .. CabinetSizes.HeightsU.Select(u => Row("mounting height", u, "U")),
            ],
            [Sources.CabinetSizePractice]),
        MechanicalTables.CableFill(),
        new(
            "cables",
            "Two-core copper supply cables: voltage drop, capacity and resistance",
            [
                new("crossSection", "mm2"),
                new("drop", "mV/A/m"),
                new("dropThreePhase", "mV/A/m"),
                new("capacity", "A"),
                new("resistance", "milliohm/m"),
                new("capacityThreePhase", "A"),
            ],
            [
                .. from c in Cables.All
                   let threePhase = Math.Round(c.DropMvPerAM * Cables.ThreePhaseFactor, 3)
                   select Row(c.CrossSectionMm2, c.DropMvPerAM, threePhase, c.CapacityA, c.ResistanceMilliohmPerM, c.ThreePhaseCapacityA),
            ],
            [Sources.Bs7671Drop, Sources.Bs7671Capacity, Sources.Iec60228]),
        new(
            "connectors",
            "Plugs and sockets: ratings and mating (hard-wired connections have no rating)",
            [new("connector"), new("rated", "A"), new("ratedNorthAmerica", "A"), new("takes"), new("phases"), new("secured"), new("standard")],
            [
                .. from c in Connectors.All
                   where c.RatedA is not null
                   let takes = c.Takes.IsEmpty ? "none" : string.Join(", ", c.Takes)
                   select Row(c.Code, c.RatedA ?? 0, c.RatedNorthAmericaA ?? 0, takes, c.Phases, c.Secured ? "yes" : "no", c.Standard),
            ],
            [Sources.Iec60320, Sources.Bs1363, Sources.Cee7, Sources.NemaWd6, Sources.Iec60309]),
        MechanicalTables.Delivery(),
        new(
            "earth-conductors",
            "Protective conductors: minimum cross-sectional area, resistance and protective conductor current",
            [new("quantity"), new("value"), new("unit"), new("use")],
            [
                ["same area", EarthConductors.SameUpToMm2, "mm2", "line conductor up to this area: same area; above: at least this area"],
                ["half area", EarthConductors.HalfPastMm2, "mm2", "line conductor above this area: half its area"],
                ["minimum area, protected", EarthConductors.LeastProtectedMm2, "mm2", "separate conductor, protected against damage"],
                ["minimum area, not protected", EarthConductors.LeastUnprotectedMm2, "mm2", "separate conductor, not protected against damage"],
                ["k, separate", EarthConductors.SeparateCopperK, "A s^0.5/mm2", "PVC-insulated copper, separate conductor"],
                ["k, in a cable", EarthConductors.CabledCopperK, "A s^0.5/mm2", "PVC-insulated copper in a cable"],
                ["adiabatic, shortest time", EarthConductors.AdiabaticFromS, "s", "below it use the let-through energy of the breaker"],
                ["adiabatic, longest time", EarthConductors.AdiabaticToS, "s", "above it heat is lost to the surroundings"],
                ["resistivity", EarthConductors.CopperOhmMm2PerM, "ohm mm2/m", "copper at 20 C"],
                ["earth continuity resistance", EarthConductors.MostPathOhm, "ohm", "maximum, item to earth bar"],
                ["secured connection", EarthConductors.SecuredFromMa, "mA", "protective conductor current above which it and a label are required"],
                ["high-integrity earthing", EarthConductors.HighIntegrityFromMa, "mA", "protective conductor current above which it is required"],
                ["high-integrity earthing, main conductor", EarthConductors.HighIntegrityMm2, "mm2", "minimum for a single conductor"],
                ["high-integrity earthing, IEC 60309 plug up to 16 A", EarthConductors.SmallIndustrialPlugMm2, "mm2", "minimum earth conductor"],
                ["high-integrity earthing, larger IEC 60309 plug", EarthConductors.IndustrialPlugMm2, "mm2", "minimum earth conductor"],
                ["standing leakage through an RCD", EarthConductors.RcdSharePercent, "% of rated residual current", "maximum"],
                .. EarthConductors.RcdRatingsMa.Select(r => Row("RCD rating", r, "mA", "rated residual current")),
                .. EarthConductors.SectionsMm2.Select(s => Row("nominal area", s, "mm2", "nominal cross-sectional area of a conductor")),
            ],
            [
                Sources.Iec60364Earthing,
                Sources.Bs7671ProtectiveCurrent,
                Sources.Bs7671Rcd,
                Sources.Iec60028,
                Sources.Iec60228,
                Sources.Iec60950EarthTest,
                Sources.Iec61008,
            ]),
        EnclosureSurfaces,
        MechanicalTables.FloorClasses(),
        MechanicalTables.Handling(),
        InletClasses,
        IpOpenings,
        new(
            "panel-heights",
            "Panel and aperture heights by U",
            [new("units", "U"), new("panelMm", "mm"), new("apertureMm", "mm")],
            [.. Enumerable.Range(1, 60).Select(n => Row(n, Math.Round(RackGeometry.PanelHeightMm(n), 3), Math.Round(RackGeometry.ApertureMm(n), 3)))],
            [Sources.Iec60297, Sources.Eia310]),
        PlateLosses,
        new(
            "rack-geometry",
            "Geometry of the 482.6 mm (19 in) series",
            [new("quantity"), new("value", "mm"), new("note")],
            [
                ["rack unit", RackGeometry.UnitMm, "1.75 in"],
                ["panel relief", RackGeometry.PanelReliefMm, "panel height n x 44.45 - 0.8"],
                ["panel width", RackGeometry.PanelWidthMm, "19 in"],
                ["hole spacing, horizontal", RackGeometry.HoleSpacingMm, "centre to centre, tolerance +-1.6"],
                ["opening between uprights", RackGeometry.OpeningMm, "minimum"],
                ["first hole above unit edge", RackGeometry.HoleCentreMm(1, 1), "centre"],
                ["second hole above unit edge", RackGeometry.HoleCentreMm(1, 2), "centre"],
                ["third hole above unit edge", RackGeometry.HoleCentreMm(1, 3), "centre"],
                ["square hole", RackGeometry.SquareHoleMm, "for an M6 cage nut"],
            ],
            [Sources.Iec60297, Sources.Eia310]),
        MechanicalTables.Stability(),
    ];

    internal static ImmutableArray<DataCell> Row(params ReadOnlySpan<DataCell> cells) => [.. cells];
}
