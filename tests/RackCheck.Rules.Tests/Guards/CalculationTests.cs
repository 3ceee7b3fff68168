using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Rules.Tests.Properties;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>A finding's arithmetic can be redone by hand from its text, comes out the same, and is what the finding says.</summary>
public sealed class CalculationTests
{
    public static TheoryData<string> Ids => [.. RuleSet.Default.All.Select(r => r.Descriptor.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_calculation_of_the_failing_rack_comes_out(string id)
    {
        var rack = JsonSerializer.Deserialize(RuleSet.Default.Find(id)!.FailingRack, ContractJson.Default.RackDescription)!;
        Assert.Empty(FaultsOf(rack));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Calculations_of_random_racks_come_out() => AnyRack.All.Sample(rack => Assert.Empty(FaultsOf(rack)), iter: Samples.Of(6_000), print: Wording.Of);

    [Theory]
    [InlineData("2 + 3 x 4 = 14 > 10", "")]
    [InlineData("2 + 3 x 4 = 14.002 > 10", "2 + 3 x 4 = 14.002: 14 and 14.002")]
    [InlineData("(2 + 3) x 4 / 8 - -1 = 3.5; 2 x 3^2 = 18 m3/h", "")]
    [InlineData("sqrt(16) = 4, ln(1) = 0; at most atan(1) + acos(0) = 135; 2 x sin(30) - cos(60) = 0.5", "")]
    [InlineData("3 > 3", "3 > 3: 3 and 3")]
    [InlineData("1 < 2 <= 2; 4 >= 5", "4 >= 5: 4 and 5")]
    [InlineData("1 / 3 = 0.333 < 0.3333", "")]
    [InlineData("1 / 3 = 0.3330 > 0.3", "1 / 3 = 0.3330: 0.3333333333333333 and 0.333")]
    public void Guard_calculates_correctly(string text, string fault) => Assert.Equal(fault, string.Join('|', Arithmetic.Faults(text)));

    [Theory]
    [InlineData("2 3 = 5")]
    [InlineData("5 x 3")]
    [InlineData("(1 + 2 = 3")]
    [InlineData("1 + = 3")]
    [InlineData("3 & 4 = 5")]
    public void Text_without_arithmetic_is_rejected(string text) => Assert.Throws<FormatException>(() => Arithmetic.Read(text));

    internal static IEnumerable<string> FaultsOf(RackDescription rack) => Judge.Check(rack).Findings.SelectMany(Faults);

    private static IEnumerable<string> Faults(Finding finding)
    {
        var name = $"{finding.Rule}, '{finding.Calculation}'";
        if (finding.Calculation is not { } text)
        {
            return finding.Actual is null && finding.Limit is null ? [] : [$"{finding.Rule} has numbers, but no calculation: {finding.Message}"];
        }

        try
        {
            var faults = Arithmetic.Faults(text).Select(f => $"{name}: {f}");
            return finding.Actual is not { } actual || finding.Limit is not { } limit || Arithmetic.Compares(text, actual.Value, limit.Value)
                ? faults
                : faults.Append(FormattableString.Invariant($"{name} does not compare {actual.Value} and {limit.Value}"));
        }
        catch (FormatException e)
        {
            return [$"{name}: {e.Message}"];
        }
    }
}
