using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The explorer in a real browser.</summary>
[Collection(Browsers.Name)]
public sealed class DocsPageTests(Browsers browsers)
{
    private const int Operations = 15;

    [BrowserFact]
    public Task Operation_runs_with_one_click_on_its_example() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page);
        Assert.Equal("Rack check service", await page.TitleAsync());
        var operations = page.Locator(".opblock");
        Assert.Equal(Operations, await operations.CountAsync());
        for (var i = 0; i < Operations; i++)
        {
            var operation = operations.Nth(i);
            await operation.Locator(".opblock-summary-control").First.ClickAsync();
            await operation.Locator("button.execute").ClickAsync();
            await Assertions.Expect(operation.Locator(".live-responses-table tbody .response-col_status"))
                .ToContainTextAsync("200", new() { Timeout = Browsers.PatienceMs });

            // Every answer that stays open is drawn again with the next one.
            await operation.Locator(".opblock-summary-control").First.ClickAsync();
        }
    });

    [BrowserFact]
    public Task Explorer_satisfies_its_policy_and_loads_nothing_external() => browsers.VisitAsync(async page =>
    {
        await OpenAsync(page);
        Assert.False(await page.Locator(".topbar").IsVisibleAsync());
    });

    private async Task OpenAsync(IPage page)
    {
        await page.GotoAsync(browsers.AddressOf("docs/explorer/index.html"));
        await page.Locator(".opblock").First.WaitForAsync();
    }
}
