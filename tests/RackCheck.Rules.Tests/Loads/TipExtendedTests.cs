using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class TipExtendedTests : RuleTests<TipExtended>
{
    // Feet in the faces. The item is centred at 75 + 225 = 300; pulled out by 700 it is 400 in front of the cabinet.
    private static RackDescription Pulled(double cabinetKg = 80, double kilograms = 60, double? extension = 700, double depthMm = 500) =>
        Weighed(cabinetKg, depthMm: depthMm, heightMm: 1200, heightU: 24).OnFaces().Uprights(setback: 75, spacing: 300)
            .With(Heavy("wave-pc", 1, kilograms).Room(0, 0).Slid(extension));

    [Fact]
    public void Check_value_8_14_is_an_error()
    {
        // mrest = 80, b = 0.25, ms = 60, e = 0.4: 0.833.
        var finding = Only(Pulled());
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 0.833, 1.25, "to 1");
        Assert.Equal("9.80665 x 80 x 0.25 = 196.133; 9.80665 x 60 x 0.4 = 235.36; 196.133 / 235.36 = 0.833 < 1.25", finding.Calculation);
        Assert.Equal(["/items/0", "/cabinet/base"], finding.Pointers);
    }

    [Fact]
    public void Remedies_are_stabiliser_bolts_and_runners()
    {
        // On a stabiliser of 200: 80 x 450 / (60 x 200) = 3.
        var rack = Pulled(depthMm: 600);
        var finding = Only(rack);
        Assert.Equal(200, Remedied(rack, finding).Cabinet!.Base!.StabiliserMm);
        Assert.Equal(BaseStyle.Bolted, Remedied(rack, finding, 1).Cabinet!.Base!.Style);
        Assert.Equal(SupportStyle.Runners, Remedied(rack, finding, 2).Items[0].Support!.Style);
    }

    [Fact]
    public void Moment_ratio_at_limit_passes()
    {
        Passes(Pulled(kilograms: 40)); // 80 x 250 / (40 x 400) = 1.25
        Assert.Single(Findings(Pulled(kilograms: 40.1)));
        Assert.Single(Findings(Pulled(kilograms: 40).Limit(Id, "momentRatio", 1.3)));
    }

    [Fact]
    public void Short_extension_passes() => Passes(Pulled(extension: 300));

    [Fact]
    public void A_castor_swivelled_inwards_takes_30() =>
        Numbers(Only(Pulled(kilograms: 40).Base(BaseStyle.Castors)), 1.023, 1.25, "to 1"); // 80 x 220 / (40 x 430)

    [Fact]
    public void Default_extension_is_body_depth()
    {
        var report = Report(Pulled(kilograms: 200, extension: null)); // 80 x 250 / (200 x 150) = 0.667
        Numbers(Assert.Single(report.Findings), 0.667, 1.25, "to 1");
        Assert.Equal(450, report.Assumed().Single(a => a.Pointer == "/items/0/support/extensionMm").Value.Number);
    }

    [Fact]
    public void Worst_item_is_named_and_remedy_covers_all()
    {
        // (80 x 250 + 60 x 300) / (50 x 700) = 1.086; gauge-amp in place and wave-pc extended: (80 x 250 + 50 x 300) / (60 x 500) = 1.167.
        var rack = Pulled(extension: 800).Cabinet(c => c with { Interlock = true }).With(Heavy("gauge-amp", 9, 50).Room(0, 0).Slid(1000));
        var finding = Only(rack);
        Assert.Equal("gauge-amp", finding.MessageData["item"].Text);
        Assert.Equal(finding.Fingerprint, Only(Pulled()).Fingerprint);
        Assert.DoesNotContain(Report(Remedied(rack, finding)).Findings, f => f.Fingerprint == finding.Fingerprint);
    }

    [Fact]
    public void Rear_item_tips_rack_to_rear()
    {
        // From the rear: mounting plane at 125, centre at 250; extended by 650 it is 400 past the edge: 80 x 250 / (60 x 400).
        var rack = Weighed(80, depthMm: 500, heightMm: 1200, heightU: 24).OnFaces().Uprights(setback: 75, spacing: 300).With(
            Heavy("wave-pc", 1, 60, depth: 250, face: Face.Rear).Room(0, 0).Slid(650));
        var finding = Only(rack);
        Assert.Equal("rear", finding.MessageData["side"].Text);
        Numbers(finding, 0.833, 1.25, "to 1");
        Assert.Equal(BaseStyle.Bolted, Remedied(rack, finding).Cabinet!.Base!.Style);
    }

    [Fact]
    public void Shelf_load_extends_with_shelf()
    {
        var rack = Weighed(80, depthMm: 500, heightMm: 1200, heightU: 24).OnFaces().Uprights(setback: 75, spacing: 300).With(
            (Shelf("tray", 4) with { MassKg = 10 }).Room(0, 0).Slid(700), ShelfItem("probe", "tray", depth: 450, height: 200) with { MassKg = 50 });
        Numbers(Only(rack), 0.833, 1.25, "to 1");
        Assert.Equal("tray", Only(rack).MessageData["item"].Text);
    }

    [Fact]
    public void Check_value_8_12_is_tipped_by_a_push()
    {
        // 60 kg, b = 0.25, h = 1.5 m, 20 %: 117.68 N, factor 0.833: 147.1 / 176.52 N m.
        var rack = Weighed(60, widthMm: 500).OnFaces().Limit(Id, "pushPercent", 20);
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Numbers(finding, 176.52, 147.1, "N m");
        Assert.Equal("117.6798 x 1.5 = 176.52 > 9.80665 x 60 x 0.25 = 147.1", finding.Calculation);
        Assert.Equal(["/cabinet/base"], finding.Pointers);
        Assert.Equal(600, Remedied(rack.Limit(Id, "pushPercent", 18), Only(rack.Limit(Id, "pushPercent", 18))).Cabinet!.WidthMm);
        Passes(Weighed(60, widthMm: 500).OnFaces());
    }

    [Fact]
    public void Push_is_limited_in_height_and_force()
    {
        // 300 kg: 250 N at 2 m against 882.6 N m passes, check value 8-10.
        Passes(Weighed(300).OnFaces().Limit(Id, "pushPercent", 20).Limit(Id, "pushHeightMm", 2000));

        // 13 % at 390 mm is as much as b = 50.7.
        Passes(Weighed(60, widthMm: 200, heightMm: 400, heightU: 6).OnFaces());
        Assert.Single(Findings(Weighed(60, widthMm: 200, heightMm: 1600).OnFaces()));
    }

    [Fact]
    public void Bolted_and_wall_hung_racks_are_not_checked()
    {
        Passes(Pulled().Base(BaseStyle.Bolted));
        Passes(Pulled().Base(BaseStyle.Wall));
    }

    // A 60 kg cabinet 1000 deep without panels, setback 100, a 90 kg drawer with a body 750 deep pulled out by 700: centred at 475, then at -225.
    private static RackDescription Drawer(double edgeMm, double kilograms = 90, double cabinetKg = 60) =>
        Weighed(cabinetKg, heightMm: 1200, heightU: 24).OnFaces().Inset(edgeMm).Uprights(setback: 100, spacing: 700)
            .With(Heavy("wave-pc", 1, kilograms, depth: 750).Room(40, 25).Slid(700));

    [Theory]
    [InlineData(0, 1.481)] // statics, moments about the line of feet: 60 x 500 / (90 x 225)
    [InlineData(25, 1.267)] // 60 x 475 / (90 x 250)
    [InlineData(75, 0.944)] // 60 x 425 / (90 x 300)
    public void Line_of_feet_is_the_edge(double edge, double ratio) =>
        Assert.Equal(ratio, Only(Drawer(edge).Limit(Id, "momentRatio", 2)).Actual!.Value);

    [Theory]
    [InlineData(0, 1.111)] // statics: 60 x 500 / (2 x 60 x 225)
    [InlineData(75, 0.708)] // 60 x 425 / (2 x 60 x 300)
    public void Two_drawers_out_together(double edge, double ratio)
    {
        var rack = Drawer(edge, 60).With(Heavy("gauge-amp", 6, 60, depth: 750).Room(40, 25).Slid(700)).Limit(Id, "pairRatio", 2);
        var finding = Findings(rack).Single(f => f.Pointers[0] == "/cabinet/interlock");
        Assert.Equal((Severity.Warning, ratio), (finding.Severity, finding.Actual!.Value));
        Assert.Equal(["/cabinet/interlock", "/items/1", "/items/0"], finding.Pointers);
        Assert.True(Remedied(rack, finding).Cabinet!.Interlock);
        Assert.DoesNotContain(Findings(rack.Cabinet(c => c with { Interlock = true })), f => f.Pointers[0] == "/cabinet/interlock");
    }

    [Theory]
    [InlineData(85, 0)] // 120 x 425 / (2 x 85 x 300) = 1
    [InlineData(85.2, 1)]
    public void Two_drawers_at_the_limit_pass(double kilograms, int count) => Assert.Equal(
        count, Findings(Drawer(75, kilograms, 120).With(Heavy("gauge-amp", 6, kilograms, depth: 750).Room(40, 25).Slid(700))).Count);

    [Fact]
    public void Items_at_front_and_rear_are_no_pair() =>
        Passes(Drawer(75, 60, 120).With(Heavy("gauge-amp", 6, 60, depth: 600, face: Face.Rear).Room(40, 25).Slid(600)));

    [Fact]
    public void Open_door_overturns_with_the_item()
    {
        // 15 of the 60 kg are the door, half of 600 in front: 45 x 425 / (40 x 300 + 15 x 375) = 1.085; two leaves: 19125 / (12000 + 15 x 225) = 1.244.
        RackDescription With(int? leaves, double? kilograms) => Drawer(75, 40).Cabinet(c => c with
        {
            FrontDoor = new Door { Style = DoorStyle.Solid, DepthMm = 0, MassKg = kilograms, Leaves = leaves },
        });
        Numbers(Only(With(1, 15)), 1.085, 1.25, "to 1");
        Numbers(Only(With(2, 15)), 1.244, 1.25, "to 1");
        Assert.Contains("past the open door", Only(With(null, 15)).Message, StringComparison.Ordinal);
        Passes(With(1, null)); // 60 x 425 / (40 x 300) = 2.125
    }

    [Theory]
    [InlineData(Placement.RowEnd, 0)]
    [InlineData(Placement.RowMiddleWall, 0)]
    [InlineData(Placement.Wall, 1)]
    [InlineData(null, 1)]
    public void Rack_joined_in_a_row_is_not_pushed(Placement? placement, int count) => Assert.Equal(
        count,
        Findings(Weighed(60, widthMm: 500).OnFaces().Limit(Id, "pushPercent", 20).Cabinet(c => c with { Placement = placement })).Count);

    [Fact]
    public void Console_drawer_gets_no_runners()
    {
        var rack = Pulled() with { Items = [Pulled().Items[0] with { Category = ItemCategory.KeyboardDrawer }] };
        Assert.DoesNotContain(Judge.Check(rack).Findings.Single(f => f.Rule == Id).Remedies, r => r.Title.Contains("runners", StringComparison.Ordinal));
    }

    [Fact]
    public void Masses_and_extensions_missing_are_not_assessed()
    {
        ReportsMissing(Pulled().Cabinet(c => c with { MassKg = null }), "/cabinet/massKg");
        ReportsMissing(Pulled().With(Heavy("gauge-amp", 9, null)), "/items/1/massKg");
        ReportsMissing(
            Weighed().With((Shelf("tray", 4, depth: null) with { MassKg = 0 }).Slid(null),
                ShelfItem("probe", "tray", depth: 300, height: 200) with { MassKg = 5 }),
            "/items/0/support/extensionMm");
    }

    // More than two at once are a matter of working practice.
    [Theory]
    [InlineData(3, false, BaseStyle.Feet, true)]
    [InlineData(3, true, BaseStyle.Feet, false)]
    [InlineData(3, false, BaseStyle.Bolted, false)]
    [InlineData(2, false, BaseStyle.Feet, false)]
    public void More_than_two_items_on_slides_are_a_caution(int count, bool interlock, BaseStyle style, bool cautioned)
    {
        var rack = Weighed(200, style: style).With([.. Enumerable.Range(0, count).Select(n => Heavy($"disk-{n}", 1 + (4 * n), 20).Slid())])
            .Cabinet(c => c with { Interlock = interlock });
        Assert.Equal(cautioned, Report(rack).Cautions.Contains(Cautions.PullOut.Text));
    }

    [Fact]
    public void Items_on_slides_at_both_sides_count_apart() => Assert.DoesNotContain(
        Cautions.PullOut.Text,
        Report(Weighed(200).With(Heavy("a", 1, 20).Slid(), Heavy("b", 5, 20).Slid(), Heavy("c", 20, 20, face: Face.Rear).Slid())).Cautions);
}
