using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>POST /v1/specifications.</summary>
public sealed partial class SpecificationTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/specifications";
    private const string Html = "text/html";
    private const string Pdf = "application/pdf";
    private static readonly string Sound = Repository.Read("openapi", "examples", "rack-sound.json");

    [Theory]
    [InlineData(null, Html)]
    [InlineData("*/*", Html)]
    [InlineData("text/*", Html)]
    [InlineData("application/*", Pdf)]
    [InlineData("application/pdf", Pdf)]
    [InlineData("application/pdf, text/html;q=0.5", Pdf)]
    [InlineData("text/html;q=0, */*", Pdf)]
    public async Task Answer_has_the_media_type_that_the_client_prefers(string? accept, string mediaType)
    {
        var answer = await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: accept);
        Assert.Equal(200, answer.Status);
        Assert.Equal(mediaType, answer.MediaType);
        Assert.Contains("Accept", answer.Headers.Vary);
        Assert.StartsWith(mediaType == Pdf ? "%PDF-" : "<!DOCTYPE html>", answer.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "<h1 dir=\"auto\">Specification</h1>")]
    [InlineData("?document=specification", "<h1 dir=\"auto\">Specification</h1>")]
    [InlineData("?document=packing-list", "<h1 dir=\"auto\">Packing list and delivery note</h1>")]
    [InlineData("?document=installation", "<h1 dir=\"auto\">Installation sheet</h1>")]
    [InlineData("?document=service", "<h1 dir=\"auto\">Service sheet</h1>")]
    public async Task Query_chooses_the_document(string query, string title)
    {
        var answer = await service.PostAsync(Sound, Path + query);
        Assert.Contains(title, answer.Text, StringComparison.Ordinal);
        Assert.Equal(answer.Text, (await service.PostAsync(Sound, Path + query)).Text);
        var digest = (await service.PostAsync(Sound)).Json["descriptionDigest"]!.GetValue<string>();
        Assert.Contains(digest, answer.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("?document=Service")]
    [InlineData("?document=")]
    [InlineData("?document=service&document=service")]
    [InlineData("?view=front")]
    public async Task Unknown_query_is_refused(string query) => (await service.PostAsync(Sound, Path + query)).IsProblem(400);

    [Theory]
    [InlineData("application/json")]
    [InlineData("image/png")]
    [InlineData("text/html;q=0")]
    public async Task Other_media_type_is_refused(string accept) =>
        (await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: accept)).IsProblem(406);

    [Theory]
    [InlineData("{", 400)]
    [InlineData("[]", 422)]
    [InlineData("{}", 422)]
    [InlineData("""{ "items": [] }""", 422)]
    public async Task Bad_request_is_refused(string body, int status) => (await service.PostAsync(body, Path)).IsProblem(status);

    [Fact]
    public async Task Policy_allows_the_style_sheets_of_the_page_and_nothing_else()
    {
        var answer = await service.PostAsync(Sound, Path);
        var policy = string.Join(' ', answer.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; style-src 'sha256-", policy, StringComparison.Ordinal);
        var styles = StyleElement().Matches(answer.Text).Select(m => m.Groups[1].Value).ToArray();
        Assert.Equal(3, styles.Length);
        Assert.All(styles, s => Assert.Contains(Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(s))), policy, StringComparison.Ordinal));
        Assert.DoesNotContain("<script", answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rack_without_its_product_data_is_answered()
    {
        var answer = await service.PostAsync("""{ "cabinet": { "partNumber": "QWL-NONE" }, "items": [{ "id": "a", "partNumber": "QWL-NONE-2" }] }""", Path);
        Assert.Equal(200, answer.Status);
        Assert.Contains("Nothing can be drawn, built or packed by this document.", answer.Text, StringComparison.Ordinal);
    }

    [GeneratedRegex("<style>(.*?)</style>", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex StyleElement();
}
