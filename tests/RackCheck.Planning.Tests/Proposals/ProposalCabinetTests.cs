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
        Assert.All(Answer(kept).Alternatives, a => Assert.Equal(made.FrontSetbackMm, a.Rack!.Cabinet!.Uprights!.FrontSetbackMm));
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
            Prefer = CabinetPreference.LowestCost, Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-8" }, Usual],
        }).Alternatives[0];
        Assert.Equal(Usual.PartNumber, cheap.Rack!.Cabinet!.PartNumber);
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
}
