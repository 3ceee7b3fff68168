using System.Collections.Frozen;
using System.Text;
using System.Text.Json;
using RackCheck.Documents.Drawings;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Documents.Pages;

/// <summary>What the documentation is made of besides the rules and the tables.</summary>
/// <param name="Checker">Checks the racks on the pages of the rules.</param>
/// <param name="Contract">The contract, OpenAPI 3.1; read when the first page needs it.</param>
/// <param name="Examples">Example requests, by name.</param>
/// <param name="Answers">Recorded answers, by name.</param>
/// <param name="Parts">Products of the sample catalogue.</param>
/// <param name="Problems">Types of problems.</param>
/// <param name="Faults">Codes of faults in requests; read when the first page needs them.</param>
public sealed record DocsContent(
    RackChecker Checker,
    Lazy<JsonElement> Contract,
    IReadOnlyDictionary<string, byte[]> Examples,
    IReadOnlyDictionary<string, byte[]> Answers,
    Lazy<IReadOnlyList<Product>> Parts,
    IReadOnlyList<ProblemTopic> Problems,
    Lazy<IReadOnlyList<FaultTopic>> Faults);

/// <summary>A file of the documentation.</summary>
/// <param name="MediaType">Its media type.</param>
/// <param name="Make">Makes its content, the same each time.</param>
public sealed record DocsFile(string MediaType, Func<byte[]> Make);

/// <summary>The documentation: pages, style sheet, script, search index, tables as CSV, examples. Everything is made from the code that it documents.</summary>
public sealed class DocsSite
{
    /// <summary>Name of the explorer's style sheet beside its page.</summary>
    public const string ExplorerStyle = "explorer.css";

    /// <summary>Name of the explorer's script beside its page.</summary>
    public const string ExplorerScript = "explorer.js";

    private const string HtmlType = "text/html; charset=utf-8";

    private readonly Dictionary<string, DocsFile> files = new(StringComparer.Ordinal);
    private readonly DocsContent content;
    private readonly Lazy<ContractTypes> types;

    /// <summary>Lists the files. None is made yet.</summary>
    /// <param name="content">What the documentation is made of.</param>
    public DocsSite(DocsContent content)
    {
        this.content = content;
        types = new Lazy<ContractTypes>(() => new ContractTypes(content.Contract.Value));
        RuleDescriptor[] rules = [.. RuleSet.Default.All.Select(r => r.Descriptor)];
        AddAssets();
        Add(
            Paths.Start,
            PageFrame.Service,
            StartPage.Summary,
            () => StartPage.Write(Encoding.UTF8.GetString(content.Examples[SampleCode.Example]), rules.Length));
        Add(Paths.Workbench, "Workbench", WorkbenchPage.Summary, () => WorkbenchPage.Write(content.Examples.Keys));
        Add(Paths.Rules, "Rules", "All rules of the service, with filters.", () => RuleIndex.Write(rules));
        foreach (var rule in rules)
        {
            Add(Paths.Rule(rule.Id), rule.Title, rule.What, () => new RuleArticle(types.Value, content.Checker).Write(rule));
        }

        Add(Paths.Shop, "Web shop", ShopPage.Summary, ShopPage.Write);
        var operations = new Lazy<OperationsPage>(() => new OperationsPage(content.Contract.Value, types.Value));
        Add(Paths.Operations, "Operations", OperationsPage.Summary, () => operations.Value.Write());
        Add(Paths.Testing, "Testing and mocking", TestingPage.Summary, () => TestingPage.Write(content.Examples.Keys, content.Answers.Keys.ToHashSet()));
        Add(Paths.Parts, "Parts of the sample catalogue", PartsPage.Summary, () => PartsPage.Write(content.Parts.Value));
        AddReference();
        AddProblems();
        var search = new Lazy<SearchPage>(() => new SearchPage(rules, types.Value, operations.Value, content));
        Add(Paths.Search, "Search", "Search over rules, members, tables, dimensions, concepts and problems.", () => search.Value.Write());
        files[Paths.SearchIndex] = new DocsFile("application/json; charset=utf-8", () => search.Value.Index());
        Files = files.ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>Style sheet of the drawings on pages, which the content security policy has to allow by its hash.</summary>
    public static string DrawingStyle => SvgWriter.Style;

    /// <summary>The files, by their address below the service's own, without a slash in front.</summary>
    public IReadOnlyDictionary<string, DocsFile> Files { get; }

    private void AddAssets()
    {
        AddAsset(Paths.Style, "site.css");
        AddAsset(Paths.Script, "site.js");
        AddAsset(Paths.Icon, "icon.svg");
        foreach (var name in WorkbenchPage.Assets)
        {
            AddAsset(WorkbenchPage.AddressOf(name), "workbench/" + name);
        }

        AddAsset($"{Paths.Explorer}/{ExplorerStyle}", ExplorerStyle);
        AddAsset($"{Paths.Explorer}/{ExplorerScript}", ExplorerScript);
        foreach (var (folder, all) in new[] { (Paths.Examples, content.Examples), (Paths.Answers, content.Answers) })
        {
            foreach (var (name, json) in all)
            {
                files[$"{folder}/{name}.json"] = new DocsFile("application/json; charset=utf-8", () => json);
            }
        }
    }

    private void AddAsset(string path, string name) => files[path] = new DocsFile(
        Path.GetExtension(name) switch
        {
            ".css" => "text/css; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".txt" => "text/plain; charset=utf-8",
            _ => "image/svg+xml",
        },
        () => Asset(name));

    private void AddReference()
    {
        Add(Paths.Reference, "Reference", "Concepts, dimensions, members, tables and problems.", ReferenceIndex.Write);
        Add(Paths.Concepts, "Concepts", "What the words of a report mean.", ConceptsPage.Write);
        Add(Paths.Dimensions, "Dimensions", "Where each dimension starts and ends, drawn.", () => Glossary.Write(types.Value));
        Add(Paths.Members, "Members", "All members of requests and answers.", () => new MemberReference(types.Value).Index());
        foreach (var (name, title) in ContractTypes.Titles)
        {
            Add(
                $"{Paths.Members}/{name}",
                title,
                $"{title}: all members with unit, range and meaning.",
                () => new MemberReference(types.Value).Write(name, title));
        }

        Add(Paths.Tables, "Tables", "The tables that the rules calculate with.", TablePages.Index);
        foreach (var table in ReferencePages.All)
        {
            Add(TablePages.AddressOf(table), table.Title, $"{table.Title}: values, units and sources.", () => TablePages.Write(table));
            files[TablePages.AddressOf(table) + ".csv"] = new DocsFile("text/csv; charset=utf-8; header=present", () => TablePages.Csv(table));
        }
    }

    private void AddProblems()
    {
        Add(Paths.Problems, "Problems", "Problem types and fault codes.", () => ProblemPages.Index(content.Problems, content.Faults.Value));
        foreach (var problem in content.Problems)
        {
            Add(ProblemPages.AddressOf(problem), problem.Title, problem.Cause, () => ProblemPages.Write(problem));
        }
    }

    private void Add(string path, string title, string summary, Func<Html> body) =>
        files[path] = new DocsFile(HtmlType, () => Encoding.UTF8.GetBytes(PageFrame.Write(path, title, summary, body())));

    private static byte[] Asset(string name)
    {
        using var stream = typeof(DocsSite).Assembly.GetManifestResourceStream("Pages/" + name)
            ?? throw new InvalidOperationException($"There is no resource {name}.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
