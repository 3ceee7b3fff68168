using System.Reflection;
using Microsoft.Extensions.Configuration.Json;

namespace RackCheck.Api.Hosting;

/// <summary>Finds settings that the service does not have, such as misspelt ones.</summary>
internal static class SettingNames
{
    private static readonly string[] Framework = ["Serilog", "Logging", "Kestrel", "AllowedHosts", "urls", "DetailedErrors", "profiles", "iisSettings"];

    /// <summary>The settings without a meaning.</summary>
    /// <param name="configuration">The settings.</param>
    /// <param name="sections">The options of each section.</param>
    /// <returns>Their names, as <c>Section:Name</c>.</returns>
    public static IEnumerable<string> Unknown(IConfiguration configuration, IReadOnlyDictionary<string, Type> sections) =>
        UnknownSections(configuration, [.. sections.Keys]).Concat(sections.SelectMany(s => Within(configuration.GetSection(s.Key), s.Value)));

    private static IEnumerable<string> Within(IConfigurationSection section, Type type)
    {
        foreach (var child in section.GetChildren())
        {
            var property = type.GetProperty(child.Key, BindingFlags.Public | BindingFlags.Instance | BindingFlags.IgnoreCase);
            if (property is null)
            {
                yield return child.Path;
                continue;
            }

            var below = property.PropertyType.IsArray
                ? child.GetChildren().SelectMany(e => Below(e, property.PropertyType.GetElementType()!))
                : Below(child, property.PropertyType);
            foreach (var unknown in below)
            {
                yield return unknown;
            }
        }
    }

    private static IEnumerable<string> Below(IConfigurationSection section, Type type) =>
        type.Assembly == typeof(SettingNames).Assembly ? Within(section, type) : [];

    // The environment has variables of other programs, so there only a name close to one of ours is an error.
    private static IEnumerable<string> UnknownSections(IConfiguration configuration, string[] known)
    {
        var inFiles = configuration is IConfigurationRoot root
            ? root.Providers.OfType<JsonConfigurationProvider>().SelectMany(p => p.GetChildKeys([], null)).ToHashSet(StringComparer.OrdinalIgnoreCase)
            : [];
        return configuration.GetChildren()
            .Where(s => !known.Concat(Framework).Contains(s.Key, StringComparer.OrdinalIgnoreCase))
            .Where(s => inFiles.Contains(s.Key) || (s.GetChildren().Any() && known.Any(k => Distance(k, s.Key) <= 2)))
            .Select(s => s.Path);
    }

    // Number of letters to add, remove or replace.
    private static int Distance(string one, string other)
    {
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var cost = char.ToUpperInvariant(one[i - 1]) == char.ToUpperInvariant(other[j - 1]) ? 0 : 1;
                (diagonal, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + cost));
            }
        }

        return row[^1];
    }
}
