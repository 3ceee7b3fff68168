using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Rules;

/// <summary>
/// The pointers that stand in a request. A rule names the values that it was asked with; where the request does not even have their record, the pointer is
/// that of the record.
/// </summary>
/// <param name="request">The request.</param>
internal sealed class PostedPointers(RackDescription request)
{
    private readonly JsonNode posted = JsonSerializer.SerializeToNode(request, ContractJson.Default.RackDescription)!;

    /// <summary>The pointers, each once.</summary>
    /// <param name="pointers">Pointers into the request with missing values filled in.</param>
    public string[] Standing(IReadOnlyList<string> pointers) => [.. pointers.Select(Standing).Distinct()];

    private string Standing(string pointer)
    {
        var (node, end) = ((JsonNode?)posted, 0);
        while (end < pointer.Length)
        {
            var next = pointer.IndexOf('/', end + 1) is var slash and > 0 ? slash : pointer.Length;
            var token = pointer[(end + 1)..next];
            var parent = node;
            node = parent switch
            {
                JsonObject record => record[token],
                JsonArray list when int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < list.Count => list[index],
                _ => null,
            };
            if (node is null)
            {
                return pointer[..(parent is JsonObject ? next : end)];
            }

            end = next;
        }

        return pointer;
    }
}
