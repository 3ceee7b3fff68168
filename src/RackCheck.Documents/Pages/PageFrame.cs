using RackCheck.Rules;

namespace RackCheck.Documents.Pages;

/// <summary>What all pages share: head, navigation, search, footer. Addresses are relative, so that pages work behind any path prefix.</summary>
internal static class PageFrame
{
    /// <summary>Name of the service.</summary>
    public const string Service = "Rack check service";

    private static readonly (string Path, string Name)[] Menu =
    [
        (Paths.Start, "Start"), (Paths.Rules, "Rules"), (Paths.Reference, "Reference"), (Paths.Workbench, "Workbench"), (Paths.Explorer, "Explorer"),
    ];

    /// <summary>Writes a page.</summary>
    /// <param name="path">Its address below the service's, without a slash in front.</param>
    /// <param name="title">Its title.</param>
    /// <param name="summary">What it shows, in a sentence.</param>
    /// <param name="body">Its content.</param>
    public static string Write(string path, string title, string summary, Html body)
    {
        var root = Paths.RootOf(path);
        var full = path == Paths.Start ? title : $"{title} · {Service}";
        return Html.Of($"""
            <!DOCTYPE html>
            <html lang="en" data-root="{root}">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <meta name="description" content="{summary}">
            <title>{full}</title>
            <link rel="icon" type="image/svg+xml" href="{root}{Paths.Icon}">
            <link rel="stylesheet" href="{root}{Paths.Style}">
            <script src="{root}{Paths.Script}" defer></script>
            </head>
            <body>
            <a class="skip" href="#content">Skip to the content</a>
            <header>
            <a class="brand" href="{root}{Paths.Start}">{Service}</a>
            <nav aria-label="Documentation"><ul>{Menu.Select(m => MenuEntry(path, root, m.Path, m.Name))}</ul></nav>
            <form role="search" action="{root}{Paths.Search}">
            <label class="hidden" for="find">Search the documentation</label><input id="find" name="q" type="search" placeholder="Rule, member, table"
            autocomplete="off"><button>Search</button>
            </form>
            </header>
            <main id="content">
            {body}
            </main>
            <footer>
            <p>{Cautions.Documentation}</p>
            <p>Ruleset {RuleSet.CurrentVersion} · <a href="{root}openapi/v1.json">contract, OpenAPI 3.1</a></p>
            </footer>
            </body>
            </html>

            """).Markup;
    }

    /// <summary>A trail from the top to a page.</summary>
    /// <param name="path">Address of the page.</param>
    /// <param name="steps">Addresses and names above it.</param>
    public static Html Trail(string path, params (string Path, string Name)[] steps) => Html.Of(
        $"<nav class=\"trail\" aria-label=\"Breadcrumb\"><ol>{steps.Select(s => Html.Of($"<li>{Link(path, s.Path, s.Name)}</li>"))}</ol></nav>\n");

    /// <summary>A link from one page to another.</summary>
    /// <param name="from">Address of the page that it is on.</param>
    /// <param name="to">Address that it leads to.</param>
    /// <param name="text">Its text.</param>
    public static Html Link(string from, string to, string text) => Html.Of($"<a href=\"{Paths.RootOf(from)}{to}\">{text}</a>");

    private static Html MenuEntry(string path, string root, string to, string name)
    {
        var isHere = path == to || (to != Paths.Start && path.StartsWith(to + "/", StringComparison.Ordinal));
        var mark = isHere ? Html.Of($" aria-current=\"{(path == to ? "page" : "true")}\"") : Html.None;
        return Html.Of($"<li><a href=\"{root}{to}\"{mark}>{name}</a></li>");
    }
}
