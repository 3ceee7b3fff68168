using RackCheck.Documents.Drawings;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Sheets;

/// <summary>What the sheets say, and what they do not make up.</summary>
public sealed class SheetWordsTests
{
    private const string Steps = "Support first, then the item; each nut with its screw; heavy items with the people or the aid named";

    [Fact]
    public void Support_that_is_not_given_is_not_stated()
    {
        var rack = Rack() with
        {
            Items =
            [
                Box("ups-old", 1, ItemCategory.Ups), Box("panel", 4, ItemCategory.Network) with { Support = new Support { Style = SupportStyle.Panel } },
                Box("blank", 7, ItemCategory.BlankingPanel), Box("rails", 10, ItemCategory.Server) with { Support = new Support { RatedKg = 40 } },
            ],
        };
        var steps = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Installation).Sheet).Table(Steps);
        Assert.Equal(["not stated", "front panel", "front panel", "not stated, 40 kg"], steps.Select(s => s[4]));
        var service = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Service).Sheet).Table("Items from the top down").ToDictionary(r => r[1], r => r[3]);
        Assert.StartsWith("support not stated", service["ups-old"], StringComparison.Ordinal);
        Assert.StartsWith("unscrewed", service["panel"], StringComparison.Ordinal);
    }

    private static RackDescription Rack() => new()
    {
        Cabinet = new Cabinet
        {
            HeightU = 24, WidthMm = 600, DepthMm = 900, HeightMm = 1300, FrontDoor = new Door { Style = DoorStyle.Perforated, DepthMm = 25 },
            RearDoor = new Door { Style = DoorStyle.Perforated, DepthMm = 25 },
            Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 80, SpacingMm = 650 },
        },
        Items = [Box("one", 1, ItemCategory.Instrument)],
    };

    private static Item Box(string id, int unit, ItemCategory category) => new()
    {
        Id = id, HeightU = 2, Position = new Position { U = unit }, Category = category, MassKg = 5, Body = new Body { WidthMm = 440, DepthMm = 300 },
    };
}
