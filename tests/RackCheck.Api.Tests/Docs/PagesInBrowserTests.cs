using Microsoft.Playwright;
using RackCheck.Documents.Pages;
using RackCheck.Rules;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The pages of the documentation in a real browser, in the narrowest window.</summary>
[Collection(Browsers.Name)]
public sealed class PagesInBrowserTests(Browsers browsers)
{
    /// <summary>Width at which nothing may have to be scrolled sideways (WCAG 1.4.10), px.</summary>
    internal const int Narrow = 320;

    internal static string[] Pages =>
    [
        Paths.Start,
        Paths.Workbench,
        Paths.Rules,
        Paths.Rule(RuleSet.Default.All.First(r => r.Descriptor.Theme == "depth").Descriptor.Id),
        Paths.Reference,
        Paths.Concepts,
        Paths.Shop,
        Paths.Operations,
        Paths.Testing,
        Paths.Parts,
        Paths.Dimensions,
        Paths.Members + "/rack-description",
        Paths.Tables + "/bounds",
        Paths.Problems,
        Paths.Problems + "/invalid-description",
        Paths.Search + "?q=setback",
    ];

    [BrowserFact]
    public Task Page_fits_a_telephone_without_a_complaint() => browsers.VisitAsync(async page =>
    {
        await page.SetViewportSizeAsync(Narrow, 844);
        foreach (var path in Pages)
        {
            await page.GotoAsync(browsers.AddressOf(path));
            await ShownAsync(page, path);
            var needed = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
            Assert.True(needed <= Narrow, $"{path} is {needed} px wide in a window of {Narrow} px");
        }

        await page.Locator(".hits li").First.WaitForAsync();
        await page.GotoAsync(browsers.AddressOf(Paths.Start));
        await page.Locator("[data-try] button").ClickAsync();
        await Assertions.Expect(page.Locator("[data-answer] .sign.hold")).ToBeVisibleAsync(new() { Timeout = Browsers.PatienceMs });
    });

    /// <summary>Waits until a page shows what its script asks the service for.</summary>
    /// <param name="page">The page.</param>
    /// <param name="path">Its path.</param>
    internal static async Task ShownAsync(IPage page, string path)
    {
        if (path == Paths.Workbench)
        {
            await page.Locator("[data-bench=bench]:not([aria-busy]) [data-bench=drawing] svg").WaitForAsync();
            await page.Locator("[data-bench=questions] .card").First.WaitForAsync();
        }
    }
}
