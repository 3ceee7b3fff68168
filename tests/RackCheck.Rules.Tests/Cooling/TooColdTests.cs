using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class TooColdTests : RuleTests<TooCold>
{
    private static RackDescription Rack(double? coldest, double? least = 5, double? limit = 40) =>
        Cool(Aired, Aired).At(s => s with { AmbientMinC = coldest }).With(Warm("wave-pc", 1, 300, maxInlet: limit) with { MinInletC = least });

    [Fact]
    public void Room_below_the_minimum_of_an_item_is_a_warning()
    {
        var finding = Only(Rack(4));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/site/ambientMinC", "/items/0/minInletC"], finding.Pointers);
        Numbers(finding, 4, 5, "C");
        Passes(Rack(5));
    }

    [Theory]
    [InlineData(32.0, 15)] // ASHRAE TC 9.9: A1 from 15 C, A2 from 10 C, A3 and A4 from 5 C
    [InlineData(35.0, 10)]
    [InlineData(40.0, 5)]
    [InlineData(45.0, 5)]
    [InlineData(null, 5)]
    public void Without_a_minimum_the_class_gives_advice(double? limit, double least)
    {
        var finding = Only(Rack(least - 1, null, limit));
        Assert.Equal(Severity.Advice, finding.Severity);
        Numbers(finding, least - 1, least, "C");
        Passes(Rack(least, null, limit));
    }

    [Fact]
    public void Unheated_items_and_heated_rooms_pass()
    {
        Passes(Rack(null));
        Passes(Cool(Aired, Aired).At(s => s with { AmbientMinC = -20 }).With(Unit("panel", 1).At(1) with { Category = ItemCategory.BlankingPanel }));
    }

    [Fact]
    public void A_warmer_room_is_the_remedy()
    {
        var rack = Rack(-5.5, -2.5);
        Assert.Equal(-2, Remedied(rack, Only(rack)).Site!.AmbientMinC);
    }
}
