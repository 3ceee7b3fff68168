using RackCheck.Engineering;
using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>What the UPSs of an order feed, for how long, and what is said of the rest. Common practice, no source.</summary>
public sealed class UpsBasketTests
{
    private static readonly LineOptions Kept = new() { OnUps = true };

    // Power factor 0.92, the usual one.
    private static Item Server(double ratedW, bool redundant = false) => new()
    {
        Id = "server", HeightU = 2, MassKg = 15, Category = ItemCategory.Server,
        Body = new Body { WidthMm = 440, HeightMm = 87, DepthMm = 500 },
        Power = new ItemPower
        {
            RatedW = ratedW, Redundant = redundant, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, redundant ? 2 : 1)],
        },
    };

    private static BasketRequest With(Item item, int quantity, LineOptions? options, double? minutes, params (string Part, int Quantity)[] more) => new()
    {
        Lines = [new BasketLine { Item = item, Quantity = quantity, Options = options }, .. Basket(more).Lines],
        Site = new Site { Region = Region.Eu, AmbientMaxC = 24, UpsMinutes = minutes },
    };

    private static HashSet<string> FedIn(BasketReport report)
    {
        var rack = report.CompletedRack!;
        var behind = rack.Items.SelectMany(i => i.Ups?.Feeds ?? []).ToHashSet();
        return [.. (rack.Connections ?? []).Where(c => behind.Contains(c.Pdu)).Select(c => c.Item)];
    }

    [Fact]
    public void Three_servers_of_900_W_are_all_on_a_ups_of_2700_W_and_3000_VA()
    {
        var report = Plan(With(Server(900) with { Power = Server(900).Power! with { PowerFactor = 0.95 } }, 3, Kept, null, ("UPS-30", 1)));
        Assert.Empty(report.Unmet);
        Assert.Equal(3, FedIn(report).Count);
    }

    [Fact]
    public void Apparent_power_that_is_too_much_is_said_in_volt_amperes()
    {
        var report = Plan(With(Server(800) with { Power = Server(800).Power! with { PowerFactor = 0.75 } }, 3, Kept, null, ("UPS-30", 1)));
        var unmet = Assert.Single(report.Unmet, u => u.WhatKey == "need.ups-power");
        Assert.Equal("The UPS of the order supplies 3000 VA; everything that is to be on it takes 3200 VA.", unmet.Reason);
    }

    [Fact]
    public void What_is_not_to_be_on_the_ups_has_none_of_its_outlets()
    {
        var report = Plan(new BasketRequest
        {
            Lines = [new BasketLine { PartNumber = "QWL-PC-210", Quantity = 2, Options = new LineOptions { OnUps = false } }, .. Basket(("UPS-15", 1)).Lines],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 24 },
        });
        Assert.Equal(2, report.CompletedRack!.Connections!.Count(c => c.Item.StartsWith("QWL-PC-210", StringComparison.Ordinal)));
        Assert.Empty(FedIn(report));
        Assert.Empty(report.Cautions);
        Assert.Equal(["power.ups-idle"], report.CompletedReport!.Findings.Where(f => f.Severity != Severity.Advice).Select(f => f.Rule));
    }

    // Each UPS bears one of them alone, 1000 W of 1350 W: the first has no second cord on one as long as the last has none.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Every_dual_corded_server_has_one_cord_on_a_ups_before_any_has_two(int count)
    {
        var report = Plan(With(Server(1000, redundant: true), count, Kept, null, ("UPS-15", count)));
        Assert.Empty(report.Unmet);
        Assert.Equal(count, FedIn(report).Count);
    }

    // 9 min at 1000 W are 18 min at 1000 x (9/18)^(1/1.15) = 547 W by Peukert's law: one server of 500 W, or two sides of 400 W.
    [Fact]
    public void Run_time_bounds_what_a_ups_feeds_and_the_rest_is_named()
    {
        Assert.Equal(547.3, Batteries.LoadFor(9, 1000, 18), 0.1);
        var report = Plan(With(Server(500), 2, null, 18, ("UPS-15", 1)));
        Assert.Single(FedIn(report));
        Assert.Empty(report.Unmet);
        var caution = Assert.Single(report.Cautions);
        Assert.Matches(@"^No UPS of the rack feeds server-\d: with a run time of 18 minutes it carries no more\.$", caution);

        var shared = Plan(With(Server(800, redundant: true), 1, Kept, 18, ("UPS-15", 2)));
        Assert.Empty(shared.Unmet);
        Assert.Empty(shared.Cautions);
    }

    // 6 min at 2700 W are 12 min at 2700 x (6/12)^(1/1.15) = 1478 W; the smaller UPS has 778 W for 12 min.
    [Fact]
    public void Ups_that_does_not_last_is_exchanged_for_one_that_does()
    {
        Assert.Equal(1477.7, Batteries.LoadFor(6, 2700, 12), 0.1);
        var report = Plan(With(Server(900), 1, null, 12, ("UPS-15", 1)));
        var exchange = Assert.Single(report.ReplaceLines);
        Assert.Equal(("QWL-UPS-30", "replace.ups-time"), (exchange.PartNumber, exchange.MessageKey));
        Assert.Single(FedIn(report));
        Assert.Empty(report.Unmet);
    }

    [Fact]
    public void Ups_that_feeds_nothing_for_the_time_asked_for_is_said_to()
    {
        var report = Plan(With(Server(900), 1, null, 60, ("UPS-15", 1)));
        Assert.Empty(report.ReplaceLines);
        var unmet = Assert.Single(report.Unmet);
        Assert.Equal("With this equipment on it the UPS of the order does not last 60 minutes.", unmet.Reason);
        Assert.Equal(Verdict.Hold, report.CompletedVerdicts.Product);
    }
}
