using System.Text.Json;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Proposals;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

public sealed class ProposalTests
{
    private static readonly string[] Parts =
    [
        "UPS-30", "SRV-2", "SRV-110", "PC-210", "PC-410", "KVM-16", "KD-2", "SW-24", "PAT-24", "DRV-4", "AMP-2", "DAQ-3", "GEN-2", "OSC-0", "PC-D1",
    ];

    [Fact]
    public void Fourteen_items_make_a_rack_without_an_open_product_error()
    {
        var text = Repository.Read("openapi", "examples", "proposal-fourteen-items.json");
        var request = JsonSerializer.Deserialize(text, ContractJson.Default.ProposalRequest)!;
        Assert.Equal(14, request.Items.Count);
        var answer = Answer(request);
        Assert.Null(answer.Conflict);
        Assert.NotEmpty(answer.Alternatives);
        AssertSound(request, answer);
        Assert.All(answer.Alternatives, a => Assert.NotEqual(Verdict.Hold, a.Report!.Verdicts.Product));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Random_requests_give_sound_racks_or_a_conflict() => Parallel.For(0, Samples.Of(1000), run =>
    {
        var random = new Random(run);
        var request = Request([.. Enumerable.Range(0, random.Next(1, 16)).Select(_ => Parts[random.Next(Parts.Length)])]) with
        {
            GrowthPercent = random.Next(3) * 20,
            Prefer = random.Next(2) == 0 ? CabinetPreference.SmallestFootprint : null,
            Site = new Site { Region = (Region)random.Next(3), AmbientMaxC = 22 + random.Next(10) },
        };
        var answer = Answer(request);
        Assert.Equal(answer.Alternatives.Count == 0, answer.Conflict is not null);
        AssertSound(request, answer);
    });

    [Fact]
    public void Equipment_too_high_for_one_cabinet_is_divided_over_two()
    {
        var request = Request([.. Enumerable.Repeat("DRV-6", 10), "SRV-2", "SW-24"]) with
        {
            Groups = [new ItemGroup { Id = "pair", Items = ["drv-6-1", "drv-6-10"] }],
        };
        var answer = Answer(request);
        var divided = answer.Alternatives[0];
        Assert.Null(divided.Rack);
        Assert.Equal(2, divided.Racks!.Count);
        Assert.Equal(2, divided.Objective.Single(o => o is { Name: ObjectiveName.Cabinets, Proven: true }).Value);
        Assert.Single(divided.Racks, r => r.Rack.Items.Any(i => i.Id is "drv-6-1") && r.Rack.Items.Any(i => i.Id is "drv-6-10"));
        Assert.All(divided.Racks, r => Assert.Equal(Placement.RowEnd, r.Rack.Cabinet!.Placement));

        // Assumed supplies of two cabinets are different supplies.
        Assert.Empty(divided.Racks[0].Rack.Supplies!.Select(s => s.Id).Intersect(divided.Racks[1].Rack.Supplies!.Select(s => s.Id)));
        AssertSound(request, answer);
        Assert.Empty(Answer(request with { MaxCabinets = 1 }).Alternatives);
    }

    // 2 comes before 10, as in lists; the items themselves stay in the order of the request.
    [Fact]
    public void Like_items_take_ascending_positions_by_number()
    {
        var request = Request([.. Enumerable.Repeat("PAT-24", 11), "SW-24"]);
        foreach (var rack in Answer(request).Alternatives.SelectMany(RacksOf))
        {
            Item[] panels = [.. rack.Items.Where(i => i.PartNumber == "QWL-PAT-24")];
            Assert.Equal(Enumerable.Range(1, 11).Select(n => $"pat-24-{n}"), panels.Select(i => i.Id));
            Assert.Equal(panels, panels.OrderBy(i => i.Position!.U));
        }
    }

    // A rear at a wall is out of reach once the cabinet hangs.
    [Theory]
    [InlineData(BaseStyle.Wall, DoorStyle.None, 9, Face.Front)]
    [InlineData(BaseStyle.Wall, null, 9, Face.Front)]
    [InlineData(BaseStyle.Wall, null, 4, Face.Rear)]
    [InlineData(BaseStyle.Wall, DoorStyle.Solid, 9, Face.Rear)]
    [InlineData(BaseStyle.Feet, DoorStyle.None, 9, Face.Rear)]
    public void Pdu_of_a_cabinet_at_a_wall_is_at_the_front_where_there_is_room(BaseStyle style, DoorStyle? rear, int heightU, Face face)
    {
        var request = Request("PAT-24", "PAT-24", "SW-24", "CBM-1") with
        {
            Cabinets =
            [
                new Cabinet
                {
                    HeightU = heightU, WidthMm = 600, DepthMm = 450, HeightMm = (heightU * RackGeometry.UnitMm) + 80, MassKg = 18,
                    Base = new CabinetBase { Style = style }, WallLoadKg = 60, RatedLoadKg = 60,
                    FrontDoor = new Door { Style = DoorStyle.Glazed, DepthMm = 25 }, RearDoor = rear is null ? null : new Door { Style = rear, DepthMm = 20 },
                    Roof = new Roof { Style = RoofStyle.Vented, OpenAreaCm2 = 200 },
                    Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 75, SpacingMm = 300 },
                },
            ],
            Site = new Site { Region = Region.Uk, AmbientMaxC = 25 },
        };
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.Equal(face, answer.Alternatives[0].Rack!.Pdus!.Single(p => p.Mounting == PduMounting.Horizontal).Position!.Face ?? Face.Front);
    }

