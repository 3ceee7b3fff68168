using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using RackCheck.Api.Tests.Hosting;
using Serilog;
using Serilog.Events;

namespace RackCheck.Api.Tests.Http;

/// <summary>Bodies in chunks that are not valid HTTP: the client is told so, and the log has no error of this service.</summary>
public sealed class ChunkTests : IAsyncLifetime
{
    private readonly LogSink log = new();
    private KestrelService service = null!;

    public async Task InitializeAsync() => service = await KestrelService.StartAsync(services =>
        services.AddSerilog((_, logger) => logger.MinimumLevel.Debug().WriteTo.Sink(log), preserveStaticLogger: true));

    public async Task DisposeAsync() => await service.DisposeAsync();

    [Theory]
    [InlineData("zz")]
    [InlineData("-1")]
    [InlineData("80000000")]
    [InlineData("FFFFFFFFFFFFFFFF")]
    [InlineData("FFFFFFFFFFFFFFFFFFFFFFFF")]
    public async Task Size_that_no_chunk_has_is_refused_with_400(string size)
    {
        var answer = await SendAsync("/v1/checks", "application/json", $"{size}\r\nabc");
        Assert.StartsWith("HTTP/1.1 400 ", answer, StringComparison.Ordinal);
        Assert.Contains("not valid HTTP", answer, StringComparison.Ordinal);

        var stream = await SendAsync("/v1/checks/stream", "application/x-ndjson", $"{size}\r\nabc");
        var line = JsonNode.Parse(Assert.Single(stream.Split('\n'), l => l.StartsWith("{\"line\"", StringComparison.Ordinal)))!;
        Assert.Equal((1, 400), ((int)line["line"]!, (int)line["problem"]!["status"]!));
        Assert.DoesNotContain(log.Events, e => e.Level >= LogEventLevel.Warning);
        Assert.DoesNotContain(log.Events, e => e is { Exception: not null, Level: >= LogEventLevel.Information });
    }

    // All that the service sends until it closes the connection.
    private async Task<string> SendAsync(string path, string contentType, string body)
    {
        using var connection = new TcpClient();
        await connection.ConnectAsync(IPAddress.Loopback, service.Client.BaseAddress!.Port);
        var head = $"POST {path} HTTP/1.1\r\nHost: localhost\r\nContent-Type: {contentType}\r\nConnection: close\r\nTransfer-Encoding: chunked\r\n\r\n";
        await connection.GetStream().WriteAsync(Encoding.ASCII.GetBytes(head + body));
        using var reader = new StreamReader(connection.GetStream());
        return await reader.ReadToEndAsync();
    }
}
