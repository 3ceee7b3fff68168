using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>
/// What a sales engineer would add to the baskets of <c>tests/acceptance/baskets</c>, beside what the service adds. The table of it is their README.
/// </summary>
public sealed class BasketCaseTests
{
    // A sales engineer names what a customer chooses by; the small parts of the mounting follow from it.
    private static readonly string[] Implied = ["BP", "FIX", "SLD", "RUN", "ELD", "EBR", "SH", "CRD"];

    private static readonly string Folder = Repository.PathOf("tests", "acceptance", "baskets");

    [Fact]
    public async Task Table_is_current_and_what_differs_is_argued()
    {
        await using var service = new Service();
        var page = new StringBuilder("""
            # Baskets as a shop gets them

            `BasketCaseTests` posts them all and compares this table, which `tests/regenerate` writes; what the engineer adds stood here before the code did. He
            names what a customer chooses by; panels, rails, shelves, cords, earth leads, earth bars and fixings follow from it and are the service's own count.
            What differs otherwise, or is not released, is argued in the case.

            | basket | ordered | a sales engineer adds | never | the service adds | product | argued |
            | --- | --- | --- | --- | --- | --- | --- |

            """);
        foreach (var file in Directory.EnumerateFiles(Folder, "*.json").Order(StringComparer.Ordinal))
        {
            var @case = JsonNode.Parse(await File.ReadAllTextAsync(file))!;
            var answer = await service.PostAsync(@case["request"]!.ToJsonString(), "/v1/baskets/checks");
            Assert.Equal(200, answer.Status);
            page.Append(Row(Path.GetFileNameWithoutExtension(file), @case, answer.Json));
        }

        var table = Path.Combine(Folder, "README.md");
        if (Repository.IsRegenerating)
        {
            await File.WriteAllTextAsync(table, page.ToString());
        }

        var known = File.Exists(table) ? (await File.ReadAllTextAsync(table)).ReplaceLineEndings("\n") : "";
        Assert.True(known == page.ToString(), "The answers to the baskets have changed. If this is intended, run tests/regenerate and commit the table.");
    }

    private static string Row(string name, JsonNode @case, JsonNode report)
    {
        var expected = @case["expect"]!["basket"]!;
        string[] adds = Texts(expected["adds"]), never = Texts(expected["never"]);
        var added = report["missingLines"]!.AsArray().Select(l => (Part: NameOf(l!["partNumber"]), Quantity: l["quantity"]!.GetValue<long>())).ToArray();
        var product = report["completedVerdicts"]!["product"]!.ToString();
        string[] further = [.. added.Select(a => a.Part).Where(p => !Implied.Concat(adds).Any(k => IsOf(p, k)))];
        string[] left = [.. adds.Where(k => !added.Any(a => IsOf(a.Part, k)))];
        var argued = @case["argued"]?.ToString();
        var isPlain = product == "release" && further.Length + left.Length == 0;
        Assert.True(
            isPlain == (argued is null),
            $"{name} is {product}, with {string.Join(", ", further)}, without {string.Join(", ", left)}: {argued ?? "not argued"}");
        return $"| {name} | {Lines(@case["request"]!["lines"]!.AsArray())} | {Kinds(adds)} | {Kinds(never)} | "
            + $"{string.Join(", ", added.Select(a => Of(a.Quantity, a.Part)))} | {product} | {argued} |\n";
    }

    private static string Lines(JsonArray lines) =>
        string.Join(", ", lines.Select(l => Of(l!["quantity"]?.GetValue<long>() ?? 1, NameOf(l["partNumber"] ?? l["item"]!["id"]))));

    private static string NameOf(JsonNode? part) => part!.ToString().Replace("QWL-", "", StringComparison.Ordinal);

    private static string Kinds(string[] kinds) => string.Join(", ", kinds).Replace("|", " or ", StringComparison.Ordinal);

    private static string Of(long quantity, string part) => string.Create(CultureInfo.InvariantCulture, $"{quantity} {part}");

    // A kind is the start of a part number; alternatives are separated by a bar.
    private static bool IsOf(string part, string kind) => kind.Split('|').Any(k => part.StartsWith(k, StringComparison.Ordinal));

    private static string[] Texts(JsonNode? list) => [.. (list?.AsArray() ?? []).Select(t => t!.ToString())];
}
