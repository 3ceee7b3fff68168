using System.Collections.Immutable;
using System.Reflection;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Http;

namespace RackCheck.Api.OpenApi;

/// <summary>
/// Example requests from openapi/examples, and the service's answers to them from openapi/examples/answers. The docs page, the contract, the README and the
/// tests use them.
/// </summary>
internal static class Examples
{
    /// <summary>Name of the rack whose drawing README and docs page show.</summary>
    public const string Drawn = "rack-power-and-earth";

    private const string Prefix = "Examples/";
    private const string AnswerPrefix = "Answers/";
    private const string ProblemPrefix = "problem-";

    /// <summary>The racks, by name.</summary>
    public static ImmutableArray<Example> Racks { get; } = Load(Prefix, "rack-");

    /// <summary>The baskets, by name.</summary>
    public static ImmutableArray<Example> Baskets { get; } = Load(Prefix, "basket-");

    /// <summary>Proposal requests.</summary>
    public static ImmutableArray<Example> Proposals { get; } = Load(Prefix, "proposal-");

    /// <summary>Comparison requests.</summary>
    public static ImmutableArray<Example> Comparisons { get; } = Load(Prefix, "comparison-");

    /// <summary>Requests for a drawing of several racks.</summary>
    public static ImmutableArray<Example> Elevations { get; } = Load(Prefix, "elevation-");

    /// <summary>Recorded answers, by name.</summary>
    public static ImmutableArray<Example> Answers { get; } = Load(AnswerPrefix, "");

    /// <summary>Name of the recorded answer of a kind of problem.</summary>
    public static string AnswerOf(ProblemKind kind) => ProblemPrefix + kind.Name;

    /// <summary>Adds requests and answers to the shared parts of the contract.</summary>
    public static void AddTo(OpenApiDocument document)
    {
        document.Components!.Examples = new Dictionary<string, IOpenApiExample>(StringComparer.Ordinal);
        foreach (var example in (ImmutableArray<Example>[])[Racks, Baskets, Proposals, Comparisons, Elevations])
        {
            foreach (var request in example)
            {
                var value = JsonNode.Parse(request.Json)!;
                var reference = (value["racks"]?[0] ?? value["after"] ?? value)["reference"] ?? value["reference"];
                document.Components.Examples[request.Name] = new OpenApiExample { Summary = reference!.GetValue<string>(), Value = value };
            }
        }

        foreach (var kind in ProblemKind.All)
        {
            document.Components.Examples[AnswerOf(kind)] = new OpenApiExample { Summary = kind.Title, Value = Answer(AnswerOf(kind)) };
        }
    }

    /// <summary>The recorded answer with a name.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public static JsonNode Answer(string name) => JsonNode.Parse(AnswerText(name))!;

    /// <summary>The recorded answer with a name, as text.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public static string AnswerText(string name) => Encoding.UTF8.GetString(Answers.Single(a => a.Name == name).Json);

    private static ImmutableArray<Example> Load(string folder, string prefix)
    {
        var assembly = Assembly.GetExecutingAssembly();
        return
        [
            .. assembly.GetManifestResourceNames()
                .Where(n => n.StartsWith(folder + prefix, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(n => new Example(Path.GetFileNameWithoutExtension(n[folder.Length..]), Read(assembly, n))),
        ];
    }

    private static byte[] Read(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}

/// <summary>An example request or answer.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Json">The document.</param>
internal sealed record Example(string Name, byte[] Json);
