using System.Numerics;
using CsCheck;
using RackCheck.Model;
using RackCheck.Survey.Power;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Survey.Tests.Power;

public sealed class PowerTreeTests
{
    private static readonly RackDescription ThreePhases = Wired(Mains(rated: 32, phases: 3)).Units(
        Pdu("strip", "A", 32, Outlets("g1", 32, phase: Phase.L1), Outlets("g2", 32, phase: Phase.L2), Outlets("g3", 32, phase: Phase.L3)));

    [Theory]
    [InlineData(16, 0, 0, 16)] // circuit theory: phasors of a star
    [InlineData(16, 16, 0, 16)]
    [InlineData(10, 8, 6, 3.4641)]
    [InlineData(10, 15, 20, 8.66025)]
    [InlineData(16, 12, 5, 9.64365)]
    public void The_neutral_carries_the_sum_of_the_phasors(double l1, double l2, double l3, double neutral) =>
        Assert.Equal(neutral, CordRacks.Tree(OnLines((l1, 1), (l2, 1), (l3, 1))).Supplies[0].Neutral.NormalA, 2e-5);

    [Fact]
    public void Different_power_factors_leave_a_neutral_current_of_equal_lines() =>
        Assert.Equal(6.04599, CordRacks.Tree(OnLines((10, 1), (10, 0.8), (10, 0.9))).Supplies[0].Neutral.NormalA, 2e-5); // check 6-13

