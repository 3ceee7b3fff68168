using System.Text.RegularExpressions;

namespace RackCheck.Engineering.Tests;

public sealed partial class DataTablesTests
{
    [Fact]
    public void Names_are_unique_sorted_and_valid_in_URL()
    {
        var names = DataTables.All.Select(t => t.Name).ToArray();
        Assert.Equal(names.Distinct().Order(StringComparer.Ordinal), names);
        Assert.All(names, n => Assert.Matches(Slug(), n));
    }

    [Fact]
    public void Every_table_has_a_title_columns_rows_and_sources() =>
        Assert.All(DataTables.All, t =>
        {
            Assert.NotEqual("", t.Title);
            Assert.NotEmpty(t.Columns);
            Assert.NotEmpty(t.Rows);
            Assert.NotEmpty(t.Sources);
            Assert.Equal(t.Columns.Select(c => c.Name).Distinct(), t.Columns.Select(c => c.Name));
            Assert.All(t.Columns, c => Assert.Matches(CamelCase(), c.Name));
        });

    [Fact]
    public void Every_row_has_one_cell_of_the_right_kind_per_column() =>
        Assert.All(DataTables.All, t =>
        {
            for (var column = 0; column < t.Columns.Length; column++)
            {
                Assert.All(t.Rows, r => Assert.Equal(t.Columns.Length, r.Length));
                Assert.Single(t.Rows.Select(r => r[column].Number is not null).Distinct());
                Assert.All(t.Rows, r => Assert.True(r[column].Number is null != r[column].Text is null));
                Assert.True(t.Columns[column].Unit is null || t.Rows[0][column].Number is not null, $"{t.Name}: a unit of words");
            }
        });

    [Fact]
    public void No_row_is_duplicated() =>
        Assert.All(
            DataTables.All,
            t => Assert.Equal(t.Rows.Length, t.Rows.Select(r => string.Join('|', r.Select(c => c.Text ?? $"{c.Number}"))).Distinct().Count()));

    [Fact]
    public void Panel_heights_match_formula()
    {
        var table = DataTables.All.Single(t => t.Name == "panel-heights");
        Assert.Equal(60, table.Rows.Length);
        Assert.All(table.Rows, r =>
        {
            // IEC 60297-3-100: n x 44.45 - 0.8, and n x 44.45.
            Assert.Equal((r[0].Number!.Value * 44.45) - 0.8, r[1].Number!.Value, 1e-3);
            Assert.Equal(r[0].Number!.Value * 44.45, r[2].Number!.Value, 1e-3);
        });
    }

    [GeneratedRegex("^[a-z]+(-[a-z]+)*$")]
    private static partial Regex Slug();

    [GeneratedRegex("^[a-z][A-Za-z]*$")]
    private static partial Regex CamelCase();
}
