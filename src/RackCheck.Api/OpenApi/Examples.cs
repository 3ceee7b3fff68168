using System.Collections.Immutable;
using System.Reflection;

namespace RackCheck.Api.OpenApi;

/// <summary>Example racks and baskets from openapi/examples. The docs page, the contract, the README and the tests use them.</summary>
internal static class Examples
{
    /// <summary>Name of the rack whose drawing README and docs page show.</summary>
    public const string Drawn = "rack-power-and-earth";

    private const string Prefix = "Examples/";

    /// <summary>The racks, by name.</summary>
    public static ImmutableArray<Example> Racks { get; } = Load("rack-");

    /// <summary>The baskets, by name.</summary>
    public static ImmutableArray<Example> Baskets { get; } = Load("basket-");

    /// <summary>Proposal requests.</summary>
    public static ImmutableArray<Example> Proposals { get; } = Load("proposal-");

    /// <summary>Comparison requests.</summary>
    public static ImmutableArray<Example> Comparisons { get; } = Load("comparison-");

    /// <summary>Requests for a drawing of several racks.</summary>
    public static ImmutableArray<Example> Elevations { get; } = Load("elevation-");

    private static ImmutableArray<Example> Load(string prefix)
    {
        var assembly = Assembly.GetExecutingAssembly();
        return
        [
            .. assembly.GetManifestResourceNames()
                .Where(n => n.StartsWith(Prefix + prefix, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(n => new Example(Path.GetFileNameWithoutExtension(n[Prefix.Length..]), Read(assembly, n))),
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

/// <summary>An example rack or basket.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Json">The document.</param>
internal sealed record Example(string Name, byte[] Json);
