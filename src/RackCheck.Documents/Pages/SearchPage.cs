using System.Text.Json;
using RackCheck.Rules;

namespace RackCheck.Documents.Pages;

/// <summary>The search over all pages: an index that the script of the page reads, and a plain list for readers without a script.</summary>
internal sealed class SearchPage
{
    private readonly List<Entry> entries = [];

    /// <summary>Collects the entries.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="types">Types of the contract.</param>
    /// <param name="operations">The operations.</param>
    /// <param name="content">Problems, codes of faults and examples.</param>
    public SearchPage(IEnumerable<RuleDescriptor> rules, ContractTypes types, OperationsPage operations, DocsContent content)
    {
        entries.Add(new Entry("page", "Workbench", Paths.Workbench, WorkbenchPage.Summary));
        entries.Add(new Entry("page", "Web shop", Paths.Shop, ShopPage.Summary));
        entries.Add(new Entry("page", "Testing and mocking: examples and recorded answers", Paths.Testing, TestingPage.Summary));
        entries.Add(new Entry("page", "Parts of the sample (demo) catalogue", Paths.Parts, PartsPage.Summary));
        entries.AddRange(operations.All.Select(o => new Entry("operation", o.Name, $"{Paths.Operations}#{o.Id}", o.Text)));
        entries.AddRange(content.Examples.Keys.Order(StringComparer.Ordinal).Select(e => new Entry("example", e, $"{Paths.Examples}/{e}.json", "")));
        entries.AddRange(ConceptsPage.All.Select(c => new Entry("concept", c.Title, $"{Paths.Concepts}#{c.Id}", "")));
        entries.AddRange(Glossary.All.Select(g => new Entry("dimension", g.Title, $"{Paths.Dimensions}#{g.Id}", g.Text)));
        entries.AddRange(rules.Select(r => new Entry("rule", r.Title, Paths.Rule(r.Id), $"{r.Id} {r.What}")));
        entries.AddRange(ReferencePages.All.Select(t => new Entry("table", t.Title, TablePages.AddressOf(t), t.Table)));
        entries.AddRange(content.Problems.Select(p => new Entry("problem", p.Title, ProblemPages.AddressOf(p), $"{p.Name} {p.Status} {p.Cause}")));
        entries.AddRange(content.Faults.Value.Select(f => new Entry("fault code", f.Code, $"{Paths.Problems}#{f.Code}", f.Meaning)));
        foreach (var type in types.All.SelectMany(d => d.Types))
        {
            entries.Add(new Entry("type", type.Name, types.AddressOf(type.Name), type.Description));
            entries.AddRange(type.Members.Select(m => new Entry("member", $"{type.Name}.{m.Name}", $"{types.AddressOf(type.Name)}.{m.Name}", m.Description)));
        }
    }

    /// <summary>Writes the page.</summary>
    public Html Write() => Html.Of($"""
        <h1>Search</h1>
        <div data-search="{Paths.RootOf(Paths.Search)}{Paths.SearchIndex}" hidden><p role="status"></p><ol class="hits"></ol></div>
        <div data-without-search>
        <p>The search needs a script. Without one, all pages are listed here.</p>
        {entries.Where(e => e.Kind is not ("member" or "type")).GroupBy(e => e.Kind).Select(Group)}
        <p>{PageFrame.Link(Paths.Search, Paths.Members, "Types and members")} have pages of their own.</p>
        </div>
        """);

    /// <summary>Writes the index.</summary>
    /// <returns>JSON: kind, title, address and text of each entry.</returns>
    public byte[] Index()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartArray();
            foreach (var entry in entries)
            {
                json.WriteStartArray();
                foreach (var value in (string[])[entry.Kind, entry.Title, entry.Path, entry.Text])
                {
                    json.WriteStringValue(value);
                }

                json.WriteEndArray();
            }

            json.WriteEndArray();
        }

        return buffer.ToArray();
    }

    private static Html Group(IGrouping<string, Entry> group) => Html.Of($"""
        <h2>{Words.Capital(group.Key)}s</h2>
        {Html.List(group.OrderBy(e => e.Title, StringComparer.Ordinal).Select(e => PageFrame.Link(Paths.Search, e.Path, e.Title)))}
        """);

    private sealed record Entry(string Kind, string Title, string Path, string Text);
}
