namespace RackCheck.Engineering.Tests;

public sealed class ElectricalTablesTests
{
    [Theory]
    [InlineData("breakers", 7)] // two multiples of three curves, and the continuous share
    [InlineData("cables", 6)]
    [InlineData("connectors", 20)] // all but what is hardwired
    [InlineData("earth-conductors", 39)] // 14 limits, 4 ratings of RCDs, 21 sections
    public void A_table_holds_all_that_the_formulae_use(string name, int rows) => Assert.Equal(rows, Table(name).Rows.Length);

    [Fact]
    public void The_breakers_are_those_of_the_curves()
    {
        var values = Table("breakers").Rows.ToDictionary(r => r[0].Text!, r => r[1].Number);
        Assert.All(Breakers.Curves, c =>
        {
            Assert.Equal(c.Least, values[$"curve {c.Curve}, least trip"]);
            Assert.Equal(c.Greatest, values[$"curve {c.Curve}, greatest trip"]);
        });
        Assert.Equal(80, values["continuous load"]); // handbook H6
    }

    [Fact]
    public void The_cables_drop_what_the_formula_says() =>
        Assert.All(Table("cables").Rows, r =>
        {
            // 1 m and 1000 A: volts are millivolts an ampere and metre.
            Assert.Equal(Cables.DropV(Cables.Find(r[0].Number!.Value)!.DropMvPerAM, 1, 1000, 1), r[1].Number!.Value, 1e-9);
            Assert.Equal(Cables.DropV(r[1].Number!.Value, 1, 1000, 3), r[2].Number!.Value, 1e-3);
        });

    [Fact]
    public void The_connectors_take_what_the_list_says()
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
    [InlineData("same section", 16)] // handbook H7, this and all that follow
    [InlineData("half section", 35)]
    [InlineData("least section, protected", 2.5)]
    [InlineData("least section, not protected", 4)]
    [InlineData("k, separate", 143)]
    [InlineData("k, in a cable", 115)]
    [InlineData("resistivity", 0.017241)]
    [InlineData("path to the bar", 0.1)]
    [InlineData("secured connection", 3.5)]
    [InlineData("high-integrity earthing", 10)]
    [InlineData("standing leakage through an RCD", 30)]
    [InlineData("high-integrity earthing, main conductor", 10)] // handbook-detail 7, BS 7671 543.7.1.203
    public void The_earth_conductors_are_those_of_the_handbook(string quantity, double value) =>
        Assert.Equal(value, Table("earth-conductors").Rows.Single(r => r[0].Text == quantity)[1].Number);

    [Fact]
    public void The_sections_and_ratings_on_offer_are_those_that_remedies_take()
    {
        Assert.Equal(EarthConductors.SectionsMm2, Table("earth-conductors").Rows.Where(r => r[0].Text == "section on offer").Select(r => r[1].Number!.Value));
        Assert.Equal(EarthConductors.RcdRatingsMa, Table("earth-conductors").Rows.Where(r => r[0].Text == "RCD on offer").Select(r => r[1].Number!.Value));
    }

    private static DataTable Table(string name) => DataTables.All.Single(t => t.Name == name);
}