    // Each cabinet alone keeps to the supplies, both together do not.
    [Fact]
    public void Supplies_that_feed_two_cabinets_are_judged_once()
    {
        Supply Of(string id, double ratedA) => new()
        {
            Id = id,
            VoltageV = 230,
            Phases = 1,
            RatedA = ratedA,
            Socket = ConnectorCode.Iec60309A63P1,
            Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = ratedA },
        };
        var request = Request([.. Enumerable.Repeat("DRV-6", 10)]);
        var conflict = Answer(request with { Supplies = [Of("A", 63)] }).Conflict;
        Assert.Contains(conflict!.Requirements, r => r.Pointers.Contains("/supplies"));
    }

    [Fact]
    public void Conflict_is_gone_without_any_one_of_its_requirements()
    {
        var request = Request("SRV-2", "KD-2", "GEN-2", "GEN-2", "SW-24") with
        {
            Cabinets = [new Cabinet { HeightU = 12, WidthMm = 600, DepthMm = 600, HeightMm = 640 }],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 25, RequiredIp = "IP20" },
            GrowthPercent = 10,
        };
        var conflict = Answer(request).Conflict!;
        Assert.NotEmpty(conflict.Requirements);
        Assert.True(conflict.Proven);
        Assert.NotEmpty(conflict.Reasons!);
        Assert.NotNull(conflict.Relax);
        var left = conflict.Requirements.SelectMany(r => r.Pointers).ToArray();
        foreach (var pointer in left)
        {
            Assert.NotEmpty(Answer(Only(request, left, pointer)).Alternatives);
        }

        Assert.Empty(Answer(Only(request, left, "")).Alternatives);
    }

    // Counted, not timed: past the budget only the step that was begun, of racks and of conflict. The dearest is the layout of a hundred items.
    [Fact]
    public void Dearest_requests_end_within_their_work() => Parallel.ForEach(DearProposals.All, dear =>
    {
        const double Work = 300;
        const double Step = 600;
        var budget = new SearchBudget(Work);
        var answer = new ProposalPlanner(Judge.Checker).Plan(dear.Value, ByNumber, Products, budget);
        Assert.True(budget.Spent < (1.7 * Work) + (2 * Step), $"{dear.Key}: {budget.Spent}");
        Assert.Equal(budget.IsCut, answer.Cautions.Count > 0);
        AssertSound(dear.Value, answer);
    });

    [Fact]
    public void Search_without_work_says_that_nothing_is_proven()
    {
        var request = Request("SRV-2", "KD-2", "GEN-2", "GEN-2", "SW-24") with
        {
            Cabinets = [new Cabinet { HeightU = 12, WidthMm = 600, DepthMm = 600, HeightMm = 640 }],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        };
        var planner = new ProposalPlanner(Judge.Checker);
        var conflict = planner.Plan(request, ByNumber, Products, new SearchBudget(0)).Conflict!;
        Assert.False(conflict.Proven);
        Assert.Null(conflict.Relax);
        Assert.True(planner.Plan(request, ByNumber, Products, new SearchBudget(SearchBudget.Thorough)).Conflict!.Proven);

        // One rack is made whatever it costs.
        var cut = planner.Plan(Request("SRV-2", "GEN-2"), ByNumber, Products, new SearchBudget(0));
        Assert.Single(cut.Alternatives);
        Assert.Equal([ProposalWordings.CutShort.Text], cut.Cautions);
        Assert.Empty(Answer(Request("SRV-2", "GEN-2")).Cautions);
    }

    [Fact]
    public void Ups_feeds_equipment_within_its_rating()
    {
        var answer = Answer(Request("UPS-30", "SRV-2", "SRV-2", "SW-24", "KVM-16"));
        var rack = answer.Alternatives[0].Rack!;
        Assert.Single(rack.Items.Single(i => i.Id == "ups-30-1").Ups!.Feeds!);
        Assert.DoesNotContain(answer.Alternatives[0].Report!.Findings, f => f.Rule is "power.ups-idle" or "power.ups-capacity");
    }

    [Fact]
    public void Given_pdus_stay()
    {
        var unit = new Pdu
        {
            Id = "PA", Supply = "A", RatedA = 16, Mounting = PduMounting.Vertical,
            Groups = [new OutletGroup { Id = "g1", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 6 }] }],
        };
        var request = Request("GEN-2", "AMP-2") with { Supplies = [new Supply { Id = "A", VoltageV = 230, RatedA = 16 }], Pdus = [unit] };
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.Equal(["PA"], answer.Alternatives[0].Rack!.Pdus!.Select(u => u.Id));
        Assert.DoesNotContain(answer.Alternatives[0].AddedLines, l => l.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal));
    }

    [Fact]
    public void Same_request_gives_the_same_answer()
    {
        var request = Request("SRV-2", "KD-2", "GEN-2", "GEN-2", "SW-24");
        Assert.Equal(TextOf(Answer(request)), TextOf(Answer(request)));
    }

    [Fact]
    public void Kept_item_stays_and_the_others_go_round_it()
    {
        var request = Request("SRV-2", "GEN-2", "GEN-2");
        request = request with { Items = [.. request.Items.Select((i, n) => n == 1 ? i with { Position = new Position { U = 7 } } : i)], Keep = ["gen-2-1"] };
        var answer = Answer(request);
        Assert.NotEmpty(answer.Alternatives);
        Assert.All(answer.Alternatives, a => Assert.Equal(7, a.Rack!.Items[1].Position!.U));
        AssertSound(request, answer);
    }

    [Fact]
    public void Too_high_equipment_is_the_conflict_that_no_item_can_leave()
    {
        var request = Request("DRV-6", "GEN-2", "DRV-6", "DRV-6", "DSP-8") with
        {
            Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-10" }],
            MaxCabinets = 1,
        };
        var conflict = Answer(request).Conflict!;
        Assert.Equal(["/items/0", "/items/2", "/items/3", "/items/4", "/cabinets", "/maxCabinets"], Assert.Single(conflict.Requirements).Pointers);
        Assert.Contains("26 U", conflict.Requirements[0].Message, StringComparison.Ordinal);
        Assert.Contains("28 U", conflict.Relax, StringComparison.Ordinal);
    }

    [Fact]
    public void Unknown_part_without_height_is_a_conflict()
    {
        var conflict = Answer(Request("SRV-2", "NOT-YET-LISTED")).Conflict!;
        Assert.Equal("/items/1/partNumber", Assert.Single(Assert.Single(conflict.Requirements).Pointers));
    }

    [Fact]
    public void Growth_takes_a_higher_cabinet()
    {
        var request = Request([.. Enumerable.Repeat("GEN-2", 8)]);
        Assert.Equal(24, Answer(request).Alternatives[0].Rack!.Cabinet!.HeightU);
        var grown = Answer(request with { GrowthPercent = 60 }).Alternatives[0];
        Assert.Equal(42, grown.Rack!.Cabinet!.HeightU);
        Assert.True(grown.Objective.Single(o => o.Name == ObjectiveName.Height).Proven);
    }

    // The request with the requirements of a conflict, but for one.
    private static ProposalRequest Only(ProposalRequest request, string[] left, string without)
    {
        bool Has(string pointer) => left.Contains(pointer) && pointer != without;
        return request with
        {
            Items = [.. request.Items.Where((_, i) => Has(FormattableString.Invariant($"/items/{i}")))],
            Cabinets = Has("/cabinets") ? request.Cabinets : null,
            GrowthPercent = Has("/growthPercent") ? request.GrowthPercent : null,
            MaxCabinets = Has("/maxCabinets") ? request.MaxCabinets : 5,
            Site = request.Site! with
            {
                RequiredIp = Has("/site/requiredIp") ? request.Site.RequiredIp : null,
                AmbientMaxC = Has("/site/ambientMaxC") ? request.Site.AmbientMaxC : 20,
            },
        };
    }
}
