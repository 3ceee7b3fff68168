using System.Globalization;
using System.Text.Json.Nodes;

namespace RackCheck.Testing;

/// <summary>Looks pointers up in a request, by another way than the service builds them.</summary>
public static class JsonPlaces
{
    /// <summary>Whether a pointer names a place that is there, or a member that an object that is there could have.</summary>
    public static bool IsPlace(JsonNode request, string pointer) =>
        Stands(request, pointer) || (pointer.LastIndexOf('/') is >= 0 and var end && At(request, pointer[..end]) is JsonObject);

    /// <summary>Whether a pointer names a place that is there.</summary>
    public static bool Stands(JsonNode request, string pointer) => pointer.Length == 0 || At(request, pointer) is not null;

    private static JsonNode? At(JsonNode? at, string pointer)
    {
        foreach (var token in pointer.Split('/').Skip(1)
            .Select(t => t.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal)))
        {
            at = at switch
            {
                JsonArray list when int.TryParse(token, CultureInfo.InvariantCulture, out var index) && index < list.Count => list[index],
                JsonObject members => members[token],
                _ => null,
            };
        }

        return at;
    }
}
