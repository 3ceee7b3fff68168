using System.Net.Http.Headers;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>POST /v1/elevations.</summary>
public sealed class ElevationTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/elevations";
    private const string Svg = "image/svg+xml";
    private const string Png = "image/png";
    private static readonly string Sound = Repository.Read("openapi", "examples", "rack-sound.json");

    [Theory]
    [InlineData(null, Svg)]
    [InlineData("*/*", Svg)]
    [InlineData("image/*", Svg)]
    [InlineData("image/svg+xml", Svg)]
    [InlineData("image/png", Png)]
    [InlineData("text/html, image/png;q=0.9, image/svg+xml;q=0.5", Png)]
    [InlineData("image/svg+xml;q=0, */*", Png)]
    [InlineData("image/png, */*;q=0.1", Png)]
    public async Task Answer_has_the_media_type_that_the_client_prefers(string? accept, string mediaType)
    {
        var answer = await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: accept);
        Assert.Equal(200, answer.Status);
        Assert.Equal(mediaType, answer.MediaType);
        Assert.Contains("Accept", answer.Headers.Vary);
    }

    [Theory]
    [InlineData("application/json")]
    [InlineData("text/html")]
    [InlineData("image/svg+xml;q=0")]
    public async Task Other_media_type_is_refused(string accept) =>
        (await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: accept)).IsProblem(406);

    [Theory]
    [InlineData("?view=top", "view")]
    [InlineData("?view=", "view")]
    [InlineData("?view=Front", "view")]
    [InlineData("?view=front&view=rear", "view")]
    [InlineData("?width=10", "width")]
    [InlineData("?width=8001", "width")]
    [InlineData("?width=1e3", "width")]
    [InlineData("?frame=all", "frame")]
    [InlineData("?frame=", "frame")]
    [InlineData("?theme=dark", "theme")]
    [InlineData("?scale=2", "scale")]
    public async Task Unknown_query_value_is_refused_by_name(string query, string name)
    {
        var answer = await service.PostAsync(Sound, Path + query);
        answer.IsProblem(400);
        Assert.Contains($"'{name}'", answer.Json["detail"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rack_without_its_sheet_is_the_views_alone()
    {
        async Task<(XElement Root, string Text)> Draw(string query)
        {
            var text = (await service.PostAsync(Sound, Path + query)).Text;
            return (XDocument.Parse(text).Root!, text);
        }

        static double Width(XElement root) =>
            double.Parse(root.Attribute("viewBox")!.Value.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);

        var (sheet, whole) = await Draw("?view=front");
        var (alone, own) = await Draw("?view=front&frame=none&theme=light");
        Assert.InRange(Width(alone), 600, 0.6 * Width(sheet));
        Assert.Contains("Ruleset", whole, StringComparison.Ordinal);
        Assert.DoesNotContain("Ruleset", own, StringComparison.Ordinal);
        Assert.Equal(
            sheet.Descendants().Attributes("data-item").Select(a => a.Value).Order(), alone.Descendants().Attributes("data-item").Select(a => a.Value).Order());
        Assert.Contains("prefers-color-scheme:dark", whole, StringComparison.Ordinal);
        Assert.DoesNotContain("prefers-color-scheme", own, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Several_racks_have_a_sheet()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "elevation-two-cabinets.json"), Path + "?frame=none");
        answer.IsProblem(400);
        Assert.Equal("frame", answer.Json["parameter"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("front", "front")]
    [InlineData("rear", "rear")]
    [InlineData("side", "side")]
    [InlineData("all", "front, rear, side")]
    public async Task View_chooses_the_sides(string view, string drawn)
    {
        var answer = await service.PostAsync(Sound, $"{Path}?view={view}");
        var found = XDocument.Parse(answer.Text).Descendants().Select(e => e.Attribute("data-view")?.Value).Where(v => v is not null and not "list");
        Assert.Equal(drawn, string.Join(", ", found.Distinct().Order(StringComparer.Ordinal)));
    }

    [Theory]
    [InlineData("{", 400)]
    [InlineData("[]", 422)]
    [InlineData("{}", 422)]
    [InlineData("""{ "racks": [] }""", 422)]
    [InlineData("""{ "racks": [], "before": { "items": [] } }""", 422)]
    [InlineData("""{ "before": { "items": [] } }""", 422)]
    [InlineData("""{ "racks": null }""", 422)]
    [InlineData("""{ "racks": [{ "items": [] }] }""", 422)]
    public async Task Bad_request_is_refused(string body, int status) => (await service.PostAsync(body, Path)).IsProblem(status);

    [Fact]
    public async Task Seven_racks_are_too_many()
    {
        var answer = await service.PostAsync($$"""{ "racks": [{{string.Join(", ", Enumerable.Repeat(Sound, 7))}}] }""", Path);
        answer.IsProblem(422);
        Assert.Contains(("/racks", "wrong-count"), answer.Faults);
    }

    [Fact]
    public async Task Fault_in_a_rack_has_its_pointer()
    {
        const string Flat = """{ "cabinet": { "heightU": 5, "widthMm": 600, "depthMm": 0 }, "items": [] }""";
        var answer = await service.PostAsync($$"""{ "before": {{Sound}}, "after": {{Flat}} }""", Path);
        answer.IsProblem(422);
        Assert.Contains(answer.Faults, f => f.Pointer == "/after/cabinet/depthMm");
    }

    [Fact]
    public async Task Same_request_gives_the_same_bytes()
    {
        var body = Repository.Read("openapi", "examples", "elevation-two-cabinets.json");
        Assert.Equal((await service.PostAsync(body, Path)).Text, (await service.PostAsync(body, Path)).Text);
    }

    [Fact]
    public async Task Change_is_marked_with_words()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "elevation-change.json"), Path);
        Assert.Equal(200, answer.Status);
        Assert.Contains("moved from U2", answer.Text, StringComparison.Ordinal);
        Assert.Contains("moves to U4", answer.Text, StringComparison.Ordinal);
        Assert.Contains(">Before<", answer.Text, StringComparison.Ordinal);
        Assert.Contains(">new ", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rack_without_its_product_data_is_answered()
    {
        var answer = await service.PostAsync("""{ "cabinet": { "partNumber": "QWL-NONE" }, "items": [{ "id": "a", "partNumber": "QWL-NONE-2" }] }""", Path);
        Assert.Equal(200, answer.Status);
        Assert.Contains("essential data is missing", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Svg_runs_and_loads_nothing()
    {
        var answer = await service.PostAsync(Sound, Path);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; style-src 'sha256-", policy, StringComparison.Ordinal);
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null };
        using var reader = XmlReader.Create(new StringReader(answer.Text), settings);
        var names = new HashSet<string>(StringComparer.Ordinal);
        while (reader.Read())
        {
            if (reader.NodeType == XmlNodeType.Element)
            {
                names.Add(reader.LocalName);
                Assert.Null(reader.GetAttribute("href"));
            }
        }

        Assert.Empty(names.Except(["svg", "title", "desc", "style", "g", "rect", "line", "circle", "path", "text"]));
    }

    [Fact]
    public async Task Png_has_the_width_asked_for()
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, Path + "?width=900&view=front") { Content = new StringContent(Sound) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.Accept.ParseAdd(Png);
        using var response = await client.SendAsync(request);
        var file = await response.Content.ReadAsByteArrayAsync();
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A], file[..8]);
        Assert.Equal(900, System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(16)));
    }
}
