using Microsoft.Playwright;

namespace RackCheck.Api.Tests.Docs;

/// <summary>Tests that drive a browser share one, and one service that listens on a port: to start them takes longer than most visits.</summary>
[CollectionDefinition(Name)]
public sealed class Browsers : IAsyncLifetime, ICollectionFixture<Browsers>
{
    /// <summary>Name of the collection.</summary>
    public const string Name = "Browser";

    /// <summary>
    /// Longest wait for one thing, ms: the first proposal of a service is slow on a busy machine, and so is the browser that shows its answer.
    /// </summary>
    public const int PatienceMs = 120_000;

    // Some calls of the browser have no time limit of their own. A browser that hangs must not hold the run.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(8);

    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>The service in this process.</summary>
    public Service Service { get; } = new();

    /// <summary>Address of the service.</summary>
    public Uri Root => Service.ClientOptions.BaseAddress;

    public async Task InitializeAsync()
    {
        Service.UseKestrel(0);
        Service.StartServer();
        if (File.Exists(BrowserFactAttribute.Browser))
        {
            Assertions.SetDefaultExpectTimeout(PatienceMs);
            playwright = await Playwright.CreateAsync().WaitAsync(Longest);
            browser = await LaunchAsync(playwright).WaitAsync(Longest);
        }
    }

    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.CloseAsync().WaitAsync(TimeSpan.FromMilliseconds(PatienceMs));
        }

        playwright?.Dispose();
        await Service.DisposeAsync();
    }

    /// <summary>Address of a page.</summary>
    /// <param name="path">Its path, without a slash in front.</param>
    public string AddressOf(string path) => new Uri(Root, "/" + path).ToString();

    /// <summary>
    /// Lets a test visit pages of the service and fails where a page complains: an error or a warning in the console, a fault of a script, or anything that
    /// is loaded from elsewhere.
    /// </summary>
    /// <param name="visit">The visit.</param>
    /// <param name="expected">Status of refusals that belong to the visit: a browser writes each to its console.</param>
    public Task VisitAsync(Func<IPage, Task> visit, int? expected = null) => VisitAsync(Root, visit, expected);

    /// <summary>Lets a test visit pages below an address, likewise.</summary>
    /// <param name="root">The address; what is above it is elsewhere.</param>
    /// <param name="visit">The visit.</param>
    /// <param name="expected">Status of refusals that belong to the visit.</param>
    public Task VisitAsync(Uri root, Func<IPage, Task> visit, int? expected = null) =>
        VisitAsync(root.ToString(), browser!, visit, expected).WaitAsync(Longest);

    private static async Task VisitAsync(string own, IBrowser browser, Func<IPage, Task> visit, int? expected)
    {
        var complaints = new List<string>();
        await using var context = await browser.NewContextAsync();
        var page = await context.NewPageAsync();
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
