namespace RackCheck.Engineering.Tests;

public sealed class ElectricalTablesTests
{
    [Theory]
    [InlineData("breakers", 7)] // two limits of three curves, and the continuous load
    [InlineData("cables", 6)]
    [InlineData("connectors", 26)] // all except hardwired
    [InlineData("earth-conductors", 41)] // 14 limits, 4 RCD ratings, 21 nominal areas
    public void Table_has_expected_number_of_rows(string name, int rows) => Assert.Equal(rows, Table(name).Rows.Length);

    [Fact]
    public void Breaker_table_matches_curves()
    {
        var values = Table("breakers").Rows.ToDictionary(r => r[0].Text!, r => r[1].Number);
        Assert.All(Breakers.Curves, c =>
        {
            Assert.Equal(c.Least, values[$"curve {c.Curve}, lower limit"]);
            Assert.Equal(c.Greatest, values[$"curve {c.Curve}, upper limit"]);
        });
        Assert.Equal(80, values["continuous load"]); // NEC 210.20(A)
    }

    [Fact]
    public void Cable_table_matches_voltage_drop_formula() =>
        Assert.All(Table("cables").Rows, r =>
        {
            // At 1 m and 1000 A the value in V equals mV/A/m.
            Assert.Equal(Cables.DropV(Cables.Find(r[0].Number!.Value)!.DropMvPerAM, 1, 1000, 1), r[1].Number!.Value, 1e-9);
            Assert.Equal(Cables.DropV(r[1].Number!.Value, 1, 1000, 3), r[2].Number!.Value, 1e-3);
        });

    [Fact]
    public void Connector_table_matches_list()
    {
        var rows = Table("connectors").Rows.ToDictionary(r => r[0].Text!);
        Assert.All(Connectors.All.Where(c => c.Code != "hardwired"), c =>
        {
            var row = rows[c.Code];
            Assert.Equal((c.RatedA, c.RatedNorthAmericaA, c.Phases), (row[1].Number, row[2].Number, row[4].Number));
            Assert.Equal((c.Secured ? "yes" : "no", c.Standard), (row[5].Text, row[6].Text));
        });
        Assert.Equal("C14, C16", rows["C15"][3].Text);
        Assert.Equal("none", rows["C14"][3].Text);
        Assert.All(rows.Values, r => Assert.True(r[1].Number > 0 && r[2].Number > 0));
    }

    [Theory]
    [InlineData("same area", 16)] // IEC 60364-5-54, this row and the following
    [InlineData("half area", 35)]
    [InlineData("minimum area, protected", 2.5)]
    [InlineData("minimum area, not protected", 4)]
    [InlineData("k, separate", 143)]
    [InlineData("k, in a cable", 115)]
    [InlineData("resistivity", 0.017241)]
    [InlineData("earth continuity resistance", 0.1)]
    [InlineData("secured connection", 3.5)]
    [InlineData("high-integrity earthing", 10)]
    [InlineData("standing leakage through an RCD", 30)]
    [InlineData("high-integrity earthing, main conductor", 10)] // BS 7671 543.7.1.203
    public void EarthConductor_table_matches_reference_values(string quantity, double value) =>
        Assert.Equal(value, Table("earth-conductors").Rows.Single(r => r[0].Text == quantity)[1].Number);

    [Fact]
    public void EarthConductor_table_lists_nominal_areas_and_rcd_ratings()
    {
        var rows = Table("earth-conductors").Rows;
        Assert.Equal(EarthConductors.SectionsMm2, rows.Where(r => r[0].Text == "nominal area").Select(r => r[1].Number!.Value));
        Assert.Equal(EarthConductors.RcdRatingsMa, rows.Where(r => r[0].Text == "RCD rating").Select(r => r[1].Number!.Value));
    }

    private static DataTable Table(string name) => DataTables.All.Single(t => t.Name == name);
}
