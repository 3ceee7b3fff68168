using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using RackCheck.Documents.Pages;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The workbench in a real browser.</summary>
[Collection(Browsers.Name)]
public sealed partial class WorkbenchTests(Browsers browsers)
{
    private const string Finding = "[data-bench=findings] .card";

    [BrowserFact]
    public Task Remedy_is_applied_by_keyboard_undone_and_the_shared_link_gives_the_same() => browsers.VisitAsync(async page =>
    {
        await page.GotoAsync(browsers.AddressOf(Paths.Workbench));
        await page.Locator(Finding).First.WaitForAsync();
        await page.Locator("[data-bench=drawing] svg").WaitForAsync();
        var (address, text) = (page.Url, await TextAsync(page));
        Assert.Contains("#check=", address, StringComparison.Ordinal);

        // A finding lights its members and its place.
        await page.Locator(Finding).First.HoverAsync();
        await Assertions.Expect(page.Locator(".cm-lit").First).ToContainTextAsync("depthMm");
        await page.Locator("[data-bench=drawing] g.lit[data-fingerprint]").First.WaitForAsync();

        await page.Locator(Finding).First.Locator(".remedy").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync("The verdict was hold and is review.");
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync("/cabinet/depthMm: 800 → 1000");
        await Assertions.Expect(page.Locator("[data-bench=undo]")).ToBeFocusedAsync();
        Assert.Contains("\"depthMm\": 1000", await TextAsync(page), StringComparison.Ordinal);
        var changed = (page.Url, Text: await TextAsync(page));

        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync("Undone");
        Assert.Equal((address, text), (page.Url, await TextAsync(page)));

        await page.GotoAsync("about:blank");
        await page.GotoAsync(changed.Url);
        await page.Locator(Finding).First.WaitForAsync();
        Assert.Equal(changed.Text, await TextAsync(page));
        await Assertions.Expect(page.Locator("[data-bench=verdict] .sign")).ToHaveTextAsync("review");
    });

