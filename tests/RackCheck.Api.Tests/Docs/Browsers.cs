using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The browser of the tests.</summary>
internal static class Browsers
{
    /// <summary>
    /// Longest wait for one thing, ms: the first proposal of a service is slow on a busy machine, and so is the browser that shows its answer.
    /// </summary>
    public const int PatienceMs = 120_000;

    // Some calls of the browser have no time limit of their own. A browser that hangs must not hold the run.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(8);

    /// <summary>
    /// Lets a test visit pages of a service and fails where a page complains: an error or a warning in the console, a fault of a script, or anything that
    /// is loaded from elsewhere.
    /// </summary>
    /// <param name="service">The service, which listens on a port.</param>
    /// <param name="visit">The visit.</param>
    /// <param name="expected">Status of refusals that belong to the visit: a browser writes each to its console.</param>
    public static Task VisitAsync(Service service, Func<IPage, Task> visit, int? expected = null) =>
        VisitAsync(service.ClientOptions.BaseAddress, visit, expected);

    /// <summary>Lets a test visit pages below an address, likewise.</summary>
    /// <param name="root">The address; what is above it is elsewhere.</param>
    /// <param name="visit">The visit.</param>
    /// <param name="expected">Status of refusals that belong to the visit.</param>
    public static async Task VisitAsync(Uri root, Func<IPage, Task> visit, int? expected = null)
    {
        Assertions.SetDefaultExpectTimeout(PatienceMs);
        using var playwright = await Playwright.CreateAsync().WaitAsync(Longest);
        var browser = await LaunchAsync(playwright);
        try
        {
            await VisitAsync(root.ToString(), browser, visit, expected).WaitAsync(Longest);
        }
        finally
        {
            await browser.CloseAsync().WaitAsync(TimeSpan.FromMilliseconds(PatienceMs));
        }
    }

    private static async Task VisitAsync(string own, IBrowser browser, Func<IPage, Task> visit, int? expected)
    {
        var complaints = new List<string>();
        var page = await browser.NewPageAsync();
        page.SetDefaultTimeout(PatienceMs);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning" && !(expected is { } status && message.Text.Contains($"status of {status}", StringComparison.Ordinal)))
            {
                complaints.Add($"{page.Url}: {message.Text}");
            }
        };
        page.PageError += (_, fault) => complaints.Add($"{page.Url}: {fault}");
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(own, StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal)
                && !request.Url.StartsWith("blob:" + own, StringComparison.Ordinal))
            {
                complaints.Add($"{page.Url}: from elsewhere: {request.Url}");
            }
        };
        await visit(page);
        Assert.True(complaints.Count == 0, string.Join(Environment.NewLine, complaints));
    }

    private static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(new()
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
