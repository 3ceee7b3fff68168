using System.Globalization;
using System.Text;
using RackCheck.Model;

namespace RackCheck.Documents.Pages;

/// <summary>The reference tables as pages and as CSV.</summary>
internal static class TablePages
{
    /// <summary>Writes the overview.</summary>
    public static Html Index() => Html.Of($"""
        {PageFrame.Trail(Paths.Tables, (Paths.Reference, "Reference"))}
        <h1>Tables</h1>
        <p class="lead">The tables that the rules calculate with, made from the same constants as the calculations. Each is also a CSV file and an answer of
        <code>GET /v1/reference/{Words.Brace("table")}</code>.</p>
        {Html.List(ReferencePages.All.Select(t => Html.Of($"{PageFrame.Link(Paths.Tables, AddressOf(t), t.Title)} <code>{t.Table}</code>")))}
        """);

    /// <summary>Address of a table.</summary>
    /// <param name="table">The table.</param>
    public static string AddressOf(ReferenceTable table) => $"{Paths.Tables}/{table.Table}";

    /// <summary>Writes the page of a table.</summary>
    /// <param name="table">The table.</param>
    public static Html Write(ReferenceTable table)
    {
        var path = AddressOf(table);
        var heads = table.Columns.Select(c => Html.Of($"{c.Name}{(c.Unit is null ? "" : ", " + c.Unit)}"));
        return Html.Of($"""
            {PageFrame.Trail(path, (Paths.Reference, "Reference"), (Paths.Tables, "Tables"))}
            <h1>{table.Title}<code>{table.Table}</code></h1>
            <p>{PageFrame.Link(path, path + ".csv", "CSV file")} · {PageFrame.Link(path, "v1/reference/" + table.Table, "JSON")}</p>
            {Html.Table(table.Title, heads, table.Rows.Select(r => r.Select(c => Html.Text(Of(c))).ToArray()))}
            {(table.Sources.Count == 0 ? Html.None : Sources(table.Sources))}
            """);
    }

    /// <summary>A table as CSV: names of the columns with their units, then the rows.</summary>
    /// <param name="table">The table.</param>
    /// <returns>UTF-8.</returns>
    public static byte[] Csv(ReferenceTable table)
    {
        var text = new StringBuilder();
        CsvText.Add(text, table.Columns.Select(c => c.Unit is null ? c.Name : $"{c.Name} ({c.Unit})"));
        foreach (var row in table.Rows)
        {
            CsvText.Add(text, row.Select(c => c.Number is null ? CsvText.Safe(Of(c))! : Of(c)));
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>A list of sources with their standing.</summary>
    /// <param name="sources">The sources.</param>
    public static Html Listed(IEnumerable<SourcePage> sources) =>
        Html.List(sources.Select(s => Html.Of($"<code>{s.Key}</code> {s.Text} <span class=\"small\">({s.Standing})</span>")));

    private static Html Sources(IReadOnlyList<SourcePage> sources) => Html.Of($"""
        <h2>Sources</h2>
        {Listed(sources)}
        """);

    private static string Of(Scalar cell) => cell.Number?.ToString(CultureInfo.InvariantCulture) ?? cell.Text
        ?? (cell.Truth is { } truth ? truth ? "true" : "false" : string.Join(" to ", cell.List!.Select(Of)));
}
