using System.Text.Json;
using CsCheck;
using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests.Parts;

public sealed class PartsPropertyTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Every_item_has_its_fixings_or_the_reason_and_its_label() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var list = Listed.Bare(rack);
                var fixings = list.Of(PartKind.Fixing);
                foreach (var item in rack.Items)
                {
                    var line = Assert.Single(fixings, l => l.Items!.Contains(item.Id));
                    Assert.Equal(item.HeightU > 0, line.Quantity > 0);
                    Assert.Single(list.Of(PartKind.Label), l => l.Description == "Label of an item" && l.Items!.SequenceEqual([item.Id]));
                }

                var horizontal = (rack.Pdus ?? []).Count(u => u.Mounting == PduMounting.Horizontal);
                var expected = rack.Items.Where(i => i.HeightU > 0).Sum(i => i.Support?.Style is SupportStyle.Slides or SupportStyle.Runners ? 8 : 4);
                Assert.Equal(expected + (4 * horizontal), fixings.Sum(l => l.Quantity));
            },
            iter: Samples.Of(800),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Every_cord_is_listed_and_labelled_at_both_ends() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var list = Listed.Offered(rack);
                var cords = new RackSurvey(rack).Power.Cords;
                Assert.Equal(cords.Count(c => c.Code != ConnectorCode.Hardwired), list.Of(PartKind.Cord).Sum(l => l.Quantity));
                Assert.Equal(2 * cords.Length, list.Of(PartKind.Label).Where(l => l.Description == "Label of a cord").Sum(l => l.Quantity));

                // An outlet has one label, with its cord or without.
                var outlets = (rack.Pdus ?? []).Sum(u => u.Groups!.Sum(g => g.Outlets.Sum(o => o.Count)));
                var labels = list.Of(PartKind.Label).Where(l => l.Description == "Label of an outlet").Select(l => l.Data.Text!.Split(" > ")[0]).ToArray();
                Assert.Equal(Math.Min(outlets, LabelLines.MostFreeOutlets + labels.Length), labels.Length);
                Assert.All(list.Lines, l => Assert.True(l.PartNumber is null == l.OrderQuantity is null && l.Why.Length > 0));
            },
            iter: Samples.Of(800),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void The_same_rack_gives_the_same_bytes() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                Assert.Equal(PartsCsv.Of(Listed.Offered(rack)), PartsCsv.Of(Listed.Offered(rack)));
                Assert.Equal(
                    JsonSerializer.SerializeToUtf8Bytes(Listed.Offered(rack), ContractJson.Default.PartsList),
                    JsonSerializer.SerializeToUtf8Bytes(Listed.Offered(rack), ContractJson.Default.PartsList));
            },
            iter: Samples.Of(300),
            print: Wording.Of);
}
