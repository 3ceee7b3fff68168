using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class AltitudeTests : RuleTests<Altitude>
{
    private static RackDescription Rack(double? altitude) =>
        Wired(Mains()).Units(Pdu("strip", "A", 16, Outlets("g1", null))) with { Site = new Site { AltitudeM = altitude } };

    // IEC 60947-1 and IEC 60664-1 (values from memory): 2000 m.
    [Theory]
    [InlineData(null, 0)]
    [InlineData(2000.0, 0)]
    [InlineData(2000.1, 1)]
    public void Above_2000_m_is_warning(double? altitude, int count) => Assert.Equal(count, Findings(Rack(altitude)).Count);

    [Fact]
    public void Finding_has_numbers()
    {
        Numbers(Only(Rack(2400)), 2400, 2000, "m");
        Assert.True(Only(Rack(2400)).Safety);
    }

    [Fact]
    public void Rack_without_PDUs_passes() => Passes(Rack(2400) with { Pdus = null });
}
