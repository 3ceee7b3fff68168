using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>What a conflict is about, and that its reasons are those that decide.</summary>
public sealed class ProposalConflictTests
{
    private static Item Deep(int n, double depthMm) => new()
    {
        Id = $"deep-{n}",
        Category = ItemCategory.Server,
        HeightU = 1,
        MassKg = 14,
        Body = new Body { WidthMm = 430, HeightMm = 43, DepthMm = depthMm },
        Support = new Support { Style = SupportStyle.Slides, RatedKg = 45, ThicknessMm = 9, MinSpacingMm = 500, MaxSpacingMm = 900 },
        Power = new ItemPower { RatedW = 300, Plugs = [ConnectorCode.C14, ConnectorCode.C14], Redundant = true },
        Airflow = new Airflow { Direction = AirflowDirection.FrontToRear },
        MaxInletC = 35,
    };

    // Forty of them go into no one cabinet by their height alone, so that none was tried with all.
    [Fact]
    public void Conflict_over_several_cabinets_has_its_reasons()
    {
        Item[] items = [.. Enumerable.Range(0, 40).Select(n => Deep(n, n == 33 ? 900 : 560))];
        var conflict = Assert.IsType<ProposalConflict>(Answer(Request() with
        {
            Items = items, Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-8" }], Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        }).Conflict);
        Assert.Contains(conflict.Requirements, r => r.Pointers.SequenceEqual(["/items/33"]));
        var reason = Assert.Single(conflict.Reasons!);
        Assert.Contains("deep-33", reason.Message, StringComparison.Ordinal);

        // As the request counts its items, not as the part of it for one cabinet does.
        Assert.All(reason.Pointers, p => Assert.Contains(string.Join('/', p.Split('/').Take(3)), (string[])["/items/33", "/cabinets/0"]));
    }

    // The demo catalogue's highest cabinet has 47 U. More cabinets would not help.
    [Theory]
    [InlineData(47, null)]
    [InlineData(48, "column takes 48 U; the highest cabinet allowed has 47 U.")]
    [InlineData(60, "column takes 60 U; the highest cabinet allowed has 47 U.")]
    public void Item_higher_than_every_cabinet_is_named_with_both_heights(int heightU, string? message)
    {
        var column = new Item { Id = "column", HeightU = heightU, MassKg = 20, Category = ItemCategory.Other };
        var conflict = Answer(Request("SRV-2") with { Items = [.. Request("SRV-2").Items, column] }).Conflict;
        Assert.Equal(message, conflict?.Requirements.Single().Message);
        Assert.Equal(message is null ? null : $"Allow a cabinet of at least {heightU} U, or leave column out.", conflict?.Relax);
        Assert.True(message is null || conflict!.Proven);
    }

    // The demo catalogue has outlets of 230 V and, in North America, of 208 V.
    [Fact]
    public void Voltage_that_no_outlet_on_offer_has_is_among_the_reasons()
    {
        var server = Deep(1, 560);
        var request = Request() with { Items = [server with { Power = server.Power! with { VoltageV = 400 } }] };
        var reason = Assert.Single(Answer(request).Conflict!.Reasons!, r => r.MessageKey.StartsWith("unmet.outlets", StringComparison.Ordinal));
        Assert.Equal("deep-1 needs PDU outlets for C14 plugs; none is free, and no PDU on offer suits plug, voltage and region.", reason.Message);
        Assert.Equal(["/items/0"], reason.Pointers);
    }

    // A closed cabinet has one error, which is its own; the room is too warm for the batteries in every other.
    [Fact]
    public void Reason_is_of_the_requirements_in_conflict()
    {
        var request = Request("BAT-48", "BAT-48", "CBM-2", "CBM-2") with { Site = new Site { Region = Region.Eu, AmbientMaxC = 32, HumidityMaxPercent = 60 } };
        var conflict = Assert.IsType<ProposalConflict>(Answer(request).Conflict);
        Assert.Contains(conflict.Requirements, r => r.Pointers.SequenceEqual(["/site/ambientMaxC"]));
        Assert.Equal("Cool the room.", conflict.Relax);
        Assert.All(conflict.Reasons!, r => Assert.StartsWith("cooling.inlet-limit", r.MessageKey, StringComparison.Ordinal));
        Assert.NotEmpty(conflict.Reasons!);
    }

    // One with a size of its own is a cabinet, whatever the catalogue knows of it.
    [Fact]
    public void Cabinets_that_the_catalogue_does_not_have_are_named()
    {
        var request = Request("PAT-24", "SW-24") with
        {
            Cabinets =
            [
                new Cabinet { PartNumber = "QWL-CAB-42-8-8" }, new Cabinet { PartNumber = "QWL-CAB-99" },
                new Cabinet { PartNumber = "OTHER-1", HeightU = 9, WidthMm = 600, DepthMm = 600 },
            ],
        };
        var answer = Answer(request);
        Assert.NotEmpty(answer.Alternatives);
        Assert.Equal(
            "QWL-CAB-99 is no cabinet of the catalogue and has no size of its own: it was left out of the choice.", Assert.Single(answer.Cautions));
        Assert.Equal("caution.unknown-cabinets.one", Assert.Single(answer.CautionKeys).MessageKey);
        Assert.Equal(
            "QWL-CAB-98 and QWL-SRV-2 are no cabinets of the catalogue and have no sizes of their own: they were left out of the choice.",
            Assert.Single(Answer(request with
            {
                Cabinets = [new Cabinet { PartNumber = "QWL-CAB-98" }, new Cabinet { PartNumber = "QWL-SRV-2" }],
            }).Cautions));
    }
}
