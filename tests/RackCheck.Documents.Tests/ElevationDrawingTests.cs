using CsCheck;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Testing;
using SkiaSharp;

namespace RackCheck.Documents.Tests;

public sealed class ElevationDrawingTests
{
    public static TheoryData<string> Names => [.. DrawingRacks.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Texts_do_not_overlap(string name) => Keeps(DrawnSvg.Draw(DrawingRacks.All[name]));

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_finding_is_in_the_legend_and_marked(string name)
    {
        var racks = DrawingRacks.All[name].Select(DrawnSvg.Check).ToList();
        var svg = DrawnSvg.Of(ElevationDrawing.Of(racks));
        var expected = racks.SelectMany(r => r.Report.Findings).Select(f => f.Fingerprint).Order(StringComparer.Ordinal).ToList();
        var drawn = svg.Groups.Where(g => g.Attribute("data-fingerprint") is not null).ToLookup(g => g.Attribute("data-finding") is not null);
        Assert.Equal(expected, drawn[true].Select(g => g.Attribute("data-fingerprint")!.Value).Order(StringComparer.Ordinal));
        Assert.Equal(expected, drawn[false].Select(g => g.Attribute("data-fingerprint")!.Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Findings_past_the_limit_of_a_sheet_are_counted()
    {
        var items = Enumerable.Range(0, 200).Select(i => new Item { Id = $"i{i}", HeightU = 1, MassKg = 5, Position = new Position { U = 60 } });
        var rack = DrawnSvg.Check(new RackDescription { Cabinet = new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 800 }, Items = [.. items] });
        var count = rack.Report.Findings.Count;
        Assert.True(2 * count > ElevationDrawing.MostMarked, $"{count}");
        foreach (var racks in (int[])[1, 2, 6])
        {
            var svg = DrawnSvg.Of(ElevationDrawing.Of([.. Enumerable.Repeat(rack, racks)]));
            var most = Math.Min(count, ElevationDrawing.MostMarked / racks);
            Assert.Equal(racks * most, svg.Groups.Count(g => g.Attribute("data-finding") is not null));
            Assert.Equal(most < count, svg.Texts.Any(t => t.Contains($"Further findings: {count - most};", StringComparison.Ordinal)));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Item_stands_where_the_description_says(string name)
    {
        foreach (var rack in DrawingRacks.All[name])
        {
            var drawing = DrawnSvg.Draw(rack);
            var svg = DrawnSvg.Of(drawing);
            var cabinet = rack.Cabinet!;
            var heights = CabinetHeights.Of(cabinet);
            foreach (var item in rack.Items.Where(i => i.Position is not null && i.OnShelf is null))
            {
                var bottom = rack.UnitNumbering == UnitNumbering.TopDown ? cabinet.HeightU!.Value + 1 - item.Position!.U : item.Position!.U;
                var isInside = bottom >= 1 && bottom + item.HeightU - 1 <= cabinet.HeightU;
                var view = isInside ? CabinetFacts.FaceText(item.Position.Face ?? Face.Front) : "list";
                var group = Assert.Single(svg.ItemIn(InXml(item.Id), view));
                Assert.Equal(item.Position.U, DrawnSvg.Number(group, "data-u"));
                Assert.Equal(item.HeightU!.Value, DrawnSvg.Number(group, "data-height-u"));
                Assert.Equal(CabinetFacts.FaceText(item.Position.Face ?? Face.Front), group.Attribute("data-face")!.Value);
                if (isInside)
                {
                    var face = DrawnSvg.Face(group);
                    Assert.Equal(RackGeometry.PanelHeightMm(item.HeightU.Value), face.Height, 0.02);
                    Assert.Equal(RackGeometry.PanelWidthMm, face.Width, 0.02);
                    Assert.Equal(heights.EdgeMm(bottom) + (RackGeometry.PanelReliefMm / 2), FloorOf(drawing) - face.Y - face.Height, 0.02);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_item_is_named_or_listed(string name)
    {
        foreach (var rack in DrawingRacks.All[name])
        {
            var svg = DrawnSvg.Of(DrawnSvg.Draw(rack));
            Assert.All(rack.Items, i => Assert.Contains(svg.Groups, g => g.Attribute("data-item")?.Value == InXml(i.Id)));
        }
    }

    // XML 1.0 has no bell.
    private static string InXml(string id) => id.Replace('\a', '\uFFFD');

    // Ids that differ only in marks that are not shown, and one with letters that mean something in XML.
    [Fact]
    public void Each_id_is_found_as_given()
    {
        string[] ids = ["ab", "a\u202eb", "a\u2066b", "a\u0085b", "a\u2028b", "a b", "a\ud83d\ude80b", "<a \"b\" & c>"];
        var svg = DrawnSvg.Of(DrawnSvg.Draw(new RackDescription
        {
            Cabinet = new Cabinet { HeightU = 24, WidthMm = 600, DepthMm = 800 },
            Items = [.. ids.Select((id, i) => new Item { Id = id, HeightU = 1, Position = new Position { U = 1 + (2 * i) } })],
        }));
        Assert.All(ids.Index(), i => Assert.Equal(1 + (2 * i.Index), DrawnSvg.Number(Assert.Single(svg.ItemIn(i.Item, "front")), "data-u")));
        Assert.All(svg.Texts, t => Assert.DoesNotContain(t, c => char.IsControl(c) || c is '\u202E' or '\u2066'));
    }

    [Fact]
    public void Positions_are_to_scale_one_to_ten()
    {
        var svg = DrawnSvg.Of(DrawnSvg.Draw(DrawingRacks.Empty));
        var box = svg.Root.Attribute("viewBox")!.Value.Split(' ');
        Assert.Equal($"{double.Parse(box[2], System.Globalization.CultureInfo.InvariantCulture) / 10}mm", svg.Root.Attribute("width")!.Value);
    }

    [Fact]
    public void Same_racks_give_the_same_bytes()
    {
        var racks = DrawingRacks.All["three-cabinets"];
        Assert.Equal(SvgWriter.Document(DrawnSvg.Draw(racks)), SvgWriter.Document(DrawnSvg.Draw(racks)));
        var drawing = DrawnSvg.Draw(DrawingRacks.Scripts);
        Assert.Equal(SkiaPainter.Png(drawing, 800, 1_000_000), SkiaPainter.Png(drawing, 800, 1_000_000));
    }

    [Fact]
    public void Order_of_items_does_not_matter_to_what_stands_where()
    {
        var rack = DrawingRacks.RearItems;
        var turned = rack with { Items = [.. rack.Items.Reverse()] };
        var (one, other) = (DrawnSvg.Of(DrawnSvg.Draw(rack)), DrawnSvg.Of(DrawnSvg.Draw(turned)));
        foreach (var item in rack.Items.Where(i => i.Id != "beyond"))
        {
            Assert.Equal(DrawnSvg.Face(one.ItemIn(item.Id, "front").Single()), DrawnSvg.Face(other.ItemIn(item.Id, "front").Single()));
        }
    }

    [Fact]
    public void Markup_and_formulae_in_names_stay_text()
    {
        var svg = DrawnSvg.Of(DrawnSvg.Draw(DrawingRacks.LongNames));
        Assert.Empty(svg.Named("script"));
        Assert.Empty(svg.Named("b"));
        Assert.Contains("<script>alert(1)</script>", svg.Texts);
        Assert.Contains(svg.Texts, t => t.StartsWith("=HYPERLINK(", StringComparison.Ordinal));
        Assert.All(svg.Texts, t => Assert.DoesNotContain(t, c => char.IsControl(c) || c == '\u202E' || char.IsSurrogate(c)));
    }

    [Fact]
    public void Item_without_a_place_is_listed()
    {
        var svg = DrawnSvg.Of(DrawnSvg.Draw(DrawingRacks.Shelves));
        Assert.Single(svg.ItemIn("spare-psu", "list"));
        Assert.Contains("No place given", svg.Texts);
        Assert.Contains("spare-psu, 2U, 6 kg", svg.Texts);
    }

    [Fact]
    public void Item_on_a_shelf_stands_on_it()
    {
        var svg = DrawnSvg.Of(DrawnSvg.Draw(DrawingRacks.Shelves));
        var group = svg.ItemIn("oscilloscope", "front").Single();
        Assert.Equal("shelf-2", group.Attribute("data-on-shelf")!.Value);
        var (load, shelf) = (DrawnSvg.Face(group), DrawnSvg.Face(svg.ItemIn("shelf-2", "front").Single()));
        Assert.Equal(200, load.Height, 0.02);
        Assert.Equal(380, load.Width, 0.02);
        Assert.Equal(shelf.Y, load.Y + load.Height, 0.5);
    }

    [Fact]
    public void Free_positions_are_summed()
    {
        var rack = DrawingRacks.Shelves;
        var svg = DrawnSvg.Of(DrawnSvg.Draw(rack));
        var occupancy = new RackCheck.Survey.RackSurvey(rack).Occupancy;
        Assert.Equal(
            System.Numerics.BitOperations.PopCount(occupancy.OpenFront),
            svg.Groups.Where(g => g.Attribute("data-free-u") is not null).Sum(g => (int)DrawnSvg.Number(g, "data-free-u")));
    }

    [Fact]
    public void Depth_stack_has_the_values_of_the_survey()
    {
        var drawing = DrawnSvg.Draw(DrawingRacks.RearItems);
        var svg = DrawnSvg.Of(drawing);
        Assert.Contains("Depth stack of srv-a, mm", svg.Texts);
        Assert.Contains("body 680", svg.Texts);
        Assert.Contains("spacing of uprights 700", svg.Texts);
        Assert.Contains(svg.Texts, t => t is "100" or "setback 100");
        var side = DrawnSvg.Face(svg.ItemIn("srv-a", "side").Single());
        Assert.Equal(40, side.Width, 0.02);
    }

    [Fact]
    public void Cords_of_two_feeds_differ_in_dashes_and_letters()
    {
        var svg = DrawnSvg.Of(DrawnSvg.Draw(DrawingRacks.Tall));
        var report = DrawnSvg.Check(DrawingRacks.Tall).Report;
        var cords = report.Figures.Power!.Assignment!.Count;
        Assert.Equal(20, cords);
        var lines = svg.Named("path").Select(p => p.Attribute("class")!.Value)
            .Where(c => c.StartsWith("rkcord", StringComparison.Ordinal)).ToList();
        Assert.Equal(cords, lines.Count);
        Assert.Equal(2, lines.Distinct().Count());
        Assert.Equal(10, svg.Texts.Count(t => t == "A"));
        Assert.Equal(10, svg.Texts.Count(t => t == "B"));
    }

    [Fact]
    public void Changes_are_marked_with_words()
    {
        var before = DrawingRacks.RearItems;
        var after = before with
        {
            Items =
            [
                .. before.Items.Where(i => i.Id != "logger").Select(i => i.Id == "drive" ? i with { Position = new Position { U = 22 } } : i),
                new Item { Id = "mixer", HeightU = 1, Position = new Position { U = 8 } },
            ],
        };
        var svg = DrawnSvg.Of(ElevationDrawing.Of(DrawnRack.Compare(DrawnSvg.Check(before), DrawnSvg.Check(after))));
        Assert.Contains("moves to U22", svg.Texts);
        Assert.Contains("moved from U7", svg.Texts);
        Assert.Contains("goes", svg.Texts);
        Assert.Contains(svg.Texts, t => t.StartsWith("new \u00b7 ", StringComparison.Ordinal));
        Assert.Contains("Before", svg.Texts);
        Assert.Contains("After", svg.Texts);
    }

    [Fact]
    public void Png_has_signature_and_bounded_size()
    {
        var drawing = DrawnSvg.Draw(DrawingRacks.Empty);
        var file = SkiaPainter.Png(drawing, 1600, 32_000_000);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], file[..4]);
        Assert.Equal((1600, (int)(drawing.Height * 1600 / drawing.Width)), SizeOf(file));
        var (width, height) = SizeOf(SkiaPainter.Png(drawing, 8000, 500_000));
        Assert.InRange(width * height, 400_000, 500_000);
    }

    // The picture is drawn in bands and kept in greys: together they are the drawing, as Skia itself turns it grey.
    [Fact]
    public void Bands_of_a_large_png_join()
    {
        var drawing = DrawnSvg.Draw(DrawingRacks.Empty);
        using var joined = SKBitmap.Decode(SkiaPainter.Png(drawing, 6000, 32_000_000));
        Assert.True((long)joined.Width * joined.Height > 16_000_000, $"{joined.Info.Size} is one band or two.");
        using var whole = SKSurface.Create(new SKImageInfo(joined.Width, joined.Height, SKImageInfo.PlatformColorType, SKAlphaType.Opaque));
        whole.Canvas.Scale((float)(joined.Width / drawing.Width));
        SkiaPainter.Draw(drawing, whole.Canvas);
        using var gray = new SKBitmap(new SKImageInfo(joined.Width, joined.Height, SKColorType.Gray8, SKAlphaType.Opaque));
        using var pixels = whole.PeekPixels();
        Assert.True(pixels.ReadPixels(gray.Info, gray.GetPixels(), gray.RowBytes, 0, 0));
        Assert.Equal(SKColorType.Gray8, joined.ColorType);
        var expected = gray.GetPixelSpan();
        var actual = joined.GetPixelSpan();
        var different = 0;
        for (var i = 0; i < expected.Length; i++)
        {
            different += Math.Abs(expected[i] - actual[i]) > 1 ? 1 : 0;
        }

        Assert.InRange(different, 0, expected.Length / 100_000);
    }

    public static TheoryData<double, double, int, double> Extremes => new()
    {
        { 200, 100, 1, 100 }, { 3000, 3000, 60, 5000 }, { 200, 3000, 60, 100 }, { 3000, 100, 1, 5000 }, { 482.6, 600, 12, 700 },
    };

    // The ends of the ranges of the contract, all items in the same place, findings by the hundred.
    [Theory]
    [MemberData(nameof(Extremes))]
    public void Rack_at_the_ends_of_the_ranges_is_drawn(double width, double depth, int heightU, double height)
    {
        var rack = new RackDescription
        {
            Cabinet = new Cabinet
            {
                WidthMm = width, DepthMm = depth, HeightU = heightU, HeightMm = height, FrontDoor = new Door { Style = DoorStyle.None },
                Base = new CabinetBase { Style = BaseStyle.Castors, HeightMm = 1000, InsetMm = 500, StabiliserMm = 2000 },
                Uprights = new Uprights { FrontSetbackMm = 3000, SpacingMm = 3000, OpeningMm = 1000 },
            },
            Items =
            [
                .. Enumerable.Range(0, 200).Select(i => new Item
                {
                    Id = FormattableString.Invariant($"item {i}"), HeightU = 1 + (i % 60), MassKg = 5000, FrontProjectionMm = 1000, RearProjectionMm = 1000,
                    Position = i % 7 == 6 ? null : new Position { U = i % 5 == 0 ? (i % 2 == 0 ? 200 : -200) : 1 + (i % 3), Face = (Face)(i % 2) },
                    Body = new Body { WidthMm = 2000, DepthMm = i % 3 == 0 ? 0 : 3000, HeightMm = 3000 },
                    Power = new ItemPower { RatedW = 100, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, 8)] },
                }),
            ],
            Supplies = [.. Enumerable.Range(0, 16).Select(i => new Supply { Id = FormattableString.Invariant($"s{i}"), VoltageV = 230, RatedA = 32 })],
            Pdus =
            [
                .. Enumerable.Range(0, 32).Select(i => new Pdu
                {
                    Id = FormattableString.Invariant($"p{i}"), Supply = FormattableString.Invariant($"s{i % 16}"), RatedA = 32,
                    LengthMm = i % 2 == 0 ? null : 5000,
                    Mounting = i % 4 == 3 ? PduMounting.Horizontal : PduMounting.Vertical, Position = i % 8 == 3 ? new Position { U = i } : null,
                    Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 50 }] }],
                }),
            ],
        };
        var drawing = DrawnSvg.Draw(rack);
        Keeps(drawing);
        Assert.NotEmpty(DrawnSvg.Of(drawing).Texts);
        Assert.NotEmpty(SkiaPainter.Png(drawing, 400, 1_000_000));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Any_rack_is_drawn_without_overlaps() => RackGenerator.AllRacks.Sample(
        rack =>
        {
            var drawing = DrawnSvg.Draw(rack);
            Keeps(drawing);
            _ = DrawnSvg.Of(drawing);
        },
        iter: Samples.Of(3_000));

    private static void Keeps(Drawing drawing)
    {
        var overlaps = DrawnSvg.Overlaps(drawing);
        Assert.True(overlaps.Count == 0, string.Join(Environment.NewLine, overlaps.Take(9)));
    }

    private static double FloorOf(Drawing drawing) => drawing.Flat.OfType<Line>().First(l => l.Stroke == Stroke.Normal && l.Y1 == l.Y2 && l.X2 - l.X1 > 300).Y1;

    private static (int Width, int Height) SizeOf(byte[] png) => (
        System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
}
