using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;

namespace RackCheck.Survey;

/// <summary>A metal part of the cabinet that must be bonded.</summary>
/// <param name="Name">Name of the part in a sentence.</param>
/// <param name="IsBonded">Whether it is bonded; null if the description does not say.</param>
/// <param name="Pointer">JSON Pointer of the statement.</param>
public sealed record EarthPart(BondedPart Part, string Name, bool? IsBonded, string Pointer)
{
    /// <summary>JSON Pointer of a statement of its own, which is absent; null where it can have none.</summary>
    public string? OwnPointer { get; init; }
}

/// <summary>Protective earth: parts to bond, terminals of the earth bar, and leakage currents.</summary>
public sealed class EarthSurvey
{
    private readonly RackDescription description;
    private readonly MountedItem[] items;
    private readonly PowerTree power;

    internal EarthSurvey(RackDescription description, CabinetFacts cabinet, MountedItem[] items, PowerTree power, List<AssumedValue>? assumptions)
    {
        (this.description, this.items, this.power) = (description, items, power);
        Bar = cabinet.Source.EarthBar;
        IsEnclosed = cabinet.Source is { FrontDoor: not { Style: DoorStyle.None }, RearDoor: not { Style: DoorStyle.None }, SidePanels: not false };
        IsElectrical = description is { Supplies.Count: > 0 } or { Pdus.Count: > 0 } or { Earthing: not null }
            || Bar is not null || Array.Exists(items, IsElectricalItem);
        Studs = FindStuds(items);
        Parts = PartsOf(description, cabinet.Source);
        MostLeaking = FindMostLeaking(power);
        if (IsElectrical && assumptions is not null)
        {
            Assume(cabinet.Source, assumptions);
        }
    }

    /// <summary>Whether the rack contains electrical equipment, so that its metal parts must be earthed.</summary>
    public bool IsElectrical { get; }

    /// <summary>The earth bar; null if none is fitted.</summary>
    public EarthBar? Bar { get; }

    /// <summary>Whether the cabinet is closed on all sides and protects the conductors inside from damage.</summary>
    public bool IsEnclosed { get; }

    /// <summary>Items with a stud for an earth lead, by id.</summary>
    public IReadOnlyList<MountedItem> Studs { get; }

    /// <summary>Parts of the cabinet that must be bonded.</summary>
    public IReadOnlyList<EarthPart> Parts { get; }

    /// <summary>Required terminals: one for each stud, one for each part, one for the main conductor.</summary>
    public int TerminalsNeeded => Studs.Count + Parts.Count + 1;

    /// <summary>The supply with the highest protective conductor current; null if there is none.</summary>
    public SupplyNode? MostLeaking { get; }

    /// <summary>Cross-sectional area of the main protective conductor, mm2, if given.</summary>
    public double? MainMm2 => description.Earthing?.MainConductorMm2;

    /// <summary>Whether a second earth is required.</summary>
    public bool NeedsSecond => description.Earthing?.SecondaryEarth == true;

    /// <summary>
    /// Whether a high protective conductor current still has a path if one earth breaks: a strong main conductor, or a second earth through a bar.
    /// </summary>
    public bool IsHighIntegrity => MainMm2 >= EarthConductors.HighIntegrityMm2 || (NeedsSecond && Bar is not null);

    /// <summary>Whether that holds for a supply, or a PDU fed from it: by the rack's earthing, or by the earth conductor of the supply's cable.</summary>
    /// <param name="supply">The supply.</param>
    /// <param name="unit">The PDU; null for the supply itself. The cord of one behind a UPS is not the cable of the supply.</param>
    /// <returns>Whether it does; null if what decides is missing: the cable, or the plug or socket.</returns>
    public bool? IsHighIntegrityAt(SupplyNode supply, PduNode? unit) =>
        IsHighIntegrity ? true
        : unit is { IsBehindUps: true } ? false
        : CableIsHighIntegrity(supply.Source.Cable?.CrossSectionMm2, unit is null ? supply.Source.Socket : unit.Source.Plug);

