using System.Text.Json.Nodes;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>
/// Finds the changes between two versions of the contract that break clients of the earlier one: something is gone, a request is taken no longer, or an answer
/// has what it could not have.
/// </summary>
internal sealed class ContractChanges
{
    private static readonly string[] LeastBounds = ["minimum", "minLength", "minItems", "minProperties"];
    private static readonly string[] MostBounds = ["maximum", "maxLength", "maxItems", "maxProperties"];

    private readonly List<string> found = [];
    private readonly HashSet<(string Schema, bool IsRequest)> seen = [];
    private readonly JsonNode earlier;
    private readonly JsonNode later;

    private ContractChanges(JsonNode earlier, JsonNode later) => (this.earlier, this.later) = (earlier, later);

    /// <summary>The breaking changes.</summary>
    public static IReadOnlyList<string> Breaking(JsonNode earlier, JsonNode later)
    {
        var changes = new ContractChanges(earlier, later);
        (string Name, JsonNode Before, JsonNode? After)[] operations =
        [
            .. from path in earlier["paths"]!.AsObject()
               from operation in path.Value!.AsObject()
               select ($"{operation.Key} {path.Key}", operation.Value!, later["paths"]![path.Key]?[operation.Key]),
        ];
        changes.found.AddRange(operations.Where(o => o.After is null).Select(o => $"{o.Name} is gone"));

        // Requests first: what an answer repeats of a request has what the client can send.
        var kept = operations.Where(o => o.After is not null).ToArray();
        Array.ForEach(kept, o => changes.CompareRequest(o.Name, o.Before, o.After!));
        Array.ForEach(kept, o => changes.CompareAnswers(o.Name, o.Before, o.After!));
        return changes.found;
    }

    private static JsonNode Resolved(JsonNode document, JsonNode part)
    {
        if (part["$ref"] is not { } reference)
        {
            return part;
        }

        var at = document;
        foreach (var name in reference.GetValue<string>().Split('/').Skip(1))
        {
            at = at[name]!;
        }

        return Resolved(document, at);
    }

    private static HashSet<string> Types(JsonNode schema) => schema["type"] switch
    {
        JsonArray several => [.. several.Select(t => t!.GetValue<string>())],
        { } one => [one.GetValue<string>()],
        null => [],
    };

    private static HashSet<string> Texts(JsonNode? list) => list is JsonArray texts ? [.. texts.Select(t => t?.ToJsonString() ?? "null")] : [];

    private void CompareRequest(string name, JsonNode before, JsonNode after)
    {
        Differs(before["operationId"]?.ToString() == after["operationId"]?.ToString(), $"{name}: its operationId is another");
        CompareParameters(name, before, after);
        if (before["requestBody"] is { } body)
        {
            CompareContents(name, body, after["requestBody"], isRequest: true);
        }
    }

    private void CompareAnswers(string name, JsonNode before, JsonNode after)
    {
        foreach (var (status, response) in before["responses"]!.AsObject())
        {
            var now = after["responses"]![status];
            Differs(now is not null, $"{name}: status {status} is gone");
            if (now is not null)
            {
                CompareContents($"{name} {status}", Resolved(earlier, response!), Resolved(later, now), isRequest: false);
            }
        }
    }

    private void CompareParameters(string name, JsonNode before, JsonNode after)
    {
        var now = (after["parameters"]?.AsArray() ?? []).ToDictionary(p => p!["name"]!.GetValue<string>(), p => p!);
        foreach (var parameter in before["parameters"]?.AsArray() ?? [])
        {
            var own = parameter!["name"]!.GetValue<string>();
            if (!now.Remove(own, out var same))
            {
                found.Add($"{name}: parameter {own} is gone");
                continue;
            }

            Differs(parameter["required"]?.ToString() == "true" || same["required"]?.ToString() != "true", $"{name}: parameter {own} is required now");
            CompareSchema($"{name}: parameter {own}", parameter["schema"]!, same["schema"]!, isRequest: true);
        }

        found.AddRange(now.Values.Where(p => p["required"]?.ToString() == "true").Select(p => $"{name}: parameter {p["name"]} is new and required"));
    }

    private void CompareContents(string name, JsonNode before, JsonNode? after, bool isRequest)
    {
        foreach (var (mediaType, media) in before["content"]?.AsObject() ?? [])
        {
            if (after?["content"]?[mediaType] is not { } now)
            {
                found.Add($"{name}: {mediaType} is gone");
            }
            else
            {
                CompareSchema($"{name} {mediaType}", media!["schema"]!, now["schema"]!, isRequest);
            }
        }
    }

