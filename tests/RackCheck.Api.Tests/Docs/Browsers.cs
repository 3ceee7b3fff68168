using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The browser of the tests.</summary>
internal static class Browsers
{
    public static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(new()
    {
        ExecutablePath = BrowserFactAttribute.Browser,
        Headless = true,
        Args =
        [
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
        ],
    });
}
