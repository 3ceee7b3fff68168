using System.Collections.Immutable;
using System.Reflection;

namespace RackCheck.Model.Json;

/// <summary>
/// A member of a contract record: its JSON name and a getter without boxing. Read once per type from the serializer's metadata, for generic code such as
/// range validation.
/// </summary>
/// <typeparam name="TOwner">The record.</typeparam>
public sealed class ContractMember<TOwner>
    where TOwner : class
{
    private ContractMember(string name, PropertyInfo property) => (Name, Property) = (name, property);

    /// <summary>The members, in the order of the record.</summary>
    public static ImmutableArray<ContractMember<TOwner>> All { get; } =
    [
        .. ContractJson.Default.GetTypeInfo(typeof(TOwner))!.Properties.Select(p => new ContractMember<TOwner>(p.Name, (PropertyInfo)p.AttributeProvider!)),
    ];

    /// <summary>Name in JSON.</summary>
    public string Name { get; }

    /// <summary>The property.</summary>
    public PropertyInfo Property { get; }

    /// <summary>Type of the property, without nullable wrapping.</summary>
    public Type ValueType => Nullable.GetUnderlyingType(Property.PropertyType) ?? Property.PropertyType;

    /// <summary>Element type of a list, otherwise null.</summary>
    public Type? ElementType => OneArgumentOf(typeof(IReadOnlyList<>));

    /// <summary>Whether the property is a dictionary.</summary>
    public bool IsMap => Property.PropertyType.IsGenericType && Property.PropertyType.GetGenericTypeDefinition() == typeof(IReadOnlyDictionary<,>);

    /// <summary>A getter of a value.</summary>
    /// <typeparam name="TValue">The type of the value, without nullable.</typeparam>
    /// <returns>The getter; null for an absent value.</returns>
    public Func<TOwner, TValue?> ValueGetter<TValue>()
        where TValue : struct
    {
        if (Property.PropertyType == typeof(TValue?))
        {
            return (Func<TOwner, TValue?>)Getter();
        }

        var get = (Func<TOwner, TValue>)Getter();
        return owner => get(owner);
    }

    /// <summary>A getter of the property as declared.</summary>
    /// <returns>A <c>Func</c> from the record to the property's type.</returns>
    public Delegate Getter() => Property.GetMethod!.CreateDelegate(typeof(Func<,>).MakeGenericType(typeof(TOwner), Property.PropertyType));

    private Type? OneArgumentOf(Type generic) =>
        Property.PropertyType is { IsGenericType: true } type && type.GetGenericTypeDefinition() == generic ? type.GetGenericArguments()[0] : null;
}