    [Fact]
    [Trait("Kind", "property")]
    public void Every_current_is_the_sum_of_what_hangs_on_it_whichever_supply_is_lost() =>
        WiredRacks.All.Where(r => r.Pdus is not null && r.Items.All(i => i.Ups is null)).Sample(
            rack =>
            {
                var tree = CordRacks.Tree(rack);
                CordRacks.CheckSound(rack, tree);
                foreach (var group in tree.Groups)
                {
                    double[] states =
                    [
                        .. tree.Supplies.Cast<SupplyNode?>().Append(null)
                            .Select(lost => tree.Cords.Where(c => ReferenceEquals(c.Group, group)).Sum(c => Amperes(tree, c, lost))),
                    ];
                    Near(states[^1], group.Load.NormalA);
                    Near(states.Max(), group.Load.WorstA);
                }

                foreach (var supply in tree.Supplies)
                {
                    if (supply.IsLineToLine)
                    {
                        // Phasor differences: LineToLineTests has them.
                        continue;
                    }

                    for (var line = 0; line < supply.Phases; line++)
                    {
                        Near(tree.Cords.Where(c => IsOn(c, supply, line)).Sum(c => Amperes(tree, c, null)), supply.Lines[line].NormalA);
                    }

                    if (supply.Phases == 3)
                    {
                        // By angles, where the service goes by active and reactive parts.
                        var sum = Complex.Zero;
                        for (var line = 0; line < 3; line++)
                        {
                            foreach (var cord in tree.Cords.Where(c => IsOn(c, supply, line)))
                            {
                                sum += Complex.FromPolarCoordinates(Amperes(tree, cord, null), -Math.Acos(cord.PowerFactor) - (line * 2 * Math.PI / 3));
                            }
                        }

                        Near(sum.Magnitude, supply.Neutral.NormalA);
                    }
                }
            },
            iter: Samples.Of(800),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void More_load_never_lowers_a_loading_where_the_caller_says_what_hangs_where() =>
        Gen.Select(CordRacks.Small, Gen.Int[0, 3], Gen.Double[0, 2000]).Sample(
            (rack, which, more) =>
            {
                // What the service found is given back as the caller's own word, so that it stays where it is.
                var given = rack with { Connections = CordRacks.Tree(rack).Figures!.Assignment };
                var index = which % rack.Items.Count;
                var heavier = given with
                {
                    Items =
                    [
                        .. given.Items.Select((item, i) => i != index ? item : item with { Power = item.Power! with { RatedW = item.Power.RatedW + more } }),
                    ],
                };
                var (before, after) = (CordRacks.Tree(given).Figures!, CordRacks.Tree(heavier).Figures!);
                Assert.All(
                    before.Supplies!.Zip(after.Supplies!),
                    s => Assert.True(s.Second.LoadingPercent >= s.First.LoadingPercent && s.Second.WorstCaseLoadingPercent >= s.First.WorstCaseLoadingPercent));
                Assert.All(before.Pdus!.Zip(after.Pdus!), u => Assert.True(u.Second.LoadingPercent >= u.First.LoadingPercent));
                Assert.All(
                    before.Pdus!.SelectMany(u => u.Groups!).Zip(after.Pdus!.SelectMany(u => u.Groups!)),
                    g => Assert.True(g.Second.CurrentA >= g.First.CurrentA));
            },
            iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void More_load_never_lowers_the_sum_of_all_loads() =>
        Gen.Select(CordRacks.Small, Gen.Double[0, 2000]).Sample(
            (rack, more) =>
            {
                var heavier = rack with
                {
                    Items = [.. rack.Items.Select((item, i) => i > 0 ? item : item with { Power = item.Power! with { RatedW = item.Power.RatedW + more } })],
                };
                Assert.True(Sum(heavier) >= Sum(rack) - 1e-9 || CordRacks.Tree(heavier).Cords.Any(c => c.Group is null));
            },
            iter: Samples.Of(1_000));

    [Fact]
    public void A_ups_draws_what_hangs_on_it_and_its_losses()
    {
        var rack = WithUps(lossW: 150);
        var tree = CordRacks.Tree(rack);
        var ups = Assert.Single(tree.Ups);
        Assert.Equal((1200, 1200 / 0.8), (ups.LoadW, ups.LoadVa));
        Assert.Equal(1200 / 0.8 / 230, tree.Units[1].Lines[0].NormalA, 1e-9);
        Assert.Equal(1350 / 0.9 / 230, tree.Units[0].Lines[0].NormalA, 1e-9);
        Assert.Equal(1350 / 0.9 / 230, tree.Supplies[0].Lines[0].NormalA, 1e-9);
        Assert.Equal(1350, tree.Figures!.RatedW);
    }

    [Fact]
    public void Losses_that_are_not_given_are_an_assumption() =>
        Assert.Contains(new RackCheck.Survey.RackSurvey(WithUps(null)).Assumptions, a => a.Pointer == "/items/1/heatW" && a.Value.Number == 0);

    [Fact]
    public void A_ups_without_cords_leaves_its_units_on_their_supply()
    {
        var rack = WithUps(150) is var wired ? wired with { Items = [wired.Items[0], wired.Items[1] with { Power = null }], Connections = null } : null!;
        Assert.Equal(1200 / 0.8 / 230, CordRacks.Tree(rack).Supplies[0].Lines[0].NormalA, 1e-9);
    }

    [Fact]
    public void Behind_a_ups_on_a_lost_supply_nothing_lives_for_long()
    {
        // One cord behind the UPS at A, one at B: with A lost, B carries all 1200 W.
        var rack = Wired(Mains("A"), Mains("B"))
            .Units(Pdu("a", "A", 16, Outlets("g", 16)), Pdu("safe", "A", 16, Outlets("g", 16)), Pdu("b", "B", 16, Outlets("g", 16)))
            .With(Load("wave-pc", 1200, cords: 2, redundant: true), Load("tank-ups", null) with { Ups = new Ups { Feeds = ["safe"] } })
            .Connect("wave-pc", "safe", "g", 0).Connect("wave-pc", "b", "g", 1).Connect("tank-ups", "a", "g");
        var tree = CordRacks.Tree(rack);
        Assert.Equal((600.0 / 230, 1200.0 / 230), (tree.Units[2].Lines[0].NormalA, tree.Units[2].Lines[0].WorstA));
        Assert.Equal("A", tree.Units[2].Lines[0].WorstWithout!.Id);
        Assert.Equal("B", tree.Units[0].Lines[0].WorstWithout!.Id);
    }

    [Fact]
    public void Three_phase_equipment_loads_all_lines_alike()
    {
        var rack = ThreePhases.Units(Pdu("drive", "A", 32, Outlets("g", 16, ConnectorCode.Iec60309A16P3, 1)))
            .With(Load("paddle-drive", 6900, plug: ConnectorCode.Iec60309A16P3));
        var tree = CordRacks.Tree(rack);
        Assert.All(tree.Supplies[0].Lines, l => Assert.Equal(10, l.NormalA, 1e-9));
        Assert.Equal(10, tree.Groups[3].Load.NormalA, 1e-9);
        Assert.Equal(0, tree.Supplies[0].Neutral.NormalA, 1e-9);
    }

    [Fact]
    public void What_comes_on_at_once_adds_up_and_what_is_switched_comes_on_singly()
    {
        Item Rush(string id, double inrush) => Load(id, 100) with { Power = Load(id, 100).Power! with { InrushA = inrush } };
        var rack = Wired(Mains()).Units(Pdu("strip", "A", 16, Outlets("g", 16))).With(Rush("a", 30), Rush("b", 40), Rush("c", 20));
        Assert.Equal(90, CordRacks.Tree(rack).Supplies[0].InrushA);
        Assert.Equal(40, CordRacks.Tree(rack with { Pdus = [rack.Pdus![0] with { RemoteSwitched = true }] }).Supplies[0].InrushA);
        var half = CordRacks.Tree(rack with { Items = [.. rack.Items, Load("d", 10)] }).Supplies[0];
        Assert.Equal((90, false), (half.InrushA, half.InrushIsKnown));
    }

    [Fact]
    public void Defaults_are_said()
    {
        var rack = Wired(new Supply { Id = "A", VoltageV = 230, RatedA = 16 }, Mains("B", phases: 3)).Units(
            Pdu("a", "A", 16, Outlets("g", 16)), Pdu("b", "B", 16, Outlets("g", 16))).With(Load("wave-pc", 400, factor: null));
        string[] expected =
        [
            "/items/0/power/powerFactor", "/pdus/1/groups/0/phase", "/site/region", "/supplies/0/breaker/ratedA", "/supplies/0/faultCurrentA",
            "/supplies/0/phases",
            "/supplies/0/rcdMa", "/supplies/1/faultCurrentA", "/supplies/1/rcdMa",
        ];
        Assert.Equal(
            expected,
            new RackCheck.Survey.RackSurvey(rack).Assumptions.Select(a => a.Pointer).Where(p =>
                p.Contains("power", StringComparison.Ordinal)
                    || !p.StartsWith("/items", StringComparison.Ordinal) && p is not ("/site/altitudeM" or "/site/ambientMaxC" or "/site/humidityMaxPercent")
                        && !p.StartsWith("/cabinet", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Without_a_word_on_power_there_are_no_figures_of_it() => Assert.Null(CordRacks.Tree(EmptyRack().With(Unit("wave-pc", 4).At(1))).Figures);

    private static RackDescription OnLines(params (double Amperes, double Factor)[] lines)
    {
        var rack = ThreePhases;
        for (var line = 0; line < 3; line++)
        {
            rack = rack.With(Load($"i{line}", lines[line].Amperes * 230 * lines[line].Factor, lines[line].Factor)).Connect($"i{line}", "strip", $"g{line + 1}");
        }

        return rack;
    }

    private static RackDescription WithUps(double? lossW) =>
        Wired(Mains()).Units(Pdu("mains", "A", 16, Outlets("g", 16)), Pdu("safe", "A", 16, Outlets("g", 16)))
            .With(Load("wave-pc", 1200, 0.8), Load("tank-ups", null, 0.9) with { HeatW = lossW, Ups = new Ups { RatedW = 2700, Feeds = ["safe"] } })
            .Connect("wave-pc", "safe", "g").Connect("tank-ups", "mains", "g");

    // Each cord's own share: of a redundant item those cords carry all whose supply lives.
    private static double Amperes(PowerTree tree, Cord cord, SupplyNode? lost)
    {
        var supply = cord.Group!.Unit.Supply;
        if (ReferenceEquals(supply, lost))
        {
            return 0;
        }

        var power = cord.Item.Item!.Power!;
        var cords = tree.Cords.Where(c => c.Item.Id == cord.Item.Id).ToArray();
        var alive = cords.Count(c => c.Group is not null && !ReferenceEquals(c.Group.Unit.Supply, lost));
        var watts = (power.RatedW ?? power.TypicalW ?? 0) / (power.Redundant == true && lost is not null ? alive : cords.Length);
        return watts / (power.PowerFactor ?? 0.95) / supply.Source.VoltageV / (cord.IsThreePhase ? supply.Phases : 1);
    }

    private static bool IsOn(Cord cord, SupplyNode supply, int line) =>
        cord.Group is { } group && ReferenceEquals(group.Unit.Supply, supply) && (group.Loads(line) || cord.IsThreePhase);

    private static double Sum(RackDescription rack) => CordRacks.Tree(rack).Groups.Sum(g => g.Load.NormalA);

    private static void Near(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Max(1, expected), $"{expected} against {actual}");
}
