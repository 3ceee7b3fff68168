using RackCheck.Model;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class TransportRatingTests : RuleTests<TransportRating>
{
    // Ratings on data sheets: static 400 kg, in transport less.
    private static RackDescription Delivered(double? equipment, double? rating, bool? loaded = true, double? rated = 400) =>
        OnRoute().Cabinet(c => c with { TransportLoadKg = rating, RatedLoadKg = rated }).Route(d => d with { Loaded = loaded })
            .With(Unit("wave-pc", 4).At(1).On(SupportStyle.Runners) with { MassKg = equipment });

    [Theory]
    [InlineData(200, 200, true, null)]
    [InlineData(200.1, 200, true, Severity.Error)]
    [InlineData(200.1, 200, null, Severity.Warning)]
    [InlineData(350, 200, false, null)]
    public void Loaded_rack_is_held_against_its_rating(double equipment, double rating, bool? loaded, Severity? severity) =>
        Assert.Equal(severity, Findings(Delivered(equipment, rating, loaded)).SingleOrDefault()?.Severity);

    [Theory]
    [InlineData(BaseStyle.Castors)]
    [InlineData(BaseStyle.Plinth)]
    [InlineData(BaseStyle.Bolted)]
    public void The_base_does_not_matter(BaseStyle style) =>
        Only(Delivered(250, 200).Cabinet(c => c with { Base = new CabinetBase { Style = style } }));

    [Fact]
    public void Cabinet_is_delivered_empty_or_stronger_or_lighter()
    {
        var rack = Delivered(250, 200);
        var finding = Only(rack);
        Assert.True(finding.Safety);
        Numbers(finding, 250, 200, "kg");
        Assert.Equal(["/cabinet/transportLoadKg", "/site/delivery/loaded"], finding.Pointers);
        Assert.False(Remedied(rack, finding).Site!.Delivery!.Loaded);
        Assert.Equal(400, Remedied(rack, finding, 1).Cabinet!.TransportLoadKg);
        Assert.Empty(Remedied(rack, finding, 2).Items);
    }

    [Fact]
    public void Rating_is_asked_for_over_half_of_the_static_rating()
    {
        Passes(Delivered(200, null));
        ReportsMissing(Delivered(200.1, null), "/cabinet/transportLoadKg");
        ReportsMissing(Delivered(200, null).Limit(Id, "askPercent", 40), "/cabinet/transportLoadKg");
        ReportsMissing(Delivered(5, null, rated: null), "/cabinet/transportLoadKg");
        Passes(Delivered(390, null, loaded: false));
        Passes(Delivered(390, null) with { Site = null });
    }

    [Fact]
    public void Rating_given_counts_without_a_route() => Assert.Equal(Severity.Warning, Only(Delivered(250, 200) with { Site = null }).Severity);

    [Fact]
    public void Masses_missing_are_not_assessed()
    {
        ReportsMissing(Delivered(null, 200), "/items/0/massKg");
        Passes(Delivered(null, 200) with { Items = [] });
    }
}