    /// <summary>Whether the earth conductor of a cable alone carries a high protective conductor current.</summary>
    /// <param name="lineMm2">Cross-sectional area of the line conductors, mm2; null if it is missing.</param>
    /// <param name="connector">The plug or socket; null if it is missing.</param>
    /// <returns>Whether it does; null if what is missing decides.</returns>
    public static bool? CableIsHighIntegrity(double? lineMm2, ConnectorCode? connector)
    {
        double? earthMm2 = lineMm2 is > 0 and var line ? EarthConductors.LeastByLineMm2(line) : null;
        if (earthMm2 >= EarthConductors.HighIntegrityMm2)
        {
            return true;
        }

        // One that is missing may be an industrial one.
        var leastMm2 = connector is { } code ? LeastEarthMm2(code) : EarthConductors.SmallIndustrialPlugMm2;
        return earthMm2 < leastMm2 || (connector is { } given && !PlugFit.Of(given).Secured) ? false
            : earthMm2 is null || connector is null ? null
            : true;
    }

    /// <summary>The earth conductor that carries a high protective conductor current by itself, mm2.</summary>
    /// <param name="connector">The plug or socket at its end.</param>
    public static double LeastEarthMm2(ConnectorCode connector) => PlugFit.IsIec60309(connector)
        ? EarthConductors.LeastByIndustrialPlugMm2(PlugFit.Of(connector).RatedA!.Value)
        : EarthConductors.HighIntegrityMm2;

    /// <summary>The earth figures of the report; null without earth data and leakage.</summary>
    public EarthingFigures? Figures => MakeFigures();

    /// <summary>Whether an earth bar is required.</summary>
    /// <param name="leakageMa">Protective conductor current of a supply above which a bar is required, mA.</param>
    /// <returns>Whether it is, as far as leakage currents are known.</returns>
    public bool NeedsBar(double leakageMa) =>
        NeedsSecond || Studs.Count > 0 || (MostLeaking is { IsNorthAmerica: false } supply && Comparison.IsOver(supply.LeakageMa, leakageMa));

    /// <summary>Supplies that feed an item; all supplies if the item is fed from none.</summary>
    /// <returns>The supplies, in the order of the request.</returns>
    public IReadOnlyList<SupplyNode> FeedersOf(MountedItem item)
    {
        var feeding = Array.FindAll(
            power.Supplies, s => Array.Exists(power.Cords, c => ReferenceEquals(c.Item, item) && ReferenceEquals(c.Group?.Unit.Supply, s)));
        return feeding.Length > 0 ? feeding : power.Supplies;
    }

    private static bool IsElectricalItem(MountedItem item) =>
        item.Item is { Power: not null } or { Ups: not null } or { EarthStud: true } or { EarthLead: not null };

    private static MountedItem[] FindStuds(MountedItem[] items)
    {
        var studs = Array.FindAll(items, i => i.Item?.EarthStud == true);
        Array.Sort(studs, static (x, y) => string.CompareOrdinal(x.Id, y.Id));
        return studs;
    }

    private static SupplyNode? FindMostLeaking(PowerTree power)
    {
        SupplyNode? most = null;
        foreach (var supply in power.Supplies)
        {
            most = supply.LeakageMa > (most?.LeakageMa ?? 0) ? supply : most;
        }

        return most;
    }

