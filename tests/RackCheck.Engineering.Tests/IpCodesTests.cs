using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class IpCodesTests
{
    [Theory]
    [InlineData(6, 2)] // IEC 60529, this and the three that follow
    [InlineData(2, 3)]
    [InlineData(12.5, 1)]
    [InlineData(0.9, 4)]
    [InlineData(12.499, 2)] // IEC 60529: strictly less
    [InlineData(2.5, 2)] // IEC 60529
    [InlineData(2.499, 3)]
    [InlineData(1, 3)] // IEC 60529
    [InlineData(0.999, 4)]
    [InlineData(0, 4)]
    [InlineData(49.9, 1)]
    [InlineData(50, 0)]
    [InlineData(300, 0)]
    public void First_digit_is_highest_whose_probe_does_not_enter(double hole, int digit) => Assert.Equal(digit, IpCodes.FirstDigit(hole));

    [Fact]
    [Trait("Kind", "property")]
    public void Wider_opening_never_has_higher_digit() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 10]).Sample((hole, more) => Assert.True(IpCodes.FirstDigit(hole + more) <= IpCodes.FirstDigit(hole)),
            iter: Samples.Of(1_000));

    [Theory]
    [InlineData("IP20", "IP20", true)]
    [InlineData("54", "20", true)]
    [InlineData("IP54", "IP55", false)]
    [InlineData("IP20", "IP54", false)]
    [InlineData("IP2X", "IP20", true)]
    [InlineData("IP2X", "IP21", false)]
    [InlineData("IPX4", "IP20", false)]
    [InlineData("IPX4", "IPX4", true)]
    [InlineData("IP44", "IPXX", true)]
    [InlineData("IPXX", "IP00", true)]
    [InlineData("IP65", "IP54", true)]
    [InlineData("IP66", "IP65", true)]
    [InlineData("IP67", "IP64", true)] // IEC 60529: IP67 meets neither 65 nor 66
    [InlineData("IP67", "IP65", false)]
    [InlineData("IP67", "IP66", false)]
    [InlineData("IP68", "IP67", true)]
    [InlineData("IP67", "IP68", false)]
    [InlineData("IP66", "IP67", false)]
    [InlineData("IP69", "IP65", false)]
    [InlineData("IP69", "IP64", false)]
    [InlineData("IP69", "IP60", true)]
    [InlineData("IP69", "IP69", true)]
    public void Code_meets_required_code(string code, string required, bool does) => Assert.Equal(does, IpCodes.Satisfies(code, required));

    [Fact]
    public void Meeting_a_code_is_reflexive_and_transitive()
    {
        string[] codes = [.. from a in "0123456X" from b in "0123456789X" select $"IP{a}{b}"];
        Assert.All(codes, c => Assert.True(IpCodes.Satisfies(c, c)));
        Assert.All(codes, c => Assert.True(IpCodes.Satisfies(c, "IP00")));
        foreach (var (a, b, c) in from a in codes from b in codes where IpCodes.Satisfies(a, b) from c in codes select (a, b, c))
        {
            Assert.True(!IpCodes.Satisfies(b, c) || IpCodes.Satisfies(a, c), $"{a} meets {b}, which meets {c}");
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("IP")]
    [InlineData("IP2")]
    [InlineData("IP200")]
    [InlineData("IP70")]
    [InlineData("IPx0")]
    [InlineData("ip20")]
    [InlineData("2A")]
    public void Invalid_code_throws(string code)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => IpCodes.Satisfies(code, "IP20"));
        Assert.Throws<ArgumentOutOfRangeException>(() => IpCodes.Satisfies("IP20", code));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Opening_out_of_range_throws(double hole) => Assert.Throws<ArgumentOutOfRangeException>(() => IpCodes.FirstDigit(hole));
}
