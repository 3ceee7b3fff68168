using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Admission;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Admission;

/// <summary>The service while all threads for checks compute and their queue is full.</summary>
public sealed class OverloadTests : IDisposable
{
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";

    private readonly WebApplicationFactory<Program> service = Service.With(("Admission:Checks:Workers", "1"), ("Admission:Checks:Queue", "1"));
    private readonly ManualResetEventSlim gate = new();

    public void Dispose()
    {
        gate.Set();
        service.Dispose();
        gate.Dispose();
    }

    [Fact]
    public async Task Busy_service_refuses_checks_and_serves_all_else()
    {
        using var client = service.CreateClient();
        await FillAsync(service.Services.GetRequiredService<ComputePools>().Checks);
        var refused = await PostAsync(client, "/v1/checks", Rack);
        refused.IsProblem(503);
        Assert.Equal("/docs/problems/overloaded", refused.Json["type"]!.GetValue<string>());
        Assert.Equal(TimeSpan.FromSeconds(1), refused.Headers.RetryAfter!.Delta);
        string[] others = ["/health/live", "/health/ready", "/v1/rules", "/v1/reference/rack-geometry", "/openapi/v1.json", "/docs/index.html", "/metrics"];
        foreach (var path in others)
        {
            Assert.Equal((path, 200), (path, (await Answer.OfAsync(await client.GetAsync(path))).Status));
        }

        var basket = Repository.Read("openapi", "examples", "basket-complete.json");
        Assert.Equal(200, (await PostAsync(client, "/v1/baskets/checks", basket)).Status);

        gate.Set();
        Answer again;
        do
        {
            again = await PostAsync(client, "/v1/checks", Rack);
        }
        while (again.Status == 503);
        Assert.Equal(200, again.Status);
    }

    [Fact]
    public async Task Thorough_proposals_keep_nothing_else_waiting()
    {
        using var busy = Service.With(("Admission:Searches:Queue", "1"), ("Admission:Planning:Workers", "1"));
        using var client = busy.CreateClient();
        await FillAsync(busy.Services.GetRequiredService<ComputePools>().Searches);
        const string Request = """{ "items": [ { "partNumber": "QWL-SRV-2", "id": "a" } ], "effort": "EFFORT" }""";
        (await PostAsync(client, "/v1/proposals", Request.Replace("EFFORT", "thorough", StringComparison.Ordinal))).IsProblem(503);
        Assert.Equal(200, (await PostAsync(client, "/v1/proposals", Request.Replace("EFFORT", "quick", StringComparison.Ordinal))).Status);
        var basket = Repository.Read("openapi", "examples", "basket-complete.json");
        Assert.Equal(200, (await PostAsync(client, "/v1/baskets/checks", basket)).Status);
        gate.Set();
    }

    [Fact]
    public async Task Memory_of_bodies_and_answers_is_bounded_and_returned()
    {
        using var client = service.CreateClient();
        var memory = service.Services.GetRequiredService<MemoryBudget>();
        Assert.Equal(200, (await PostAsync(client, "/v1/checks", Rack)).Status);
        (await PostAsync(client, "/v1/checks", "{")).IsProblem(400);
        (await PostAsync(client, "/v1/checks", new string(' ', 1024 * 1024) + Rack)).IsProblem(413);
        (await PostAsync(client, "/v1/baskets/checks", Rack)).IsProblem(422);
        Assert.Equal(0, memory.Used);

        // All but 10,000 bytes is in use: a body without a length finds no room while it is read.
        memory.Take((32 * 1024 * 1024) - 10_000);
        using var content = new StreamContent(new MemoryStream(new byte[100_000]));
        content.Headers.ContentType = new("application/json");
        content.Headers.ContentLength = null;
        var refused = await Answer.OfAsync(await client.PostAsync("/v1/checks", content));
        Assert.Equal("/docs/problems/overloaded", refused.Json["type"]!.GetValue<string>());
        Assert.Equal((32 * 1024 * 1024) - 10_000, memory.Used);

        memory.Take(10_000);
        (await PostAsync(client, "/v1/checks", Rack)).IsProblem(503);
        memory.GiveBack(32 * 1024 * 1024);
        Assert.Equal(200, (await PostAsync(client, "/v1/checks", Rack)).Status);
    }

    private static async Task<Answer> PostAsync(HttpClient client, string path, string body)
    {
        using var content = new StringContent(body, null, "application/json");
        return await Answer.OfAsync(await client.PostAsync(path, content));
    }

    // Occupies the one thread, then the one place in the queue.
    private async Task FillAsync(ComputePool pool)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        Assert.NotNull(pool.TryRun(
            _ =>
            {
                started.SetResult();
                gate.Wait(CancellationToken.None);
                return true;
            },
            CancellationToken.None));
        await started.Task;
        Assert.NotNull(pool.TryRun(_ => true, CancellationToken.None));
    }
}
