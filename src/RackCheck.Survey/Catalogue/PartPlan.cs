using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey.Power;

namespace RackCheck.Survey.Catalogue;

/// <summary>
/// Applies a part number to a record of the description, member by member: it fills absent members, finds differences and removes
/// filled members again. The plan of a type is built once, so that no member is forgotten and requests need no reflection.
/// </summary>
/// <typeparam name="T">The record type that description and catalogue share.</typeparam>
public sealed class PartPlan<T>
    where T : class
{
    private readonly Func<T, T> clone = typeof(T).GetMethod("<Clone>$")!.CreateDelegate<Func<T, T>>();
    private readonly ImmutableArray<PartMember<T>> members;

    private PartPlan() => members =
        [.. typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.Name != nameof(Item.PartNumber)).Select(PartMembers.Make<T>)];

    /// <summary>The plan of this type.</summary>
    public static PartPlan<T> Instance { get; } = new();

    /// <summary>Returns the record with absent members filled from the product.</summary>
    /// <param name="given">The record as given.</param>
    /// <param name="fromCatalogue">The record of the product.</param>
    /// <param name="filled">Receives the names of the members that were filled, fully or in part; null if they are not needed.</param>
    /// <returns>The same object if no member was absent.</returns>
    public T Fill(T given, T fromCatalogue, List<string>? filled)
    {
        T? result = null;
        foreach (var member in members)
        {
            if (member.Fill(given, fromCatalogue, ref result, clone))
            {
                filled?.Add(member.Name);
            }
        }

        return result ?? given;
    }

    /// <summary>Finds given values that differ from the product.</summary>
    /// <param name="given">The record as given.</param>
    /// <param name="fromCatalogue">The record of the product.</param>
    /// <param name="pointer">JSON Pointer of the record.</param>
    /// <param name="found">Receives the differences.</param>
    public void Compare(T given, T fromCatalogue, string pointer, List<PartDifference> found)
    {
        foreach (var member in members)
        {
            member.Compare(given, fromCatalogue, pointer, found);
        }
    }

    /// <summary>Removes from a changed record the values that came from the product and did not change.</summary>
    /// <param name="given">The record as posted; null if it was absent.</param>
    /// <param name="filled">The record as filled.</param>
    /// <param name="after">The changed record.</param>
    /// <returns>The record to post; filling it gives the changed record.</returns>
    public T Restore(T? given, T filled, T after)
    {
        var result = clone(after);
        foreach (var member in members)
        {
            member.Restore(given, filled, after, result);
        }

        return result;
    }
}

/// <summary>A given value that differs from the product.</summary>
/// <param name="Pointer">JSON Pointer of the value.</param>
/// <param name="Given">The given value; null if it is not a single value.</param>
/// <param name="FromCatalogue">The value of the product; null if it is not a single value.</param>
public sealed record PartDifference(string Pointer, string Member, Scalar? Given, Scalar? FromCatalogue);

/// <summary>One member of a record.</summary>
internal abstract class PartMember<T>(string name)
    where T : class
{
    public string Name { get; } = name;

    public abstract bool Fill(T given, T fromCatalogue, ref T? result, Func<T, T> clone);

    public abstract void Compare(T given, T fromCatalogue, string pointer, List<PartDifference> found);

    public abstract void Restore(T? given, T filled, T after, T result);
}

/// <summary>A member with a value. A member that is never absent is compared, but neither filled nor removed.</summary>
internal sealed class PartValue<T, TValue>(
    string name, Func<T, TValue?> get, Action<T, TValue?>? set, Func<TValue, TValue, bool> differs, Func<TValue, Scalar> shown) : PartMember<T>(name)
    where T : class
    where TValue : struct
{
    public override bool Fill(T given, T fromCatalogue, ref T? result, Func<T, T> clone)
    {
        if (set is null || get(given) is not null || get(fromCatalogue) is not { } value)
        {
            return false;
        }

        set(result ??= clone(given), value);
        return true;
    }

    public override void Compare(T given, T fromCatalogue, string pointer, List<PartDifference> found)
    {
        if (get(given) is { } one && get(fromCatalogue) is { } other && differs(one, other))
        {
            found.Add(new PartDifference($"{pointer}/{Name}", Name, shown(one), shown(other)));
        }
    }

    public override void Restore(T? given, T filled, T after, T result)
    {
        if (set is not null && EqualityComparer<TValue?>.Default.Equals(get(filled), get(after)))
        {
            set(result, given is null ? null : get(given));
        }
    }
}

