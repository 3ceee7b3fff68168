using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The explorer in a real browser.</summary>
public sealed class DocsPageTests : IAsyncLifetime
{
    private readonly Service service = new();
    private readonly List<string> complaints = [];
    private IPlaywright? playwright;
    private IBrowser? browser;

    public Task InitializeAsync()
    {
        service.UseKestrel(0);
        service.StartServer();
        return Task.CompletedTask;
    }

    public async Task DisposeAsync()
    {
        await (browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        playwright?.Dispose();
        await service.DisposeAsync();
    }

    private const int Operations = 14;

    // The first proposal of a service is slow on a busy machine, and so is the browser that shows its answer.
    private const int Patience = 120_000;

    [BrowserFact]
    public async Task Operation_runs_with_one_click_on_its_example()
    {
        var page = await OpenAsync();
        Assert.Equal("Rack check service", await page.TitleAsync());
        var operations = page.Locator(".opblock");
        Assert.Equal(Operations, await operations.CountAsync());
        for (var i = 0; i < Operations; i++)
        {
            var operation = operations.Nth(i);
            await operation.Locator(".opblock-summary-control").First.ClickAsync();
            await operation.Locator("button.execute").ClickAsync();
            await Assertions.Expect(operation.Locator(".live-responses-table tbody .response-col_status"))
                .ToContainTextAsync("200", new() { Timeout = Patience });

            // Every answer that stays open is drawn again with the next one.
            await operation.Locator(".opblock-summary-control").First.ClickAsync();
        }

        Assert.True(complaints.Count == 0, string.Join(Environment.NewLine, complaints));
    }

    [BrowserFact]
    public async Task Explorer_satisfies_its_policy_and_loads_nothing_external()
    {
        var page = await OpenAsync();
        Assert.False(await page.Locator(".topbar").IsVisibleAsync());
        Assert.True(complaints.Count == 0, string.Join(Environment.NewLine, complaints));
    }

    private async Task<IPage> OpenAsync()
    {
        playwright = await Playwright.CreateAsync();
        browser = await Browsers.LaunchAsync(playwright);
        var page = await browser.NewPageAsync();
        page.SetDefaultTimeout(Patience);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                complaints.Add(message.Text);
            }
        };
        page.PageError += (_, fault) => complaints.Add(fault);
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(service.ClientOptions.BaseAddress.ToString(), StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal)
                && !request.Url.StartsWith("blob:" + service.ClientOptions.BaseAddress, StringComparison.Ordinal))
            {
                complaints.Add("from elsewhere: " + request.Url);
            }
        };
        await page.GotoAsync(new Uri(service.ClientOptions.BaseAddress, "/docs/explorer/index.html").ToString());
        await page.Locator(".opblock").First.WaitForAsync();
        return page;
    }
}
