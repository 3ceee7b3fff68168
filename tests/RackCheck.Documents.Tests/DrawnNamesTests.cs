using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests;

/// <summary>Names in drawings are whole and clear of what they stand on.</summary>
public sealed class DrawnNamesTests
{
    private static readonly string[] Feeds = ["A", "B", "C", "D", "E", "F", "G", "H"];

    [Fact]
    public void Eight_feeds_differ_without_colour()
    {
        var svg = DrawnSvg.Of(ElevationDrawing.Of([DrawnSvg.Check(Wired(8))], ElevationView.Rear));
        string[] samples = [.. svg.Named("line").Select(l => l.Attribute("class")!.Value).Where(c => c.StartsWith("rkcord", StringComparison.Ordinal))];
        Assert.Equal(8, samples.Length);
        var style = svg.Named("style").Single().Value;
        var looks = samples.Select(s => style.Split('\n').First(l => l.StartsWith($".rk .{s}{{", StringComparison.Ordinal))[(5 + s.Length)..]);
        Assert.Equal(8, looks.Distinct().Count());
        Assert.All(Feeds, f => Assert.Contains(svg.Texts, t => t.StartsWith($"{f}: ", StringComparison.Ordinal)));
    }

    // Two PDUs a side of a narrow cabinet: the cords to the outer one cross the inner one.
    [Fact]
    public void Names_of_vertical_PDUs_are_within_them_and_over_the_cords()
    {
        var drawing = ElevationDrawing.Of([DrawnSvg.Check(Wired(4))], ElevationView.Rear);
        var svg = DrawnSvg.Of(drawing);
        Mark[] marks = [.. drawing.Flat];
        var lastCord = Array.FindLastIndex(marks, m => m is Outline { Stroke: >= Stroke.CordA and <= Stroke.CordUps });
        foreach (var feed in Feeds[..4])
        {
            var place = DrawnSvg.Face(svg.Groups.Single(g => g.Attribute("data-pdu")?.Value == $"pdu-{feed}"));
            var index = Array.FindIndex(marks, m => m is Text { IsUpright: true } t && t.Words == $"{feed}: pdu-{feed}");
            Assert.True(index > lastCord, $"{index} after {lastCord}");
            var name = (Text)marks[index];
            var capitals = 0.73 * name.Size;
            Assert.True(place.X < name.X - capitals && name.X < place.X + place.Width, $"{name} in {place}");
            Assert.InRange(name.X - (capitals / 2) - place.X - (place.Width / 2), -0.5, 0.5);
        }
    }

    [Theory]
    [InlineData(ItemCategory.CableManager, 1)]
    [InlineData(ItemCategory.CableManager, 2)]
    [InlineData(ItemCategory.BlankingPanel, 1)]
    [InlineData(ItemCategory.BlankingPanel, 4)]
    [InlineData(ItemCategory.FanTray, 1)]
    public void Text_on_a_pattern_has_a_clear_patch(ItemCategory category, int heightU)
    {
        const string Words = "Rings for patch leads";
        var rack = Wired(1) with
        {
            Items = [new Item { Id = "mgr-6", Category = category, HeightU = heightU, Position = new Position { U = 5 }, MassKg = 0.9, Description = Words }],
        };
        Mark[] marks = [.. ElevationDrawing.Of([DrawnSvg.Check(rack)], ElevationView.Front).Flat];
        foreach (var words in (string[])["mgr-6", Words])
        {
            var index = Array.FindIndex(marks, m => m is Text t && t.Words == words);
            var area = ((Text)marks[index]).Area;
            var pattern = Array.FindLastIndex(marks, index, m => m is Outline);
            Assert.Contains(
                Patches(marks[(pattern + 1)..index]), p => p.X < area.X && p.Right > area.Right && p.Y < area.MiddleY && p.Bottom > area.MiddleY);
            Assert.DoesNotContain(Patches(marks[index..]), p => p.Overlaps(area));
        }

        static IEnumerable<Area> Patches(Mark[] marks) => marks.OfType<Box>().Where(b => b is { Fill: Fill.Paper, Stroke: Stroke.None }).Select(b => b.Area);
    }

