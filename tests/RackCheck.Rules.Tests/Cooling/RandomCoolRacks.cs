using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Cooling;

/// <summary>Random racks that break the rules on cooling in many ways.</summary>
internal static class RandomCoolRacks
{
    private static readonly Gen<Item[]> Items =
        Gen.Select(
            Any<double?>(null, 0, 60, 400, 1500, 8000), Any<AirflowDirection?>(null, AirflowDirection.FrontToRear, AirflowDirection.FrontToRear,
                AirflowDirection.RearToFront, AirflowDirection.Side, AirflowDirection.None),
            Any<double?>(null, 0, 40, 200, 900), Any<double?>(null, 18, 27, 35, 45),
                Any<ItemCategory?>(null, ItemCategory.Server, ItemCategory.Ups, ItemCategory.Network), Any<double?>(null, 250, 700))
            .Select((heat, direction, flow, limit, category, rated) => new Item
            {
                Id = "", HeightU = 2, HeatW = heat, MaxInletC = limit, Category = category,
                Airflow = direction is null && flow is null ? null : new Airflow { Direction = direction, FlowM3h = flow },
                Power = rated is null ? null : new ItemPower { RatedW = rated, Plugs = [] },
            })
            .Array[0, 6].Select(items => items.Select((item, at) => item with { Id = $"item-{at}", Position = new Position { U = 1 + (2 * at) } }).ToArray());

    private static readonly Gen<Door?> Doors =
        Gen.Select(Any<DoorStyle?>(null, DoorStyle.None, DoorStyle.Solid, DoorStyle.Glazed, DoorStyle.Perforated, DoorStyle.Perforated),
            Any<double?>(null, 1, 10, 30, 64), Any<double?>(null, null, 0.05, 0.1, 0.4))
            .Select((style, open, area) => style is { } known ? new Door
            {
                Style = known, OpenAreaPercent = known == DoorStyle.Perforated ? open : null, PerforatedAreaM2 = known == DoorStyle.Perforated ? area : null,
            }
            : null);

    private static readonly Gen<FanSet[]?> FanSets =
        Gen.Select(Any(0, 1, 2, 6), Any<double>(0, 160, 500), Any<double?>(null, 0, 40), Gen.Bool)
            .Select((count, free, pressure, isCurved) => isCurved ? CoolRacks.Curved(count)
                : new FanSet { Count = count, FreeFlowM3h = free, MaxPressurePa = pressure })
            .Array[0, 2].Select(sets => sets.Length == 0 ? null : sets);

    private static readonly Gen<Model.Cooling?> Coolings =
        Gen.Select(FanSets, FanSets, Any<double?>(null, 0, 80, 900), Any<bool?>(null, true, false), Gen.Int[0, 26], Any<double?>(null, 2, 10, 20),
            Any<double?>(null, 5, 22, 50))
            .Select((roof, trays, intake, filters, kind, rise, cold) => kind == 0 ? null : new Model.Cooling
            {
                RoofFans = roof, FanTrays = trays, IntakeAreaCm2 = intake, Filters = filters, RiseK = rise,
                Underfloor = kind % 5 == 1 ? new Underfloor { SupplyM3h = intake, SupplyC = cold } : null,
                AirConditioner = kind % 5 == 2 ? new AirConditioner { CapacityW = 100 * kind, SetpointC = cold,
                    Style = (kind % 4) switch { 0 => null, 1 => AirConditionerStyle.Wall, _ => AirConditionerStyle.Split } } : null,
            });

    private static readonly Gen<Site?> Sites =
        Gen.Select(Any<double?>(null, 20, 34, 45, 75), Any<double?>(null, 0, 1200, 5500), Any<double?>(null, 0, 60, 100),
            Any<string?>(null, null, "IP20", "IP30", "IP54", "IP67"), Any<bool?>(null, true, false))
            .Select((ambient, altitude, humidity, ip, wall) => ambient is null && ip is null ? null : new Site
            {
                AmbientMaxC = ambient, AltitudeM = altitude, HumidityMaxPercent = humidity, RequiredIp = ip, OutsideWall = wall,
            });

    public static readonly Gen<RackDescription> Racks =
        Gen.Select(Items, Doors, Doors, Coolings, Sites, Gen.Int[0, 53], Any<string?>(null, "IP20", "IP54"),
            Any<Placement?>(null, Placement.RowMiddleWallCovered))
            .Select((items, front, rear, cooling, site, cabinet, code, placement) => new RackDescription
            {
                Cabinet = new Cabinet
                {
                    HeightU = 24, WidthMm = cabinet % 2 == 0 ? 600 : 800, DepthMm = 1000, HeightMm = cabinet % 3 == 0 ? null : 1300, FrontDoor = front,
                        RearDoor = rear, IpCode = code, Placement = placement,
                    SidePanels = cabinet % 9 == 0 ? false : null,
                    Roof = (cabinet % 5) switch { 0 => null, 1 => new Roof { Style = RoofStyle.Vented },
                        2 => new Roof { Style = RoofStyle.Vented, OpenAreaCm2 = 50 * cabinet }, _ => new Roof { Style = RoofStyle.Solid } },
                    EarthBar = cabinet % 4 == 0 ? new EarthBar { Terminals = 8 } : null,
                },
                Items = items,
                Cooling = cooling,
                Site = site,
                Earthing = cabinet % 4 == 0 ? new Model.Earthing { MainConductorMm2 = 16,
                    Bonded = [BondedPart.Frame, BondedPart.FrontDoor, BondedPart.RearDoor, BondedPart.SidePanels] } : null,
            });

    private static Gen<T> Any<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
