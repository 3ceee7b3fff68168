using System.Text.Json.Nodes;
using Microsoft.Playwright;
using RackCheck.Documents.Pages;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The editor of the workbench in a real browser: names and values offered while typing, help under the pointer, and the API key.</summary>
[Collection(Browsers.Name)]
public sealed class WorkbenchEditorTests(Browsers browsers)
{
    private const string Verdict = "[data-bench=verdict]";
    private const string Offer = ".cm-tooltip-autocomplete li";

    [BrowserFact]
    public Task Members_and_values_of_the_contract_are_offered_while_typing() => WriteCabinetAsync(msPerKey: 0);

    // Names are asked for after the first sign of a word then; what is taken replaces the whole word all the same.
    [BrowserFact]
    public Task Members_and_values_of_the_contract_are_offered_while_typing_slowly() => WriteCabinetAsync(msPerKey: 250);

    [BrowserFact]
    public Task Help_on_a_member_stands_under_the_pointer() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page, """{\n  "cabinet": { "heightU": 42, "widthMm": 600,\n    "depthMm": 1000 },\n  "items": []\n}""");
        await Assertions.Expect(page.Locator(Verdict + " .sign")).ToBeVisibleAsync();
        await page.Locator(".cm-line span").Filter(new() { HasText = "depthMm" }).First.HoverAsync();
        await Assertions.Expect(page.Locator(".cm-tooltip .cm-help")).ToContainTextAsync("depthMm: number.");
    });

    [BrowserFact]
    public Task Key_in_its_field_goes_with_every_request_and_into_no_address() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page, """{\n  "cabinet": { "heightU": 42, "widthMm": 600,\n    "depthMm": 1000 },\n  "items": []\n}""");
        await Assertions.Expect(page.Locator(Verdict + " .sign")).ToBeVisibleAsync();
        await page.Locator("[data-bench=key]").FillAsync("a-key-of-a-test");
        foreach (var path in new[] { "/v1/checks", "/v1/elevations" })
        {
            var request = await page.RunAndWaitForRequestAsync(
                () => page.Locator("[data-bench=check]").ClickAsync(), r => r.Method == "POST" && new Uri(r.Url).AbsolutePath == path);
            Assert.Equal("a-key-of-a-test", await request.HeaderValueAsync("X-API-Key"));
        }

        Assert.DoesNotContain("a-key-of-a-test", page.Url, StringComparison.Ordinal);
    });

    private Task WriteCabinetAsync(int msPerKey) => browsers.VisitAsync(
        async page =>
        {
            await OpenAsync(page, """{\n  "cabinet": { "heightU": 42, "depthMm": 1000,\n    \n  },\n  "items": []\n}""");
            await Assertions.Expect(page.Locator(Verdict)).ToContainTextAsync("JSON");
            await page.Locator(".cm-line").Nth(2).ClickAsync();
            await TypeAsync(page, "\"widt", "\"widthMm\"", msPerKey);
            await page.Keyboard.TypeAsync("600, ");
            await TypeAsync(page, "\"frontD", "\"frontDoor\"", msPerKey);
            await page.Keyboard.TypeAsync("{ ");
            await TypeAsync(page, "\"sty", "\"style\"", msPerKey);
            await TypeAsync(page, "\"per", "\"perforated\"", msPerKey);
            await page.Keyboard.PressAsync("Control+Enter");
            await Assertions.Expect(page.Locator(Verdict + " .sign")).ToBeVisibleAsync();

            var written = JsonNode.Parse(await page.EvaluateAsync<string>(
                "async () => (await (await import('./workbench/case.js')).fromFragment(location.hash)).text"));
            Assert.True(
                JsonNode.DeepEquals(
                    JsonNode.Parse(
                        """{ "cabinet": { "heightU": 42, "depthMm": 1000, "widthMm": 600, "frontDoor": { "style": "perforated" } }, "items": [] }"""),
                    written),
                written?.ToJsonString());
        },
        expected: 400);

    private async Task OpenAsync(IPage page, string text)
    {
        await page.GotoAsync(browsers.AddressOf(Paths.Workbench));
        await page.Locator("[data-bench=findings] .card").First.WaitForAsync();
        await page.EvaluateAsync($"async () => location.hash = await (await import('./workbench/case.js')).toFragment('check', `{text}`)");
        await Assertions.Expect(page.Locator(".cm-line").First).ToHaveTextAsync("{");
        await Assertions.Expect(page.Locator(".cm-content")).ToContainTextAsync("\"items\": []");
    }

    // Types the start of a word and takes what is offered for it.
    private static async Task TypeAsync(IPage page, string start, string offered, int msPerKey)
    {
        await page.Keyboard.TypeAsync(start, new() { Delay = msPerKey });
        await page.Locator(Offer).Filter(new() { HasText = offered }).First.ClickAsync();
        await Assertions.Expect(page.Locator(Offer)).ToHaveCountAsync(0);
    }
}
