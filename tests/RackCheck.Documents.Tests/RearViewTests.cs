using System.Xml.Linq;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests;

/// <summary>PDUs, cords and what stands on shelves, as the rear view shows them.</summary>
public sealed class RearViewTests
{
    [Theory]
    [InlineData(600, 1, false)]
    [InlineData(600, 2, false)]
    [InlineData(600, 3, false)]
    [InlineData(600, 4, false)]
    [InlineData(600, 1, true)]
    [InlineData(600, 2, true)]
    [InlineData(600, 4, true)]
    [InlineData(800, 4, true)]
    public void Vertical_PDUs_are_within_the_outline(double width, int vertical, bool withHorizontal)
    {
        var pdus = Enumerable.Range(0, vertical).Select(i => Strip($"pdu-{i}", i % 2 == 0 ? "A" : "B")).ToList();
        if (withHorizontal)
        {
            pdus.Add(Strip("pdu-h", "A") with { Mounting = PduMounting.Horizontal, Position = new Position { U = 24, Face = Face.Rear } });
        }

        var drawing = ElevationDrawing.Of([DrawnSvg.Check(Rack(width, pdus))], ElevationView.Rear);
        Assert.Empty(DrawnSvg.Overlaps(drawing));
        var svg = DrawnSvg.Of(drawing);
        var (left, right) = Outline(svg, width);
        foreach (var pdu in pdus.Where(p => p.Mounting == PduMounting.Vertical))
        {
            var face = DrawnSvg.Face(svg.Groups.Single(g => g.Attribute("data-pdu")?.Value == pdu.Id));
            Assert.True(face.X > left && face.X + face.Width < right, $"{pdu.Id}: {face} in {left} to {right}");
            Assert.True(face.Width >= 15, $"{pdu.Id}: {face}");
        }

        // One PDU a side leaves the U numbers of the uprights.
        Assert.Equal(width > 600 || vertical <= 2 ? 2 : vertical == 3 ? 1 : 0, svg.Texts.Count(t => t == "13"));
    }

    [Fact]
    public void Cabinet_too_narrow_for_PDUs_shows_them_beside_it()
    {
        var svg = DrawnSvg.Of(ElevationDrawing.Of([DrawnSvg.Check(Rack(500, [Strip("pdu-0", "A")]))], ElevationView.Rear));
        var face = DrawnSvg.Face(svg.Groups.Single(g => g.Attribute("data-pdu")?.Value == "pdu-0"));
        Assert.True(face.X + face.Width < Outline(svg, 500).Left, $"{face}");
    }

    [Fact]
    public void Items_on_shelves_are_mirrored_in_the_view_from_behind()
    {
        var drawing = ElevationDrawing.Of([DrawnSvg.Check(OnShelf)]);
        Assert.Empty(DrawnSvg.Overlaps(drawing));
        var svg = DrawnSvg.Of(drawing);
        var (front, rear) = (Places(svg, "front"), Places(svg, "rear"));
        Assert.Equal(["left", "middle", "right"], front.OrderBy(p => p.Value.X).Select(p => p.Key));
        Assert.Equal(["right", "middle", "left"], rear.OrderBy(p => p.Value.X).Select(p => p.Key));
        Assert.All(front, p => Assert.Equal((p.Value.Y, p.Value.Width, p.Value.Height), (rear[p.Key].Y, rear[p.Key].Width, rear[p.Key].Height)));
    }

    [Fact]
    public void Every_cord_that_the_key_counts_is_drawn_or_said_not_to_be()
    {
        var texts = DrawnSvg.Of(DrawnSvg.Draw(OnShelf)).Texts.ToList();
        Assert.Contains("A: 3-phase 400/230 V, 16 A, 3 cords", texts);
        Assert.DoesNotContain(texts, t => t.StartsWith("Not drawn", StringComparison.Ordinal));
        var outside = OnShelf with { Items = [.. OnShelf.Items.Select(i => i.Id == "shelf" ? i with { Position = new Position { U = 30 } } : i)] };
        texts = [.. DrawnSvg.Of(DrawnSvg.Draw(outside)).Texts];
        Assert.Contains("Not drawn: the item or the PDU is not in the view", texts);
        Assert.Contains("3 cords", texts);
    }

