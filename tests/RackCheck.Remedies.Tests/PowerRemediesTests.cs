using RackCheck.Model;
using RackCheck.Survey;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Remedies.Tests;

public sealed class PowerRemediesTests
{
    // IEC 60309-2: 16, 32 and 63 A; in North America L6-20 and L6-30 for 208 and 240 V. No plug of the contract has 30 A at 120 V.
    [Theory]
    [InlineData(Region.Eu, 230, 1, 16, ConnectorCode.Iec60309A16P1, 32, ConnectorCode.Iec60309A32P1)]
    [InlineData(Region.Uk, 230, 3, 16, ConnectorCode.Iec60309A16P3, 32, ConnectorCode.Iec60309A32P3)]
    [InlineData(Region.Na, 208, 1, 16, ConnectorCode.NemaL620, 20, ConnectorCode.NemaL620)]
    [InlineData(Region.Na, 208, 1, 20, ConnectorCode.NemaL620, 30, ConnectorCode.NemaL630)]
    [InlineData(Region.Na, 120, 1, 15, ConnectorCode.Nema515, 20, ConnectorCode.Nema520)]
    [InlineData(Region.Na, 120, 1, 20, ConnectorCode.Nema520, 30, ConnectorCode.Hardwired)]
    public void The_next_larger_supply_is_one_that_its_region_has(
        Region region, double volts, int phases, double amperes, ConnectorCode plug, double larger, ConnectorCode with)
    {
        var rack = Rack(
            [Feed("A", amperes, volts, phases, plug)], [Strip("strip", "A", amperes: amperes, plug: plug)]) with { Site = new Site { Region = region } };
        var survey = new RackSurvey(rack);
        var candidate = PowerRemedies.Enlarge(survey, survey.Power.Supplies[0], []).First();
        var (supply, unit) = (candidate.After.Supplies![0], candidate.After.Pdus![0]);
        Assert.Equal((larger, larger, with), (supply.RatedA, supply.Breaker!.RatedA!.Value, supply.Socket!.Value));
        Assert.Equal((larger, with), (unit.RatedA!.Value, unit.Plug!.Value));
    }
}
