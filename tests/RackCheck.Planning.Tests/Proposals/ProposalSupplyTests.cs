using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>Which of the given supplies feed proposed racks, and that the supplies of an answer may be given.</summary>
public sealed class ProposalSupplyTests
{
    private static Supply Of(string id) => new()
    {
        Id = id, VoltageV = 230, Phases = 1, RatedA = 16, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = 16 }, Socket = ConnectorCode.Iec60309A16P1,
    };

    // Both cabinets were fed from A, which cannot carry them: a conflict was said to be proven.
    [Fact]
    public void Given_supplies_are_shared_over_the_cabinets_of_a_row()
    {
        var request = Request([.. Enumerable.Repeat("PC-410", 14)]) with { Supplies = [Of("A"), Of("B")] };
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.Null(answer.Conflict);
        foreach (var racks in answer.Alternatives.Select(RacksOf))
        {
            Assert.Equal(["A", "B"], racks.SelectMany(r => r.Pdus!).Select(u => u.Supply).Distinct().Order());
            Assert.All(racks, r => Assert.Single(r.Pdus!.Select(u => u.Supply).Distinct()));
        }
    }

    // The protective conductor current of all six is over the limit of one supply, and of three over that of two, as the earth conductor of a cable of
    // 1.5 mm2 is too small for an IEC 60309 connection above 10 mA: all were fed from A, which carries their load.
    [Fact]
    public void High_leakage_is_divided_over_the_given_supplies()
    {
        var request = new ProposalRequest
        {
            Items =
            [
                .. Enumerable.Range(1, 6).Select(n => new Item
                {
                    Id = $"conv-{n}",
                    Category = ItemCategory.Instrument,
                    HeightU = 3,
                    MassKg = 14,
                    Body = new Body { WidthMm = 430, HeightMm = 130, DepthMm = 400 },
                    Power = new ItemPower { RatedW = 200, Plugs = [ConnectorCode.C14], LeakageMa = 3.4 },
                    Airflow = new Airflow { Direction = AirflowDirection.FrontToRear },
                    MaxInletC = 40,
                    EarthStud = true,
                }),
            ],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
            MaxCabinets = 1,
        };
        Supply Thin(string id, double cableMm2) => Of(id) with
        {
            RatedA = 10, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = 10 }, Cable = new SupplyCable { LengthM = 10, CrossSectionMm2 = cableMm2 },
        };
        IEnumerable<string> FedThrough(double cableMm2)
        {
            var given = Answer(request with { Supplies = [.. "ABC".Select(c => Thin($"{c}", cableMm2))] });
            AssertSound(request, given);
            Assert.NotEmpty(given.Alternatives);
            return given.Alternatives[0].Rack!.Pdus!.Select(u => u.Supply).Order(StringComparer.Ordinal);
        }

        Assert.Equal(["A", "B", "C"], FedThrough(1.5));
        Assert.Equal(["A"], FedThrough(2.5));
    }

    // A supply on each side, two where one does not carry it, and where two do not either each of the five by itself.
    [Theory]
    [InlineData(4, 2)]
    [InlineData(6, 4)]
    [InlineData(14, 5)]
    public void Five_supplies_feed_both_sides_as_far_as_they_carry_them(int servers, int supplies)
    {
        var request = Request([.. Enumerable.Repeat("SRV-220", servers)]) with { Supplies = [.. "ABCDE".Select(c => Of($"{c}"))], MaxCabinets = 1 };
        var answer = Answer(request);
        AssertSound(request, answer);
        string[] fed = [.. answer.Alternatives[0].Rack!.Pdus!.Select(u => u.Supply)];
        Assert.Equal("ABCDE"[..supplies].Select(c => $"{c}"), fed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Supplies_of_an_answer_may_be_given()
    {
        var request = Request([.. Enumerable.Repeat("SRV-220", 4), "SW-24"]);
        var first = Answer(request).Alternatives[0];
        var again = Answer(request with { Supplies = [.. RacksOf(first).SelectMany(r => r.Supplies!)] });
        Assert.Null(again.Conflict);
        AssertSound(request, again);
    }

    // No choice of supplies was searched for a proof.
    [Fact]
    public void Overloaded_supplies_are_no_proven_conflict()
    {
        var answer = Answer(Request([.. Enumerable.Repeat("PC-410", 40)]) with { Supplies = [Of("A"), Of("B")] });
        Assert.False(Assert.IsType<ProposalConflict>(answer.Conflict).Proven);
    }

    // The spare was no matter where the hosts have a console that is used remotely.
    [Fact]
    public void Spare_at_a_remote_site_gets_a_switched_outlet()
    {
        var request = Request("SRV-2", "KVM-8R");
        var answer = Answer(request with
        {
            Items = [request.Items[0] with { Spare = true }, .. request.Items.Skip(1)],
            Site = new Site { Region = Region.Uk, AmbientMaxC = 27, Remote = true },
        });
        Assert.DoesNotContain(answer.Alternatives[0].Report!.Findings, f => f.Rule == "service.remote-power");
    }

    [Fact]
    public void What_a_ups_does_not_carry_as_long_as_asked_is_given_up()
    {
        var answer = Answer(Request("UPS-15", "SRV-2", "SRV-2") with { Site = new Site { Region = Region.Eu, AmbientMaxC = 27, UpsMinutes = 120 } });
        Assert.Contains(
            "No UPS of the rack feeds srv-2-1 and srv-2-2: with a run time of 120 minutes it carries no more.", answer.Alternatives[0].GivenUp);
    }

    // The PDU with the highest rating behind the UPS has no switched outlets.
    [Fact]
    public void Host_behind_a_ups_gets_the_switched_outlet_that_it_is_to_have()
    {
        var request = Request("PC-210", "PC-210", "KVM-8R", "SW-24", "UPS-30");
        var answer = Answer(request with
        {
            Items = [.. request.Items.Select(i => i.PartNumber is "QWL-PC-210" or "QWL-SW-24" ? i with { RemotePowerCycle = true } : i)],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 30, Remote = true, UpsMinutes = 10 },
        });
        Assert.All(answer.Alternatives, a => Assert.DoesNotContain(a.Report!.Findings, f => f.Rule == "service.remote-power"));
        Assert.Contains(answer.Alternatives[0].AddedLines, l => l.PartNumber == "QWL-DU-10-V");
    }
}
