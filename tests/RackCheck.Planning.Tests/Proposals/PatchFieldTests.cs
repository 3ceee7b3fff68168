using RackCheck.Model;
using RackCheck.Planning.Proposals;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>Patch panels, cable managers and switches of a proposal are mounted as the trade does it: next to each other, in alternation.</summary>
public sealed class PatchFieldTests
{
    private const string Basis = "assumption.patch-field";

    // As many managers as switches: between each switch and its panels. Two a switch, or none: on both sides of it.
    [Theory]
    [InlineData("SW-48 SW-48 PAT-24 PAT-24 PAT-24 PAT-24 CBM-1 CBM-1", "SW CBM PAT PAT SW CBM PAT PAT")]
    [InlineData("SW-48 SW-48 PAT-24 PAT-24 PAT-24 PAT-24 CBM-1 CBM-1 CBM-1 CBM-1", "PAT CBM SW CBM PAT PAT CBM SW CBM PAT")]
    [InlineData("SW-48 SW-48 PAT-24 PAT-24 PAT-24 PAT-24", "PAT SW PAT PAT SW PAT")]
    [InlineData("SW-24 PAT-24", "SW PAT")]
    [InlineData("SW-48 SW-48 SW-48 PAT-24 PAT-24 CBM-1 CBM-1", "SW CBM PAT SW CBM PAT SW")]
    [InlineData("PAT-24 PAT-24 PAT-24 PAT-24 CBM-1 CBM-1", "PAT CBM PAT PAT CBM PAT")]
    [InlineData("SW-48 SW-48 CBM-1 CBM-1", "SW CBM SW CBM")]
    [InlineData("SW-48 SW-48 PAT-24 PAT-24 CBM-1 CBM-1 PAT-F12", "SW CBM PAT SW CBM PAT PAT")]
    public void Switches_managers_and_panels_alternate(string parts, string fromBelow)
    {
        var request = Request([.. parts.Split(' '), "SRV-2", "SRV-2", "SYN-1", "UPS-15"]);
        var answer = Answer(request);
        AssertSound(request, answer);
        foreach (var alternative in answer.Alternatives)
        {
            var field = FieldOf(alternative.Rack!);
            Assert.Equal(fromBelow, string.Join(' ', field.Select(i => i.PartNumber!.Split('-')[1])));
            Assert.Equal(Enumerable.Range(field[0].Position!.U, field.Length), field.Select(i => i.Position!.U));

            // The heavy equipment is below it, the UPS at the bottom.
            Assert.Equal(1, alternative.Rack!.Items.Single(i => i.PartNumber == "QWL-UPS-15").Position!.U);
            Assert.All(alternative.Rack.Items.Where(i => i.PartNumber == "QWL-SRV-2"), i => Assert.True(i.Position!.U < field[0].Position!.U));
        }
    }

    // Panels of a kind are shared in their order, and the proof is of the layouts with the field.
    [Fact]
    public void Layout_with_a_patch_field_is_proven_and_says_so()
    {
        var request = Request([.. Enumerable.Repeat("PAT-24", 8), .. Enumerable.Repeat("SW-48", 4), .. Enumerable.Repeat("CBM-1", 4), "UPS-15"]);
        var first = Answer(request).Alternatives[0];
        var field = FieldOf(first.Rack!);
        Assert.Equal(
            ["sw-48-1", "cbm-1-1", "pat-24-1", "pat-24-2", "sw-48-2", "cbm-1-2", "pat-24-3", "pat-24-4"], field.Take(8).Select(i => i.Id));
        Assert.True(first.Objective.Single(o => o.Name == ObjectiveName.CentreOfGravity).Proven);
        var stated = Assert.Single(first.Assumptions, a => a.BasisKey == Basis);
        Assert.Equal(Enumerable.Range(0, 16).Select(i => $"/items/{i}/position"), stated.Pointers);
        Assert.Equal($"U{field[0].Position!.U} to U{field[^1].Position!.U}", stated.Value);

        var turned = Answer(request with { UnitNumbering = UnitNumbering.TopDown }).Alternatives[0];
        Assert.Equal(
            $"U{FieldOf(turned.Rack!)[0].Position!.U} to U{FieldOf(turned.Rack!)[^1].Position!.U}",
            Assert.Single(turned.Assumptions, a => a.BasisKey == Basis).Value);
    }

    // A console in the middle leaves no room for all of it on one side: each switch still has its panels beside it.
    [Fact]
    public void Field_that_does_not_fit_as_one_is_divided_by_switches()
    {
        var request = Request([.. Enumerable.Repeat("PAT-24", 8), .. Enumerable.Repeat("SW-48", 4), .. Enumerable.Repeat("CBM-1", 4), "KD-2"]) with
        {
            Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-8" }], MaxCabinets = 1,
        };
        var rack = Answer(request).Alternatives[0].Rack!;
        var bottoms = rack.Items.Where(i => i.Position is not null).ToDictionary(i => i.Id, i => i.Position!.U);
        Assert.All(Enumerable.Range(1, 4), n => Assert.Equal(
            Enumerable.Range(bottoms[$"sw-48-{n}"], 4),
            [bottoms[$"sw-48-{n}"], bottoms[$"cbm-1-{n}"], bottoms[$"pat-24-{(2 * n) - 1}"], bottoms[$"pat-24-{2 * n}"]]));
    }

    [Fact]
    public void Kept_equipment_stays_and_lone_parts_make_no_field()
    {
        var kept = Request("SW-24", "PAT-24", "SYN-1") is var request
            ? request with { Items = [request.Items[0] with { Position = new Position { U = 9 } }, .. request.Items.Skip(1)], Keep = ["sw-24-1"] }
            : null!;
        var answer = Answer(kept);
        AssertSound(kept, answer);
        Assert.Equal(9, answer.Alternatives[0].Rack!.Items[0].Position!.U);
        Assert.DoesNotContain(answer.Alternatives[0].Assumptions, a => a.BasisKey == Basis);
        Assert.DoesNotContain(Answer(Request("PAT-24", "PAT-24", "SYN-1")).Alternatives[0].Assumptions, a => a.BasisKey == Basis);
    }

    // Without a panel between them the switches would be on each other, one blowing at the intake of the other.
    [Fact]
    public void Field_gives_way_to_opposite_airflows()
    {
        Item Switch(string id, AirflowDirection direction) => new()
        {
            Id = id, Category = ItemCategory.Network, HeightU = 1, MassKg = 6, Body = new Body { WidthMm = 430, HeightMm = 43, DepthMm = 400 },
            Power = new ItemPower { RatedW = 150, Plugs = [ConnectorCode.C14] }, Airflow = new Airflow { Direction = direction, FlowM3h = 60 }, MaxInletC = 40,
        };
        var request = Request("PAT-24") with
        {
            Items =
            [
                Switch("front", AirflowDirection.FrontToRear), Switch("rear-1", AirflowDirection.RearToFront), Switch("rear-2", AirflowDirection.RearToFront),
                .. Request("PAT-24").Items,
            ],
        };
        var answer = Answer(request);
        Assert.NotEmpty(answer.Alternatives);
        Assert.All(answer.Alternatives, a => Assert.DoesNotContain(a.Report!.Findings, f => f.Rule == "cooling.airflow-conflict"));
    }

    private static Item[] FieldOf(RackDescription rack) =>
    [
        .. rack.Items.Where(i => i.PartNumber?.Split('-')[1] is "SW" or "PAT" or "CBM" && i.Position is not null).OrderBy(i => i.Position!.U),
    ];
}
