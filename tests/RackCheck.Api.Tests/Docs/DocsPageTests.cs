using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The explorer in a real browser.</summary>
public sealed class DocsPageTests : IAsyncLifetime
{
    private const int Operations = 14;

    private readonly Service service = new();

    public Task InitializeAsync()
    {
        service.UseKestrel(0);
        service.StartServer();
        return Task.CompletedTask;
    }

    public async Task DisposeAsync() => await service.DisposeAsync();

    [BrowserFact]
    public Task Operation_runs_with_one_click_on_its_example() => Browsers.VisitAsync(service, async page =>
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
    public Task Explorer_satisfies_its_policy_and_loads_nothing_external() => Browsers.VisitAsync(service, async page =>
    {
        await OpenAsync(page);
        Assert.False(await page.Locator(".topbar").IsVisibleAsync());
    });

    private async Task OpenAsync(IPage page)
    {
        await page.GotoAsync(new Uri(service.ClientOptions.BaseAddress, "/docs/explorer/index.html").ToString());
        await page.Locator(".opblock").First.WaitForAsync();
    }
}
