using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>Where no rack passes the delivery route or stands on the floor, the conflict names that.</summary>
public sealed class DeliveryConflictTests
{
    private static readonly Delivery Route = new()
    {
        Openings = [new Opening { WidthMm = 1600, HeightMm = 2600 }, new Opening { Name = "hatch", WidthMm = 900, HeightMm = 1000 }],
    };

    [Fact]
    public void Opening_that_no_cabinet_passes_is_in_the_conflict() =>
        AssertNamed(new Site { Region = Region.Eu, AmbientMaxC = 27, Delivery = Route }, "/site/delivery/openings/1", "Deliver by another route.");

    [Fact]
    public void Corner_that_no_cabinet_turns_is_in_the_conflict() => AssertNamed(
        new Site { Region = Region.Eu, Delivery = new Delivery { Corridors = [new Corridor { WidthMm = 700, TurnIntoMm = 600 }] } },
        "/site/delivery/corridors/0",
        "Deliver by another route.");

    [Fact]
    public void Lift_that_no_cabinet_enters_is_in_the_conflict() => AssertNamed(
        new Site { Region = Region.Eu, Delivery = new Delivery { Lift = new Lift { WidthMm = 500, DepthMm = 700, HeightMm = 3000 } } },
        "/site/delivery/lift",
        "Deliver by another route.");

    [Fact]
    public void Floor_that_carries_no_cabinet_is_in_the_conflict() => AssertNamed(
        new Site { Region = Region.Eu, Floor = new Floor { DistributedKnM2 = 0.5 } }, "/site/floor", "Place the rack on a floor that carries more.");

    private static void AssertNamed(Site site, string pointer, string relax)
    {
        var conflict = Assert.IsType<ProposalConflict>(Answer(Request("SRV-2", "SRV-2") with { Site = site }).Conflict);
        Assert.Contains(conflict.Requirements, r => r.Pointers.SequenceEqual([pointer]));
        Assert.DoesNotContain(conflict.Requirements, r => r.Pointers.Any(p => p.StartsWith("/site/ambient", StringComparison.Ordinal)));
        Assert.Equal(relax, conflict.Relax);
    }
}
