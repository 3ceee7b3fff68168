using Microsoft.Playwright;
using RackCheck.Documents.Pages;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The documentation behind a proxy that takes a path prefix away.</summary>
[Collection(Browsers.Name)]
public sealed class PrefixTests(Browsers browsers) : IAsyncLifetime
{
    private PrefixProxy proxy = null!;

    public async Task InitializeAsync() => proxy = await PrefixProxy.StartAsync(browsers.Root);

    public async Task DisposeAsync() => await proxy.DisposeAsync();

    [BrowserFact]
    public Task Every_page_works_behind_a_prefix() => browsers.VisitAsync(proxy.Root, async page =>
    {
        var links = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var path in PagesInBrowserTests.Pages)
        {
            await page.GotoAsync(AddressOf(path));
            await PagesInBrowserTests.ShownAsync(page, path);
            await CollectAsync(page, links);
        }

        await page.Locator(".hits a").First.WaitForAsync();
        await CollectAsync(page, links);
        await page.GotoAsync(AddressOf(Paths.Start));
        await page.Locator("[data-try] button").ClickAsync();
        await Assertions.Expect(page.Locator("[data-answer] .sign.hold")).ToBeVisibleAsync(new() { Timeout = Browsers.PatienceMs });
        await CollectAsync(page, links);

        await page.GotoAsync(AddressOf(Paths.Explorer + "/index.html"));
        await page.Locator(".opblock-summary-control").First.ClickAsync();
        await page.Locator("button.execute").ClickAsync();
        await Assertions.Expect(page.Locator(".live-responses-table tbody .response-col_status").First)
            .ToContainTextAsync("200", new() { Timeout = Browsers.PatienceMs });
        await CollectAsync(page, links);

        Assert.Contains(AddressOf("openapi/v1.json"), links);
        Assert.True(links.Count > 150, $"only {links.Count} addresses");
        using var client = new HttpClient();
        foreach (var link in links)
        {
            Assert.StartsWith(proxy.Root.ToString(), link, StringComparison.Ordinal);
            using var answer = await client.GetAsync(new Uri(link));
            Assert.True(answer.IsSuccessStatusCode, $"{link}: {answer.StatusCode}");
        }
    });

    // Addresses of all links and assets of a page as the browser reads them, without fragment.
    private static async Task CollectAsync(IPage page, SortedSet<string> links) => links.UnionWith(await page.EvaluateAsync<string[]>("""
        () => [...document.querySelectorAll("[href], [src], [srcset], [action]")]
          .map(e => e.getAttribute("href") ?? e.getAttribute("src") ?? e.getAttribute("srcset") ?? e.getAttribute("action"))
          .filter(a => !a.startsWith("data:"))
          .map(a => new URL(a, document.baseURI)).map(u => u.origin + u.pathname)
        """));

    private string AddressOf(string path) => new Uri(proxy.Root, path).ToString();
}
