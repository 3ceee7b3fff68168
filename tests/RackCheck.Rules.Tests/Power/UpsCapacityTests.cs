using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Feeds;

namespace RackCheck.Rules.Tests.Power;

public sealed class UpsCapacityTests : RuleTests<UpsCapacity>
{
    private static Item Ups(double? watts = 1000, double? va = 1000, double? minutes = 10, double? at = 1000, params string[] feeds) =>
        (Load("bay-ups", null) with { HeightU = 2, Category = ItemCategory.Ups, HeatW = 0,
            Ups = new Ups { RatedW = watts, RatedVa = va, RunMinutes = minutes, RunLoadW = at, Feeds = feeds } }).Placed(1);

    private static RackDescription Rack(Item ups, params Item[] loads)
    {
        var rack = Fed(Mains(ratedA: 32), Board("strip", 32), Board("behind", 32)).With([ups, .. loads]);
        return loads.Aggregate(rack, (r, load) => r.Plugged(load.Id, "behind", "g1"));
    }

    private static RackDescription Asks(RackDescription rack, double minutes) => rack with { Site = new Site { UpsMinutes = minutes } };

    [Fact]
    public void At_both_ratings_it_passes() => Passes(Rack(Ups(650, 1000, feeds: "behind"), Load("wave-pc", 650, pf: 0.65)));

    [Fact]
    public void Load_above_watt_rating_is_error()
    {
        var rack = Rack(Ups(2700, 3000, feeds: "behind"), Load("wave-pc", 2800)); // bookkeeping: 103.7 %

        // Outlets behind 5000 VA, 21.7 A, have a breaker: without one the larger UPS would be a fault.
        rack = rack with { Pdus = [.. rack.Pdus!.Select(u => u with { Groups = [.. u.Groups!.Select(g => g with { BreakerA = 16 })] })] };
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0/ups/ratedW"], finding.Pointers);
        Numbers(finding, 2800, 2700, "W");
        Assert.Equal(103.704, finding.UtilisationPercent);
        var larger = Remedied(rack, finding).Items[0].Ups!;
        Assert.Equal((5000.0, 4500.0), (larger.RatedVa, larger.RatedW));
    }

    [Fact]
    public void Larger_ups_whose_charger_overloads_the_supply_is_not_offered()
    {
        // 3300 W draw 14.3 A or more of 16 A; the charger of 4500 W is taken as 450 W, about 2 A more.
        var rack = Fed(Mains(ratedA: 16), Board("strip", 16), Board("behind", 16)).With(Ups(2700, 3000, feeds: "behind"), Load("wave-pc", 3300))
            .Plugged("wave-pc", "behind", "g1");
        Assert.All(Replacing(rack), n => Assert.Equal(0, n));
        var ups = rack.Items[0];
        Assert.Contains(1, Replacing(rack with { Items = [ups with { Ups = ups.Ups! with { ChargeW = 100 } }, .. rack.Items.Skip(1)] }));

        static IEnumerable<int> Replacing(RackDescription rack) => Judge.Checker.Check(rack).Findings.Where(f => f.Rule == Id && f.Severity == Severity.Error)
            .Select(f => f.Remedies.Count(r => r.TitleKey == "remedy.ups-rating"));
    }

    [Fact]
    public void Load_above_va_rating_has_own_finding()
    {
        var finding = Only(Rack(Ups(1000, 1000, feeds: "behind"), Load("wave-pc", 900, pf: 0.75)));
        Assert.Equal(["/items/0/ups/ratedVa"], finding.Pointers);
        Numbers(finding, 1200, 1000, "VA");
        Assert.Equal(2, Findings(Rack(Ups(1000, 1000, feeds: "behind"), Load("wave-pc", 1200))).Select(f => f.Fingerprint).Distinct().Count());
    }