    [Fact]
    public void Cords_of_a_UPS_do_not_bear_the_letter_of_the_supply()
    {
        var rack = Rack(800, [Strip("pdu-a", "A"), Strip("pdu-u", "A")]) with
        {
            Items =
            [
                new Item
                {
                    Id = "ups-1", HeightU = 2, Category = ItemCategory.Ups, Position = new Position { U = 1 },
                    Power = new ItemPower { RatedW = 1000, Plugs = [ConnectorCode.C14] }, Ups = new Ups { RatedW = 2000, RatedVa = 2200, Feeds = ["pdu-u"] },
                },
                Host("host", "pdu-u", 4),
            ],
            Connections = [new Connection { Item = "ups-1", Pdu = "pdu-a", Group = "g" }, new Connection { Item = "host", Pdu = "pdu-u", Group = "g" }],
        };
        var svg = DrawnSvg.Of(DrawnSvg.Draw(rack));
        Assert.Contains("A: 3-phase 400/230 V, 16 A, 1 cord", svg.Texts);
        Assert.Contains("UPS: ups-1, 1 cord", svg.Texts);
        Assert.Contains("UPS: pdu-u", svg.Texts);
        Assert.Contains("A: pdu-a", svg.Texts);
    }

    [Theory]
    [InlineData(Region.Eu, 230, 1, null, "1-phase 230 V")]
    [InlineData(Region.Eu, 230, 3, null, "3-phase 400/230 V")]
    [InlineData(Region.Uk, 240, 3, null, "3-phase 415/240 V")]
    [InlineData(Region.Na, 120, 3, null, "3-phase 208/120 V")]
    [InlineData(Region.Na, 208, 3, Phase.L1L2, "3-phase 208 V line to line")]
    [InlineData(Region.Eu, 105, 3, null, "3-phase, 105 V at the outlets")]
    public void Supplies_say_their_phases_and_both_voltages(Region region, double volts, int phases, Phase? phase, string expected)
    {
        var strip = Strip("pdu-a", "A");
        var rack = Rack(800, [strip with { Groups = [strip.Groups![0] with { Phase = phase }] }]) with
        {
            Supplies = [new Supply { Id = "A", VoltageV = volts, Phases = phases, RatedA = 16 }], Site = new Site { Region = region },
        };
        Assert.Contains(DrawnSvg.Of(DrawnSvg.Draw(rack)).Texts, t => t.StartsWith($"A: {expected}, 16 A,", StringComparison.Ordinal));
    }

    private static RackDescription OnShelf => Rack(800, [Strip("pdu-a", "A")]) with
    {
        Items =
        [
            new Item { Id = "shelf", HeightU = 1, Category = ItemCategory.Shelf, Position = new Position { U = 3 }, Body = new Body { DepthMm = 400 } },
            .. ((string[])["left", "middle", "right"]).Select(id => new Item
            {
                Id = id, HeightU = 0, OnShelf = "shelf", Body = new Body { WidthMm = 130, HeightMm = 200, DepthMm = 300 },
                Power = new ItemPower { RatedW = 50, Plugs = [ConnectorCode.C14] },
            }),
        ],
    };

    private static Item Host(string id, string pdu, int unit) => new()
    {
        Id = id, HeightU = 1, Position = new Position { U = unit }, Description = $"on {pdu}",
        Power = new ItemPower { RatedW = 100, Plugs = [ConnectorCode.C14] },
    };

    private static RackDescription Rack(double width, IReadOnlyList<Pdu> pdus) => new()
    {
        Cabinet = new Cabinet { HeightU = 24, WidthMm = width, DepthMm = 900, HeightMm = 1300, Uprights = new Uprights { SpacingMm = 600 } },
        Items = [Host("host-1", "A", 1), Host("host-2", "B", 2)],
        Supplies = [.. ((string[])["A", "B"]).Select(s => new Supply { Id = s, VoltageV = 230, Phases = 3, RatedA = 16 })],
        Pdus = pdus,
    };

    private static Pdu Strip(string id, string supply) => new()
    {
        Id = id, Supply = supply, RatedA = 16, Mounting = PduMounting.Vertical,
        Groups = [new OutletGroup { Id = "g", Phase = Phase.L1, Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 6 }] }],
    };

    private static Dictionary<string, (double X, double Y, double Width, double Height)> Places(DrawnSvg svg, string view) =>
        ((string[])["left", "middle", "right"]).ToDictionary(id => id, id => DrawnSvg.Face(Assert.Single(svg.ItemIn(id, view))));

    // The rectangle of the cabinet: as wide as it and the only one that high.
    private static (double Left, double Right) Outline(DrawnSvg svg, double width)
    {
        XElement box = svg.Named("rect").First(r => Math.Abs(DrawnSvg.Number(r, "width") - width) < 0.02 && DrawnSvg.Number(r, "height") > 1000);
        return (DrawnSvg.Number(box, "x"), DrawnSvg.Number(box, "x") + width);
    }
}
