using System.Text.Json;
using static System.FormattableString;

namespace RackCheck.Documents.Pages;

/// <summary>A type of the contract.</summary>
internal sealed class ContractType
{
    /// <summary>Reads a schema.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="schema">The schema.</param>
    public ContractType(string name, JsonElement schema)
    {
        Name = name;
        Description = TextOf(schema, "description");
        Values = ValuesOf(schema);
        var required = schema.TryGetProperty("required", out var names) ? names.EnumerateArray().Select(n => n.GetString()!).ToHashSet() : [];
        Members = schema.TryGetProperty("properties", out var members)
            ? [.. members.EnumerateObject().Select(m => new ContractMember(m.Name, m.Value, required.Contains(m.Name)))]
            : [];
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>What it is.</summary>
    public string Description { get; }

    /// <summary>Its values, where it has names for them.</summary>
    public IReadOnlyList<string> Values { get; }

    /// <summary>Its members, in the order of the contract.</summary>
    public IReadOnlyList<ContractMember> Members { get; }

    internal static string TextOf(JsonElement schema, string name) =>
        schema.TryGetProperty(name, out var text) && text.ValueKind == JsonValueKind.String ? text.GetString()! : "";

    internal static string[] ValuesOf(JsonElement schema) => schema.TryGetProperty("enum", out var values)
        ? [.. values.EnumerateArray().Where(v => v.ValueKind != JsonValueKind.Null).Select(v => v.ToString())]
        : [];
}

/// <summary>A member of a type.</summary>
internal sealed class ContractMember
{
    private static readonly (string Name, string Text)[] Bounds =
    [
        ("minimum", "from {0}"), ("exclusiveMinimum", "above {0}"), ("maximum", "to {0}"), ("exclusiveMaximum", "below {0}"),
        ("minLength", "at least {0} characters"), ("maxLength", "at most {0} characters"), ("minItems", "at least {0} entries"),
        ("maxItems", "at most {0} entries"), ("pattern", "pattern {0}"),
    ];

    /// <summary>Reads a member.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="schema">Its schema.</param>
    /// <param name="isRequired">Whether it is required.</param>
    public ContractMember(string name, JsonElement schema, bool isRequired)
    {
        Name = name;
        IsRequired = isRequired;
        Description = ContractType.TextOf(schema, "description");
        TypeName = NameOf(schema);
        var own = Simple(schema);
        Kind = TypeName ?? KindOf(own);
        IsList = schema.TryGetProperty("items", out _);
        IsMap = schema.TryGetProperty("additionalProperties", out var values) && values.ValueKind == JsonValueKind.Object;
        string[] all =
        [
            .. from bound in Bounds
               let holder = bound.Name.EndsWith("Items", StringComparison.Ordinal) ? schema : own
               where holder.TryGetProperty(bound.Name, out _)
               select bound.Text.Replace("{0}", holder.GetProperty(bound.Name).ToString()),
        ];
        Range = string.Join(", ", all.Append(string.Join(" | ", ContractType.ValuesOf(own))).Where(r => r.Length > 0));
        Assumed = schema.TryGetProperty("default", out var value) || schema.TryGetProperty("x-assumed", out value) ? value.ToString() : null;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Whether it is required.</summary>
    public bool IsRequired { get; }

    /// <summary>What it is.</summary>
    public string Description { get; }

    /// <summary>Name of its type, or of the type of its entries; null for a plain value.</summary>
    public string? TypeName { get; }

    /// <summary>Its type, or that of its entries.</summary>
    public string Kind { get; }

    /// <summary>Whether it is a list.</summary>
    public bool IsList { get; }

    /// <summary>Whether it is a map from names to values.</summary>
    public bool IsMap { get; }

    /// <summary>Its range or its values; empty where there is none.</summary>
    public string Range { get; }

    /// <summary>The value that stands in where it is absent; null where the contract names none.</summary>
    public string? Assumed { get; }

    // Through lists, maps and unions to a named type.
    private static string? NameOf(JsonElement schema)
    {
        if (schema.TryGetProperty("$ref", out var reference))
        {
            return reference.GetString()!.Split('/')[^1];
        }

        if (schema.TryGetProperty("items", out var inner)
            || (schema.TryGetProperty("additionalProperties", out inner) && inner.ValueKind == JsonValueKind.Object))
        {
            return NameOf(inner);
        }

        foreach (var union in (string[])["allOf", "anyOf", "oneOf"])
        {
            if (schema.TryGetProperty(union, out var choices) && choices.EnumerateArray().Select(NameOf).OfType<string>().FirstOrDefault() is { } name)
            {
                return name;
            }
        }

        return null;
    }

    private static JsonElement Simple(JsonElement schema)
    {
        while (schema.TryGetProperty("items", out var inner))
        {
            schema = inner;
        }

        return schema;
    }

    private static string KindOf(JsonElement schema)
    {
        if (!schema.TryGetProperty("type", out var type))
        {
            return "any value";
        }

        var names = type.ValueKind == JsonValueKind.Array
            ? type.EnumerateArray().Select(t => t.GetString()!).Where(t => t != "null")
            : [type.GetString()!];
        var format = ContractType.TextOf(schema, "format");
        return string.Join(" or ", names) + (format == "date-time" ? Invariant($", {format}") : "");
    }
}
