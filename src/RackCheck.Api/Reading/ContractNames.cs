using System.Collections.Immutable;
using System.Reflection;
using RackCheck.Model.Converters;

namespace RackCheck.Api.Reading;

/// <summary>Contract names of an enum whose type is known at run time only.</summary>
internal static class ContractNames
{
    /// <summary>The names, in member order.</summary>
    /// <returns>The names.</returns>
    public static ImmutableArray<string> Of(Type type) => (ImmutableArray<string>)typeof(NamedEnumConverter<>)
        .MakeGenericType(type)
        .GetProperty(nameof(NamedEnumConverter<>.Names), BindingFlags.Public | BindingFlags.Static)!
        .GetValue(null)!;
}
