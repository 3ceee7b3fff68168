using RackCheck.Model;
using RackCheck.Survey.Limits;
using RackCheck.Testing;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Survey.Tests;

/// <summary>What is planned keeps to the share that the policy asks for.</summary>
public sealed class LimitsInForceTests
{
    [Fact]
    public void Defaults_hold_without_policy()
    {
        var limits = new LimitsInForce(null);
        Assert.Equal(
            (0.8, 0.8, 0.8, 0.8, 0.8),
            (limits.PduDesignShare, limits.PduContinuousShare, limits.SupplyDesignShare, limits.SupplyContinuousShare, limits.RackPlannedShare));
    }

    // Two PDUs of 16 A at 230 V: 368 W are 1.6 A, 10 % of one. Each load alone keeps 20 %, two together do not with a third.
    [Theory]
    [InlineData(80, 1)]
    [InlineData(20, 2)]
    public void Cords_are_assigned_by_design_share_of_policy(double percent, int pdusUsed)
    {
        var rack = Rack(
            [Feed("A"), Feed("B")],
            [Strip("pa", "A", count: 3), Strip("pb", "B", count: 3)],
            Load("a", 368, ConnectorCode.C14),
            Load("b", 368, ConnectorCode.C14),
            Load("c", 368, ConnectorCode.C14));
        var policy = new Policy
        {
            Rules = new Dictionary<string, RulePolicy>
            {
                [LimitsInForce.PduLoading] = new() { Limits = new Dictionary<string, double> { [LimitsInForce.DesignSharePercent.Name] = percent } },
            },
        };
        var survey = new RackSurvey(rack with { Policy = policy });
        Assert.True(survey.Power.Units.Count(u => u.Lines[0].NormalA > 0) >= pdusUsed);
        Assert.All(survey.Power.Units, u => Assert.InRange(u.Lines[0].NormalA, 0, percent / 100 * 16));
    }
}
