using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>
/// Changes requests at random, led by the schemas of the contract: members are added with values inside, at and outside their bounds, of the wrong type, null,
/// or taken out. What it makes is sometimes valid and sometimes not.
/// </summary>
internal sealed class RequestMutator(Random random)
{
    private static readonly JsonObject Schemas =
        JsonNode.Parse(Repository.Read("openapi", "rack-check.v1.json"))!["components"]!["schemas"]!.AsObject();

    private static readonly string[] Texts =
    [
        "", "a", "wave-pc", "A", "\u0001", "a\tb", "\u00e9cluse", "\U0001F30A", "2026-01-31T10:00:00Z", "2026-13-31T10:00:00Z", "IP20",
    ];

    /// <summary>Changes a request.</summary>
    /// <param name="schema">Name of its schema.</param>
    /// <param name="request">The request.</param>
    /// <returns>A changed copy.</returns>
    public JsonNode Change(string schema, JsonNode request)
    {
        var copy = request.DeepClone();
        for (var i = random.Next(1, 3); i > 0; i--)
        {
            var places = new List<(JsonObject Object, JsonObject Schema)>();
            Collect(copy, Schemas[schema]!.AsObject(), places);
            var (owner, form) = places[random.Next(places.Count)];
            ChangeMember(owner, form);
        }

        return copy;
    }

    private static JsonObject Resolved(JsonObject schema)
    {
        var form = schema["oneOf"] is JsonArray forms ? forms.Select(f => f!.AsObject()).Last(f => f["type"]?.ToString() != "null") : schema;
        return form["$ref"] is { } reference ? Resolved(Schemas[reference.GetValue<string>().Split('/')[^1]]!.AsObject()) : form;
    }

    // A report within a request is an answer, whose schema lets members come.
    private static void Collect(JsonNode? at, JsonObject schema, List<(JsonObject Object, JsonObject Schema)> places)
    {
        var form = Resolved(schema);
        if (at is JsonObject members && form["properties"] is JsonObject properties && form["additionalProperties"]?.ToString() == "false")
        {
            places.Add((members, form));
            foreach (var (name, value) in members)
            {
                if (properties[name] is JsonObject own)
                {
                    Collect(value, own, places);
                }
            }
        }
        else if (at is JsonArray list && form["items"] is JsonObject items)
        {
            foreach (var element in list)
            {
                Collect(element, items, places);
            }
        }
    }

    private void ChangeMember(JsonObject owner, JsonObject form)
    {
        var properties = form["properties"]!.AsObject();
        switch (random.Next(12))
        {
            case 0 when owner.Count > 0:
                owner.Remove(owner.ElementAt(random.Next(owner.Count)).Key);
                return;
            case 1:
                owner["colour"] = "grey";
                return;
            default:
                var (name, schema) = properties.ElementAt(random.Next(properties.Count));
                owner[name] = Value(schema!.AsObject(), depth: 0);
                return;
        }
    }

    private JsonNode? Value(JsonObject schema, int depth)
    {
        var form = Resolved(schema);
        switch (random.Next(12))
        {
            case 0:
                return null;
            case 1:
                return random.Next(5) switch
                {
                    0 => JsonValue.Create(true), 1 => JsonValue.Create(1.5), 2 => JsonValue.Create("7"), 3 => new JsonArray(), _ => new JsonObject(),
                };
        }

        if (form["enum"] is JsonArray values)
        {
            var value = values[random.Next(values.Count)]!.DeepClone();
            return random.Next(6) == 0 ? JsonValue.Create(value.ToString().ToUpperInvariant()) : value;
        }

        return (form["type"] as JsonArray)?.Select(t => t!.ToString()).First(t => t != "null") is { } type ? OfType(type, form, depth)
            : form["type"] is { } only ? OfType(only.ToString(), form, depth)
            : JsonValue.Create("text");
    }

    private JsonNode OfType(string type, JsonObject form, int depth)
    {
        switch (type)
        {
            case "boolean":
                return JsonValue.Create(random.Next(2) == 0);
            case "integer":
                return JsonValue.Create(random.Next(8) == 0 ? 2.5 : Math.Floor(Number(form)));
            case "number":
                return JsonValue.Create(Number(form));
            case "string":
                return JsonValue.Create(Text(form));
            case "array":
                return List(form, depth);
            default:
                return Members(form, depth);
        }
    }

    private double Number(JsonObject form)
    {
        // The limits of a policy have the bounds of their rules, which are no part of the schema.
        var (least, most) = (form["minimum"]?.GetValue<double>() ?? 0, form["maximum"]?.GetValue<double>() ?? 100);
        return random.Next(8) switch
        {
            0 => least - 1, 1 => most + 1, 2 => least, 3 => most, 4 => most * 2, _ => least + (random.NextDouble() * (most - least)),
        };
    }

    // A schema counts characters: one outside the basic plane is one, though two in UTF-16.
    private string Text(JsonObject form) => random.Next(4) == 0 && form["maxLength"] is { } most
        ? string.Concat(Enumerable.Repeat(random.Next(2) == 0 ? "x" : "\U0001F30A", most.GetValue<int>() + random.Next(2)))
        : Texts[random.Next(Texts.Length)];

    private JsonArray List(JsonObject form, int depth)
    {
        var most = form["maxItems"]?.GetValue<int>() ?? 3;
        var count = random.Next(10) == 0 ? most + random.Next(2) : random.Next(0, 3);
        var items = form["items"]!.AsObject();
        var first = Value(items, depth + 1);
        return [.. Enumerable.Range(0, count).Select(i => i == 0 ? first?.DeepClone() : count > 3 ? first?.DeepClone() : Value(items, depth + 1))];
    }

    private JsonObject Members(JsonObject form, int depth)
    {
        var made = new JsonObject();
        if (form["additionalProperties"] is null)
        {
            // A report, which is an answer.
            return made;
        }

        if (form["additionalProperties"] is JsonObject values)
        {
            made[random.Next(2) == 0 ? "layout.reserve" : "none"] = Value(values, depth + 1);
            return made;
        }

        var properties = form["properties"]!.AsObject();
        var required = form["required"]?.AsArray().Select(r => r!.GetValue<string>()).ToHashSet() ?? [];
        foreach (var (name, schema) in properties)
        {
            if ((required.Contains(name) && random.Next(10) > 0) || (depth < 3 && random.Next(5) == 0))
            {
                made[name] = Value(schema!.AsObject(), depth + 1);
            }
        }

        return made;
    }
}
