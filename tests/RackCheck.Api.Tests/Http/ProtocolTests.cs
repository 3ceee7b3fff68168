using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using RackCheck.Api.Tests.Hosting;

namespace RackCheck.Api.Tests.Http;

/// <summary>What the service makes of HTTP: encodings, conditions, methods, addresses, origins, bodies that are too large.</summary>
public sealed class ProtocolTests : IAsyncLifetime
{
    private const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""";
    private const string Origin = "https://shop.example";

    private KestrelService service = null!;

    public async Task InitializeAsync() => service = await KestrelService.StartAsync("Cors:Origins:0=" + Origin);

    public async Task DisposeAsync() => await service.DisposeAsync();

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Compressed_body_is_read(string encoding)
    {
        var plain = await service.PostAsync("/v1/checks", Rack);
        var answer = await PostAsync(Compress(encoding, Encoding.UTF8.GetBytes(Rack)), encoding);
        Assert.Equal((200, plain.Text), (answer.Status, answer.Text));
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Compressed_body_is_bounded_by_what_comes_out(string encoding)
    {
        var bomb = Compress(encoding, new byte[100_000_000]);
        Assert.InRange(bomb.Length, 1, 200_000);
        (await PostAsync(bomb, encoding)).IsProblem(413);
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Body_that_is_not_compressed_as_said_is_refused_with_400(string encoding)
    {
        (await PostAsync(Encoding.UTF8.GetBytes(Rack), encoding)).IsProblem(400);
        var whole = Compress(encoding, Encoding.UTF8.GetBytes(Rack));
        (await PostAsync(whole[..^12], encoding)).IsProblem(400);

        // The document is whole, and the end of its compressed form is missing.
        var plain = Encoding.UTF8.GetBytes(Rack + new string(' ', 1000));
        var cut = Compress(encoding, plain);
        cut = encoding == "br" ? Unfinished(plain) : cut[..^8];
        (await PostAsync(cut, encoding)).IsProblem(400);
        for (var i = 0; i < whole.Length; i++)
        {
            var damaged = (byte[])whole.Clone();
            damaged[i] ^= 0x55;
            Assert.Contains((await PostAsync(damaged, encoding)).Status, new[] { 200, 400, 413, 422 });
        }
    }

    [Theory]
    [InlineData("deflate")]
    [InlineData("zstd")]
    [InlineData("gzip, br")]
    public async Task Other_encoding_is_refused_with_415_and_the_supported_ones(string encoding)
    {
        using var content = Content(Encoding.UTF8.GetBytes(Rack), encoding);
        using var answer = await service.Client.PostAsync("/v1/checks", content);
        Assert.Equal(["gzip", "br"], answer.Headers.GetValues("Accept-Encoding").SelectMany(v => v.Split(", ")));
        (await Answer.OfAsync(answer)).IsProblem(415);
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Answer_is_compressed_for_a_client_that_takes_it(string encoding)
    {
        foreach (var path in new[] { "/v1/rules", "/openapi/v1.json", "/docs/rules", "/docs/workbench/editor.js" })
        {
            var plain = await service.GetAsync(path);
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.AcceptEncoding.ParseAdd(encoding);
            using var answer = await service.Client.SendAsync(request);
            Assert.Equal(encoding, answer.Content.Headers.ContentEncoding.Single());
            Assert.Single(answer.Headers.Vary, "Accept-Encoding");
            var bytes = await answer.Content.ReadAsByteArrayAsync();
            Assert.InRange(bytes.Length, 1, plain.Text.Length / 2);
            Assert.Equal(plain.Text, Encoding.UTF8.GetString(Expand(encoding, bytes)));
        }
    }

    [Theory]
    [InlineData("gzip, br", "br")]
    [InlineData("gzip;q=1, br;q=0.5", "gzip")]
    [InlineData("br;q=0, gzip", "gzip")]
    [InlineData("br;q=0", null)]
    [InlineData("zstd", null)]
    public async Task Kept_answer_has_the_encoding_that_the_client_likes_best(string accepted, string? sent)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/docs/site.css");
        request.Headers.AcceptEncoding.ParseAdd(accepted);
        using var answer = await service.Client.SendAsync(request);
        Assert.Equal(sent, answer.Content.Headers.ContentEncoding.SingleOrDefault());
        Assert.Equal(answer.Content.Headers.ContentLength, (await answer.Content.ReadAsByteArrayAsync()).Length);
    }

    [Theory]
    [InlineData("/v1/rules")]
    [InlineData("/v1/rules/layout.overlap")]
    [InlineData("/v1/reference/rack-geometry")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/docs/rules")]
    [InlineData("/docs/workbench/editor.js")]
    [InlineData("/version")]
    public async Task Known_answer_is_304(string path)
    {
        var first = await service.GetAsync(path);
        Assert.Equal(TimeSpan.FromMinutes(5), first.Headers.CacheControl!.MaxAge);
        var tag = first.Headers.ETag!.ToString();
        foreach (var known in new[] { tag, tag[2..], "\"other\", " + tag, "*" })
        {
            var again = await service.GetAsync(path, ("If-None-Match", known));
            Assert.Equal((known, 304, ""), (known, again.Status, again.Text));
            Assert.Equal(tag, again.Headers.ETag!.ToString());
        }

        Assert.Equal(200, (await service.GetAsync(path, ("If-None-Match", "\"other\""))).Status);
        Assert.Equal(200, (await service.GetAsync(path, ("If-None-Match", "nonsense"))).Status);
    }

    [Theory]
    [InlineData("/v1/rules")]
    [InlineData("/v1/rules/none")]
    [InlineData("/v1/reference/rack-geometry")]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    [InlineData("/version")]
    [InlineData("/metrics")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/docs/rules")]
    [InlineData("/docs/explorer/index.html")]
    [InlineData("/")]
    public async Task Head_is_answered_like_get_without_the_body(string path)
    {
        var get = await service.GetAsync(path);
        var head = await service.SendAsync(HttpMethod.Head, path, null);
        Assert.Equal((get.Status, get.MediaType, ""), (head.Status, head.MediaType, head.Text));
        Assert.Equal(get.Headers.ETag, head.Headers.ETag);
    }

    [Fact]
    public async Task Options_names_the_methods()
    {
        foreach (var (path, methods) in new[] { ("/v1/rules", "GET, HEAD, OPTIONS"), ("/v1/checks", "POST, OPTIONS") })
        {
            using var request = new HttpRequestMessage(HttpMethod.Options, path);
            using var answer = await service.Client.SendAsync(request);
            Assert.Equal((HttpStatusCode.NoContent, methods), (answer.StatusCode, string.Join(", ", answer.Content.Headers.Allow)));
        }
    }

    [Fact]
    public async Task Page_of_a_named_origin_may_call_and_no_other()
    {
        (string, string)[] wish = [("Access-Control-Request-Method", "POST"), ("Access-Control-Request-Headers", "content-type, x-api-key")];
        var named = await service.SendAsync(HttpMethod.Options, "/v1/checks", null, [("Origin", Origin), .. wish]);
        Assert.Equal((204, Origin), (named.Status, named.Headers.GetValues("Access-Control-Allow-Origin").Single()));
        Assert.Contains("POST", named.Headers.GetValues("Access-Control-Allow-Methods").Single(), StringComparison.Ordinal);
        Assert.Equal("content-type,x-api-key", named.Headers.GetValues("Access-Control-Allow-Headers").Single());
        Assert.Equal(Origin, (await service.PostAsync("/v1/checks", Rack, ("Origin", Origin))).Headers.GetValues("Access-Control-Allow-Origin").Single());

        var other = await service.SendAsync(HttpMethod.Options, "/v1/checks", null, [("Origin", "https://other.example"), .. wish]);
        Assert.False(other.Headers.Contains("Access-Control-Allow-Origin"));
        Assert.False((await service.PostAsync("/v1/checks", Rack, ("Origin", "https://other.example"))).Headers.Contains("Access-Control-Allow-Origin"));
    }

    // A cache between must not give a page what was answered to another, or to none.
    [Fact]
    public async Task Answer_that_may_be_kept_is_for_its_origin()
    {
        foreach (var origin in new[] { null, Origin, "https://other.example" })
        {
            foreach (var path in new[] { "/v1/rules", "/openapi/v1.json", "/version" })
            {
                using var request = new HttpRequestMessage(HttpMethod.Get, path);
                request.Headers.TryAddWithoutValidation("Origin", origin);
                using var answer = await service.Client.SendAsync(request);
                Assert.Single(answer.Headers.Vary, "Origin");
            }
        }

        await using var closed = await KestrelService.StartAsync();
        using var alone = await closed.Client.GetAsync("/v1/rules");
        Assert.DoesNotContain("Origin", alone.Headers.Vary);
    }

    [Theory]
    [InlineData("/V1/rules")]
    [InlineData("/v1/Rules")]
    [InlineData("/v1/rules/")]
    [InlineData("/v1//rules")]
    [InlineData("/v1/rules/layout.overlap/")]
    [InlineData("/Health/live")]
    [InlineData("/openapi/v1.JSON")]
    [InlineData("/Docs/rules")]
    [InlineData("/DOCS/index.html")]
    public async Task Path_in_other_letters_or_with_a_slash_at_the_end_is_404(string path) => (await service.GetAsync(path)).IsProblem(404);

    [Fact]
    public async Task Post_to_a_path_in_other_letters_is_404()
    {
        (await service.PostAsync("/V1/Checks", Rack)).IsProblem(404);
        (await service.PostAsync("/v1/checks/", Rack)).IsProblem(404);
    }

    [Fact]
    public async Task Unknown_query_parameter_is_refused_by_name()
    {
        var answer = await service.PostAsync("/v1/checks?aply=remedies", Rack);
        answer.IsProblem(400);
        Assert.Equal("/docs/problems/invalid-query", answer.Json["type"]!.GetValue<string>());
        Assert.Equal("There is no query parameter 'aply' here.", answer.Json["detail"]!.GetValue<string>());
        (await service.PostAsync("/v1/checks?apply=all", Rack)).IsProblem(400);
        (await service.PostAsync("/v1/checks?apply=remedies&apply=remedies", Rack)).IsProblem(400);
        (await service.PostAsync("/v1/baskets/checks?apply=remedies", Rack)).IsProblem(400);
        (await service.GetAsync("/v1/rules?page=2")).IsProblem(400);

        // A name that would turn the text around, or fill it.
        var shown = (await service.GetAsync("/v1/rules?%E2%80%AEx" + new string('y', 500))).Json["detail"]!.GetValue<string>();
        Assert.Equal($"There is no query parameter '\\u202Ex{new string('y', 78)}...' here.", shown);
    }

    [Theory]
    [InlineData("/v1/rules")]
    [InlineData("/v1/none")]
    [InlineData("/health/live")]
    [InlineData("/docs/explorer/index.html")]
    [InlineData("/")]
    public async Task Every_answer_has_nosniff_and_a_trace_id(string path)
    {
        var answer = await service.GetAsync(path, ("traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01"));
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("0af7651916cd43dd8448eb211c80319c", answer.Headers.GetValues("Trace-Id").Single());
    }

    // A client that sends the whole body before it reads gets the answer, because the server reads on.
    [Theory]
    [InlineData(1_100_000)]
    [InlineData(3_000_000)]
    [InlineData(20_000_000)]
    public async Task TooLarge_body_gets_413_and_not_a_broken_connection(int bytes)
    {
        (await service.PostAsync("/v1/checks", new string(' ', bytes))).IsProblem(413);
        using var chunked = new StreamContent(new MemoryStream(new byte[bytes]));
        chunked.Headers.ContentType = new("application/json");
        (await service.SendAsync(HttpMethod.Post, "/v1/checks", chunked, ("Transfer-Encoding", "chunked"))).IsProblem(413);
    }

    [Fact]
    public async Task Client_that_waits_for_100_continue_does_not_send_a_body_that_is_too_large()
    {
        using var content = new CountedContent(100_000_000);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/checks") { Content = content };
        request.Headers.ExpectContinue = true;
        using var patient = new SocketsHttpHandler { Expect100ContinueTimeout = TimeSpan.FromMinutes(1) };
        using var client = new HttpClient(patient) { BaseAddress = service.Client.BaseAddress };
        (await Answer.OfAsync(await client.SendAsync(request))).IsProblem(413);
        Assert.Equal(0, content.Sent);
    }

    private async Task<Answer> PostAsync(byte[] body, string encoding) =>
        await service.SendAsync(HttpMethod.Post, "/v1/checks", Content(body, encoding));

    private static ByteArrayContent Content(byte[] body, string encoding)
    {
        var content = new ByteArrayContent(body);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        content.Headers.TryAddWithoutValidation("Content-Encoding", encoding);
        return content;
    }

    private static byte[] Compress(string encoding, byte[] body)
    {
        using var output = new MemoryStream();
        using (Stream stream = encoding == "br" ? new BrotliStream(output, CompressionLevel.Fastest) : new GZipStream(output, CompressionLevel.SmallestSize))
        {
            stream.Write(body);
        }

        return output.ToArray();
    }

    // Brotli has no sum at its end, but a last block.
    private static byte[] Unfinished(byte[] body)
    {
        using var output = new MemoryStream();
        using var stream = new BrotliStream(output, CompressionLevel.Fastest);
        stream.Write(body);
        stream.Flush();
        return output.ToArray();
    }

    private static byte[] Expand(string encoding, byte[] body)
    {
        using var input = new MemoryStream(body);
        using Stream stream = encoding == "br" ? new BrotliStream(input, CompressionMode.Decompress) : new GZipStream(input, CompressionMode.Decompress);
        using var output = new MemoryStream();
        stream.CopyTo(output);
        return output.ToArray();
    }

    /// <summary>A body of blanks that counts what is sent of it.</summary>
    private sealed class CountedContent : HttpContent
    {
        private readonly int bytes;

        public CountedContent(int bytes)
        {
            this.bytes = bytes;
            Headers.ContentType = new("application/json");
        }

        public int Sent { get; private set; }

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            Sent += bytes;
            await stream.WriteAsync(new byte[bytes]);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = bytes;
            return true;
        }
    }
}
