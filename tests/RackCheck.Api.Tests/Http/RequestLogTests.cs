using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Serilog;
using Serilog.Events;

namespace RackCheck.Api.Tests.Http;

/// <summary>Contents of the request log.</summary>
public sealed class RequestLogTests : IDisposable
{
    private const string TraceId = "0af7651916cd43dd8448eb211c80319c";
    private readonly LogSink sink = new();
    private readonly WebApplicationFactory<Program> service;

    public RequestLogTests() => service = new Service().WithWebHostBuilder(builder => builder.ConfigureTestServices(services =>
        services.AddSerilog((_, logger) => logger.MinimumLevel.Debug().WriteTo.Sink(sink), preserveStaticLogger: true)));

    private IEnumerable<LogEvent> Requests => sink.Events.Where(e => e.MessageTemplate.Text.StartsWith("HTTP {RequestMethod}", StringComparison.Ordinal));

    public void Dispose() => service.Dispose();

    [Fact]
    public async Task Check_is_logged_in_one_line_without_the_description()
    {
        const string Rack = """
            { "reference": "confidential", "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 },
              "items": [ { "id": "classified", "heightU": 1 } ] }
            """;
        await SendAsync(new StringContent(Rack, null, "application/json"));
        var line = Assert.Single(Requests);
        Assert.Equal((LogEventLevel.Information, TraceId), (line.Level, line.TraceId?.ToHexString()));
        Assert.Equal("200", line.Properties["StatusCode"].ToString());
        Assert.DoesNotContain(sink.Events, e => e.RenderMessage().Contains("confidential", StringComparison.Ordinal));
        Assert.DoesNotContain(sink.Events, e => e.RenderMessage().Contains("classified", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Refusal_is_logged_with_its_status_and_not_as_error()
    {
        await SendAsync(new StringContent("{", null, "application/json"));
        var line = Assert.Single(Requests);
        Assert.Equal(("400", LogEventLevel.Information), (line.Properties["StatusCode"].ToString(), line.Level));
    }

    // Marks for right-to-left text would turn a line of the log around.
    [Fact]
    public async Task UnknownPath_is_cut_and_escaped()
    {
        using var client = service.CreateClient();
        (await client.GetAsync("/none%E2%80%AE%0A" + new string('x', 500))).Dispose();
        var line = Assert.Single(Requests);
        Assert.Equal($"/none\\u202E\\u000A{new string('x', 73)}...", ((ScalarValue)line.Properties["RequestPath"]).Value);
    }

    [Fact]
    public async Task Probes_are_not_logged()
    {
        using var client = service.CreateClient();
        (await client.GetAsync("/health/ready")).Dispose();
        Assert.Empty(Requests);
    }

    [Fact]
    public async Task ClosedConnection_is_not_logged_as_error()
    {
        using var hangUp = new CancellationTokenSource();
        using var content = new StreamContent(new SlowStream(hangUp));
        content.Headers.ContentType = new("application/json");
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => SendAsync(content, hangUp.Token));
        await SendAsync(new StringContent("{}", null, "application/json"));
        Assert.DoesNotContain(sink.Events, e => e.Level >= LogEventLevel.Error);
    }

    private async Task SendAsync(HttpContent content, CancellationToken cancellation = default)
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/checks") { Content = content };
        request.Headers.Add("traceparent", $"00-{TraceId}-b7ad6b7169203331-01");
        (await client.SendAsync(request, cancellation)).Dispose();
    }

    /// <summary>Sends a first piece and then closes the connection in the middle of the body.</summary>
    private sealed class SlowStream(CancellationTokenSource hangUp) : MemoryStream("{ \"items\": ["u8.ToArray(), writable: false)
    {
        public override bool CanSeek => false;

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var read = await base.ReadAsync(buffer, cancellationToken);
            if (read == 0)
            {
                await hangUp.CancelAsync();
                throw new OperationCanceledException(hangUp.Token);
            }

            return read;
        }
    }
}
