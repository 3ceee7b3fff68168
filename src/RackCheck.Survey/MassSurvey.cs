using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Masses, and how the rack stands. PDUs, cables and rails have no mass in the contract and count as none.</summary>
public sealed class MassSurvey
{
    private readonly CabinetFacts cabinet;
    private readonly MountedItem[] items;
    private readonly double? setbackMm;

    internal MassSurvey(CabinetFacts cabinet, MountedItem[] items, double? setbackMm, List<Assumption> assumptions)
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
        IsDescribed = HasEquipment || cabinet.Source is { MassKg: not null } or { RatedLoadKg: not null } or { RollingLoadKg: not null };
        Stand = new CabinetStand(cabinet);
        if (!IsDescribed)
        {
            return;
        }

        Balance = MakeBalance();
        NeedsSetback = Balance is not null && KnownEquipmentKg > 0;
        NeedsHeight = tells || Balance is not null;
        if (Balance is not null)
        {
            Stand.Assume(assumptions);
            Balance.Assume(assumptions);
        }

        Figures = MakeFigures() is var figures && figures != new MassFigures() ? figures : null;
    }

    /// <summary>Whether there is anything to weigh, or the cabinet says what it weighs or carries.</summary>
    public bool IsDescribed { get; }

    /// <summary>Whether the masses need the heights above the floor.</summary>
    public bool NeedsHeight { get; }

    /// <summary>Whether there is equipment that gives a mass or ought to.</summary>
    public bool HasEquipment { get; }

    /// <summary>Whether the mass of every item is known; a blanking panel without one counts as none.</summary>
    public bool IsEquipmentKnown { get; }

    /// <summary>Mass of the equipment as far as it is known, kg: the least that it can be.</summary>
    public double KnownEquipmentKg { get; }

    /// <summary>Mass of equipment and cabinet as far as they are known, kg: the least that it can be.</summary>
    public double KnownTotalKg => Quantities.Round(KnownEquipmentKg + (cabinet.Source.MassKg ?? 0));

    /// <summary>Whether the mass of equipment and cabinet is known.</summary>
    public bool IsTotalKnown => IsEquipmentKnown && cabinet.Source.MassKg is not null;

    /// <summary>Load spread over the footprint as far as masses are known, kN/m2.</summary>
    public double KnownFloorKnM2 => FloorLoads.DistributedKnM2(KnownTotalKg, cabinet.WidthMm, cabinet.Depth.DepthMm);

    /// <summary>How the cabinet stands.</summary>
    public CabinetStand Stand { get; }

    /// <summary>How the loaded rack stands; null where a mass or a place is not known, or nothing has any mass.</summary>
    public Balance? Balance { get; }

    /// <summary>Whether the balance hangs on the setback of the uprights.</summary>
    public bool NeedsSetback { get; }

    /// <summary>The mass figures of the report; null where none is known.</summary>
    public MassFigures? Figures { get; }

    /// <summary>Whether an item needs a mass: a blanking panel weighs next to nothing.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Whether it does.</returns>
    public static bool IsToBeWeighed(MountedItem item) => item.Category != ItemCategory.BlankingPanel;

    /// <summary>An item with what stands on it, kg, as far as it is known.</summary>
    /// <param name="item">The item.</param>
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

    /// <summary>What the description lacks for the depth of an item's centre.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Where it would stand; null where nothing lacks.</returns>
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
        for (var i = 0; i < items.Length; i++)
        {
            if (items[i].Item!.MassKg is not ({ } kilograms and > 0))
            {
                continue;
            }

            if (DepthMm(items[i]) is not { } depth || Stand.CentreMm(items[i]) is not { } height)
            {
                return null;
            }

            places[i] = new PointMass(depth, 0, height, kilograms);
            sum = sum.Add(places[i]);
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
        FloorKnM2 = IsTotalKnown ? Quantities.Round(KnownFloorKnM2) : null,
        PointKn = Balance is { Feet.GreatestKn: var foot } ? Quantities.Round(foot) : null,
    };
}