/// <summary>A member with a text or a list.</summary>
internal sealed class PartObject<T, TObject>(string name, Func<T, TObject?> get, Action<T, TObject?> set, bool isCompared) : PartMember<T>(name)
    where T : class
    where TObject : class
{
    private readonly JsonTypeInfo<TObject> type = (JsonTypeInfo<TObject>)ContractJson.Default.GetTypeInfo(typeof(TObject))!;

    public override bool Fill(T given, T fromCatalogue, ref T? result, Func<T, T> clone)
    {
        if (get(given) is not null || get(fromCatalogue) is not { } value)
        {
            return false;
        }

        set(result ??= clone(given), value);
        return true;
    }

    public override void Compare(T given, T fromCatalogue, string pointer, List<PartDifference> found)
    {
        if (isCompared && get(given) is { } one && get(fromCatalogue) is { } other && !IsEqual(one, other) && !AreCords(one, other))
        {
            found.Add(new PartDifference($"{pointer}/{Name}", Name, Shown(one), Shown(other)));
        }
    }

    public override void Restore(T? given, T filled, T after, T result)
    {
        if (get(filled) is { } one ? get(after) is { } other && IsEqual(one, other) : get(after) is null)
        {
            set(result, given is null ? null : get(given));
        }
    }

    // An inlet takes a cord with any mains plug, and one of the higher temperature class a cord with the usual appliance plug.
    private static bool AreCords(TObject one, TObject other) =>
        one is IReadOnlyList<ConnectorCode> plugs && other is IReadOnlyList<ConnectorCode> inlets
        && plugs.Count == inlets.Count && plugs.Zip(inlets).All(p => p.First == p.Second || IsCord(p.First, p.Second));

    private static bool IsCord(ConnectorCode plug, ConnectorCode inlet) => PlugFit.IsInlet(inlet)
        && (!PlugFit.IsInlet(plug) || (plug, inlet) == (ConnectorCode.C14, ConnectorCode.C16));

    private static Scalar? Shown(TObject value) => value is string text ? (Scalar?)text : null;

    // Records with lists have no value equality, so their JSON is compared. Often both are the product's own.
    private bool IsEqual(TObject one, TObject other) =>
        ReferenceEquals(one, other)
        || (one is string
            ? one.Equals(other)
            : JsonSerializer.SerializeToUtf8Bytes(one, type).AsSpan().SequenceEqual(JsonSerializer.SerializeToUtf8Bytes(other, type)));
}

/// <summary>A member with a record.</summary>
internal sealed class PartChild<T, TChild>(string name, Func<T, TChild?> get, Action<T, TChild?> set, bool isCompared) : PartMember<T>(name)
    where T : class
    where TChild : class
{
    public override bool Fill(T given, T fromCatalogue, ref T? result, Func<T, T> clone)
    {
        if (get(fromCatalogue) is not { } source)
        {
            return false;
        }

        var own = get(given);
        var whole = own is null ? source : PartPlan<TChild>.Instance.Fill(own, source, null);
        if (ReferenceEquals(own, whole))
        {
            return false;
        }

        set(result ??= clone(given), whole);
        return true;
    }

    public override void Compare(T given, T fromCatalogue, string pointer, List<PartDifference> found)
    {
        if (isCompared && get(given) is { } one && get(fromCatalogue) is { } other)
        {
            PartPlan<TChild>.Instance.Compare(one, other, $"{pointer}/{Name}", found);
        }
    }

    public override void Restore(T? given, T filled, T after, T result)
    {
        var own = given is null ? null : get(given);
        if (ReferenceEquals(get(filled), get(after)))
        {
            set(result, own);
        }
        else if (get(filled) is { } one && get(after) is { } other)
        {
            set(result, PartPlan<TChild>.Instance.Restore(own, one, other));
        }
    }
}

