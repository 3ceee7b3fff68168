using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Racks with their masses and places in order, for a test to take something away.</summary>
public static class LoadRacks
{
    /// <summary>42 units, 2000 high on feet: the lower edge of U1 is 66.55 above the floor.</summary>
    public static RackDescription Weighed(
        double? massKg = 100, double widthMm = 600, double depthMm = 1000, double? heightMm = 2000, BaseStyle style = BaseStyle.Feet, double? baseMm = 0,
        int heightU = 42) =>
        TestRacks.EmptyRack(heightU, depthMm, widthMm).Uprights(setback: 75, spacing: 700).Cabinet(c => c with
        {
            MassKg = massKg, HeightMm = heightMm, RatedLoadKg = 1000, Base = new CabinetBase { Style = style, HeightMm = baseMm },
        });

    public static RackDescription Base(this RackDescription rack, BaseStyle? style, double? heightMm = 0, double? stabiliserMm = null) =>
        rack.Cabinet(c => c with
    {
        Base = new CabinetBase
        {
            Style = style, HeightMm = heightMm, StabiliserMm = stabiliserMm, InsetMm = c.Base?.InsetMm,
        },
    });

    /// <summary>Feet in the faces of the cabinet: no doors, no inset. Published examples give distances from the faces.</summary>
    public static RackDescription OnFaces(this RackDescription rack) => rack.Doors(DoorStyle.None, DoorStyle.None).Inset(0);

    /// <summary>Line of feet at an inset from the frame.</summary>
    public static RackDescription Inset(this RackDescription rack, double? insetMm) =>
        rack.Cabinet(c => c with { Base = (c.Base ?? new CabinetBase()) with { InsetMm = insetMm } });

    public static RackDescription Floor(this RackDescription rack, double? distributed = null, double? point = null) =>
        rack with { Site = new Site { Floor = new Floor { DistributedKnM2 = distributed, PointKn = point } } };

    public static Item Heavy(string id, int unit, double? massKg, double? depth = 450, int heightU = 4, Face? face = null) =>
        TestRacks.Unit(id, heightU).Body(depth: depth).At(unit, face) with { MassKg = massKg };

    public static Item Slid(this Item item, double? extension = 450, double? rated = 100) =>
        item with { Support = new Support { Style = SupportStyle.Slides, ExtensionMm = extension, RatedKg = rated } };

    public static Item Carried(this Item item, SupportStyle? style, double? rated) => item with { Support = new Support { Style = style, RatedKg = rated } };
}
