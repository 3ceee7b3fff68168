using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A table of data with its sources.</summary>
/// <param name="Name">Name in the address, lower-case words joined by hyphens.</param>
/// <param name="Title">What it holds.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, each with a cell a column.</param>
/// <param name="Sources">Where the data come from.</param>
public sealed record DataTable(
    string Name,
    string Title,
    ImmutableArray<DataColumn> Columns,
    ImmutableArray<ImmutableArray<DataCell>> Rows,
    ImmutableArray<Source> Sources);

/// <summary>A column of a table.</summary>
/// <param name="Name">Its name, camelCase.</param>
/// <param name="Unit">Unit of its numbers; null for words.</param>
public sealed record DataColumn(string Name, string? Unit = null);

/// <summary>A cell of a table: a number or a word.</summary>
public readonly record struct DataCell
{
    private DataCell(double? number, string? text) => (Number, Text) = (number, text);

    /// <summary>The number, where it is one.</summary>
    public double? Number { get; }

    /// <summary>The word, where it is one.</summary>
    public string? Text { get; }

    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator DataCell(double value) => new(value, null);

    /// <summary>A word.</summary>
    /// <param name="value">The word.</param>
    public static implicit operator DataCell(string value) => new(null, value);
}

/// <summary>The tables that the rules rely on, made of the same constants that the rules compute with.</summary>
public static partial class DataTables
{
    /// <summary>All of them, by name.</summary>
    public static ImmutableArray<DataTable> All { get; } =
    [
        AirTable,
        new(
            "allowances",
            "Room and thickness taken where a data sheet says nothing",
            [new("quantity"), new("value", "mm"), new("use")],
            [
                ["front projection", Allowances.FrontProjectionMm, "handles, knobs and cables before the mounting plane"],
                ["rear projection, cabled", Allowances.RearProjectionCabledMm, "mains and data cables behind a body"],
                ["rear projection, bare", Allowances.RearProjectionBareMm, "behind a body with neither plugs nor cables"],
                ["door depth", CabinetSizes.DoorDepthMm, "what one door takes of the cabinet's depth"],
                ["upright pitch", CabinetSizes.UprightPitchMm, "holes that uprights are moved along in depth"],
                ["runner thickness", Allowances.RunnerThicknessMm, "angle under a unit, lifts it"],
                ["slide thickness", Allowances.SlideThicknessMm, "one telescopic slide"],
                ["shelf width loss", Allowances.ShelfWidthLossMm, "opening less usable width of a shelf"],
                ["cable arm", Allowances.CableArmMm, "behind a unit that is pulled forward while it works"],
                ["horizontal PDU", Allowances.HorizontalUnitDepthMm, "its body behind the mounting plane"],
                ["vertical PDU", Allowances.VerticalPduWidthMm, "its width in the side channel"],
                ["side channel loss", Allowances.SideChannelLossMm, "cable fingers beside the panel, each side"],
            ],
            [Sources.ClearancePractice, Sources.SupportPractice, Sources.ShelfPractice, Sources.CabinetSizePractice]),
        new(
            "breakers",
            "Circuit breakers: instantaneous trip, and how far they may be loaded",
            [new("quantity"), new("value"), new("unit"), new("use")],
            [
                .. Breakers.Curves.Select(c => Row($"curve {c.Curve}, least trip", c.Least, "x rated current", "below it the breaker never trips at once")),
                .. Breakers.Curves.Select(c => Row($"curve {c.Curve}, greatest trip", c.Greatest, "x rated current", "from it on the breaker always trips at once")),
                ["continuous load", Breakers.ContinuousSharePercent, "% of rated current", "at most, in North America"],
            ],
            [Sources.Iec60898, Sources.Nec210]),
        new(
            "cabinet-sizes",
            "Sizes that cabinets are sold in, overall",
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
            [new("crossSection", "mm2"), new("drop", "mV/A/m"), new("dropThreePhase", "mV/A/m"), new("capacity", "A"), new("resistance", "milliohm/m"), new("capacityThreePhase", "A")],
            [
                .. from c in Cables.All
                   let threePhase = Math.Round(c.DropMvPerAM * Cables.ThreePhaseFactor, 3)
                   select Row(c.CrossSectionMm2, c.DropMvPerAM, threePhase, c.CapacityA, c.ResistanceMilliohmPerM, c.ThreePhaseCapacityA),
            ],
            [Sources.Bs7671Drop, Sources.Bs7671Capacity, Sources.Iec60228]),
        new(
            "connectors",
            "Plugs and sockets: ratings, and what goes into what (what is hardwired has no rating of its own)",
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
            "Protective conductors: least section, resistance, protective conductor current",
            [new("quantity"), new("value"), new("unit"), new("use")],
            [
                ["same section", EarthConductors.SameUpToMm2, "mm2", "line conductor up to which the protective one has its section; past it that section still does"],
                ["half section", EarthConductors.HalfPastMm2, "mm2", "line conductor past which the protective one has half its section"],
                ["least section, protected", EarthConductors.LeastProtectedMm2, "mm2", "no part of a cable, protected against damage"],
                ["least section, not protected", EarthConductors.LeastUnprotectedMm2, "mm2", "no part of a cable, not protected"],
                ["k, separate", EarthConductors.SeparateCopperK, "A s^0.5/mm2", "PVC-insulated copper, no part of a cable"],
                ["k, in a cable", EarthConductors.CabledCopperK, "A s^0.5/mm2", "PVC-insulated copper in a cable"],
                ["adiabatic, shortest time", EarthConductors.AdiabaticFromS, "s", "below it take the energy that the breaker lets through"],
                ["adiabatic, longest time", EarthConductors.AdiabaticToS, "s", "above it heat is shed meanwhile"],
                ["resistivity", EarthConductors.CopperOhmMm2PerM, "ohm mm2/m", "copper at 20 C"],
                ["path to the bar", EarthConductors.MostPathOhm, "ohm", "at most"],
                ["secured connection", EarthConductors.SecuredFromMa, "mA", "protective conductor current above which it and a label are asked for"],
                ["high-integrity earthing", EarthConductors.HighIntegrityFromMa, "mA", "protective conductor current above which it is asked for"],
                ["high-integrity earthing, main conductor", EarthConductors.HighIntegrityMm2, "mm2", "at least, where it alone is relied on"],
                ["standing leakage through an RCD", EarthConductors.RcdSharePercent, "% of rated residual current", "at most"],
                .. EarthConductors.RcdRatingsMa.Select(r => Row("RCD on offer", r, "mA", "rated residual current")),
                .. EarthConductors.SectionsMm2.Select(s => Row("section on offer", s, "mm2", "nominal section of a conductor")),
            ],
            [Sources.Iec60364Earthing, Sources.Bs7671ProtectiveCurrent, Sources.Bs7671Rcd, Sources.Iec60028, Sources.Iec60228, Sources.Iec60950EarthTest, Sources.Iec61008]),
        EnclosureSurfaces,
        MechanicalTables.FloorClasses(),
        MechanicalTables.Handling(),
        InletClasses,
        IpOpenings,
        new(
            "panel-heights",
            "Height of panels and apertures by rack units",
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
                ["panel relief", RackGeometry.PanelReliefMm, "a panel is n x 44.45 - 0.8 high"],
                ["panel width", RackGeometry.PanelWidthMm, "19 in"],
                ["hole spacing, horizontal", RackGeometry.HoleSpacingMm, "centre to centre, tolerance 1.6 either way"],
                ["opening between uprights", RackGeometry.OpeningMm, "at least"],
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
