using System.Buffers.Text;
using System.IO.Compression;
using System.Net;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using RackCheck.Documents;
using RackCheck.Documents.Pages;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The pages of the documentation.</summary>
public sealed partial class DocsSiteTests(Service service) : IClassFixture<Service>
{
    private const string Case = "#check=";

    private static readonly HashSet<string> Void = ["meta", "link", "input", "br", "img", "source"];

    [Fact]
    public async Task Every_link_of_every_page_leads_somewhere()
    {
        var root = new Uri("http://localhost/");
        var pages = new Dictionary<string, Answer>(StringComparer.Ordinal);
        var links = new List<(string From, Uri To)>();
        var open = new Queue<string>(["/" + Paths.Start]);
        while (open.TryDequeue(out var path))
        {
            if (pages.ContainsKey(path))
            {
                continue;
            }

            var answer = await service.GetAsync(path);
            pages[path] = answer;
            Assert.True(answer.Status == (path == "/" + Paths.Explorer ? 301 : 200), $"{path} has status {answer.Status}");
            if (answer.MediaType != "text/html" || path.StartsWith("/" + Paths.Explorer, StringComparison.Ordinal))
            {
                continue;
            }

            CheckMarkup(path, answer.Text);
            foreach (Match match in Address().Matches(answer.Text))
            {
                var address = WebUtility.HtmlDecode(match.Groups[1].Value);
                Assert.False(address.StartsWith('/') || address.Contains("//", StringComparison.Ordinal), $"{path}: {address} is not relative");
                var to = new Uri(new Uri(root, path), address);
                links.Add((path, to));
                open.Enqueue(to.AbsolutePath);
            }
        }

        var cases = links.Where(l => l.To.Fragment.StartsWith(Case, StringComparison.Ordinal)).ToList();
        Assert.True(cases.Count > RuleSet.Default.All.Length, $"only {cases.Count} racks to open in the workbench");
        Assert.All(cases, c => Assert.Equal('{', Inflated(c.To.Fragment[Case.Length..])[0]));
        foreach (var (from, to) in links.Except(cases).Where(l => l.To.Fragment.Length > 1 && !l.To.Fragment.StartsWith("#/", StringComparison.Ordinal)))
        {
            Assert.True(pages[to.AbsolutePath].Text.Contains($" id=\"{to.Fragment[1..]}\"", StringComparison.Ordinal), $"{from}: nothing at {to}");
        }

        Assert.All(RuleSet.Default.All, r => Assert.Contains("/" + Paths.Rule(r.Descriptor.Id), pages.Keys));
        Assert.All(ReferencePages.All, t => Assert.Contains($"/{Paths.Tables}/{t.Table}.csv", pages.Keys));
        Assert.InRange(pages["/" + Paths.Start].Text.Length, 1000, 100_000);
    }

    // A UPS on supply A with a PDU behind it, and a server with a cord there and one on supply B.
    [Fact]
    public async Task Example_of_a_ups_is_a_rack_that_is_fed_from_two_supplies()
    {
        var page = WebUtility.HtmlDecode((await service.GetAsync("/" + Paths.Concepts)).Text);
        var example = page[(page.IndexOf("<code>\"supplies", StringComparison.Ordinal) + 6)..];
        example = example[..example.IndexOf("</code>", StringComparison.Ordinal)];
        var answer = await service.PostAsync($$"""{ "cabinet": { "heightU": 42, "widthMm": 800, "depthMm": 1000 }, {{example}} }""");
        Assert.Equal(200, answer.Status);
        Assert.DoesNotContain(answer.Json["findings"]!.AsArray(), f => f!["rule"]!.GetValue<string>().StartsWith("power.", StringComparison.Ordinal));
        var cords = answer.Json["figures"]!["power"]!["assignment"]!.AsArray().Select(c => $"{c!["item"]} {c["pdu"]}");
        Assert.Equal(["server pdu-b", "server pdu-ups", "ups wall"], cords.Order());
    }

    [Fact]
    public async Task Page_of_a_rule_has_all_its_data()
    {
        foreach (var rule in RuleSet.Default.All.Select(r => r.Descriptor))
        {
            var page = WebUtility.HtmlDecode((await service.GetAsync("/" + Paths.Rule(rule.Id))).Text);
            string[] said =
            [
                rule.Title,
                rule.What,
                rule.Why,
                rule.Formula,
                Cautions.Documentation,
                .. rule.Remedies,
                .. rule.Notes,
                .. rule.Needs,
                .. rule.Sources.Select(s => s.Text),
                .. rule.Limits.Select(l => l.Name),
            ];
            Assert.All(said, s => Assert.Contains(s, page, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task Addresses_of_rules_on_the_former_page_still_lead_to_them()
    {
        var page = (await service.GetAsync("/" + Paths.Rules)).Text;
        Assert.All(RuleSet.Default.All, r => Assert.Contains($"<li id=\"{r.Descriptor.Id}\"", page, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/docs/", "../docs")]
    [InlineData("/docs/index.html", "explorer/index.html")]
    public async Task Former_address_leads_on(string path, string to)
    {
        var answer = await service.GetAsync(path);
        Assert.Equal((302, to), (answer.Status, answer.Headers.Location!.ToString()));
    }

    [Fact]
    public async Task Samples_post_the_rack_of_the_start_page()
    {
        var path = $"{Paths.Examples}/{SampleCode.Example}.json";
        Assert.Equal(Repository.Read("openapi", "examples", SampleCode.Example + ".json"), (await service.GetAsync("/" + path)).Text);
        Assert.All(SampleCode.All, s => Assert.Contains(path, s.Code, StringComparison.Ordinal));
        Assert.All(SampleCode.All, s => Assert.Contains("v1/checks", s.Code, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Editor_is_made_of_its_sources()
    {
        var sources = new[] { "editor.js", "package-lock.json" }
            .SelectMany(n => File.ReadAllBytes(Repository.PathOf("src", "RackCheck.Documents", "Editor", n)));
        var stamp = Convert.ToHexStringLower(SHA256.HashData([.. sources]))[..16];
        Assert.Contains($"Editor/build of {stamp}.", (await service.GetAsync("/docs/workbench/editor.js")).Text[..300], StringComparison.Ordinal);
    }

    private static string Inflated(string code)
    {
        using var stream = new DeflateStream(new MemoryStream(Base64Url.DecodeFromChars(code)), CompressionMode.Decompress);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    // Each tag is closed in its order, and no sign "<" stands unescaped.
    private static void CheckMarkup(string path, string page)
    {
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        var open = new Stack<string>();
        var tags = Tag().Matches(page);
        foreach (Match tag in tags)
        {
            var name = tag.Groups[2].Value;
            if (tag.Groups[1].Length > 0)
            {
                Assert.True(open.TryPop(out var last) && last == name, $"{path}: </{name}> closes {last} at {tag.Index}");
            }
            else if (tag.Groups[3].Length == 0 && !Void.Contains(name))
            {
                open.Push(name);
            }
        }

        Assert.True(open.Count == 0, $"{path}: {string.Join(", ", open)} not closed");
        Assert.True(page.Count(c => c == '<') == tags.Count + 1, $"{path}: a sign < is not part of a tag");
    }

    [GeneratedRegex("(?:href|src|action)=\"([^\"]*)\"")]
    private static partial Regex Address();

    [GeneratedRegex("""<(/?)([A-Za-z][\w-]*)(?:\s+[\w:-]+(?:="[^"]*")?)*\s*(/?)>""")]
    private static partial Regex Tag();
}
