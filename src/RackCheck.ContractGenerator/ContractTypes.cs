using Microsoft.CodeAnalysis;

namespace RackCheck.ContractGenerator;

/// <summary>What a type of the contract is.</summary>
internal static class ContractTypes
{
    /// <summary>Full name, for use in code.</summary>
    public static string FullName(this ITypeSymbol type) => type.ToDisplayString(SymbolDisplayFormat.FullyQualifiedFormat);

    /// <summary>Element type of a list; else null.</summary>
    public static ITypeSymbol? ElementOfList(this ITypeSymbol type) => type is INamedTypeSymbol { Name: "IReadOnlyList" } list ? list.TypeArguments[0] : null;

    /// <summary>Type of the values of a map; else null.</summary>
    public static ITypeSymbol? ValueOfMap(this ITypeSymbol type) =>
        type is INamedTypeSymbol { Name: "IReadOnlyDictionary" } map ? map.TypeArguments[1] : null;

    /// <summary>Whether it is an enum with names of the contract.</summary>
    public static bool IsNamedEnum(this ITypeSymbol type) => type.TypeKind == TypeKind.Enum && ConverterOf(type) == "NamedEnumConverter";

    /// <summary>Whether it is a record with members.</summary>
    public static bool IsPlainRecord(this ITypeSymbol type) => type is INamedTypeSymbol { IsRecord: true } && ConverterOf(type) is null;

    private static string? ConverterOf(ITypeSymbol type) =>
        (type.GetAttributes().FirstOrDefault(a => a.AttributeClass?.Name == "JsonConverterAttribute")?.ConstructorArguments[0].Value as ITypeSymbol)?.Name;
}
