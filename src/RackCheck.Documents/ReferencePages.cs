using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Planning;
using RackCheck.Remedies;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Bounds;

namespace RackCheck.Documents;

/// <summary>Converts tables and sources to the contract.</summary>
public static class ReferencePages
{
    /// <summary>All tables, sorted by name: those of the formulae, and the plausible ranges of missing facts.</summary>
    public static IReadOnlyList<ReferenceTable> All { get; } =
    [
        .. DataTables.All.Select(Of)
            .Append(Bounds())
            .Append(OfWordings("questions", "Wordings of questions", FactTable.Wordings))
            .Append(OfWordings("wordings", "Wordings of subjects, remedies, assumptions, cautions, baskets and proposals", CommonTexts))
            .OrderBy(t => t.Table, StringComparer.Ordinal),
    ];

    /// <summary>Wordings of texts that any rule can have.</summary>
    public static IReadOnlyList<MessageWording> CommonTexts =>
    [
        .. Subjects.Wordings, .. RemedyTitles.Wordings, .. RemedyTrials.Wordings, .. Bases.Wordings, .. AssumedTexts.Wordings, .. Cautions.Wordings,
        .. FactTable.Bounded.Select(f => f.Assumed.Wording), .. PlanningWordings.All,
    ];

    private static ReferenceTable Bounds() => new()
    {
        Table = "bounds",
        Title = "Plausible ranges of facts that a description does not give",
        Columns = [new() { Name = "member" }, new() { Name = "range" }, new() { Name = "unit" }, new() { Name = "adverse" }, new() { Name = "basis" }],
        Rows =
        [
            .. FactTable.Bounded.OrderBy(f => f.Key, StringComparer.Ordinal).Select(
                f => new Scalar[] { f.Key, f.Range!, f.Unit ?? "", f.LowIsAdverse ? "low" : "high", f.Basis }),
        ],
        Sources = [Of(Engineering.Sources.RangePractice)],
    };

    private static ReferenceTable OfWordings(string table, string title, IEnumerable<MessageWording> wordings) => new()
    {
        Table = table,
        Title = title,
        Columns = [new() { Name = "messageKey" }, new() { Name = "template" }],
        Rows = [.. wordings.OrderBy(w => w.Key, StringComparer.Ordinal).Select(w => new Scalar[] { w.Key, w.Template })],
        Sources = [],
    };

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