    [BrowserFact]
    public Task Question_is_answered_in_place() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page, "rack-power-and-earth");
        const string Pointer = "/site/delivery/liftingKg";
        var field = page.Locator($"[data-bench=questions] [name='{Pointer}']");
        await field.FillAsync("1200");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync($"{Pointer}: absent → 1200");
        await Assertions.Expect(field).ToHaveCountAsync(0);
    });

    [BrowserFact]
    public Task Invalid_description_shows_its_faults_and_help_on_members() => browsers.VisitAsync(
        async page =>
        {
            await page.GotoAsync(browsers.AddressOf(Paths.Workbench));
            await page.Locator(Finding).First.WaitForAsync();
            const string Text = """{\n  "cabinet": { "heightU": 42, "widthMm": 600,\n    "depthMm": -5 },\n  "colour": "red",\n  "items": []\n}""";
            await page.EvaluateAsync($"async () => location.hash = await (await import('./workbench/case.js')).toFragment('check', `{Text}`)");
            await Assertions.Expect(page.Locator("[data-bench=verdict] li")).ToHaveCountAsync(2);
            await Assertions.Expect(page.Locator(".cm-lint-marker-error")).ToHaveCountAsync(2);

            await page.Locator(".cm-line").Filter(new() { HasText = "depthMm" }).ClickAsync();
            await page.Keyboard.PressAsync("Home");
            await page.Keyboard.PressAsync("ArrowRight");
            await Assertions.Expect(page.Locator("[data-bench=help]")).ToContainTextAsync("depthMm: number.");
            await page.Keyboard.PressAsync("Home");
            await page.Keyboard.TypeAsync("!");
            await Assertions.Expect(page.Locator("[data-bench=stale]")).ToBeHiddenAsync();
            await Assertions.Expect(page.Locator(".cm-lint-marker-error")).ToHaveCountAsync(1);
        },
        expected: 422);

    [BrowserFact]
    public Task Link_that_unpacks_to_more_than_the_service_takes_is_no_case() => browsers.VisitAsync(async page =>
    {
        await page.GotoAsync(browsers.AddressOf(Paths.Rules));
        foreach (var (length, expected) in ((int, int?)[])[(1_000_000, 1_000_000), (50_000_000, null)])
        {
            Assert.Equal(expected, await page.EvaluateAsync<int?>($$"""
                async () => {
                  const { toFragment, fromFragment } = await import(new URL('workbench/case.js', location.href));
                  return (await fromFragment(await toFragment('check', 'x'.repeat({{length}}))))?.text.length ?? null;
                }
                """));
        }
    });

    // After the examples of RFC 6902, appendix A, and its errors: null where a patch does not apply.
    [BrowserFact]
    public Task Patch_is_applied_as_its_standard_says() => browsers.VisitAsync(async page =>
    {
        (string Document, string Patch, string? Patched)[] cases =
        [
            ("""{"foo":"bar"}""", """[{"op":"add","path":"/baz","value":"qux"}]""", """{"foo":"bar","baz":"qux"}"""),
            ("""{"foo":["bar","baz"]}""", """[{"op":"add","path":"/foo/1","value":"qux"}]""", """{"foo":["bar","qux","baz"]}"""),
            ("""{"baz":"qux","foo":"bar"}""", """[{"op":"remove","path":"/baz"}]""", """{"foo":"bar"}"""),
            ("""{"foo":["bar","qux","baz"]}""", """[{"op":"remove","path":"/foo/1"}]""", """{"foo":["bar","baz"]}"""),
            ("""{"baz":"qux","foo":"bar"}""", """[{"op":"replace","path":"/baz","value":"boo"}]""", """{"baz":"boo","foo":"bar"}"""),
            ("""{"foo":["all","cows","eat"]}""", """[{"op":"move","from":"/foo/0","path":"/foo/2"}]""", """{"foo":["cows","eat","all"]}"""),
            ("""{"baz":"qux","foo":[1]}""", """[{"op":"test","path":"/foo/0","value":1}]""", """{"baz":"qux","foo":[1]}"""),
            ("""{"baz":"qux"}""", """[{"op":"test","path":"/baz","value":"bar"}]""", null),
            ("""{"foo":"bar"}""", """[{"op":"add","path":"/baz/bat","value":"qux"}]""", null),
            ("""{"/":9,"~1":10}""", """[{"op":"test","path":"/~01","value":10}]""", """{"/":9,"~1":10}"""),
            ("""{"foo":["bar"]}""", """[{"op":"add","path":"/foo/-","value":["abc","def"]}]""", """{"foo":["bar",["abc","def"]]}"""),
            ("""{"foo":1}""", """[{"op":"add","path":"","value":{"bar":2}}]""", """{"bar":2}"""),
            ("""{"foo":1}""", """[{"op":"remove","path":"/bar"}]""", null),
        ];
        await page.GotoAsync(browsers.AddressOf(Paths.Rules));
        foreach (var (document, patch, patched) in cases)
        {
            var result = await page.EvaluateAsync<string?>($$"""
                async () => {
                  const { patched } = await import(new URL('workbench/json.js', location.href));
                  try { return JSON.stringify(patched({{document}}, {{patch}})); } catch { return null; }
                }
                """);
            Assert.Equal(patched, result);
        }
    });

    [BrowserFact]
    public Task Basket_and_proposal_lead_to_a_rack() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page, "basket-incomplete");
        await Assertions.Expect(page.Locator("[data-bench=more]")).ToContainTextAsync("Lines to add");
        await page.GetByText("Take the completed basket").ClickAsync();
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync("The verdict was");
        await page.GetByText("Check rack 1 by itself").ClickAsync();
        await Assertions.Expect(page.Locator("[data-bench=kind]")).ToHaveValueAsync("check");

        await OpenAsync(page, "proposal-own-equipment");
        await Assertions.Expect(page.Locator("[data-bench=more]")).ToContainTextAsync("Alternative 1", new() { Timeout = Browsers.PatienceMs });
        await page.Locator("[data-bench=drawing] svg").WaitForAsync();
    });

    [BrowserFact]
    public Task Basket_is_completed_line_by_line() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page, "basket-incomplete");
        var more = page.Locator("[data-bench=more]");
        await more.GetByRole(AriaRole.Button, new() { NameRegex = LineButton() }).First.WaitForAsync();
        var lines = await more.GetByRole(AriaRole.Button, new() { NameRegex = LineButton() }).CountAsync();
        var first = more.GetByRole(AriaRole.Button, new() { NameRegex = LineButton() }).First;
        var title = await first.TextContentAsync();
        await first.ClickAsync();
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync(title + ".");
        await Assertions.Expect(more.GetByText(title!, new() { Exact = true })).ToHaveCountAsync(0);
        var part = JsonNode.Parse(await TextAsync(page))!["lines"]!.AsArray().Select(l => (string?)l!["partNumber"]).ToArray();
        Assert.Contains(title!.Split(' ')[^1], part);

        // A finding is cleared by lines, with one press, and the press is undone with another.
        var fix = page.Locator(Finding).GetByRole(AriaRole.Button, new() { NameRegex = LineFix() }).First;
        await fix.ClickAsync();
        await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync("Findings gone");
        for (var press = 0; press < 2; press++)
        {
            await page.Locator("[data-bench=undo]").ClickAsync();
            await Assertions.Expect(page.Locator("[data-bench=change]")).ToContainTextAsync("Undone");
        }

        await Assertions.Expect(more.GetByRole(AriaRole.Button, new() { NameRegex = LineButton() })).ToHaveCountAsync(lines);
    });

    [BrowserFact]
    public Task Proposal_takes_answers_and_gives_its_rack_with_a_remedy() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page, "proposal-own-equipment");
        await Assertions.Expect(page.Locator("[data-bench=more]")).ToContainTextAsync("Alternative 1", new() { Timeout = Browsers.PatienceMs });
        await Assertions.Expect(page.Locator("[data-bench=questions] form").First).ToBeVisibleAsync();
        var remedy = page.Locator(Finding).GetByRole(AriaRole.Button, new() { NameRegex = AnyFix() }).First;
        await remedy.ClickAsync();
        await Assertions.Expect(page.Locator("[data-bench=kind]")).ToHaveValueAsync("check");
        await Assertions.Expect(page.Locator("[data-bench=change]")).Not.ToBeEmptyAsync();
    });

    [GeneratedRegex("^(Add|Exchange for|Leave out) ")]
    private static partial Regex LineButton();

    [GeneratedRegex("^Apply remedy: (Add|Exchange for|Leave out) ")]
    private static partial Regex LineFix();

    [GeneratedRegex("^Apply remedy: ")]
    private static partial Regex AnyFix();

    [BrowserFact]
    public Task Pages_open_their_racks_in_the_workbench() => browsers.VisitAsync(async page =>
    {
        await page.GotoAsync(browsers.AddressOf(Paths.Rule("depth.cabinet-too-shallow")));
        await page.GetByText("Open in the workbench").First.ClickAsync();
        await Assertions.Expect(page.Locator(Finding).First).ToContainTextAsync("depth.cabinet-too-shallow");

        // The page and the workbench lay out a rack alike.
        await page.GotoAsync(browsers.AddressOf(Paths.Start));
        var listing = await page.Locator("details pre[data-copy=json] code").TextContentAsync();
        await page.GotoAsync(browsers.AddressOf(Paths.Workbench));
        await page.Locator(Finding).First.WaitForAsync();
        Assert.Equal(listing, await TextAsync(page));
    });

    private async Task OpenAsync(IPage page, string example)
    {
        await page.GotoAsync(browsers.AddressOf(Paths.Workbench));
        await page.Locator(Finding).First.WaitForAsync();
        var option = await page.Locator("[data-bench=example] option").Filter(new() { HasText = example }).First.GetAttributeAsync("value");
        await page.Locator("[data-bench=example]").SelectOptionAsync(option!);
        await Assertions.Expect(page.Locator("[data-bench=undoing]")).ToBeVisibleAsync(new() { Timeout = Browsers.PatienceMs });
    }

    // The editor draws only the lines in sight, so the text is read from the address, which holds the case.
    private static Task<string> TextAsync(IPage page) =>
        page.EvaluateAsync<string>("async () => (await (await import('./workbench/case.js')).fromFragment(location.hash)).text");
}
