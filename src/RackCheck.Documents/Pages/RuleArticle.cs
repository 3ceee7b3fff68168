using System.Globalization;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Survey.Limits;

namespace RackCheck.Documents.Pages;

/// <summary>The page of a rule, made from its descriptor. The finding on it is the one that its failing rack has.</summary>
/// <param name="types">Types of the contract.</param>
/// <param name="checker">Checks the failing rack.</param>
internal sealed class RuleArticle(ContractTypes types, RackChecker checker)
{
    /// <summary>Writes the page.</summary>
    /// <param name="rule">The rule.</param>
    public Html Write(RuleDescriptor rule)
    {
        var path = Paths.Rule(rule.Id);
        var (fails, passes) = JsonListing.Compare(rule.FailingRack, rule.PassingRack);
        var concern = rule.Concern == Concern.Site ? "the site" : "the product";
        return Html.Of($"""
            {PageFrame.Trail(path, (Paths.Rules, "Rules"), ($"{Paths.Rules}#{rule.Theme}", Words.Capital(rule.Theme)))}
            <h1>{rule.Title}<code>{rule.Id}</code></h1>
            <p>{Signs.Of(rule)}counts for {concern}</p>
            <p class="lead">{rule.What}</p>
            <h2>Why it matters</h2>
            <p>{rule.Why}</p>
            {Cautions(rule)}
            <h2>Formula</h2>
            <p class="formula">{rule.Formula}</p>
            {Limits(rule)}
            {Drawing(path, rule)}
            {Finding(rule)}
            <h2>Racks</h2>
            <p>The lines in which the two racks differ are marked.</p>
            <div class="columns"><section><h3>This rack breaks the rule</h3>{fails}
            <p>{CaseLink.Check(path, rule.FailingRack, "Open in the workbench")}</p></section>
            <section><h3>This rack is at the limit and passes</h3>{passes}
            <p>{CaseLink.Check(path, rule.PassingRack, "Open in the workbench")}</p></section></div>
            <h2>Remedies</h2>
            {Html.List(rule.Remedies)}
            <p class="small">A report offers a remedy as a JSON patch, and only if all rules find that the finding is gone and no error is new.</p>
            <h2>Members that the rule reads</h2>
            {Html.List(rule.Needs.Select(n => Need(path, n)))}
            {(rule.Notes.Count == 0 ? Html.None : Html.Of($"<h2>Notes</h2>{Html.List(rule.Notes)}"))}
            <h2>Sources</h2>
            {TablePages.Listed(rule.Sources.Select(ReferencePages.Of))}
            {Tables(path, rule)}
            {Changes(path, rule)}
            """);
    }

    private static Html Cautions(RuleDescriptor rule) => rule.Cautions.Count == 0 ? Html.None
        : Html.Of($"<div class=\"caution\" role=\"note\">{rule.Cautions.Select(c => Html.Of($"<p>{c.Text}</p>"))}</div>");

    private static Html Limits(RuleDescriptor rule) => rule.Limits.Count == 0 ? Html.None : Html.Of($"""
        <h2>Limits</h2>
        <p>A policy can set them{(rule.Safety ? ", in the stricter direction only" : "")}.</p>
        {Html.Table("Limits", [new("Name"), new("Meaning"), new("Default"), new("Range"), new("Stricter")], rule.Limits.Select(Limit))}
        """);

    private static Html[] Limit(RuleLimit limit) =>
    [
        Html.Of($"<code>{limit.Name}</code>"),
        Html.Text(limit.Meaning),
        Html.Of($"{limit.Default} {limit.Unit}"),
        Html.Of($"{limit.Minimum} to {limit.Maximum} {limit.Unit}"),
        Html.Text(limit.Stricter == Stricter.Lower ? "lower" : "higher"),
    ];

    private static Html Drawing(string path, RuleDescriptor rule)
    {
        var figures = Glossary.All.Where(f => f.Members.Intersect(rule.Needs, StringComparer.Ordinal).Any()).ToArray();
        return figures.Length == 0 ? Html.None : Html.Of($"""
            <h2>Dimensions</h2>
            <p>Drawn in the reference: {Html.Join(figures.Select(f => PageFrame.Link(path, $"{Paths.Dimensions}#{f.Id}", f.Title)), ", ")}.</p>
            {(rule.Theme == "depth" ? Glossary.Figure(figures[0]) : Html.None)}
            """);
    }

    private Html Finding(RuleDescriptor rule)
    {
        var rack = JsonSerializer.Deserialize(rule.FailingRack, ContractJson.Default.RackDescription)!;

        // Pages are made without a product catalogue, and a rack that takes a height from it cannot be checked without.
        if (rack.Items.Any(i => i.HeightU is null) || checker.Check(rack).Findings.FirstOrDefault(f => f.Rule == rule.Id) is not { } finding)
        {
            return Html.None;
        }

        (string Name, string? Value)[] facts =
        [
            ("Actual", Of(finding.Actual)), ("Limit", Of(finding.Limit)), ("Calculation", finding.Calculation),
            ("Remedy offered", finding.Remedies.Count > 0 ? finding.Remedies[0].Title : finding.NoRemedy),
        ];
        return Html.Of($"""
            <h2>What a report says</h2>
            <p>The first rack below has this finding:</p>
            <p>{Signs.Of(finding.Severity)}{finding.Message}</p>
            <dl>{facts.Where(f => f.Value is not null).Select(f => Html.Of($"<dt>{f.Name}</dt><dd>{f.Value}</dd>"))}</dl>
            """);
    }

    private static string? Of(Quantity? quantity) => quantity is null ? null : string.Create(CultureInfo.InvariantCulture, $"{quantity.Value} {quantity.Unit}");

    private Html Need(string path, string pointer) => types.AddressOfMember(pointer) is { } address
        ? Html.Of($"<a href=\"{Paths.RootOf(path)}{address}\"><code>{pointer}</code></a>")
        : Html.Of($"<code>{pointer}</code>");

    private static Html Tables(string path, RuleDescriptor rule)
    {
        var tables = ReferencePages.All.Where(t => t.Sources.Select(s => s.Key).Intersect(rule.SourceKeys, StringComparer.Ordinal).Any()).ToArray();
        return tables.Length == 0 ? Html.None : Html.Of($"""
            <h2>Tables from the same sources</h2>
            {Html.List(tables.Select(t => PageFrame.Link(path, $"{Paths.Tables}/{t.Table}", t.Title)))}
            """);
    }

    private static Html Changes(string path, RuleDescriptor rule)
    {
        var changes = RuleSet.Changes.SelectMany(c => c.Changes.Where(t => Names(t, rule.Id)).Select(t => (c.Version, Text: t))).ToArray();
        return changes.Length == 0 ? Html.None : Html.Of($"""
            <h2>Changes</h2>
            {Html.List(changes.Select(c => Html.Of($"{PageFrame.Link(path, $"{Paths.Rules}#{c.Version}", c.Version)}: {c.Text}")))}
            """);
    }

    // The id as a whole, not as the beginning of a longer one.
    private static bool Names(string text, string id)
    {
        var at = text.IndexOf(id, StringComparison.Ordinal);
        return at >= 0 && (at + id.Length == text.Length || text[at + id.Length] is not ('-' or (>= 'a' and <= 'z')));
    }
}
