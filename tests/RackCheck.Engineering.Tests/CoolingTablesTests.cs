namespace RackCheck.Engineering.Tests;

public sealed class CoolingTablesTests
{
    [Theory]
    [InlineData("air", 30)] // six heights by five temperatures
    [InlineData("enclosure-surfaces", 7)]
    [InlineData("inlet-classes", 4)]
    [InlineData("ip-openings", 4)]
    [InlineData("plate-losses", 15)]
    public void Table_has_expected_number_of_rows(string name, int rows) => Assert.Equal(rows, Table(name).Rows.Length);

    [Theory]
    [InlineData(0, 20, 101325, 1.2040973427229398, 2.9719597411828067)] // ISO 2533, ASHRAE Fundamentals
    [InlineData(1000, 35, 89874.56042735427, 1.0160369246339298, null)] // ISO 2533, ASHRAE Fundamentals
    [InlineData(2000, 40, 79495.19743529121, 0.8843483306127407, null)] // ISO 2533, ASHRAE Fundamentals
    [InlineData(1000, 30, 89874.56042735427, null, 3.464897799989923)] // ISO 2533, ASHRAE Fundamentals
    public void Air_table_matches_reference_values(double altitude, double temperature, double pressure, double? density, double? flow)
    {
        var row = Table("air").Rows.Single(r => r[0].Number == altitude && r[1].Number == temperature);
        Assert.Equal(pressure, row[2].Number!.Value, 0.5);
        Assert.Equal(density ?? row[3].Number!.Value, row[3].Number!.Value, 1e-4);
        Assert.Equal(flow ?? row[4].Number!.Value, row[4].Number!.Value, 1e-3);
    }

    [Theory]
    [InlineData("free", 4.38)] // IEC TR 60890
    [InlineData("wall", 3.9)] // IEC TR 60890
    [InlineData("row-end", 3.98)] // IEC TR 60890
    [InlineData("row-end-wall", 3.5)] // IEC TR 60890
    [InlineData("row-middle", 3.58)] // IEC TR 60890
    [InlineData("row-middle-wall", 3.1)] // IEC TR 60890
    [InlineData("row-middle-wall-covered", 2.89)] // IEC TR 60890
    public void Surface_is_sum_of_weighted_faces(string placement, double surface)
    {
        var row = Table("enclosure-surfaces").Rows.Single(r => r[0].Text == placement);
        var factors = row.Skip(1).Select(c => c.Number!.Value).ToArray();
        Assert.Equal(surface, factors[5]);
        Assert.Equal(surface, ((factors[0] + factors[1]) * 2 * 0.6) + ((factors[2] + factors[3]) * 2 * 0.5) + (factors[4] * 0.6 * 0.5), 1e-9);
    }

    [Theory]
    [InlineData(30, 19.31566927086452)] // Idelchik
    [InlineData(50, 4.3695340815808175)] // Idelchik
    [InlineData(80, 0.5377270621282495)] // Idelchik
    public void Plate_losses_match_reference_values(double open, double zeta)
    {
        var row = Table("plate-losses").Rows.Single(r => r[0].Number == open);
        Assert.Equal(zeta, row[1].Number!.Value, 1e-4);
        Assert.Equal(zeta * 1.2 / 2, row[2].Number!.Value, 1e-3);
    }

    [Theory]
    [InlineData(2, 12.5)] // IEC 60529
    [InlineData(3, 2.5)] // IEC 60529
    [InlineData(4, 1)] // IEC 60529
    public void Openings_match_reference_values(double digit, double under) =>
        Assert.Equal(under, Table("ip-openings").Rows.Single(r => r[0].Number == digit)[1].Number);

    [Theory]
    [InlineData("A1", 15, 32, 300)] // ASHRAE TC 9.9, this row and the following
    [InlineData("A2", 10, 35, 300)]
    [InlineData("A3", 5, 40, 175)]
    [InlineData("A4", 5, 45, 125)]
    public void Classes_match_reference_values(string name, double least, double greatest, double slope)
    {
        var row = Table("inlet-classes").Rows.Single(r => r[0].Text == name);
        Assert.Equal((least, greatest, 900, slope, 18, 27), (row[1].Number, row[2].Number, row[5].Number, row[6].Number, row[7].Number, row[8].Number));
    }

    private static DataTable Table(string name) => DataTables.All.Single(t => t.Name == name);
}