    private void CompareSchema(string name, JsonNode before, JsonNode after, bool isRequest)
    {
        // A report within a request is an answer, which lets members come.
        var form = Resolved(earlier, before);
        isRequest &= form["properties"] is null || form["additionalProperties"]?.ToString() == "false";
        if (before["$ref"]?.ToString() is { } reference)
        {
            Differs(reference == after["$ref"]?.ToString() || after["$ref"] is null, $"{name} is another schema");
            name = reference.Split('/')[^1];
            if (seen.Contains((name, true)) || !seen.Add((name, isRequest)))
            {
                return;
            }
        }

        (before, after) = (form, Resolved(later, after));
        var (typesBefore, typesAfter) = (Types(before), Types(after));
        Differs(isRequest ? typesBefore.IsSubsetOf(typesAfter) || typesAfter.Count == 0 : typesAfter.SetEquals(typesBefore), $"{name} has another type");
        CompareValues(name, before, after, isRequest);
        CompareMembers(name, before, after, isRequest);
        foreach (var keyword in (ReadOnlySpan<string>)["items", "additionalProperties", "propertyNames"])
        {
            if (before[keyword] is JsonObject part && after[keyword] is JsonObject now)
            {
                CompareSchema($"{name}.{keyword}", part, now, isRequest);
            }
        }

        foreach (var keyword in (ReadOnlySpan<string>)["oneOf", "anyOf", "allOf"])
        {
            CompareForms($"{name}.{keyword}", before[keyword]?.AsArray() ?? [], after[keyword]?.AsArray() ?? [], isRequest);
        }
    }

    private void CompareForms(string name, JsonArray before, JsonArray after, bool isRequest)
    {
        foreach (var form in before)
        {
            if (after.FirstOrDefault(f => f!["$ref"]?.ToString() == form!["$ref"]?.ToString() && Types(f).SetEquals(Types(form))) is { } same)
            {
                CompareSchema(name, form!, same, isRequest);
            }
            else
            {
                found.Add($"{name}: a form is gone");
            }
        }

        Differs(isRequest || after.Count <= before.Count, $"{name} has a new form");
    }

    private void CompareValues(string name, JsonNode before, JsonNode after, bool isRequest)
    {
        var (was, now) = (Texts(before["enum"]), Texts(after["enum"]));
        if (isRequest)
        {
            Differs(now.Count == 0 || (was.Count > 0 && was.IsSubsetOf(now)), $"{name}: values {string.Join(", ", was.Except(now))} are taken no longer");
            Differs(
                before["pattern"]?.ToString() == after["pattern"]?.ToString() || after["pattern"] is null, $"{name} has another pattern");
            foreach (var bound in LeastBounds)
            {
                Differs(after[bound] is null || (before[bound] is { } least && (double)after[bound]! <= (double)least), $"{name}: {bound} is higher");
            }

            foreach (var bound in MostBounds)
            {
                Differs(after[bound] is null || (before[bound] is { } most && (double)after[bound]! >= (double)most), $"{name}: {bound} is lower");
            }
        }
        else
        {
            Differs(was.Count == 0 || (now.Count > 0 && now.IsSubsetOf(was)), $"{name}: values {string.Join(", ", now.Except(was))} are new in an answer");
        }
    }

    private void CompareMembers(string name, JsonNode before, JsonNode after, bool isRequest)
    {
        foreach (var (member, schema) in before["properties"]?.AsObject() ?? [])
        {
            if (after["properties"]?[member] is { } now)
            {
                CompareSchema($"{name}.{member}", schema!, now, isRequest);
            }
            else
            {
                found.Add($"{name}.{member} is gone");
            }
        }

        var (required, requiredNow) = (Texts(before["required"]), Texts(after["required"]));
        found.AddRange(isRequest
            ? requiredNow.Except(required).Select(m => $"{name}: {m} is required now")
            : required.Except(requiredNow).Select(m => $"{name}: {m} can be absent now"));
        Differs(
            !isRequest || after["additionalProperties"]?.ToString() != "false" || before["additionalProperties"]?.ToString() == "false",
            $"{name} takes no further members now");
    }

    private void Differs(bool isAlike, string change)
    {
        if (!isAlike)
        {
            found.Add(change);
        }
    }
}
