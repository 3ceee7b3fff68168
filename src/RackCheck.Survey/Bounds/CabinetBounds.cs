using System.Collections.Immutable;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static RackCheck.Survey.Bounds.FactTable;

namespace RackCheck.Survey.Bounds;

/// <summary>Facts of the cabinet.</summary>
internal static class CabinetBounds
{
    private const string BondedAsk = "Which parts of the cabinet are bonded to protective earth?";

    /// <summary>The facts.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        OfCabinet(
            "heightMm", "How high is the cabinet overall?", c => c.HeightMm, (c, v) => c with { HeightMm = v },
            c => Least(c) is var least ? new(least + 20, least + 250) : null, "base and mounting space and 20 to 250 mm", "mm"),
        OfCabinet(
            "massKg", "How much does the empty cabinet weigh?", c => c.MassKg, (c, v) => c with { MassKg = v },
            c => new(1.5 * c.HeightU!.Value, 5 * c.HeightU.Value), "1.5 to 5 kg for each U", "kg", pull: Pull.Apart),
        OfCabinet(
            "ratedLoadKg", "For what load is the cabinet rated?", c => c.RatedLoadKg, (c, v) => c with { RatedLoadKg = v },
            c => c.HeightU >= 24 ? new(250, 1500) : new(30, 800), "30 to 800 kg, from 24U 250 to 1500 kg", "kg", lowIsAdverse: true),
        OfCabinet(
            "rollingLoadKg", "For what load is the cabinet rated while it is rolled?", c => c.RollingLoadKg, (c, v) => c with { RollingLoadKg = v },
            c => c is { Base.Style: Model.BaseStyle.Castors, RatedLoadKg: { } rated } ? new(Math.Max(1, 0.3 * rated), rated) : null,
            "0.3 to 1 times the rated load", "kg", lowIsAdverse: true),
        OfCabinet(
            "transportLoadKg", "For what load is the cabinet rated in transport?", c => c.TransportLoadKg, (c, v) => c with { TransportLoadKg = v },
            c => c.RatedLoadKg is { } rated ? new(Math.Max(1, 0.5 * rated), rated) : null, "0.5 to 1 times the rated load", "kg", lowIsAdverse: true),
        OfCabinet(
            "wallLoadKg", "For what mass is the cabinet rated on the wall?", c => c.WallLoadKg, (c, v) => c with { WallLoadKg = v },
            c => c.Base?.Style == Model.BaseStyle.Wall ? new(30, 150) : null, "30 to 150 kg", "kg", lowIsAdverse: true),
        OfDoor("frontDoor", "front door", c => c.FrontDoor, (c, d) => c with { FrontDoor = d }, DoorMember.Depth),
        OfDoor("frontDoor", "front door", c => c.FrontDoor, (c, d) => c with { FrontDoor = d }, DoorMember.OpenShare),
        OfDoor("frontDoor", "front door", c => c.FrontDoor, (c, d) => c with { FrontDoor = d }, DoorMember.Area),
        OfDoor("frontDoor", "front door", c => c.FrontDoor, (c, d) => c with { FrontDoor = d }, DoorMember.Mass),
        OfDoor("frontDoor", "front door", c => c.FrontDoor, (c, d) => c with { FrontDoor = d }, DoorMember.Leaves),
        OfDoor("rearDoor", "rear door", c => c.RearDoor, (c, d) => c with { RearDoor = d }, DoorMember.Depth),
        OfDoor("rearDoor", "rear door", c => c.RearDoor, (c, d) => c with { RearDoor = d }, DoorMember.OpenShare),
        OfDoor("rearDoor", "rear door", c => c.RearDoor, (c, d) => c with { RearDoor = d }, DoorMember.Area),
        OfDoor("rearDoor", "rear door", c => c.RearDoor, (c, d) => c with { RearDoor = d }, DoorMember.Mass),
        OfDoor("rearDoor", "rear door", c => c.RearDoor, (c, d) => c with { RearDoor = d }, DoorMember.Leaves),
        OfCabinet(
            "roof/openAreaCm2", "What is the free area of the openings in the roof?", c => c.Roof?.OpenAreaCm2,
            (c, v) => c with { Roof = c.Roof! with { OpenAreaCm2 = v } }, c => c.Roof?.Style == RoofStyle.Vented ? new(50, 2000) : null, "50 to 2000 cm2",
            "cm2", lowIsAdverse: true),
        OfCabinet(
            "base/heightMm", "How high is the base of the cabinet?", c => c.Base?.HeightMm,
            (c, v) => c with { Base = c.Base! with { HeightMm = v } }, BaseHeight,
            "castors 60 to 120 mm, plinth 100 to 200 mm, as far as the overall height leaves space", "mm"),
        OfCabinet(
            "base/insetMm", "How far behind the face of the frame do the feet stand?", c => c.Base?.InsetMm,
            (c, v) => c with { Base = (c.Base ?? new()) with { InsetMm = v } },
            c => c.Base?.Style is null or Model.BaseStyle.Feet or Model.BaseStyle.Castors ? new(0, 75) : null, "0 to 75 mm", "mm"),
        OfCabinet(
            "uprights/openingMm", "How wide is the opening between the uprights?", c => c.Uprights?.OpeningMm,
            (c, v) => c with { Uprights = (c.Uprights ?? new()) with { OpeningMm = v } }, _ => new(RackGeometry.OpeningMm, 470), "450 to 470 mm", "mm",
            lowIsAdverse: true, pull: Pull.Apart, basis: "lower end: minimum opening of IEC 60297-3-100; upper end: common practice, no source"),
        OfCabinet(
            "earthBar/terminals", "How many terminals does the earth bar have?", c => c.EarthBar?.Terminals,
            (c, v) => c with { EarthBar = c.EarthBar! with { Terminals = (int)Math.Floor(v) } }, c => c.EarthBar is null ? null : new(6, 40), "6 to 40", null,
            lowIsAdverse: true),
        Asked("/cabinet/heightU", "How many U does the cabinet have?"),
        Asked("/cabinet/widthMm", "How wide is the cabinet overall?"),
        Asked("/cabinet/depthMm", "How deep is the cabinet overall?"),
        Asked("/cabinet/frontDoor/style", "Which front door does the cabinet have: none, solid, glazed or perforated?"),
        Asked("/cabinet/rearDoor/style", "Which rear door does the cabinet have: none, solid, glazed or perforated?"),
        Asked("/cabinet/uprights/frontSetbackMm", "How far behind the front face of the cabinet are the front uprights?"),
        Asked("/cabinet/uprights/spacingMm", "How far apart are the front and the rear uprights?"),
        Asked("/cabinet/uprights/hole", "Which holes do the uprights have: square, round or threaded?"),
        Asked("/cabinet/base/style", "What does the cabinet stand on: castors, feet, a plinth, floor bolts or wall brackets?"),
        Asked("/cabinet/lockable", "Can the doors and panels be locked?"),
        Asked("/cabinet/ipCode", "What is the IP code of the cabinet?"),
        Asked("/earthing/bonded", BondedAsk),
        Asked("/cabinet/frontDoor/bonded", BondedAsk, "/earthing/bonded"),
        Asked("/cabinet/rearDoor/bonded", BondedAsk, "/earthing/bonded"),
    ];

    private enum DoorMember
    {
        Depth,
        OpenShare,
        Area,
        Mass,
        Leaves,
    }

    // Mounting space and base: what the overall height must at least hold.
    private static double Least(Cabinet cabinet) =>
        CabinetHeights.Of(cabinet with { HeightMm = null }).BaseMm + RackGeometry.ApertureMm(cabinet.HeightU!.Value);

    private static Bound? BaseHeight(Cabinet cabinet)
    {
        Bound? usual = cabinet.Base?.Style switch
        {
            Model.BaseStyle.Castors => new(60, 120),
            Model.BaseStyle.Plinth => new(CabinetHeights.PlinthHeightMm, 200),
            _ => null,
        };
        return usual is { } bound && cabinet.HeightMm is { } high
            ? UpTo(bound, Math.Max(0, high - RackGeometry.ApertureMm(cabinet.HeightU!.Value)))
            : usual;
    }

    private static Bound UpTo(Bound bound, double most) => new(Math.Min(bound.Low, most), Math.Min(bound.High, most));

    private static Fact<RackDescription> OfCabinet(
        string member, string ask, Func<Cabinet, double?> get, Func<Cabinet, double, Cabinet> set, Func<Cabinet, Bound?> limits, string range, string? unit,
        bool lowIsAdverse = false, Pull pull = Pull.OneWay, string basis = Practice) =>
        OfRack(
            "/cabinet/" + member, ask, r => r.Cabinet is { } c ? get(c) : null, (r, v) => r with { Cabinet = set(r.Cabinet!, v) },
            r => r.Cabinet is { HeightU: not null } c ? limits(c) : null, range, unit, lowIsAdverse, pull, basis);

    private static Fact<RackDescription> OfDoor(string name, string words, Func<Cabinet, Door?> door, Func<Cabinet, Door, Cabinet> set, DoorMember member)
    {
        Fact<RackDescription> Make(
            string part, string ask, Func<Door, double?> get, Func<Door, double, Door> put, Func<Door, Cabinet, Bound?> limits, string range, string? unit,
            bool lowIsAdverse = false) =>
            OfCabinet(
                $"{name}/{part}", ask, c => door(c) is { } d ? get(d) : null, (c, v) => set(c, put(door(c)!, v)),
                c => door(c) is { Style: not (null or DoorStyle.None) } d ? limits(d, c) : null, range, unit, lowIsAdverse);

        return member switch
        {
            DoorMember.Depth => Make(
                "depthMm", $"How deep is the {words}?", d => d.DepthMm, (d, v) => d with { DepthMm = v }, (_, _) => new(10, 40), "10 to 40 mm", "mm"),
            DoorMember.OpenShare => Make(
                "openAreaPercent", $"What share of the {words} is open?", d => d.OpenAreaPercent, (d, v) => d with { OpenAreaPercent = v },
                (d, _) => d.Style == DoorStyle.Perforated ? new(30, 85) : null, "30 to 85 %", "%", lowIsAdverse: true),
            DoorMember.Area => Make(
                "perforatedAreaM2", $"What is the area of the perforated face of the {words}?", d => d.PerforatedAreaM2,
                (d, v) => d with { PerforatedAreaM2 = v },
                (d, c) => d.Style == DoorStyle.Perforated && AirPath.PerforatedAreaM2(c) is var area and > 0 ? new(0.65 * area, 1.05 * area) : null,
                "0.65 to 1.05 times width less 100 mm, times the height of the mounting space", "m2", lowIsAdverse: true),
            DoorMember.Mass => Make(
                "massKg", $"How much does the {words} weigh?", d => d.MassKg, (d, v) => d with { MassKg = v }, (_, c) => new(0, 0.6 * c.HeightU!.Value),
                "0 to 0.6 kg for each U", "kg"),
            _ => Make(
                "leaves", $"How many leaves does the {words} have?", d => d.Leaves,
                (d, v) => d with { Leaves = (int)Math.Round(v) }, (_, _) => new(1, 2), "1 or 2",
                null, lowIsAdverse: true),
        };
    }
}
