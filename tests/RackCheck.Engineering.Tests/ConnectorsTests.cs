namespace RackCheck.Engineering.Tests;

public sealed class ConnectorsTests
{
    [Theory]
    [InlineData("C13", 10)] // ratings of the standards, this row and the following
    [InlineData("C14", 10)]
    [InlineData("C15", 10)]
    [InlineData("C16", 10)]
    [InlineData("C19", 16)]
    [InlineData("C20", 16)]
    [InlineData("BS1363", 13)]
    [InlineData("CEE7/3", 16)]
    [InlineData("CEE7/4", 16)]
    [InlineData("CEE7/7", 16)]
    [InlineData("NEMA5-15", 15)]
    [InlineData("NEMA5-20", 20)]
    [InlineData("NEMAL5-20", 20)]
    [InlineData("NEMAL5-30", 30)]
    [InlineData("NEMAL6-20", 20)]
    [InlineData("NEMAL6-30", 30)]
    [InlineData("IEC60309-16A-1P", 16)]
    [InlineData("IEC60309-16A-3P", 16)]
    [InlineData("IEC60309-32A-1P", 32)]
    [InlineData("IEC60309-32A-3P", 32)]
    [InlineData("IEC60309-63A-1P", 63)]
    [InlineData("IEC60309-63A-3P", 63)]
    public void Rating_matches_reference_values(string code, double rated) => Assert.Equal(rated, Of(code).RatedA);

    [Theory]
    [InlineData("C13", 15)] // ratings of the standards
    [InlineData("C14", 15)] // ratings of the standards
    [InlineData("C15", 15)] // IEC 60320-1: 10 A devices are rated 15 A in North America
    [InlineData("C16", 15)]
    [InlineData("C19", 20)] // ratings of the standards
    [InlineData("C20", 20)] // ratings of the standards
    public void Appliance_couplers_have_higher_rating_in_North_America(string code, double rated) => Assert.Equal(rated, Of(code).RatedNorthAmericaA);

    [Fact]
    public void Only_hardwired_has_no_rating() =>
        Assert.Equal(["hardwired"], Connectors.All.Where(c => c.RatedA is null || c.RatedNorthAmericaA is null).Select(c => c.Code));

    [Fact]
    public void Other_connectors_have_equal_ratings() =>
        Assert.All(Connectors.All.Where(c => c.Standard != Sources.Iec60320.Key), c => Assert.Equal(c.RatedA, c.RatedNorthAmericaA));

    [Theory]
    [InlineData("C13", "C14")] // mating by the standards, this row and the next four
    [InlineData("C15", "C14 C16")]
    [InlineData("C19", "C20")] // not a C14
    [InlineData("CEE7/3", "CEE7/4 CEE7/7")]
    [InlineData("C14", "")]
    [InlineData("C16", "")]
    [InlineData("C20", "")]
    [InlineData("CEE7/4", "")]
    [InlineData("CEE7/7", "")]
    [InlineData("NEMA5-15", "NEMA5-15")]
    [InlineData("NEMA5-20", "NEMA5-15 NEMA5-20")]
    [InlineData("NEMAL5-20", "NEMAL5-20")] // a locking plug goes into its own socket alone
    [InlineData("NEMAL5-30", "NEMAL5-30")]
    public void Socket_accepts_matching_plugs(string socket, string plugs) => Assert.Equal(plugs, string.Join(' ', Of(socket).Takes));

    [Fact]
    public void Codes_are_unique() =>
        Assert.Equal(Connectors.All.Length, Connectors.All.Select(c => c.Code).Distinct(StringComparer.OrdinalIgnoreCase).Count());

    [Fact]
    public void Every_accepted_plug_is_a_known_connector() =>
        Assert.All(Connectors.All.SelectMany(c => c.Takes), p => Assert.Contains(Connectors.All, c => c.Code == p));

    [Fact]
    public void Every_plug_has_a_socket() =>
        Assert.All(Connectors.All.Where(c => c.Takes.IsEmpty), p => Assert.Contains(Connectors.All, c => c.Takes.Contains(p.Code)));

    [Fact]
    public void Socket_has_at_least_rating_and_phases_of_its_plugs() =>
        Assert.All(Mates(), m =>
        {
            Assert.True((m.Plug.RatedA ?? 0) <= (m.Socket.RatedA ?? 0), m.Socket.Code);
            Assert.True((m.Plug.RatedNorthAmericaA ?? 0) <= (m.Socket.RatedNorthAmericaA ?? 0), m.Socket.Code);
            Assert.Equal((m.Socket.Phases, m.Socket.Secured, m.Socket.Standard), (m.Plug.Phases, m.Plug.Secured, m.Plug.Standard));
        });

    [Fact]
    public void Only_NEMA_5_15_plug_fits_a_larger_socket() =>
        Assert.Equal([("NEMA5-20", "NEMA5-15")], Mates().Where(m => m.Plug.RatedA < m.Socket.RatedA).Select(m => (m.Socket.Code, m.Plug.Code)));

    [Fact]
    public void Industrial_code_states_rating_and_phases()
    {
        var industrial = Connectors.All.Where(c => c.Standard == Sources.Iec60309.Key).ToArray();
        Assert.Equal(6, industrial.Length);
        Assert.All(industrial, c => Assert.Equal($"IEC60309-{c.RatedA}A-{c.Phases}P", c.Code));
    }

    [Fact]
    public void Three_phase_connectors_are_industrial_or_hardwired() =>
        Assert.All(Connectors.All.Where(c => c.Phases != 1), c => Assert.True(c.Phases == 3 && c.Secured, c.Code));

    [Fact]
    public void Domestic_plugs_and_appliance_couplers_are_not_secured() =>
        Assert.Equal(
            ["C13", "C14", "C15", "C16", "C19", "C20", "BS1363", "CEE7/3", "CEE7/4", "CEE7/7", "NEMA5-15", "NEMA5-20"],
            Connectors.All.Where(c => !c.Secured).Select(c => c.Code));

    [Fact]
    public void Every_standard_is_a_source_of_the_table()
    {
        var keys = DataTables.All.Single(t => t.Name == "connectors").Sources.Select(s => s.Key);
        Assert.Equal(keys.Append("none"), Connectors.All.Select(c => c.Standard).Distinct());
    }

    private static Connector Of(string code) => Connectors.All.Single(c => c.Code == code);

    private static IEnumerable<(Connector Socket, Connector Plug)> Mates() =>
        from socket in Connectors.All
        from plug in socket.Takes
        select (socket, Of(plug));

    [Theory]
    [InlineData("C14", 70.0)] // IEC 60320-1, values from memory: cold and hot conditions
    [InlineData("C20", 70.0)]
    [InlineData("C16", 120.0)]
    [InlineData("BS1363", 70.0)]
    [InlineData("hardwired", null)]
    public void Cord_temperature_follows_its_plug(string code, double? limit) => Assert.Equal(limit, Connectors.CordLimitC(code));

    [Theory]
    [InlineData("IEC60309-32A-3P", false, 32.0)]
    [InlineData("BS1363", false, 32.0)] // BS 7671 433.1.204, value from memory
    [InlineData("C13", false, 16.0)]
    [InlineData("C13", true, 20.0)]
    [InlineData("NEMA5-15", true, 20.0)] // NEC 210.21(B), value from memory
    [InlineData("NEMAL21-30", true, 30.0)]
    [InlineData("hardwired", false, null)]
    public void Breaker_of_a_socket_has_its_rating(string code, bool isNorthAmerica, double? most) =>
        Assert.Equal(most, Connectors.MostBreakerA(code, isNorthAmerica));
}
