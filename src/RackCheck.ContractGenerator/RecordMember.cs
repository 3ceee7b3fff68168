using Microsoft.CodeAnalysis;

namespace RackCheck.ContractGenerator;

/// <summary>A member of a contract record that can be set.</summary>
internal sealed class RecordMember
{
    private RecordMember(IPropertySymbol property, int index)
    {
        Property = property;
        Index = index;
        JsonName = AttributeOf("JsonPropertyNameAttribute") is { } named
            ? (string)named.ConstructorArguments[0].Value!
            : char.ToLowerInvariant(property.Name[0]) + property.Name.Substring(1);
    }

    /// <summary>The property.</summary>
    public IPropertySymbol Property { get; }

    /// <summary>Its place among the members, which is its bit.</summary>
    public int Index { get; }

    /// <summary>Name in JSON.</summary>
    public string JsonName { get; }

    /// <summary>Name of the variable that holds it.</summary>
    public string Variable => "v" + Property.Name;

    /// <summary>Whether null takes the place of a value.</summary>
    public bool TakesNull => Property.NullableAnnotation == NullableAnnotation.Annotated;

    /// <summary>The type without nullable wrapping.</summary>
    public ITypeSymbol ValueType => Property.Type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } wrapped
        ? wrapped.TypeArguments[0]
        : Property.Type.WithNullableAnnotation(NullableAnnotation.NotAnnotated);

    /// <summary>An attribute of the property; null if it has none of the name.</summary>
    public AttributeData? AttributeOf(string name) => Property.GetAttributes().FirstOrDefault(a => a.AttributeClass?.Name == name);

    /// <summary>The members of a record, those of its bases last.</summary>
    public static List<RecordMember> Of(ITypeSymbol record)
    {
        var members = new List<RecordMember>();
        for (var type = record; type is { SpecialType: not SpecialType.System_Object }; type = type.BaseType)
        {
            foreach (var property in type.GetMembers().OfType<IPropertySymbol>())
            {
                if (property is { SetMethod: not null, IsStatic: false, DeclaredAccessibility: Accessibility.Public }
                    && !property.GetAttributes().Any(a => a.AttributeClass?.Name == "JsonIgnoreAttribute"))
                {
                    members.Add(new RecordMember(property, members.Count));
                }
            }
        }

        return members;
    }
}
