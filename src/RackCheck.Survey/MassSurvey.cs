using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Masses and stability of the rack. PDUs, cables and rails have no mass in the contract and count as 0.</summary>
public sealed class MassSurvey
{
    private readonly CabinetFacts cabinet;
    private readonly MountedItem[] items;
    private readonly double? setbackMm;
    private readonly bool isFigured;

    internal MassSurvey(CabinetFacts cabinet, MountedItem[] items, double? setbackMm, List<AssumedValue>? assumptions)
    {
        (this.cabinet, this.items, this.setbackMm) = (cabinet, items, setbackMm);
        IsEquipmentKnown = true;
        var tells = false;
        foreach (var item in items)
        {
            if (item.Item!.MassKg is { } kilograms)
            {
                KnownEquipmentKg += kilograms;
                tells = true;
            }
            else
            {
                IsEquipmentKnown &= !IsToBeWeighed(item);
            }
        }

        KnownEquipmentKg = Quantities.Round(KnownEquipmentKg);
        HasEquipment = tells || !IsEquipmentKnown;
        var isDescribed = HasEquipment
            || cabinet.Source is { MassKg: not null } or { RatedLoadKg: not null } or { RollingLoadKg: not null } or { WallLoadKg: not null }
            or { TransportLoadKg: not null };
        Stand = new CabinetStand(cabinet);
        if (!isDescribed)
        {
            return;
        }

        isFigured = true;

        Balance = MakeBalance();
        NeedsSetback = Balance is not null && KnownEquipmentKg > 0;
        NeedsHeight = tells || Balance is not null;
        if (Balance is not null && assumptions is not null)
        {
            Stand.Assume(assumptions);
            Balance.Assume(assumptions);
        }
    }

    /// <summary>Whether the masses need the heights above the floor.</summary>
    public bool NeedsHeight { get; }

    /// <summary>Whether any equipment has a mass or needs one.</summary>
    public bool HasEquipment { get; }

    /// <summary>Whether the mass of every item is known; a blanking panel without a mass counts as 0.</summary>
    public bool IsEquipmentKnown { get; }

    /// <summary>Known mass of the equipment, kg: a minimum.</summary>
    public double KnownEquipmentKg { get; }

    /// <summary>Known mass of equipment and cabinet, kg: a minimum.</summary>
    public double KnownTotalKg => Quantities.Round(KnownEquipmentKg + (cabinet.Source.MassKg ?? 0));

    /// <summary>Whether the mass of equipment and cabinet is known.</summary>
    public bool IsTotalKnown => IsEquipmentKnown && cabinet.Source.MassKg is not null;

    /// <summary>Known load per footprint area, kN/m2.</summary>
    public double KnownFloorKnM2 => FloorLoads.DistributedKnM2(KnownTotalKg, cabinet.WidthMm, cabinet.Depth.DepthMm);

    /// <summary>How the cabinet stands on the floor.</summary>
    public CabinetStand Stand { get; }

    /// <summary>Stability of the loaded rack; null if a mass or a position is unknown, or the total mass is 0.</summary>
    public Balance? Balance { get; }

    /// <summary>Whether the stability depends on the setback of the uprights.</summary>
    public bool NeedsSetback { get; }

    /// <summary>The mass figures of the report; null if no mass is known.</summary>
    public MassFigures? Figures =>
        isFigured && MakeFigures() is var figures && figures != new MassFigures() ? figures : null;

    /// <summary>Whether an item needs a mass; a blanking panel does not.</summary>
    public static bool IsToBeWeighed(MountedItem item) => item.Category != ItemCategory.BlankingPanel;

    /// <summary>An mass of an item with its load, kg.</summary>
    /// <returns>Mass, kg.</returns>
    public static double LoadedKg(MountedItem item)
    {
        var sum = item.Item!.MassKg ?? 0;
        foreach (var thing in item.Load)
        {
            sum += thing.Item!.MassKg ?? 0;
        }

        return sum;
    }

    /// <summary>The missing data for the depth of the centre of an item.</summary>
    /// <returns>JSON Pointer of the missing value; null if nothing is missing.</returns>
    public string? MissingForDepth(MountedItem item) =>
        item.BodyDepthMm is null ? Pointers.ItemBodyDepth[item.Index]
        : setbackMm is null ? Pointers.FrontSetback
        : item.Face == Face.Rear && cabinet.SpacingMm is null ? Pointers.Spacing
        : null;

    // From the outer front face; a body on the rear uprights reaches forward from them.
    private double? DepthMm(MountedItem item) => item.BodyDepthMm is not { } body || setbackMm is not { } setback ? null
        : item.Face == Face.Front ? setback + (body / 2)
        : setback + cabinet.SpacingMm - (body / 2);

    private Balance? MakeBalance()
    {
        if (!IsEquipmentKnown || cabinet.Source.MassKg is not { } empty || empty + KnownEquipmentKg <= 0)
        {
            return null;
        }

        var sum = default(MassSum).Add(new PointMass(cabinet.Depth.DepthMm / 2, 0, Stand.Heights.OverallMm / 2, empty));
        var places = new PointMass[items.Length];

        // The last digit of a sum depends on the order of its terms; the order of the request must not decide how it is rounded.
        foreach (var item in items.OrderBy(i => i.Id, StringComparer.Ordinal))
        {
            if (item.Item!.MassKg is not ({ } kilograms and > 0))
            {
                continue;
            }

            if (DepthMm(item) is not { } depth || Stand.CentreMm(item) is not { } height)
            {
                return null;
            }

            places[item.Index] = new PointMass(depth, 0, height, kilograms);
            sum = sum.Add(places[item.Index]);
        }

        return new Balance(cabinet, Stand, items, places, sum);
    }

    private MassFigures MakeFigures() => new()
    {
        EquipmentKg = IsEquipmentKnown ? KnownEquipmentKg : null,
        TotalKg = IsTotalKnown ? KnownTotalKg : null,
        CentreOfGravityMm = Balance is { Centre: var centre }
            ? new CentreOfGravity { X = Quantities.Round(centre.XMm), Z = Quantities.Round(centre.ZMm) }
            : null,
        TipAngleDeg = Stand.CanTip && Balance is { Tip.Deg: var angle } ? Quantities.Round(angle) : null,
        FloorKnM2 = IsTotalKnown && Stand.StandsOnFloor ? Quantities.Round(KnownFloorKnM2) : null,
        PointKn = Stand.StandsOnFloor && Balance is { Feet.GreatestKn: var foot } ? Quantities.Round(foot) : null,
    };
}