    // A ring is drawn whole or not at all.
    [Fact]
    public void Patches_cut_no_ring()
    {
        var face = new Area(100, 50, 482.6, 43);
        for (var from = 100.0; from < 400; from += 7)
        {
            var patch = ItemSigns.AroundRings(new Area(from, 55, 90, 30), face);
            Assert.True(patch.X <= from && patch.Right >= from + 90);
            for (var ring = 130.0; ring + 8 < face.Right; ring += 60)
            {
                Assert.True(patch.Right <= ring - 8 || patch.X >= ring + 8 || (patch.X <= ring - 8 && patch.Right >= ring + 8), $"{patch} cuts {ring}");
            }
        }
    }

    // The name of a PDU behind a shallow panel was cut to two letters and stood on the panel.
    [Fact]
    public void Side_of_a_shallow_cabinet_has_its_caption_and_no_cut_name()
    {
        var drawing = ElevationDrawing.Of([DrawnSvg.Check(WallCabinet)]);
        Assert.Empty(DrawnSvg.Overlaps(drawing));
        var texts = DrawnSvg.Of(drawing).Texts.ToList();
        Assert.DoesNotContain(texts, t => t.EndsWith('\u2026') && (t.StartsWith('Q') || t.StartsWith("from", StringComparison.Ordinal)));
        Assert.Equal("from the right, without panel; front on the left", string.Join(' ', texts.SkipWhile(t => t != "Side").Skip(1).Take(2)));
    }

    [Fact]
    public void Item_on_a_shelf_can_govern_the_depth()
    {
        var rack = Wired(1) with
        {
            Items =
            [
                new Item { Id = "shelf", HeightU = 1, Category = ItemCategory.Shelf, Position = new Position { U = 3 }, Body = new Body { DepthMm = 300 } },
                new Item { Id = "desk-pc", HeightU = 0, OnShelf = "shelf", Body = new Body { HeightMm = 200, DepthMm = 400 }, RearProjectionMm = 75 },
            ],
        };
        var drawn = DrawnSvg.Check(rack);
        Assert.Equal(475, drawn.Report.Figures.Depth!.DeepestStackMm);
        var texts = DrawnSvg.Of(ElevationDrawing.Of([drawn])).Texts.ToList();
        Assert.Contains("Depth stack of desk-pc, mm", texts);
        Assert.Contains("body 400", texts);
    }

    private static RackDescription WallCabinet => new()
    {
        Cabinet = new Cabinet
        {
            HeightU = 9, WidthMm = 600, DepthMm = 450, HeightMm = 480, FrontDoor = new Door { Style = DoorStyle.Glazed, DepthMm = 25 },
            RearDoor = new Door { Style = DoorStyle.None, DepthMm = 0 }, Uprights = new Uprights { FrontSetbackMm = 75, SpacingMm = 300 },
        },
        Items =
        [
            new Item
            {
                Id = "mgr", Category = ItemCategory.CableManager, HeightU = 1, Position = new Position { U = 4 }, Body = new Body { DepthMm = 70 },
                FrontProjectionMm = 45,
            },
        ],
        Supplies = [new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16 }],
        Pdus = [Strip("A") with { Id = "QWL-DU-16-H-1", Mounting = PduMounting.Horizontal, Position = new Position { U = 4, Face = Face.Rear } }],
    };

    private static RackDescription Wired(int feeds) => new()
    {
        Cabinet = new Cabinet { HeightU = 24, WidthMm = 600, DepthMm = 900, HeightMm = 1300, Uprights = new Uprights { SpacingMm = 600 } },
        Items =
        [
            .. Enumerable.Range(1, 12).Select(u => new Item
            {
                Id = $"host-{u}", HeightU = 2, Position = new Position { U = (2 * u) - 1 },
                Power = new ItemPower { RatedW = 100, Plugs = [ConnectorCode.C14, ConnectorCode.C14], Redundant = true },
            }),
        ],
        Supplies = [.. Feeds[..feeds].Select(f => new Supply { Id = f, VoltageV = 230, Phases = 1, RatedA = 16 })],
        Pdus = [.. Feeds[..feeds].Select(Strip)],
    };

    private static Pdu Strip(string feed) => new()
    {
        Id = $"pdu-{feed}", Supply = feed, RatedA = 16, Mounting = PduMounting.Vertical,
        Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 6 }] }],
    };
}
