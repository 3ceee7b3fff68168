using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Remedies.Patches;

/// <summary>Applies the JSON Patch of a remedy to a description: RFC 6902 with add, remove, replace and test.</summary>
/// <remarks>
/// A <see cref="PatchOperation"/> has no <c>from</c>, so move and copy do not exist. The JSON Patch library of ASP.NET Core is not used: it
/// adds the web framework to a project without HTTP, ignores unknown operations, accepts an index with a
/// leading zero and throws an argument error for the pointer of the whole document. RFC 6902 and RFC 6901 require otherwise.
/// </remarks>
public static class RackPatch
{
    /// <summary>Applies a remedy.</summary>
    /// <param name="description">The description for which the remedy was offered; it is not changed.</param>
    /// <returns>The description with the remedy applied. It is read as strictly as a request, but ids and ranges are not checked.</returns>
    /// <exception cref="RackPatchException">A path does not exist, a test fails, an operation is unknown, or the result is not a description.</exception>
    public static RackDescription Apply(RackDescription description, Remedy remedy) => Apply(description, remedy.Patch);

    /// <summary>Applies operations in order, all or none: RFC 6902 section 5.</summary>
    /// <param name="description">The description; it is not changed.</param>
    /// <returns>The description with the operations applied.</returns>
    /// <exception cref="RackPatchException">A path does not exist, a test fails, an operation is unknown, or the result is not a description.</exception>
    public static RackDescription Apply(RackDescription description, IReadOnlyList<PatchOperation> patch)
    {
        var document = JsonSerializer.SerializeToNode(description, ContractJson.Default.RackDescription);
        for (var i = 0; i < patch.Count; i++)
        {
            document = Apply(document, patch[i], i);
        }

        try
        {
            return document.Deserialize(ContractJson.Default.RackDescription) ?? throw new RackPatchException(patch.Count, "The result is null.");
        }
        catch (JsonException fault)
        {
            throw new RackPatchException(patch.Count, "The result is not a description.", fault);
        }
    }

    /// <summary>Applies one operation to any document.</summary>
    /// <param name="document">The document; it is changed. Null is the JSON null.</param>
    /// <param name="index">Index in the patch, for the exception.</param>
    /// <returns>The same document, or another if the operation replaces the whole document.</returns>
    /// <exception cref="RackPatchException">A path does not exist, a test fails, or the operation is unknown.</exception>
    public static JsonNode? Apply(JsonNode? document, PatchOperation operation, int index)
    {
        if (operation.Op is not ("add" or "remove" or "replace" or "test"))
        {
            throw new RackPatchException(index, $"{operation.Op} is not a supported operation.");
        }

        if (operation.Op != "remove" && operation.Value is null)
        {
            throw new RackPatchException(index, $"{operation.Op} needs a value.");
        }

        var tokens = Tokens(operation.Path, index);
        if (tokens.Length == 0)
        {
            // RFC 6901 section 5: the empty pointer is the whole document.
            return operation.Op switch
            {
                "remove" => null,
                "test" => Tested(document, operation, index),
                _ => ValueOf(operation),
            };
        }

        var parent = document;
        foreach (var token in tokens.AsSpan(0, tokens.Length - 1))
        {
            parent = Child(parent, token, operation, index);
        }

        switch (parent)
        {
            case JsonObject members:
                ApplyToMember(members, tokens[^1], operation, index);
                break;
            case JsonArray elements:
                ApplyToElement(elements, tokens[^1], operation, index);
                break;
            default:
                throw Missing(operation, index);
        }

        return document;
    }

    // RFC 6902 section 4.1: add inserts a member or replaces an existing one; 4.2 and 4.3: the others need an existing one.
    private static void ApplyToMember(JsonObject members, string name, PatchOperation operation, int index)
    {
        if (operation.Op != "add" && !members.ContainsKey(name))
        {
            throw Missing(operation, index);
        }

        switch (operation.Op)
        {
            case "remove":
                members.Remove(name);
                break;
            case "test":
                Tested(members[name], operation, index);
                break;
            default:
                members[name] = ValueOf(operation);
                break;
        }
    }

    // RFC 6902 section 4.1: add shifts the rest to the right, up to one past the end, which is "-"; the others need an existing element.
    private static void ApplyToElement(JsonArray elements, string token, PatchOperation operation, int index)
    {
        var isAdd = operation.Op == "add";
        var at = isAdd && token == "-" ? elements.Count : Index(token);
        if (at is not { } place || place > elements.Count || (place == elements.Count && !isAdd))
        {
            throw Missing(operation, index);
        }

        switch (operation.Op)
        {
            case "add":
                elements.Insert(place, ValueOf(operation));
                break;
            case "remove":
                elements.RemoveAt(place);
                break;
            case "test":
                Tested(elements[place], operation, index);
                break;
            default:
                elements[place] = ValueOf(operation);
                break;
        }
    }

    private static JsonNode? Child(JsonNode? parent, string token, PatchOperation operation, int index) => parent switch
    {
        JsonObject members when members.TryGetPropertyValue(token, out var member) => member,
        JsonArray elements when Index(token) is { } place && place < elements.Count => elements[place],
        _ => throw Missing(operation, index),
    };

    // RFC 6902 section 4.6: numbers by value, members in any order.
    private static JsonNode? Tested(JsonNode? found, PatchOperation operation, int index) =>
        JsonNode.DeepEquals(found, ValueOf(operation))
            ? found
            : throw new RackPatchException(index, $"The test failed: {operation.Path} has a different value.");

    // A new node each time: a node has only one parent.
    private static JsonNode? ValueOf(PatchOperation operation) => JsonSerializer.SerializeToNode(operation.Value!.Value, ContractJson.Default.JsonElement);

    // RFC 6901 section 4: ~1 before ~0, so that ~01 becomes ~1.
    private static string[] Tokens(string pointer, int index)
    {
        if (pointer.Length == 0)
        {
            return [];
        }

        return pointer[0] == '/'
            ? Array.ConvertAll(
                pointer[1..].Split('/'),
                t => t.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))
            : throw new RackPatchException(index, $"{pointer} is not a JSON Pointer.");
    }

    // RFC 6901 section 4: digits without a leading zero.
    private static int? Index(string token) =>
        (token == "0" || !token.StartsWith('0')) && int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var place) ? place : null;

    private static RackPatchException Missing(PatchOperation operation, int index) =>
        new(index, $"{operation.Op} cannot find {operation.Path}.");
}
