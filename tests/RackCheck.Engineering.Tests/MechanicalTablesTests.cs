namespace RackCheck.Engineering.Tests;

public sealed class MechanicalTablesTests
{
    [Theory]
    [InlineData("cable-fill", 5)]
    [InlineData("delivery", 5)]
    [InlineData("floor-classes", 6)]
    [InlineData("handling", 5)]
    [InlineData("stability", 7)]
    public void Table_has_expected_number_of_rows(string name, int rows) => Assert.Equal(rows, Table(name).Rows.Length);

    [Theory]
    [InlineData("cable-fill", "fill", 40)] // EN 50174 and common practice, this and the next three
    [InlineData("cable-fill", "channels, 600 wide", 7740)]
    [InlineData("cable-fill", "channels, 800 wide", 27740)]
    [InlineData("cable-fill", "bend radius", 4)]
    [InlineData("delivery", "clearance", 20)] // common practice, this and the next three
    [InlineData("delivery", "tilt", 45)]
    [InlineData("delivery", "pallet height", 150)]
    [InlineData("delivery", "EUR pallet, long side", 1200)]
    [InlineData("stability", "tip angle", 10)] // IEC 62368-1 8.6 and common practice, this row and the following
    [InlineData("stability", "push, share", 13)]
    [InlineData("stability", "push, cap", 250)]
    [InlineData("stability", "push, height", 1500)]
    [InlineData("stability", "moment ratio", 1.25)]
    [InlineData("stability", "foot inset", 50)]
    [InlineData("stability", "castor inset", 30)]
    public void Values_match_reference_values(string table, string quantity, double value) =>
        Assert.Equal(value, Table(table).Rows.Single(r => r[0].Text == quantity)[1].Number);

    [Fact]
    public void Floor_classes_match_reference_values() =>
        Assert.Equal( // EN 12825
            [(1, 4, 2, 1.333), (2, 6, 3, 2), (3, 8, 4, 2.667), (4, 9, 4.5, 3), (5, 10, 5, 3.333), (6, 12, 6, 4)],
            Table("floor-classes").Rows.Select(r => (r[0].Number!.Value, r[1].Number!.Value, r[2].Number!.Value, r[3].Number!.Value)));

    [Fact]
    public void Handling_table_matches_zones() =>
        Assert.All(Table("handling").Rows, r => Assert.Equal(r[3].Number, ManualHandling.LimitKg((r[1].Number!.Value + r[2].Number!.Value) / 2)));

    private static DataTable Table(string name) => DataTables.All.Single(t => t.Name == name);
}
