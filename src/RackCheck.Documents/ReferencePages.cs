using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Documents;

/// <summary>Converts tables and sources to the contract.</summary>
public static class ReferencePages
{
    /// <summary>Converts a table.</summary>
    /// <param name="table">The data.</param>
    /// <returns>The page.</returns>
    public static ReferenceTable Of(DataTable table) => new()
    {
        Table = table.Name,
        Title = table.Title,
        Columns = [.. table.Columns.Select(c => new ReferenceColumn { Name = c.Name, Unit = c.Unit })],
        Rows = [.. table.Rows.Select(r => r.Select(ScalarOf).ToArray())],
        Sources = [.. table.Sources.Select(Of)],
    };

    /// <summary>Converts a source.</summary>
    /// <param name="source">The source.</param>
    /// <returns>The page.</returns>
    public static SourcePage Of(Source source) => new()
    {
        Key = source.Key,
        Text = source.Text,
        Standing = source.Standing switch
        {
            SourceStanding.SecondarySource => "secondary source",
            SourceStanding.ValueFromMemory => "value from memory",
            SourceStanding.CommonPractice => "common practice, no source",
            _ => "derived",
        },
    };

    private static Scalar ScalarOf(DataCell cell) => cell.Number is { } number ? number : cell.Text ?? "";
}