    private static List<EarthPart> PartsOf(RackDescription description, Cabinet cabinet)
    {
        var list = description.Earthing?.Bonded;
        var parts = new List<EarthPart>(5) { Listed(BondedPart.Frame, "frame") };
        if (cabinet.FrontDoor?.Style != DoorStyle.None)
        {
            parts.Add(OfDoor(BondedPart.FrontDoor, "front door", cabinet.FrontDoor, Pointers.FrontDoor));
        }

        if (cabinet.RearDoor?.Style != DoorStyle.None)
        {
            parts.Add(OfDoor(BondedPart.RearDoor, "rear door", cabinet.RearDoor, Pointers.RearDoor));
        }

        if (cabinet.SidePanels != false)
        {
            parts.Add(Listed(BondedPart.SidePanels, "side panels"));
        }

        if (HasRoofFans(description) && cabinet.Roof?.Style != RoofStyle.Solid)
        {
            parts.Add(Listed(BondedPart.Roof, "roof"));
        }

        return parts;

        // A given list is complete.
        EarthPart Listed(BondedPart part, string name) => new(part, name, list?.Contains(part), Pointers.Bonded);

        // The door's own value has priority over the list.
        EarthPart OfDoor(BondedPart part, string name, Door? door, string pointer) =>
            door?.Bonded is { } bonded ? new EarthPart(part, name, bonded, pointer + "/bonded")
            : Listed(part, name) with { OwnPointer = door is null ? null : pointer + "/bonded" };
    }

    private static bool HasRoofFans(RackDescription description) => description.Cooling?.RoofFans?.Any(f => f.Count > 0) == true;

    private void Assume(Cabinet cabinet, List<AssumedValue> assumptions)
    {
        if (cabinet.SidePanels is null)
        {
            assumptions.Add(new AssumedValue { Pointer = Pointers.SidePanels, Value = true, Basis = Bases.SidePanels });
        }

        if (cabinet.Roof?.Style is null && HasRoofFans(description))
        {
            assumptions.Add(new AssumedValue { Pointer = Pointers.RoofStyle, Value = "vented", Basis = Bases.FanRoof });
        }

        // An earth lead to the bar crosses half the opening; for bodies of given width the assumption is already recorded.
        if (Studs.Count > 0 && cabinet.Uprights?.OpeningMm is null && !Array.Exists(items, i => i.Item!.Body?.WidthMm is not null))
        {
            assumptions.Add(new AssumedValue
            {
                Pointer = Pointers.Opening, Value = RackGeometry.OpeningMm, Unit = "mm", Basis = Bases.LeastOpening,
            });
        }

        foreach (var supply in power.Supplies)
        {
            if (!IsHighIntegrity && !supply.IsNorthAmerica && Comparison.IsOver(supply.LeakageMa, EarthConductors.HighIntegrityFromMa)
                && IsHighIntegrityAt(supply, null) == true)
            {
                assumptions.Add(new AssumedValue
                {
                    Pointer = Pointers.Supply[supply.Index] + "/cable",
                    Value = EarthConductors.LeastByLineMm2(supply.Source.Cable!.CrossSectionMm2!.Value), Unit = "mm2", Basis = Bases.CableEarth,
                });
            }
        }

        foreach (var item in items)
        {
            if (item.Item is { Power: not null, EarthStud: null })
            {
                assumptions.Add(new AssumedValue
                {
                    Pointer = Pointers.ItemEarthStud[item.Index], Value = false,
                    Basis = Bases.CordEarth,
                });
            }
        }
    }

    private EarthingFigures? MakeFigures()
    {
        var cabinet = description.Cabinet!;
        var isTold = description.Earthing is not null || Bar is not null || cabinet.FrontDoor?.Bonded is not null || cabinet.RearDoor?.Bonded is not null
            || Array.Exists(items, i => i.Item is { EarthStud: not null } or { EarthLead: not null });
        var leaking = Array.FindAll(items, i => i.Item!.Power is { } p && (p.LeakageMa is not null || p.Plugs is not { Count: 0 }));
        var isKnown = leaking.Length > 0 && Array.TrueForAll(leaking, i => i.Item!.Power!.LeakageMa is not null);
        double? leakage = isKnown ? Quantities.Round(leaking.OrderBy(i => i.Id, StringComparer.Ordinal).Sum(i => i.Item!.Power!.LeakageMa!.Value)) : null;
        return !isTold && leakage is not > 0 ? null : new EarthingFigures
        {
            TerminalsNeeded = TerminalsNeeded,
            TerminalsFitted = Bar?.Terminals,
            LeakageMa = leakage,
        };
    }
}