    [Fact]
    public void Supply_lost_puts_dual_fed_load_on_ups()
    {
        var rack = EmptyRack(widthMm: 800).Fed([Mains(), Mains("B")], Board("strip"), Board("behind"), Board("right", supply: "B"))
            .With(Ups(feeds: "behind"), Load("wave-pc", 1500, 2, true)).Plugged("bay-ups", "strip", "g1").Plugged("wave-pc", "behind", "g1")
                .Plugged("wave-pc", "right", "g1", 1);
        Assert.Equal([1500.0, 1500], Findings(rack).Select(f => f.Actual!.Value));
    }

    [Theory]
    [InlineData(10, 1000, 1000, 10, 0)]
    [InlineData(10, 1000, 500, 22.19, 0)] // 10 x 2^1.15 = 22.191, by hand
    [InlineData(10, 1000, 500, 22.2, 22.191)]
    [InlineData(10, 500, 1000, 5, 4.506)]
    public void Run_time_follows_peukert(double minutes, double at, double load, double asked, double time)
    {
        var findings = Findings(Asks(Rack(Ups(minutes: minutes, at: at, feeds: "behind"), Load("wave-pc", load)), asked));
        Assert.Equal(time > 0 ? 1 : 0, findings.Count);
        Assert.All(findings, f =>
        {
            Assert.Equal(["/items/0/ups/runMinutes", "/items/0/ups/runLoadW", "/site/upsMinutes"], f.Pointers);
            Numbers(f, time, asked, "min");
        });
    }

    [Fact]
    public void The_arithmetic_is_shown() =>
        Assert.Equal("10 x (500 / 1000)^1.15 = 4.506 < 5", Only(Asks(Rack(Ups(at: 500, feeds: "behind"), Load("wave-pc", 1000)), 5)).Calculation);

    [Fact]
    public void Mains_failure_puts_dual_fed_load_on_ups_cords()
    {
        var one = EmptyRack(widthMm: 800).Fed([Mains(), Mains("B")], Board("strip"), Board("behind"), Board("right", supply: "B"), Board("far", supply: "B"))
            .With(Ups(2000, 2000, 10, 1000, "behind"), Load("wave-pc", 1000, 2, true))
            .Plugged("bay-ups", "strip", "g1").Plugged("wave-pc", "behind", "g1").Plugged("wave-pc", "far", "g1", 1);
        Passes(Asks(one, 10));
        Numbers(Only(Asks(one, 11)), 10, 11, "min");

        var other = (Ups(2000, 2000, 10, 1000, "far") with { Id = "far-ups" }).Placed(4);
        Passes(Asks(one.With(other).Plugged("far-ups", "right", "g1"), 22)); // 500 W each: 22.19 min
    }

    [Fact]
    public void Run_time_remedies_are_battery_less_load_or_less_time()
    {
        var rack = Asks(Rack(Ups(2000, 2000, 10, 1000, "behind"), Load("wave-pc", 1000), Load("gauge-amp", 500)), 12);
        var finding = Only(rack); // 10 x (1000 / 1500)^1.15 = 6.273
        Numbers(finding, 6.273, 12, "min");
        Assert.Equal((20.0, 1000.0),
            (Remedied(rack, finding).Items[0].Ups!.RunMinutes, Remedied(rack, finding).Items[0].Ups!.RunLoadW)); // 12 x 1.5^1.15 = 19.13
        Assert.Equal(6, Remedied(rack, finding, 1).Site!.UpsMinutes);
        Assert.DoesNotContain(Remedied(rack, finding, 2).Items, i => i.Id == "wave-pc");
    }

    [Fact]
    public void One_of_two_pdus_can_move_to_mains()
    {
        var rack = Fed(Mains(), Board("strip"), Board("behind"), Board("more"))
            .With(Ups(1000, 1000, 10, 1000, "behind", "more"), Load("wave-pc", 800), Load("gauge-amp", 400))
            .Plugged("wave-pc", "behind", "g1").Plugged("gauge-amp", "more", "g1");
        Assert.Equal(["behind"], Remedied(rack, Findings(rack)[0], 1).Items[0].Ups!.Feeds!);
    }

