using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Sheets;
using RackCheck.Documents.Tests.Parts;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Sheets;

public sealed class CoolerTests
{
    public static TheoryData<AirConditionerStyle?> Styles =>
        [AirConditionerStyle.Wall, AirConditionerStyle.Roof, AirConditionerStyle.Split, default(AirConditionerStyle?)];

    private static AirConditioner Wall => new() { CapacityW = 1000, Style = AirConditionerStyle.Wall, SetpointC = 35, RatedAmbientC = 35 };

    [Theory]
    [MemberData(nameof(Styles))]
    public void Every_view_shows_the_air_conditioner_without_covering_text(AirConditionerStyle? style)
    {
        foreach (var view in Enum.GetValues<ElevationView>())
        {
            // Roof and marks of findings share the space above the cabinet.
            var drawing = ElevationDrawing.Of([DrawnSvg.Check(Cooled(DrawingRacks.Crowded, Wall with { Style = style }))], view);
            var drawn = DrawnSvg.Of(drawing).Groups.Where(g => g.Attribute("data-part")?.Value == "air-conditioner").ToList();
            Assert.Equal(ElevationDrawing.ViewsOf(view).Count, drawn.Count);
            Assert.Empty(DrawnSvg.Overlaps(drawing));
        }

        Assert.DoesNotContain(DrawnSvg.Of(DrawnSvg.Draw(DrawingRacks.Crowded)).Groups, g => g.Attribute("data-part") is not null);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Every_sheet_tells_what_is_known_of_the_air_conditioner(AirConditionerStyle? style)
    {
        var rack = Cooled(DrawingRacks.Shelves, Wall with { Style = style });
        foreach (var kind in ReadSheet.Kinds)
        {
            var texts = ReadSheet.Html(ReadSheet.Of(rack, kind).Sheet).Texts();
            Assert.Contains(texts, t => t.Contains("ir conditioner", StringComparison.Ordinal));
        }

        var steps = Texts(rack, SheetKind.Installation);
        Assert.Contains(steps, t => t.Contains("cut the opening in", StringComparison.Ordinal));
        Assert.Contains(steps, t => t.Contains("condensate", StringComparison.Ordinal));
        Assert.Equal(style == AirConditionerStyle.Split, steps.Any(t => t.Contains("outdoor unit", StringComparison.Ordinal)));
    }

    [Fact]
    public void Feed_that_is_not_described_has_to_be_provided()
    {
        var rack = Cooled(DrawingRacks.Shelves, Wall);
        Assert.Contains(Texts(rack, SheetKind.Installation), t => t.StartsWith("Provide a mains feed of its own", StringComparison.Ordinal));
        Assert.Contains(Texts(rack, SheetKind.PackingList), t => t.StartsWith("A mains feed of its own", StringComparison.Ordinal));
        Assert.Contains(Texts(rack, SheetKind.Specification), t => t == "feed of its own, to be provided: none is described");

        var fed = Cooled(DrawingRacks.Crowded, Wall with { Supply = "A", InputW = 420 });
        Assert.Contains(Texts(fed, SheetKind.Installation), t => t.StartsWith("Connect it to supply A (420 W)", StringComparison.Ordinal));
        foreach (var kind in ReadSheet.Kinds)
        {
            Assert.DoesNotContain(Texts(fed, kind), t => t.Contains("feed of its own", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Capacity_is_derated_for_the_room()
    {
        var hot = Cooled(DrawingRacks.Shelves, Wall) with { Site = new Site { AmbientMaxC = 40 } };

        // 1000 x (1 - 0.015 x 5).
        Assert.Contains(Texts(hot, SheetKind.Specification), t => t == "925 W at 40 C");
        var furnace = hot with { Site = new Site { AmbientMaxC = 60 } };
        Assert.Contains(Texts(furnace, SheetKind.Specification), t => t == "by the maker's curve at 60 C");
    }

    [Fact]
    public void Product_on_offer_gives_the_part_number()
    {
        // Feed and setpoint are the rack's choice.
        var rack = Cooled(DrawingRacks.Shelves, Wall with { SetpointC = 30 });
        var pieces = ReadSheet.Html(ReadSheet.Of(rack, SheetKind.PackingList).Sheet)
            .Table("Main pieces; PDUs, rails and cords have no mass in the description");
        Assert.Equal("wall, 1000 W, QWL-COL-10; mass not described", Assert.Single(pieces, p => p[1] == "Air conditioner")[2]);
        Assert.Contains(Listed.Offered(rack).Notes, n => n.Contains("QWL-COL-10", StringComparison.Ordinal));
        Assert.DoesNotContain(Listed.Bare(rack).Notes, n => n.Contains("QWL-COL-10", StringComparison.Ordinal));
    }

    private static RackDescription Cooled(RackDescription rack, AirConditioner cooler) =>
        rack with { Cooling = (rack.Cooling ?? new Cooling()) with { AirConditioner = cooler } };

    private static IReadOnlyList<string> Texts(RackDescription rack, SheetKind kind) => ReadSheet.Html(ReadSheet.Of(rack, kind).Sheet).Texts();
}
