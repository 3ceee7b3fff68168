using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Proposals;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Parts;

/// <summary>What a proposal or a basket orders of nuts and screws is what the parts list of its rack needs.</summary>
public sealed class OrderedFixingsTests
{
    // Slides and runners of the customer are fastened to the same holes as those of the order.
    [Theory]
    [InlineData(SupportStyle.Runners, 60d)]
    [InlineData(SupportStyle.Slides, 60d)]
    [InlineData(SupportStyle.Runners, null)]
    [InlineData(SupportStyle.Panel, null)]
    public void Proposal_orders_what_its_parts_list_needs(SupportStyle style, double? ratedKg)
    {
        var request = new ProposalRequest
        {
            Items =
            [
                .. Enumerable.Range(1, 3).Select(i => new Item
                {
                    Id = $"store-{i}", Category = ItemCategory.Server, HeightU = 2, MassKg = style == SupportStyle.Panel ? 4 : 20,
                    Body = new Body { WidthMm = 440, HeightMm = 86, DepthMm = style == SupportStyle.Panel ? 250 : 700 },
                    Support = new Support { Style = style, RatedKg = ratedKg },
                }),
                new Item { Id = "sw", PartNumber = "QWL-SW-24" },
            ],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        };
        var answer = new ProposalPlanner(Judge.Checker).Plan(request, DemoProducts.ByPartNumber, DemoProducts.All);
        Assert.NotEmpty(answer.Alternatives);
        foreach (var alternative in answer.Alternatives)
        {
            var needed = Listed.Offered(alternative.Rack!).Of(PartKind.Fixing).Sum(l => l.Quantity);
            var lines = alternative.AddedLines.Where(l => DemoProducts.ByPartNumber[l.PartNumber].Kind == ProductKind.Fixings).ToArray();
            Assert.All(lines, l => Assert.Equal(needed, l.WhyData["needed"].Number));
            Assert.True(lines.Sum(l => l.Quantity * DemoProducts.ByPartNumber[l.PartNumber].Pieces!.Value) >= needed);
        }
    }

    [Fact]
    public void Completed_basket_has_what_its_parts_list_needs()
    {
        var request = new BasketRequest
        {
            Lines =
            [
                .. ((string[])["CAB-42-8-10", "SRV-2", "SRV-110", "DRV-4", "SW-24", "KD-2"])
                    .Select(part => new BasketLine { PartNumber = "QWL-" + part, Quantity = part == "SRV-2" ? 3 : 1 }),
            ],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        };
        var planner = new BasketPlanner(Judge.Checker);
        var completed = planner.Plan(request, DemoProducts.ByPartNumber, DemoProducts.All).Report!.CompletedBasket;
        var again = planner.Plan(completed, DemoProducts.ByPartNumber, DemoProducts.All).Report!;
        Assert.Empty(again.MissingLines);
        var needed = Listed.Offered(again.Rack!).Of(PartKind.Fixing).Sum(l => l.Quantity);
        var ordered = completed.Lines.Where(l => DemoProducts.ByPartNumber[l.PartNumber!].Kind == ProductKind.Fixings)
            .Sum(l => l.Quantity * DemoProducts.ByPartNumber[l.PartNumber!].Pieces!.Value);
        Assert.True(ordered >= needed, $"{ordered} of {needed}");
    }
}
