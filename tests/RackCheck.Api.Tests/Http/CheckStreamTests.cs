using System.IO.Compression;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Microsoft.Extensions.DependencyInjection;
using RackCheck.Api.Admission;
using RackCheck.Api.Streaming;
using RackCheck.Api.Tests.Hosting;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>POST /v1/checks/stream.</summary>
public sealed class CheckStreamTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/checks/stream";
    private const string Lines = "application/x-ndjson";

    private static readonly string Sound = OneLine("rack-sound");
    private static readonly string Faulty = OneLine("rack-doors-do-not-close");

    [Fact]
    public async Task Each_line_gets_the_report_that_it_gets_by_itself()
    {
        var alone = new[] { await service.PostAsync(Sound), await service.PostAsync(Faulty) };
        var answers = await CheckAsync(string.Join("\n", Sound, Faulty, Sound) + "\n");
        Assert.Equal([1, 2, 3], answers.Select(NumberOf));
        Assert.True(JsonNode.DeepEquals(alone[0].Json, answers[0]["report"]));
        Assert.True(JsonNode.DeepEquals(alone[1].Json, answers[1]["report"]));
        Assert.True(JsonNode.DeepEquals(alone[0].Json, answers[2]["report"]));
    }

    [Fact]
    public async Task Fault_of_a_line_stands_in_its_place()
    {
        var tooLong = "{\"reference\":\"" + new string('x', 1024 * 1024) + "\"}";
        string[] lines = [Sound, "", "{\"items\":3}", "no json", "\"\ud83d", tooLong, " \t\r", Faulty + "\r", tooLong];
        var answers = await CheckAsync(string.Join("\n", lines));
        Assert.Equal([(1, 0), (3, 422), (4, 400), (5, 400), (6, 413), (8, 0), (9, 413)], answers.Select(a => (NumberOf(a), StatusOf(a))));
        Assert.Equal("The maximum length of a line is 1048576 bytes.", (string)answers[4]["problem"]!["detail"]!);
        Assert.Equal((await service.PostAsync(lines[2])).Faults, new Answer(422, null, answers[1]["problem"]!.ToJsonString(), null!).Faults);
    }

    [Fact]
    public async Task Compressed_stream_that_breaks_off_ends_with_the_line_to_go_on_from()
    {
        using var whole = new MemoryStream();
        using (var gzip = new GZipStream(whole, CompressionLevel.Fastest, leaveOpen: true))
        {
            gzip.Write(Encoding.UTF8.GetBytes($"{Sound}\n{Faulty}\n"));
        }

        using var client = service.CreateClient();
        foreach (var missing in (int[])[0, 8])
        {
            using var content = new ByteArrayContent(whole.ToArray()[..^missing]);
            content.Headers.ContentType = new(Lines);
            content.Headers.ContentEncoding.Add("gzip");
            var answer = await Answer.OfAsync(await client.PostAsync(Path, content));
            var answers = answer.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!);
            Assert.Equal(missing == 0 ? [(1, 0), (2, 0)] : [(1, 0), (2, 0), (3, 400)], answers.Select(a => (NumberOf(a), StatusOf(a))));
        }
    }

    [Fact]
    public async Task Part_numbers_are_looked_up()
    {
        var parts = OneLine("rack-part-numbers");
        var answers = await CheckAsync(string.Join("\n", parts, Sound, parts));
        Assert.Equal([1, 2, 3], answers.Select(NumberOf));
        Assert.True(JsonNode.DeepEquals((await service.PostAsync(parts)).Json, answers[0]["report"]));
        Assert.True(JsonNode.DeepEquals(answers[0]["report"], answers[2]["report"]));
    }

    [Fact]
    public async Task Members_asked_for_are_the_members_of_each_report()
    {
        var answers = await CheckAsync($"{Sound}\n{Faulty}\n", "?fields=verdict,descriptionDigest");
        Assert.Equal(["release", "hold"], answers.Select(a => (string)a["report"]!["verdict"]!));
        Assert.All(answers, a => Assert.Equal(["verdict", "descriptionDigest"], a["report"]!.AsObject().Select(m => m.Key)));
    }

    [Theory]
    [InlineData("application/json", null, "", 415)]
    [InlineData("application/x-ndjson; charset=utf-16", null, "", 415)]
    [InlineData(Lines, "text/html", "", 406)]
    [InlineData(Lines, null, "?fields=colour", 400)]
    [InlineData(Lines, null, "?apply=remedies", 400)]
    public async Task Wrong_request_is_refused_as_a_whole(string contentType, string? accept, string query, int status) =>
        (await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path + query, contentType, accept)).IsProblem(status);

    [Fact]
    public async Task Empty_stream_has_an_empty_answer() => Assert.Empty(await CheckAsync("\n \r\n\n"));

    [Fact]
    [Trait("Kind", "property")]
    public async Task Answers_keep_the_order_of_lines_whatever_is_in_them()
    {
        string[] kinds = [Sound, Faulty, OneLine("rack-part-numbers"), "{}", "[", "", "{\"items\":[1]}"];
        var alone = new Dictionary<string, JsonNode>(StringComparer.Ordinal);
        foreach (var kind in kinds.Where(k => k.Length > 0))
        {
            alone[kind] = (await service.PostAsync(kind)).Json;
        }

        await Gen.Int[0, kinds.Length - 1].Array[0, 60].SampleAsync(
            async chosen =>
            {
                var answers = await CheckAsync(string.Join('\n', chosen.Select(c => kinds[c])));
                var expected = chosen.Select((c, i) => (Line: i + 1, Kind: kinds[c])).Where(e => e.Kind.Length > 0).ToList();
                Assert.Equal(expected.Select(e => e.Line), answers.Select(NumberOf));
                foreach (var ((_, kind), answer) in expected.Zip(answers))
                {
                    Assert.True(answer["report"] is { } report
                        ? JsonNode.DeepEquals(alone[kind], report)
                        : (int)alone[kind]["status"]! == StatusOf(answer));
                }
            },
            iter: Samples.Of(30));
    }

    [Fact]
    public async Task Answers_come_while_lines_are_sent()
    {
        await using var own = await StartAsync();
        using var content = new LineContent();
        using var answer = await own.PostAsync(content);
        using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync());
        for (var line = 1; line <= 3; line++)
        {
            content.Send(Sound);
            Assert.Equal(line, NumberOf(JsonNode.Parse((await reader.ReadLineAsync())!)!));
        }

        content.End();
        Assert.Null(await reader.ReadLineAsync());
    }

    [Fact]
    public async Task Silence_ends_a_stream_with_the_line_to_go_on_from()
    {
        await using var own = await StartAsync("Service:BodySeconds=1");
        using var content = new LineContent();
        using var answer = await own.PostAsync(content);
        content.Send(Sound);
        var lines = (await answer.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        content.End();
        Assert.Equal([(1, 0), (2, 408)], lines.Select(l => JsonNode.Parse(l)!).Select(a => (NumberOf(a), StatusOf(a))));
    }

    [Fact]
    public async Task Stop_of_the_service_ends_a_stream_with_the_line_to_go_on_from()
    {
        await using var own = await StartAsync();
        using var content = new LineContent();
        using var answer = await own.PostAsync(content);
        using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync());
        content.Send(Sound);
        await reader.ReadLineAsync();
        var stop = own.Service.App.StopAsync();
        var last = JsonNode.Parse((await reader.ReadLineAsync())!)!;
        Assert.Equal((2, 503), (NumberOf(last), StatusOf(last)));

        // The stopping service closes the connection next. A client whose own body has no end yet may see that, without an error (RFC 9113, section 7), before
        // the end of the stream; nothing else.
        var further = await Record.ExceptionAsync(async () => Assert.Null(await reader.ReadLineAsync()));
        Assert.True(further is null or HttpProtocolException { ErrorCode: 0 }, $"{further}");
        content.End();
        await stop;
    }

    [Fact]
    public async Task Broken_connections_free_places_and_memory()
    {
        await using var own = await StartAsync("Admission:Streams:Most=2");
        for (var round = 0; round < 3; round++)
        {
            using var third = new LineContent();
            third.End();
            var one = await own.BeginAsync(Sound + "\n");
            var two = await own.BeginAsync(Faulty[..100]);
            using (var refused = await own.PostAsync(third))
            {
                Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
                Assert.NotNull(refused.Headers.RetryAfter);
            }

            one.Dispose();
            two.Dispose();
            await own.UntilFreeAsync();
        }

        Assert.Equal(0, own.Service.App.Services.GetRequiredService<MemoryBudget>().Used);
    }

    [Fact]
    public async Task Stream_needs_the_scope_of_checks()
    {
        await using var own = await KestrelService.StartAsync(
            "Access:Clients:0:Name=shop", "Access:Clients:0:KeyHashes:0=" + new string('a', 64), "Access:Clients:0:Scopes:0=check");
        using var content = new StringContent(Sound, null, Lines);
        (await own.SendAsync(HttpMethod.Post, Path, content)).IsProblem(401);
    }

    private static string OneLine(string example) =>
        JsonNode.Parse(File.ReadAllText(Repository.PathOf("openapi", "examples", example + ".json")))!.ToJsonString();

    private static int NumberOf(JsonNode answer) => (int)answer["line"]!;

    private static int StatusOf(JsonNode answer) => answer["problem"] is { } problem ? (int)problem["status"]! : 0;

    private async Task<List<JsonNode>> CheckAsync(string body, string query = "")
    {
        var answer = await service.PostAsync(Encoding.UTF8.GetBytes(body), Path + query, Lines);
        Assert.Equal((200, Lines), (answer.Status, answer.MediaType));
        Assert.True(answer.Text.Length == 0 || answer.Text.EndsWith('\n'));
        return [.. answer.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!)];
    }

    private static async Task<Duplex> StartAsync(params string[] settings)
    {
        var port = KestrelService.FreePort();
        return new Duplex(await KestrelService.StartAsync([$"Service:Http2Port={port}", "Access:Anonymous=true", .. settings]), port);
    }

    // HTTP/2, over which a client reads while it sends.
    private sealed record Duplex(KestrelService Service, int Port) : IAsyncDisposable
    {
        private readonly HttpClient client = new() { BaseAddress = new Uri($"http://127.0.0.1:{Port}"), Timeout = TimeSpan.FromMinutes(5) };

        public async Task<HttpResponseMessage> PostAsync(HttpContent content)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, Path)
            {
                Content = content, Version = HttpVersion.Version20, VersionPolicy = HttpVersionPolicy.RequestVersionExact,
            };
            return await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        }

        /// <summary>Goes on when two streams are accepted again: the service learns a little later that a client has left.</summary>
        public async Task UntilFreeAsync()
        {
            var streams = Service.App.Services.GetRequiredService<Streams>();
            for (var isFree = false; !isFree; await Task.Yield())
            {
                using var one = streams.TryEnter();
                using var two = streams.TryEnter();
                isFree = two is not null;
            }
        }

        /// <summary>Begins a stream on a connection of its own, to be broken off.</summary>
        public async Task<TcpClient> BeginAsync(string part)
        {
            var connection = new TcpClient();
            await connection.ConnectAsync(IPAddress.Loopback, Service.Client.BaseAddress!.Port);
            var head = $"POST {Path} HTTP/1.1\r\nHost: localhost\r\nContent-Type: {Lines}\r\nTransfer-Encoding: chunked\r\n\r\n";
            var bytes = Encoding.UTF8.GetBytes($"{head}{Encoding.UTF8.GetByteCount(part):x}\r\n{part}\r\n");
            await connection.GetStream().WriteAsync(bytes);
            using var reader = new StreamReader(connection.GetStream(), leaveOpen: true);
            Assert.Equal("HTTP/1.1 200 OK", await reader.ReadLineAsync());
            return connection;
        }

        public async ValueTask DisposeAsync()
        {
            client.Dispose();
            await Service.DisposeAsync();
        }
    }
}