    // 15.5 A of load and losses; recharging at 100 W adds 100 / 230 = 0.435 A (10 % of the rating, common practice, no source).
    [Theory]
    [InlineData(3450, null, 0)] // 15 + 0.435 A
    [InlineData(3588, null, 1)] // 15.6 + 0.435 A
    [InlineData(3588, 50.0, 0)]
    [InlineData(3450, 300.0, 1)]
    public void Supply_is_not_overloaded_while_a_ups_recharges(double watts, double? charge, int count)
    {
        var ups = Ups(1000, 4000, 10, 1000, "behind");
        ups = ups with { Ups = ups.Ups! with { RatedW = null, ChargeW = charge ?? 100 } };
        var rack = Fed(Mains(), Board("strip"), Board("behind", 16)).With(ups, Load("wave-pc", watts)).Plugged("wave-pc", "behind", "g1")
            .Plugged("bay-ups", "strip", "g1");
        var findings = Report(rack).Findings;
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f => Assert.Equal((Severity.Warning, 16), (f.Severity, f.Limit!.Value)));
    }

    // Dual-corded gauge-amp: half of 2300 W on A in normal use, with B lost all of it. 1150 + 2300 W is 15 A; the charger adds 300 / 230 = 1.304 A.
    [Fact]
    public void Other_feed_may_be_lost_while_a_ups_recharges()
    {
        RackDescription Of(double charge)
        {
            var ups = Ups(1000, 4000, 10, 1000, "behind");
            ups = ups with { Ups = ups.Ups! with { RatedW = null, ChargeW = charge } };
            return EmptyRack(widthMm: 800).Fed([Mains(), Mains("B")], Board("strip"), Board("other", supply: "B"), Board("behind"))
                .With(ups, Load("wave-pc", 1150), Load("gauge-amp", 2300, cords: 2, redundant: true)).Plugged("wave-pc", "behind", "g1")
                .Plugged("bay-ups", "strip", "g1");
        }

        var finding = Report(Of(300)).Findings.Single();
        Assert.Equal((Severity.Warning, "B"), (finding.Severity, finding.MessageData["lost"].Text));
        Numbers(finding, 16.304, 16, "A");
        Assert.Empty(Report(Of(200)).Findings);
    }

    [Fact]
    public void Run_time_without_ups_is_error()
    {
        var rack = Asks(Fed(Mains(), Board("strip")).With(Load("wave-pc", 1000)), 15);
        var finding = Only(rack);
        Assert.Equal(["/site/upsMinutes"], finding.Pointers);
        Numbers(finding, 0, 15, "min");
        var ups = Remedied(rack, finding).Items[1].Ups!;
        Assert.Equal((1500.0, 15.0, 1000.0), (ups.RatedVa, ups.RunMinutes, ups.RunLoadW));
        Assert.Null(Remedied(rack, finding, 1).Site!.UpsMinutes);
        Passes(Asks(EmptyRack(), 15));
        Passes(Asks(rack, 0));
    }

    [Fact]
    public void Missing_data_is_listed()
    {
        ReportsMissing(Rack(Ups() with { Ups = new Ups { RatedW = 1000, RatedVa = 1000 } }), "/items/0/ups/feeds");
        ReportsMissing(Rack(Ups(null, null, feeds: "behind"), Load("wave-pc", 500)), "/items/0/ups/ratedVa", "/items/0/ups/ratedW");
        ReportsMissing(Rack(Ups(feeds: "behind"), Load("wave-pc", null)), "/items/1/power/ratedW");
        var timed = Asks(Rack(Ups(minutes: null, at: null, feeds: "behind"), Load("wave-pc", 500)), 5);
        ReportsMissing(timed, "/items/0/ups/runLoadW", "/items/0/ups/runMinutes");
    }

    [Fact]
    public void Ups_without_load_passes() => Passes(Asks(Rack(Ups(null, null, null, null)), 60));
}
