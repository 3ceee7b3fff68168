using RackCheck.Documents.Drawings;
using RackCheck.Documents.Parts;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Sheets;

/// <summary>What the sheets say, and what they do not make up.</summary>
public sealed class SheetWordsTests
{
    private const string Steps = "Support first, then the item; each nut with its screw; heavy items with the people or the aid named";

    // 2 comes before 10.
    [Fact]
    public void Cords_and_loads_of_a_shelf_are_in_ascending_order()
    {
        string[] ids = ["pc-10", "pc-2", "pc-1"];
        var rack = Rack() with
        {
            Items =
            [
                Box("board", 1, ItemCategory.Shelf),
                .. ids.Select(id => new Item
                {
                    Id = id, OnShelf = "board", HeightU = 0, Power = new ItemPower { RatedW = 50, Plugs = [ConnectorCode.C14] },
                }),
            ],
            Supplies = [new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16 }],
            Pdus =
            [
                new Pdu
                {
                    Id = "strip", Supply = "A", RatedA = 16, Mounting = PduMounting.Vertical,
                    Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 6 }] }],
                },
            ],
        };
        var page = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Installation).Sheet);
        Assert.Equal(["board", "pc-1", "pc-2", "pc-10"], page.Table(Steps).Select(s => s[3]));
        Assert.Equal(["pc-1", "pc-2", "pc-10"], page.Table("Cords in their outlets; each end has a label with the same text").Select(s => s[5]));
        var cords = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Specification).Sheet).Table("Cords: from the item to PDU, group and number of the outlet");
        Assert.Equal(["pc-1", "pc-2", "pc-10"], cords.Select(s => s[0]));
    }

    // The sheet has as many nuts as the parts list, which leaves those to the box that come with slides in it.
    [Fact]
    public void Slides_in_the_box_of_the_equipment_take_no_further_nuts()
    {
        Product boxed = new()
        {
            PartNumber = "SRV-BOX", Name = "Server with slides", Kind = ProductKind.Equipment, RailsIncluded = true,
            Item = new ProductItem { HeightU = 2, Support = new Support { Style = SupportStyle.Slides, RatedKg = 40 } },
        };
        var rack = Rack() with
        {
            Items =
            [
                new Item { Id = "boxed", PartNumber = "SRV-BOX", Position = new Position { U = 1 } },
                Box("apart", 4, ItemCategory.Server) with { Support = new Support { Style = SupportStyle.Slides, RatedKg = 40 } },
            ],
        };
        var resolved = ResolvedRack.Of(rack, new Dictionary<string, Product> { [boxed.PartNumber] = boxed });
        var steps = ReadSheet.Html(OrderSheets.Of(resolved, Judge.Checker, SheetKind.Installation, [boxed]).Sheet).Table(Steps);
        Assert.Equal(["4 x cage nut; slides with those in their box", "8 x cage nut"], steps.Select(s => s[5]));
        Assert.Equal(12, PartsLists.Of(resolved, Judge.Checker, [boxed]).List.Lines.Single(l => l.Kind == PartKind.Fixing).Quantity);
    }

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

    [Fact]
    public void Setback_that_suits_all_items_is_none_where_nothing_does()
    {
        // 100 mm of handles in front, and a body that reaches the rear door.
        var rack = Rack() with
        {
            Items =
            [
                Box("handles", 1, ItemCategory.Instrument) with { FrontProjectionMm = 100 },
                Box("deep", 5, ItemCategory.Server) with { Body = new Body { WidthMm = 440, DepthMm = 730 } },
            ],
        };
        var (sheet, report) = ReadSheet.Of(rack, SheetKind.Specification);
        Assert.True(report.Figures.Depth!.FrontSetbackMinMm > report.Figures.Depth.FrontSetbackMaxMm);
        var texts = ReadSheet.Html(sheet).Texts();
        var words = FormattableString.Invariant(
            $"none: the front needs {report.Figures.Depth.FrontSetbackMinMm} mm or more, the rear permits {report.Figures.Depth.FrontSetbackMaxMm} mm");
        Assert.Contains(words, texts);

        var easy = ReadSheet.Of(Rack() with { Items = [Box("one", 1, ItemCategory.Instrument)] }, SheetKind.Specification);
        var depth = easy.Report.Figures.Depth!;
        Assert.Contains(
            FormattableString.Invariant($"{depth.FrontSetbackMinMm} to {depth.FrontSetbackMaxMm} mm"), ReadSheet.Html(easy.Sheet).Texts());
    }

    [Theory]
    [InlineData(BaseStyle.Castors, "Place the cabinet on a level floor and lock its castors. Secure it")]
    [InlineData(BaseStyle.Feet, "Place the cabinet, level it by its feet")]
    [InlineData(BaseStyle.Plinth, "Place the cabinet, level it with shims under its plinth. Secure it")]
    [InlineData(BaseStyle.Bolted, "Place the cabinet, level it and bolt it to the floor.")]
    [InlineData(BaseStyle.Wall, "Fix the cabinet to the wall")]
    [InlineData(null, "Place the cabinet, level it and make its base safe")]
    public void First_step_fits_the_base(BaseStyle? style, string start)
    {
        var rack = Rack();
        rack = rack with { Cabinet = rack.Cabinet! with { Base = style is null ? null : new CabinetBase { Style = style } } };
        Assert.Contains(
            ReadSheet.Html(ReadSheet.Of(rack, SheetKind.Installation).Sheet).Texts(), t => t.StartsWith(start, StringComparison.Ordinal));
    }

    [Fact]
    public void Spares_are_recommended_and_not_ticked_off_as_delivered()
    {
        var page = ReadSheet.Html(ReadSheet.Of(Rack(), SheetKind.PackingList).Sheet);
        var rows = page.Table("Small parts: mounted where the installation sheet is done, else in a box");
        Assert.NotEmpty(rows);
        Assert.DoesNotContain(rows, r => r[1].StartsWith("Spare", StringComparison.Ordinal));

        // Four sets for each occupied U.
        var spares = page.Table("Spares recommended; part of this delivery only if they were ordered");
        Assert.All(spares, r => Assert.StartsWith("Spare: Cage nuts", r[1], StringComparison.Ordinal));
        Assert.Equal(8, spares.Sum(r => int.Parse(r[0].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("QWL-SH-450S-1", "QWL-SH-|450S-1")]
    [InlineData("on QWL-SH-450S-1", "on|QWL-SH-|450S-1")]
    [InlineData("abcdefghijklmnopqr", "abcdefghi|jklmnopqr")]
    [InlineData("a-bcdefghijklmnopq", "a-bcdefgh|ijklmnopq")]
    public void Long_ids_are_broken_after_hyphens(string words, string lines)
    {
        const double Size = 20;
        Assert.Equal(lines.Split('|'), TextFit.Wrap(words, DrawingFont.Width(lines.Split('|').MaxBy(l => DrawingFont.Width(l, Size))!, Size) + 0.5, Size));
    }

    [Fact]
    public void Cells_let_a_browser_break_ids_after_hyphens_only()
    {
        var rack = Rack() with { Items = [Box("QWL-SH-450S-1", 1, ItemCategory.Shelf) with { HeightU = 1 }, Box("U1-U2", 5, ItemCategory.Server)] };
        var html = System.Text.Encoding.UTF8.GetString(SheetHtml.Document(ReadSheet.Of(rack, SheetKind.Installation).Sheet));
        Assert.Contains("<td dir=\"auto\">QWL-<wbr/>SH-<wbr/>450S-<wbr/>1</td>", html, StringComparison.Ordinal);
        Assert.Contains("<td dir=\"auto\">U1-U2</td>", html, StringComparison.Ordinal);
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
