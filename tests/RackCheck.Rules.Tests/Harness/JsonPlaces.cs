using System.Globalization;
using System.Text.Json.Nodes;

namespace RackCheck.Rules.Tests.Harness;

/// <summary>Looks pointers up in a request, by another way than the service builds them.</summary>
public static class JsonPlaces
{
    /// <summary>Whether a pointer names a place that is there, or a member that an object that is there could have.</summary>
    public static bool IsPlace(JsonNode request, string pointer)
    {
        JsonNode? at = request;
        var tokens = pointer.Split('/').Skip(1).Select(t => t.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal)).ToArray();
        for (var i = 0; i < tokens.Length; i++)
        {
            if (at is JsonArray list && int.TryParse(tokens[i], CultureInfo.InvariantCulture, out var index) && index < list.Count)
            {
                at = list[index];
            }
            else if (at is JsonObject members && members.TryGetPropertyValue(tokens[i], out var member))
            {
                at = member;
            }
            else
            {
                return at is JsonObject && i == tokens.Length - 1;
            }
        }

        return true;
    }
}
