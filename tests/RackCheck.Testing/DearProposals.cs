using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Testing;

/// <summary>Valid requests for proposals that take the most work: many items, many cabinets, no rack without an error, many requirements in conflict.</summary>
public static class DearProposals
{
    /// <summary>The requests with their names.</summary>
    public static IReadOnlyDictionary<string, ProposalRequest> All { get; } = new Dictionary<string, ProposalRequest>(StringComparer.Ordinal)
    {
        ["200 servers of 1 U over six cabinets"] = Of(200, i => Own(i, 1, 12, 250, 2)) with { Cabinets = Cabinets(), MaxCabinets = 6 },
        ["200 items for shelves"] = Of(200, i => Own(i, 0, 4, 40, 1)) with { MaxCabinets = 6 },
        ["200 servers that are too hot"] = Of(200, i => Own(i, 1, 12, 1500, 2)) with { Cabinets = Cabinets(), MaxCabinets = 6, GrowthPercent = 10 },
        ["45 servers that are too hot for one cabinet"] = Of(45, i => Own(i, 1, 12, 2000, 2)) with { MaxCabinets = 1, GrowthPercent = 2 },
        ["45 servers that are too heavy for their rails"] = Of(45, i => Own(i, 1, 60, 200, 2)) with { MaxCabinets = 1 },
        ["16 UPSs and what they feed"] = Of(60, i => i < 16 ? Part(i, "QWL-UPS-15") : Part(i, "QWL-SRV-110")) with { MaxCabinets = 6 },
        ["60 on the front, 60 at the rear"] = Of(120, i => Own(i, 1, 3, 30, 1) with { Position = new Position { U = 1, Face = (Face)(i % 2) } }) with
        {
            Cabinets = Cabinets(),
            MaxCabinets = 2,
        },
        ["200 items of the catalogue"] = Of(200, i => Part(i, ((string[])["QWL-SRV-2", "QWL-SW-24", "QWL-AMP-1", "QWL-PAT-24", "QWL-DSP-D22"])[i % 5])) with
        {
            MaxCabinets = 6,
            Effort = SearchEffort.Quick,
        },
        ["50 groups and 30 kept items"] = Of(120, i => Own(i, 1, 8, 100, 2) with { Position = new Position { U = 1 + i } }) with
        {
            Cabinets = Cabinets(),
            Keep = [.. Enumerable.Range(0, 30).Select(Id)],
            Groups = [.. Enumerable.Range(0, 45).Select(g => new ItemGroup { Id = Invariant($"g{g}"), Items = [Id(30 + (2 * g)), Id(31 + (2 * g))] })],
            MaxCabinets = 6,
            Site = new Site { Region = Region.Eu, AmbientMaxC = 35, RequiredIp = "IP54", UpsMinutes = 10 },
        },
    };

    private static ProposalRequest Of(int count, Func<int, Item> make) => new()
    {
        Items = [.. Enumerable.Range(0, count).Select(make)],
        Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
    };

    private static string Id(int i) => Invariant($"i{i}");

    private static Item Part(int i, string number) => new() { Id = Id(i), PartNumber = number };

    private static Item Own(int i, int heightU, double massKg, double watts, int plugs) => new()
    {
        Id = Id(i),
        Category = ItemCategory.Server,
        HeightU = heightU,
        MassKg = massKg + (i * 0.01),
        Body = new Body { WidthMm = 430, HeightMm = heightU == 0 ? 40 : (44.45 * heightU) - 1, DepthMm = heightU == 0 ? 200 : 500 },
        Power = new ItemPower { RatedW = watts, VoltageV = 230, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, plugs)], Redundant = plugs > 1 },
        HeatW = watts,
        Airflow = new Airflow { Direction = AirflowDirection.FrontToRear },
        Support = heightU == 0 ? null : new Support { Style = SupportStyle.Runners },
    };

    private static Cabinet[] Cabinets() =>
    [
        .. Enumerable.Range(0, 32).Select(i => new Cabinet { HeightU = 45 + (i % 16), WidthMm = 600 + (i / 16 * 200), DepthMm = 1000, RatedLoadKg = 1500 }),
    ];
}
