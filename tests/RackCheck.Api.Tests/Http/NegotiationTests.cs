using System.Text;

namespace RackCheck.Api.Tests.Http;

/// <summary>Addresses, methods and media types: every refusal is a problem document.</summary>
public sealed class NegotiationTests(Service service) : IClassFixture<Service>
{
    private static readonly byte[] Sound = Encoding.UTF8.GetBytes("""{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [] }""");

    [Theory]
    [InlineData("application/json")]
    [InlineData("application/json; charset=utf-8")]
    [InlineData("Application/JSON; charset=\"UTF-8\"")]
    public async Task ContentType_json_in_utf8_is_read(string contentType) =>
        Assert.Equal(200, (await service.PostAsync(Sound, contentType: contentType)).Status);

    [Theory]
    [InlineData(null)]
    [InlineData("text/plain")]
    [InlineData("text/json")]
    [InlineData("application/xml")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData("application/x-www-form-urlencoded")]
    [InlineData("multipart/form-data; boundary=x")]
    public async Task Other_content_type_is_refused_with_415(string? contentType) =>
        (await service.PostAsync(Sound, contentType: contentType)).IsProblem(415);

    [Theory]
    [InlineData("*/*")]
    [InlineData("application/*")]
    [InlineData("application/json")]
    [InlineData("application/json; charset=utf-8")]
    [InlineData("Application/JSON;charset=\"UTF-8\"")]
    [InlineData("application/*;charset=UTF-8")]
    [InlineData("application/json;q=0, application/json;charset=utf-8")]
    [InlineData("text/html, application/json;q=0.1")]
    [InlineData("text/html, */*;q=0.1")]
    [InlineData("nonsense")]
    public async Task Accept_that_includes_json_is_served(string accept)
    {
        Assert.Equal((200, "application/json"), Kind(await service.PostAsync(Sound, accept: accept)));
        Assert.Equal((200, "application/json"), Kind(await service.GetAsync("/v1/rules", accept)));
    }

    [Theory]
    [InlineData("text/html")]
    [InlineData("application/xml, text/*")]
    [InlineData("application/json;q=0, */*")]
    [InlineData("application/json;q=0")]
    [InlineData("application/json;charset=utf-16")]
    [InlineData("application/json;charset=utf-8;q=0, application/json")]
    [InlineData("application/json;profile=short")]
    public async Task Accept_without_json_is_refused_with_406(string accept)
    {
        (await service.PostAsync(Sound, accept: accept)).IsProblem(406);
        (await service.GetAsync("/v1/rules", accept)).IsProblem(406);
        (await service.GetAsync("/v1/rules/layout.overlap", accept)).IsProblem(406);
        (await service.GetAsync("/v1/reference/rack-geometry", accept)).IsProblem(406);
    }

    [Theory]
    [InlineData("/v1/parts-lists", "application/json", "text/csv; charset=utf-8")]
    [InlineData("/v1/parts-lists", "application/json", "text/csv;charset=\"UTF-8\"")]
    [InlineData("/v1/specifications", "application/json", "text/html;charset=utf-8")]
    [InlineData("/v1/checks/stream", "application/x-ndjson", "application/x-ndjson; charset=UTF-8")]
    public async Task Accept_may_name_the_charset_of_any_answer(string path, string contentType, string accept)
    {
        var answer = await service.PostAsync(Sound, path, contentType, accept);
        Assert.Equal((200, accept[..accept.IndexOf(';', StringComparison.Ordinal)]), Kind(answer));
    }

    [Theory]
    [InlineData("/v1/nothing")]
    [InlineData("/v1/rules/layout.nothing")]
    [InlineData("/v1/rules/Layout.Overlap")]
    [InlineData("/v1/reference/nothing")]
    [InlineData("/v1/rules/%2e%2e")]
    [InlineData("/openapi/v2.json")]
    public async Task UnknownAddress_is_refused_with_404(string path) => (await service.GetAsync(path)).IsProblem(404);

    [Fact]
    public async Task OtherMethod_is_refused_with_405_and_allow_header()
    {
        (await service.GetAsync("/v1/checks")).IsProblem(405);
        (await service.PostAsync(Sound, "/v1/rules")).IsProblem(405);
    }

    [Fact]
    public async Task Root_redirects_to_the_docs_page()
    {
        var answer = await service.GetAsync("/");
        Assert.Equal((302, "docs"), (answer.Status, answer.Headers.Location!.ToString()));
    }

    [Fact]
    public async Task DocsPage_policy_forbids_inline_and_external_script()
    {
        var answer = await service.GetAsync("/docs/explorer/index.html");
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'none'; script-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Probes_are_answered()
    {
        Assert.Equal("live", (await service.GetAsync("/health/live")).Json["status"]!.GetValue<string>());
        Assert.Equal("ready", (await service.GetAsync("/health/ready")).Json["status"]!.GetValue<string>());
    }

    [Fact]
    public async Task Problem_has_the_trace_id_of_the_request()
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/rules/none");
        request.Headers.Add("traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01");
        var answer = await Answer.OfAsync(await client.SendAsync(request));
        Assert.Equal("0af7651916cd43dd8448eb211c80319c", answer.Json["traceId"]!.GetValue<string>());
    }

    private static (int, string?) Kind(Answer answer) => (answer.Status, answer.MediaType);
}
