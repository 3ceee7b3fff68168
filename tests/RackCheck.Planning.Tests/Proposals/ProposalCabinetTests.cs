using RackCheck.Model;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>Cabinets to choose from: where their uprights may be set, which are to be ordered, and which the site rules out.</summary>
public sealed class ProposalCabinetTests
{
    private static readonly Cabinet Usual = new() { PartNumber = "QWL-CAB-42-6-8" };

    // The catalogue sets them at 100 to 175 mm; 20 mm more do for the handles.
    [Fact]
    public void Uprights_of_a_new_cabinet_are_set_for_what_projects()
    {
        var request = Request("SW-24") with { Cabinets = [Usual] };
        request = request with
        {
            Items =
            [
                .. request.Items,
                new Item
                {
                    Id = "projecting", Category = ItemCategory.Instrument, HeightU = 3, MassKg = 8, FrontProjectionMm = 90,
                    Body = new Body { WidthMm = 430, HeightMm = 130, DepthMm = 200 }, Airflow = new Airflow { Direction = AirflowDirection.None },
                    Power = new ItemPower { RatedW = 60, Plugs = [ConnectorCode.C14] }, MaxInletC = 40,
                },
            ],
        };
        var answer = Answer(request);
        Assert.Null(answer.Conflict);
        AssertSound(request, answer);
        var (made, rack) = (ByNumber[Usual.PartNumber!].Cabinet!.Uprights!, answer.Alternatives[0]);
        var set = rack.Rack!.Cabinet!.Uprights!.FrontSetbackMm;
        Assert.True(set > made.FrontSetbackMm);
        var assumption = Assert.Single(rack.Assumptions, a => a.Pointers.Contains("/cabinet/uprights/frontSetbackMm"));
        Assert.Equal("assumption.set-uprights", assumption.BasisKey);
        Assert.Equal(made.FrontSetbackMm!.Value, assumption.BasisData["value"]);

        // What is mounted already is not moved.
        var kept = request with
        {
            Items = [.. request.Items.Select((i, n) => n == 0 ? i with { Position = new Position { U = 30 } } : i)], Keep = [request.Items[0].Id],
        };
        Assert.All(
            Answer(kept).Alternatives.SelectMany(RacksOf).Where(r => r.Items.Any(i => i.Id == kept.Keep[0])),
            r => Assert.Equal(made.FrontSetbackMm, r.Cabinet!.Uprights!.FrontSetbackMm));
    }

    [Fact]
    public void Cabinet_to_choose_is_a_line_with_its_price_unless_it_is_there()
    {
        var request = Request("SRV-2", "SW-24");
        var choice = request with { Cabinets = [Usual] };
        var line = Assert.Single(Answer(choice).Alternatives[0].AddedLines, l => l.PartNumber == Usual.PartNumber);
        Assert.Equal((1, ByNumber[Usual.PartNumber!].Price), (line.Quantity, line.Price));

        // The same as a cabinet described by the customer, who has it.
        var own = ByNumber[Usual.PartNumber!].Cabinet!;
        var described = request with { Cabinets = [Answer(choice).Alternatives[0].Rack!.Cabinet! with { PartNumber = null }] };
        Assert.NotNull(own.HeightU);
        Assert.DoesNotContain(Answer(described).Alternatives[0].AddedLines, l => l.Name.StartsWith("Cabinet", StringComparison.Ordinal));

        var kept = choice with { Items = [request.Items[0] with { Position = new Position { U = 10 } }, request.Items[1]], Keep = [request.Items[0].Id] };
        Assert.DoesNotContain(Answer(kept).Alternatives[0].AddedLines, l => l.PartNumber == Usual.PartNumber);
    }

    // The cheapest of the cabinets to choose from, with its price in the sum.
    [Fact]
    public void Lowest_cost_counts_the_cabinets_to_choose_from()
    {
        var cheap = Answer(Request("SRV-2", "SW-24") with
        {
            Prefer = CabinetPreference.LowestCost, Cabinets = [new Cabinet { PartNumber = "QWL-CAB-47-8-10" }, new Cabinet { PartNumber = "QWL-CAB-42-8-8" }],
        }).Alternatives[0];
        Assert.Equal("QWL-CAB-42-8-8", cheap.Rack!.Cabinet!.PartNumber);
        Assert.Contains(cheap.AddedLines, l => l.PartNumber == "QWL-CAB-42-8-8");
        Assert.Equal(cheap.AddedLines.Sum(l => l.Quantity * l.Price!.Value), cheap.Objective.Single(o => o.Name == ObjectiveName.Cost).Value, 0.001);
    }

    // Cabinets of 800 mm do not pass, and there were more of them than a quick search tries.
    [Fact]
    public void Cabinets_that_do_not_pass_the_door_use_up_no_tries()
    {
        var request = Request([.. Enumerable.Repeat("SRV-2", 6), "SW-24", "PAT-24"]) with
        {
            Site = new Site
            {
                Region = Region.Eu,
                AmbientMaxC = 28,
                HumidityMaxPercent = 60,
                Delivery = new Delivery
                {
                    Openings = [new Opening { Name = "cellar door", WidthMm = 780, HeightMm = 1900 }], MayTilt = false, Loaded = false,
                },
            },
        };
        var answer = Answer(request);
        Assert.NotEmpty(answer.Alternatives);
        AssertSound(request, answer);
    }

    [Fact]
    public void Height_to_allow_is_that_of_each_cabinet()
    {
        var answer = Answer(Request([.. Enumerable.Repeat("PC-410", 25)]) with { Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-6-8" }] });
        Assert.Equal("relax.too-high-for-several", answer.Conflict!.RelaxKey);
        Assert.Equal(25, answer.Conflict.RelaxData!["neededU"]);
    }

    // The cabinet with the highest rating falls short by least; another with 500 kg was named.
    [Fact]
    public void Reason_is_that_of_the_cabinet_nearest_to_taking_the_equipment()
    {
        var request = Request("PAT-24") with
        {
            Items = [new Item { Id = "safe", HeightU = 6, MassKg = 1500, Body = new Body { WidthMm = 430, HeightMm = 263, DepthMm = 500 } }],
        };
        var most = Products.Where(p => p.Kind == ProductKind.Cabinet).Max(p => p.Cabinet!.RatedLoadKg);
        var reason = Assert.Single(Answer(request).Conflict!.Reasons!, r => r.MessageKey.StartsWith("load.rack-rating", StringComparison.Ordinal));
        Assert.Equal(most!.Value, reason.MessageData["limitKg"]);
    }

    [Fact]
    public void No_cabinet_above_the_highest_is_asked_for()
    {
        var answer = Answer(Request([.. Enumerable.Repeat("PC-410", 16)]) with { MaxCabinets = 1 });
        Assert.Equal("relax.too-high-for-any", answer.Conflict!.RelaxKey);
    }

    // In both the channels are filled beyond 40 %. Those of 600 mm have 7740 mm2 for cables of 13,572 mm2.
    [Fact]
    public void Wider_cabinet_is_proposed_where_the_cables_do_not_go_into_the_channels()
    {
        var request = Request([.. Enumerable.Repeat("PAT-24", 10), .. Enumerable.Repeat("SW-48", 5), .. Enumerable.Repeat("CBM-1", 10)]);
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.NotEmpty(answer.Alternatives);
        Assert.All(answer.Alternatives, a => Assert.EndsWith("-8-6", a.Rack!.Cabinet!.PartNumber, StringComparison.Ordinal));
    }
}
