using System.Text;
using Microsoft.Playwright;
using RackCheck.Documents.Pages;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Docs;

/// <summary>Each type of page on a desk and on a telephone, light and dark: no violation of WCAG 2.2 AA.</summary>
[Collection(Browsers.Name)]
public sealed class AccessibilityTests(Browsers browsers)
{
    private static readonly (int Width, int Height)[] Windows = [(1440, 900), (390, 844)];

    // The members of a rack are like those of a problem, and take the engine ten times as long.
    private static readonly string[] Pages =
        [.. PagesInBrowserTests.Pages.Select(p => p.Replace("members/rack-description", "members/problem", StringComparison.Ordinal))];

    [BrowserFact]
    public Task Page_has_no_violation_in_any_window_and_scheme() => browsers.VisitAsync(async page =>
    {
        var violations = new List<string>();
        foreach (var path in Pages)
        {
            await page.GotoAsync(browsers.AddressOf(path));
            await PagesInBrowserTests.ShownAsync(page, path);
            await JudgeAsync(page, path, violations);
        }

        Assert.True(violations.Count == 0, string.Join(Environment.NewLine, violations));
    });

    [BrowserFact]
    public Task Sheet_has_no_violation_in_any_window_and_scheme() => browsers.VisitAsync(async page =>
    {
        var rack = Encoding.UTF8.GetBytes(Repository.Read("openapi", "examples", "rack-power-and-earth.json"));
        var violations = new List<string>();
        foreach (var document in (string[])["specification", "packing-list", "installation", "service"])
        {
            // The browser gets the answer to the POST, with its policy, as a page.
            var answer = await browsers.Service.PostAsync(rack, "/v1/specifications?document=" + document, accept: "text/html");
            var address = browsers.AddressOf("sheets/" + document);
            await page.RouteAsync(address, route => route.FulfillAsync(new()
            {
                Body = answer.Text,
                ContentType = "text/html; charset=utf-8",
                Headers = new Dictionary<string, string> { ["Content-Security-Policy"] = answer.Headers.GetValues("Content-Security-Policy").Single() },
            }));
            await page.GotoAsync(address);
            await JudgeAsync(page, document, violations);
            await AddTooWideAsync(page, document, violations);
        }

        Assert.True(violations.Count == 0, string.Join(Environment.NewLine, violations));
    });

    [BrowserFact]
    public Task Explorer_checks_a_rack_by_keyboard_alone() => browsers.VisitAsync(async page =>
    {
        var violations = new List<string>();
        foreach (var (scheme, rules) in ((ColorScheme, string)[])[(ColorScheme.Light, Axe.Standard), (ColorScheme.Dark, Axe.Colours)])
        {
            // The explorer chooses its scheme when it is loaded.
            await page.SetViewportSizeAsync(Windows[0].Width, Windows[0].Height);
            await page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await page.GotoAsync(browsers.AddressOf(Paths.Explorer + "/index.html"));
            await page.Locator(".opblock").First.WaitForAsync();
            await TabToAsync(page, ".opblock-summary-control");
            await page.Keyboard.PressAsync("Enter");
            await page.Locator("button.execute").WaitForAsync();
            await TabToAsync(page, "button.execute");
            await page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(page.Locator(".live-responses-table tbody .response-col_status").First)
                .ToContainTextAsync("200", new() { Timeout = Browsers.PatienceMs });
            await Axe.EnterAsync(page);
            foreach (var (width, height) in Windows)
            {
                await page.SetViewportSizeAsync(width, height);
                violations.AddRange((await Axe.ViolationsAsync(page, rules)).Select(v => $"explorer, {width} px, {scheme}: {v}"));
            }
        }

        await AddTooWideAsync(page, "explorer", violations);
        Assert.True(violations.Count == 0, string.Join(Environment.NewLine, violations));
    });

    private static async Task TabToAsync(IPage page, string selector)
    {
        for (var i = 0; i < 60; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>("s => document.activeElement.matches(s)", selector))
            {
                return;
            }
        }

        Assert.Fail($"60 steps of the tabulator do not lead to {selector}");
    }

    // A change of the scheme changes colours only, so the other rules are asked once a window.
    private static async Task JudgeAsync(IPage page, string path, List<string> violations)
    {
        await Axe.EnterAsync(page);
        foreach (var (width, height) in Windows)
        {
            await page.SetViewportSizeAsync(width, height);
            foreach (var (scheme, rules) in ((ColorScheme, string)[])[(ColorScheme.Light, Axe.All), (ColorScheme.Dark, Axe.Colours)])
            {
                await page.EmulateMediaAsync(new() { ColorScheme = scheme });
                violations.AddRange((await Axe.ViolationsAsync(page, rules)).Select(v => $"{path}, {width} px, {scheme}: {v}"));
            }
        }
    }

    private static async Task AddTooWideAsync(IPage page, string path, List<string> violations)
    {
        await page.SetViewportSizeAsync(PagesInBrowserTests.Narrow, Windows[1].Height);
        var needed = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        if (needed > PagesInBrowserTests.Narrow)
        {
            violations.Add($"{path} is {needed} px wide in a window of {PagesInBrowserTests.Narrow} px");
        }
    }
}
