using System.Collections.Immutable;
using System.Reflection;
using RackCheck.Model.Converters;

namespace RackCheck.Api.Reading;

/// <summary>The contract's names of an enum known at run time only.</summary>
internal static class ContractNames
{
    /// <summary>The names, in the order of the members.</summary>
    /// <param name="type">An enum of the contract.</param>
    /// <returns>The names.</returns>
    public static ImmutableArray<string> Of(Type type) => (ImmutableArray<string>)typeof(NamedEnumConverter<>)
        .MakeGenericType(type)
        .GetProperty(nameof(NamedEnumConverter<>.Names), BindingFlags.Public | BindingFlags.Static)!
        .GetValue(null)!;
}
