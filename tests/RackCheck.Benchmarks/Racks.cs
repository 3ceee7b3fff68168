using RackCheck.Model;

namespace RackCheck.Benchmarks;

/// <summary>Racks to measure with. Invented data.</summary>
public static class Racks
{
    /// <summary>A sound rack of 42 units with 30 items, described in full: slides, panels, blanking panels, cables, power, mass.</summary>
    public static RackDescription Sound30 { get; } = Make();

    private static RackDescription Make()
    {
        var door = new Door { Style = DoorStyle.Perforated, DepthMm = 25, OpenAreaPercent = 64 };
        return new RackDescription
        {
            Reference = "Tidewater Flume Laboratory, bay 7",
            Cabinet = new Cabinet
            {
                HeightU = 42,
                WidthMm = 800,
                DepthMm = 1000,
                HeightMm = 2000,
                MassKg = 120,
                FrontDoor = door,
                RearDoor = door,
                Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 100, SpacingMm = 700, PitchMm = 25, OpeningMm = 450 },
            },
            Items = [.. Enumerable.Range(0, 8).Select(Computer), .. Enumerable.Range(0, 6).Select(Switch), .. Enumerable.Range(0, 16).Select(Rest)],
        };
    }

    private static Item Computer(int i) => new()
    {
        Id = $"pc-{i + 1}",
        PartNumber = "TFL-PC-410",
        Category = ItemCategory.Computer,
        HeightU = 2,
        Position = new Position { Unit = 1 + (2 * i), Face = Face.Front },
        Body = new Body { WidthMm = 430, HeightMm = 86, DepthMm = 450 },
        FrontProjectionMm = 40,
        RearProjectionMm = 75,
        MassKg = 14,
        Support = new Support { Style = SupportStyle.Slides, RatedKg = 45, ThicknessMm = 9.5, MinSpacingMm = 500, MaxSpacingMm = 800, ExtensionMm = 450 },
        Power = new ItemPower { RatedW = 350, TypicalW = 220, PowerFactor = 0.95, Plugs = [ConnectorCode.C14] },
        Airflow = new Airflow { Direction = AirflowDirection.FrontToRear, FlowM3h = 60 },
        MaxInletC = 40,
        Cables = [new CableBundle { DiameterMm = 6, Count = 6 }],
    };

    private static Item Switch(int i) => Panel($"switch-{i + 1}", ItemCategory.Network, 17 + i) with
    {
        Power = new ItemPower { RatedW = 60, TypicalW = 35, Plugs = [ConnectorCode.C14] },
        Airflow = new Airflow { Direction = AirflowDirection.Side, FlowM3h = 20 },
        Cables = [new CableBundle { DiameterMm = 6, Count = 24 }],
    };

    private static Item Rest(int i) => i < 6
        ? Panel($"patch-{i + 1}", ItemCategory.Network, 23 + i)
        : new Item
        {
            Id = $"blank-{i}",
            Category = ItemCategory.BlankingPanel,
            HeightU = 1,
            Position = new Position { Unit = 23 + i, Face = Face.Front },
            MassKg = 0.3,
        };

    private static Item Panel(string id, ItemCategory category, int unit) => new()
    {
        Id = id,
        Category = category,
        HeightU = 1,
        Position = new Position { Unit = unit, Face = Face.Front },
        Body = new Body { WidthMm = 440, HeightMm = 43, DepthMm = 250 },
        FrontProjectionMm = 40,
        RearProjectionMm = 75,
        MassKg = 4,
        Support = new Support { Style = SupportStyle.Panel },
    };
}
