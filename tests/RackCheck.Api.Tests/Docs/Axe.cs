using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>Asks axe-core, an independent engine, whether a page keeps the rules of WCAG 2.2 level AA that a program can judge.</summary>
internal static class Axe
{
    /// <summary>The rules of the standard, and what else the engine takes for good practice.</summary>
    public const string All = """{ type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }""";

    /// <summary>The rules of the standard.</summary>
    public const string Standard = """{ type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }""";

    /// <summary>Those of the standard that a colour scheme can break.</summary>
    public const string Colours = """{ type: "rule", values: ["color-contrast", "link-in-text-block"] }""";

    private static readonly Lazy<string> Script = new(new BundledAxeScriptProvider().GetScript);

    /// <summary>Puts the engine into the page that is shown. It stays until the page is left.</summary>
    /// <param name="page">The page.</param>
    public static Task EnterAsync(IPage page) => page.EvaluateAsync(Script.Value);

    /// <summary>Violations of the page as it is shown now.</summary>
    /// <param name="page">A page with the engine in it.</param>
    /// <param name="rules">One of the sets of rules above.</param>
    public static async Task<IReadOnlyList<string>> ViolationsAsync(IPage page, string rules = All)
    {
        var found = await page.EvaluateAsync<JsonElement>($$"""
            async () => (await axe.run(document, { runOnly: {{rules}}, resultTypes: ["violations"], preload: false }))
              .violations.map(v => `${v.id}, ${v.nodes.length} times: ${v.nodes[0].html.slice(0, 300)} ${v.nodes[0].failureSummary}`)
            """);
        return [.. found.EnumerateArray().Select(v => v.GetString()!)];
    }
}
