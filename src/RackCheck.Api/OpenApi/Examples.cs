using System.Collections.Immutable;
using System.Reflection;

namespace RackCheck.Api.OpenApi;

/// <summary>The racks and baskets of the demo scenario, from openapi/examples: on the docs page, in the contract, in the README and in the tests.</summary>
internal static class Examples
{
    private const string Prefix = "Examples/";

    /// <summary>The racks, by name.</summary>
    public static ImmutableArray<Example> Racks { get; } = Load("rack-");

    /// <summary>The baskets, by name.</summary>
    public static ImmutableArray<Example> Baskets { get; } = Load("basket-");

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

/// <summary>A rack or a basket of the demo scenario.</summary>
/// <param name="Name">File name without ending.</param>
/// <param name="Json">The document.</param>
internal sealed record Example(string Name, byte[] Json);
