namespace RackCheck.Documents.Pages;

/// <summary>The workbench: a description, its drawing and its findings side by side, to be changed and checked again. Its script does the work.</summary>
internal static class WorkbenchPage
{
    /// <summary>What it is for, in a sentence.</summary>
    public const string Summary = "Write the description of a rack, see it drawn, apply remedies and answer questions.";

    private const string First = $"{Paths.Examples}/{SampleCode.Example}.json";

    /// <summary>Names of its assets; those that do not change the page are left out.</summary>
    public static readonly string[] Assets =
    [
        "main.js", "answers.js", "cards.js", "case.js", "drawing.js", "json.js", "lines.js", "schema.js", "editor.js", "editor-licences.txt", "workbench.css",
    ];

    private static readonly (string Kind, string Start)[] Kinds = [("check", "rack-"), ("basket", "basket-"), ("proposal", "proposal-")];

    /// <summary>Address of an asset.</summary>
    /// <param name="name">Its name.</param>
    public static string AddressOf(string name) => $"{Paths.Workbench}/{name}";

    /// <summary>Writes the page.</summary>
    /// <param name="examples">Names of the example requests.</param>
    public static Html Write(IEnumerable<string> examples) => Html.Of($"""
        <link rel="stylesheet" href="{Root}{AddressOf("workbench.css")}">
        <script type="module" src="{Root}{AddressOf("main.js")}"></script>
        <h1>Workbench</h1>
        <p>{Summary} The case is kept in the address and nowhere else: copy the link to share it.</p>
        <noscript><p>The workbench needs a script. The {PageFrame.Link(Paths.Workbench, Paths.Start, "quick start")} shows how to send a rack without
        one.</p></noscript>
        <div class="bench" data-bench="bench" data-first="{First}" hidden>
        <div class="bar">
        <label>Kind<select data-bench="kind">
        <option value="check">Rack</option><option value="basket">Basket</option><option value="proposal">Proposal</option></select></label>
        <label>Example<select data-bench="example"><option value="">Open an example</option>
        {examples.Where(e => Kinds.Any(k => e.StartsWith(k.Start, StringComparison.Ordinal))).Order(StringComparer.Ordinal).Select(Option)}</select></label>
        <button type="button" class="main" data-bench="check" aria-keyshortcuts="Control+Enter">Check</button>
        <button type="button" data-bench="share">Copy link</button>
        <label>View<select data-bench="view"><option>all</option><option>front</option><option>rear</option><option>side</option></select></label>
        <label class="key">API key, if one is needed<input data-bench="key" type="password" autocomplete="off"></label>
        </div>
        <div class="panes">
        <section aria-label="Description"><div class="pane editor" data-bench="editor"></div><p class="member" data-bench="help"></p></section>
        <div class="pane drawing" data-bench="drawing" tabindex="0" role="region" aria-label="Drawing of the rack"></div>
        </div>
        <div role="status"><p data-bench="stale" hidden>The description has changed since it was checked.</p><div data-bench="verdict"></div>
        <div class="change" data-bench="change"></div></div>
        <p data-bench="undoing" hidden><button type="button" data-bench="undo">Undo</button></p>
        <div data-bench="more"></div>
        <div data-bench="findings"></div>
        <div data-bench="questions"></div>
        <div class="small" data-bench="cautions"></div>
        <p class="small">Control+Enter in the description checks it. The editor is made of
        <a href="{Root}{AddressOf("editor-licences.txt")}">packages under the MIT licence</a>.</p>
        </div>
        """);

    private static string Root => Paths.RootOf(Paths.Workbench);

    private static Html Option(string name)
    {
        var kind = Kinds.FirstOrDefault(k => name.StartsWith(k.Start, StringComparison.Ordinal)).Kind;
        return kind is null ? Html.None : Html.Of($"<option value=\"{kind} {Paths.Examples}/{name}.json\">{name}</option>");
    }
}
