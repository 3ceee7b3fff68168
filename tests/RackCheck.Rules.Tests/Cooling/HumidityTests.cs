using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class HumidityTests : RuleTests<Humidity>
{
    private static RackDescription Rack(double? humidity, double ambient = 24, double? limit = 35) =>
        Cool(Aired, Aired, ambient, humidity: humidity).With(Warm("wave-pc", 1, 300, maxInlet: limit));

    [Fact]
    public void Relative_humidity_above_the_class_is_a_warning()
    {
        var finding = Only(Rack(85)); // ASHRAE TC 9.9: A2 up to 80 %
        Assert.Equal(Severity.Warning, finding.Severity);
        Numbers(finding, 85, 80, "%");
        Assert.Equal(["/site/humidityMaxPercent", "/items/0/maxInletC"], finding.Pointers);
        Passes(Rack(80));
    }

    [Fact]
    public void Dew_point_alone_is_advice()
    {
        // WMO-No. 8: 30 C and 60 % have a dew point of 21.39 C; ASHRAE TC 9.9: A2 up to 21 C.
        var finding = Only(Rack(60, 30));
        Assert.Equal(Severity.Advice, finding.Severity);
        Numbers(finding, 21.39, 21, "C");
        Passes(Rack(58, 30));
    }

    [Theory]
    [InlineData(32, 80, 81)] // ASHRAE TC 9.9: A1 80 %, A3 85 %, A4 90 %
    [InlineData(40, 85, 86)]
    [InlineData(45, 90, 91)]
    [InlineData(55, 90, 91)]
    public void The_class_follows_the_inlet_limit(double limit, double passes, double fails)
    {
        Passes(Rack(passes, 18, limit));
        Assert.Equal(Severity.Warning, Only(Rack(fails, 18, limit)).Severity);
    }

    [Fact]
    public void The_strictest_item_is_named() =>
        Assert.Equal("a", Only(Rack(60, 30, 45).With(Warm("b", 9, 1, maxInlet: 32), Warm("a", 13, 1, maxInlet: 32))).MessageData["item"].Text);

    [Fact]
    public void Inlet_limits_are_asked_for_only_where_they_matter()
    {
        ReportsMissing(Rack(85, limit: null), "/items/0/maxInletC");
        Passes(Rack(50, limit: null));
        Passes(Rack(null));
        Passes(Rack(95).Cooler(500));
    }

    [Fact]
    public void A_drier_room_is_the_remedy()
    {
        var rack = Rack(95, 30);
        Assert.Equal(58, Remedied(rack, Only(rack)).Site!.HumidityMaxPercent); // 21 C of dew point at 30 C: 58.6 %
    }
}
