using System.Text.RegularExpressions;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Architecture;

/// <summary>Words that nobody in the trade uses stay out of the sources, the documents and everything the service serves.</summary>
public sealed partial class WordsTests(Service service) : IClassFixture<Service>
{
    private static readonly string[] Banned =
    [
        "distribution unit", "distribution units", "unless told", "way of the air", "hangs on", "hang on", "lives by", "breathes", "breathing", "mend",
        "sheds", "give or take", "from afar", "wired in", "water settles", "unasked", "resists too much", "is said to be redundant",
        "settings of the day", "wishes", "be rid of", "cure", "the text is no JSON", "it stands twice",
    ];

    private static readonly Regex Phrase = new(
        $@"\b({string.Join('|', Banned.Select(Regex.Escape))})\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(10));

    private static readonly string[] TextFiles =
        [
            ".cs", ".csproj", ".css", ".html", ".js", ".json", ".jsonl", ".md", ".props", ".py", ".service", ".sh", ".svg",
            ".targets", ".txt", ".xml", ".yaml", ".yml", "",
        ];

    [Fact]
    public void Files_have_no_banned_phrase()
    {
        string[] folders = ["src", "tests", "openapi", "deploy"];
        var files = folders.SelectMany(f => Directory.EnumerateFiles(Repository.PathOf(f), "*", SearchOption.AllDirectories))
            .Append(Repository.PathOf("README.md")).Append(Repository.PathOf("DEVELOPERS.md"))
            .Where(f => !BuildFolder().IsMatch(f) && TextFiles.Contains(Path.GetExtension(f)) && Path.GetFileName(f) != "WordsTests.cs");
        var found =
            from file in files
            from line in File.ReadLines(file).Select((text, index) => (Text: text, Number: index + 1))
            from hit in Hits(line.Text)
            select $"{Path.GetRelativePath(Repository.Root, file)}:{line.Number}: {hit}";
        Assert.Empty(found);
    }

    [Theory]
    [InlineData("/openapi/v1.json")]
    [InlineData("/v1/rules")]
    public async Task Served_text_has_no_banned_phrase(string path) => await Search(path);

    [Fact]
    public async Task Served_rule_has_no_banned_phrase()
    {
        foreach (var rule in RuleSet.Default.All)
        {
            await Search("/v1/rules/" + rule.Descriptor.Id);
        }
    }

    private async Task Search(string path)
    {
        var answer = await service.GetAsync(path);
        Assert.Equal(200, (int)answer.Status);
        Assert.Empty(Hits(answer.Text).Select(h => $"{path}: {h}"));
    }

    private static IEnumerable<string> Hits(string text) => Phrase.Matches(text).Concat(SafetyNote().Matches(text)).Select(m => m.Value);

    [GeneratedRegex(@"\bMind\.")]
    private static partial Regex SafetyNote();

    [GeneratedRegex(@"[\\/](bin|obj|node_modules)[\\/]")]
    private static partial Regex BuildFolder();
}