/// <summary>Builds the members.</summary>
internal static class PartMembers
{
    // Options of the caller and site settings never contradict the catalogue. Nor does equipment that is not to be fed twice though it can be, and cords with
    // another plug than that of the inlet: see where members are compared.
    private static readonly HashSet<string> Chosen = new(StringComparer.Ordinal)
    {
        nameof(Item.Description), nameof(Item.Console), nameof(Item.RemotePowerCycle), nameof(Item.Fixing), nameof(Item.Cables), nameof(Cabinet.Placement),
        nameof(Uprights.FrontSetbackMm), nameof(Uprights.SpacingMm), nameof(Item.Support), nameof(Ups.Feeds), nameof(Door.Bonded),
    };

    public static PartMember<T> Make<T>(PropertyInfo property)
        where T : class
    {
        var value = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        var maker = value.IsValueType ? nameof(MakeValue) : value.Namespace == typeof(Item).Namespace ? nameof(MakeChild) : nameof(MakeObject);
        return (PartMember<T>)typeof(PartMembers).GetMethod(maker, BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(typeof(T), value)
            .Invoke(null, [property])!;
    }

    private static string NameOf(PropertyInfo property) => JsonNamingPolicy.CamelCase.ConvertName(property.Name);

    private static PartMember<T> MakeValue<T, TValue>(PropertyInfo property)
        where T : class
        where TValue : struct
    {
        var isNullable = property.PropertyType == typeof(TValue?);
        var plain = isNullable ? null : property.GetMethod!.CreateDelegate<Func<T, TValue>>();
        Func<T, TValue?> get = isNullable ? property.GetMethod!.CreateDelegate<Func<T, TValue?>>() : owner => plain!(owner);
        var set = isNullable ? property.SetMethod!.CreateDelegate<Action<T, TValue?>>() : null;
        var name = property.Name;
        Func<TValue, TValue, bool> differs = Chosen.Contains(name) ? static (_, _) => false
            : typeof(TValue) == typeof(double)
                ? (Func<TValue, TValue, bool>)(object)(Func<double, double, bool>)((one, other) => PartTolerances.Differs(name, one, other))
            : name == nameof(ItemPower.Redundant) ? (Func<TValue, TValue, bool>)(object)(Func<bool, bool, bool>)(static (own, other) => own && !other)
            : static (one, other) => !EqualityComparer<TValue>.Default.Equals(one, other);
        Func<TValue, Scalar> shown = typeof(TValue) == typeof(double) ? (Func<TValue, Scalar>)(object)(Func<double, Scalar>)(static v => v)
            : typeof(TValue) == typeof(int) ? (Func<TValue, Scalar>)(object)(Func<int, Scalar>)(static v => v)
            : typeof(TValue) == typeof(bool) ? (Func<TValue, Scalar>)(object)(Func<bool, Scalar>)(static v => v)
            : static v => JsonSerializer.SerializeToNode(v, (JsonTypeInfo<TValue>)ContractJson.Default.GetTypeInfo(typeof(TValue))!)!.GetValue<string>();
        return new PartValue<T, TValue>(NameOf(property), get, set, differs, shown);
    }

    private static PartMember<T> MakeObject<T, TObject>(PropertyInfo property)
        where T : class
        where TObject : class =>
        new PartObject<T, TObject>(
            NameOf(property), property.GetMethod!.CreateDelegate<Func<T, TObject?>>(), property.SetMethod!.CreateDelegate<Action<T, TObject?>>(),
            !Chosen.Contains(property.Name));

    // Rails are separate products, so the whole support of an item is the caller's choice.
    private static PartMember<T> MakeChild<T, TChild>(PropertyInfo property)
        where T : class
        where TChild : class =>
        new PartChild<T, TChild>(
            NameOf(property), property.GetMethod!.CreateDelegate<Func<T, TChild?>>(), property.SetMethod!.CreateDelegate<Action<T, TChild?>>(),
            !Chosen.Contains(property.Name));
}
