using System.Net;

namespace RackCheck.Api.Tests.Hosting;

/// <summary>Further ports: management and HTTP/2.</summary>
public sealed class PortTests
{
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";

    [Fact]
    public async Task Probes_and_metrics_are_on_the_management_port_only()
    {
        var port = KestrelService.FreePort();
        await using var service = await KestrelService.StartAsync($"Management:Port={port}");
        using var management = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}") };
        foreach (var path in new[] { "/health/live", "/health/ready", "/metrics" })
        {
            (await service.GetAsync(path, ("Host", $"localhost:{port}"))).IsProblem(404);
            Assert.Equal(HttpStatusCode.OK, (await management.GetAsync(path)).StatusCode);
        }

        Assert.Equal(200, (await service.GetAsync("/v1/rules")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await management.GetAsync("/v1/rules")).StatusCode);
    }

    [Fact]
    public async Task Http2_without_tls_has_a_port_of_its_own()
    {
        var port = KestrelService.FreePort();
        await using var service = await KestrelService.StartAsync($"Service:Http2Port={port}");
        using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}") };
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/checks")
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            Content = new StringContent(Rack, null, "application/json"),
        };
        using var answer = await client.SendAsync(request);
        Assert.Equal((HttpStatusCode.OK, HttpVersion.Version20), (answer.StatusCode, answer.Version));
        Assert.Equal(200, (await service.PostAsync("/v1/checks", Rack)).Status);
    }
}
