using System.Runtime.CompilerServices;
using System.Text;
using RackCheck.Model.Converters;
using RackCheck.Model.Json;

namespace RackCheck.Model.Canonical;

/// <summary>
/// Writes a contract record in canonical form, RFC 8785: members in the order of their UTF-16 code units, absent ones left out. The plan
/// of a type is made once, from the serializer's metadata, since every check digests its description.
/// </summary>
/// <typeparam name="T">The record.</typeparam>
/// <remarks>The serializer itself, told to sort its members, takes three times as long as the rest of a check; a test holds both to the same text.</remarks>
internal sealed class CanonicalRecord<T>
    where T : class
{
    private readonly CanonicalMember<T>[] members;

    private CanonicalRecord() => members =
        [.. ContractMember<T>.All.OrderBy(m => m.Name, StringComparer.Ordinal).Select(CanonicalMembers.Make)];

    /// <summary>The plan of this type.</summary>
    public static CanonicalRecord<T> Instance { get; } = new();

    /// <summary>Appends the record.</summary>
    public void Write(CanonicalText text, T owner)
    {
        text.Raw((byte)'{');
        var first = true;
        foreach (var member in members)
        {
            first = !member.Write(text, owner, first) && first;
        }

        text.Raw((byte)'}');
    }
}

/// <summary>One member of a record.</summary>
internal abstract class CanonicalMember<T>(string name)
{
    private readonly byte[] leading = Encoding.UTF8.GetBytes($",\"{name}\":");

    /// <summary>Appends the member where it is there.</summary>
    /// <returns>Whether it is there.</returns>
    public abstract bool Write(CanonicalText text, T owner, bool first);

    protected void Name(CanonicalText text, bool first) => text.Raw(leading.AsSpan(first ? 1 : 0));
}

/// <summary>A member with a value, and how the value is written.</summary>
internal sealed class CanonicalValue<T, TValue>(string name, Func<T, TValue?> get, Action<CanonicalText, TValue> write) : CanonicalMember<T>(name)
    where TValue : struct
{
    public override bool Write(CanonicalText text, T owner, bool first)
    {
        if (get(owner) is not { } value)
        {
            return false;
        }

        Name(text, first);
        write(text, value);
        return true;
    }
}

/// <summary>A member with an object, and how the object is written.</summary>
internal sealed class CanonicalObject<T, TObject>(string name, Func<T, TObject?> get, Action<CanonicalText, TObject> write) : CanonicalMember<T>(name)
    where TObject : class
{
    public override bool Write(CanonicalText text, T owner, bool first)
    {
        if (get(owner) is not { } value)
        {
            return false;
        }

        Name(text, first);
        write(text, value);
        return true;
    }
}

/// <summary>A member with a number: most of a description, so it is written without a further call.</summary>
internal sealed class CanonicalNumber<T>(string name, Func<T, double?> get) : CanonicalMember<T>(name)
{
    public override bool Write(CanonicalText text, T owner, bool first)
    {
        var value = get(owner);
        if (!value.HasValue)
        {
            return false;
        }

        Name(text, first);
        text.Number(value.GetValueOrDefault());
        return true;
    }
}

/// <summary>A member with a string.</summary>
internal sealed class CanonicalString<T>(string name, Func<T, string?> get) : CanonicalMember<T>(name)
{
    public override bool Write(CanonicalText text, T owner, bool first)
    {
        if (get(owner) is not { } value)
        {
            return false;
        }

        Name(text, first);
        text.String(value);
        return true;
    }
}

/// <summary>A member with a record.</summary>
internal sealed class CanonicalChild<T, TChild>(string name, Func<T, TChild?> get) : CanonicalMember<T>(name)
    where TChild : class
{
    private CanonicalRecord<TChild>? plan;

    public override bool Write(CanonicalText text, T owner, bool first)
    {
        if (get(owner) is not { } value)
        {
            return false;
        }

        Name(text, first);
        (plan ??= CanonicalRecord<TChild>.Instance).Write(text, value);
        return true;
    }
}

/// <summary>Makes members, and writes what they hold.</summary>
internal static class CanonicalMembers
{
    public static CanonicalMember<T> Make<T>(ContractMember<T> member)
        where T : class
    {
        var type = member.ValueType;
        if (type == typeof(double))
        {
            return new CanonicalNumber<T>(member.Name, member.ValueGetter<double>());
        }

        if (type == typeof(string))
        {
            return new CanonicalString<T>(member.Name, (Func<T, string?>)member.Getter());
        }

        if (type.IsClass)
        {
            return (CanonicalMember<T>)Call(nameof(MakeChild), [typeof(T), type], member);
        }

        if (type.IsValueType)
        {
            return (CanonicalMember<T>)Call(nameof(MakeValue), [typeof(T), type], member);
        }

        return (CanonicalMember<T>)Call(nameof(MakeObject), [typeof(T), type], member);
    }

    private static CanonicalChild<T, TChild> MakeChild<T, TChild>(ContractMember<T> member)
        where T : class
        where TChild : class =>
        new(member.Name, (Func<T, TChild?>)member.Getter());

    private static CanonicalValue<T, TValue> MakeValue<T, TValue>(ContractMember<T> member)
        where T : class
        where TValue : struct =>
        new(member.Name, member.ValueGetter<TValue>(), WriterOf<TValue>());

    private static CanonicalObject<T, TObject> MakeObject<T, TObject>(ContractMember<T> member)
        where T : class
        where TObject : class =>
        new(member.Name, (Func<T, TObject?>)member.Getter(), WriterOf<TObject>());

    private static Action<CanonicalText, TValue> WriterOf<TValue>()
    {
        var type = typeof(TValue);
        Delegate writer = type == typeof(double) ? (CanonicalText text, double value) => text.Number(value)
            : type == typeof(int) ? (CanonicalText text, int value) => text.Number(value)
            : type == typeof(bool) ? (CanonicalText text, bool value) => text.Raw(value ? "true"u8 : "false"u8)
            : type == typeof(string) ? (CanonicalText text, string value) => text.String(value)
            : type.IsEnum ? (Delegate)Call(nameof(EnumWriter), [type])
            : type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? (Delegate)Call(nameof(ListWriter), type.GetGenericArguments())
            : type.IsGenericType ? (Delegate)Call(nameof(MapWriter), [type.GetGenericArguments()[1]])
            : (Delegate)Call(nameof(RecordWriter), [type]);
        return (Action<CanonicalText, TValue>)writer;
    }

    private static Action<CanonicalText, TEnum> EnumWriter<TEnum>()
        where TEnum : struct, Enum
    {
        // The members of a contract's enum are numbered from 0 on, so a member is its own index.
        var names = Array.ConvertAll(Enum.GetValues<TEnum>(), m => Encoding.UTF8.GetBytes($"\"{NamedEnumConverter<TEnum>.Name(m)}\""));
        return (text, value) => text.Raw(names[Unsafe.BitCast<TEnum, int>(value)]);
    }

    private static Action<CanonicalText, TRecord> RecordWriter<TRecord>()
        where TRecord : class => static (text, record) => CanonicalRecord<TRecord>.Instance.Write(text, record);

    private static Action<CanonicalText, IReadOnlyList<TElement>> ListWriter<TElement>()
    {
        var write = WriterOf<TElement>();
        return (text, list) =>
        {
            text.Raw((byte)'[');
            for (var i = 0; i < list.Count; i++)
            {
                if (i > 0)
                {
                    text.Raw((byte)',');
                }

                write(text, list[i]);
            }

            text.Raw((byte)']');
        };
    }

    private static Action<CanonicalText, IReadOnlyDictionary<string, TElement>> MapWriter<TElement>()
    {
        var write = WriterOf<TElement>();
        return (text, map) =>
        {
            text.Raw((byte)'{');
            var first = true;
            foreach (var (name, value) in map.OrderBy(m => m.Key, StringComparer.Ordinal))
            {
                if (!first)
                {
                    text.Raw((byte)',');
                }

                first = false;
                text.String(name);
                text.Raw((byte)':');
                write(text, value);
            }

            text.Raw((byte)'}');
        };
    }

    private static object Call(string method, Type[] types, params object[] arguments) => typeof(CanonicalMembers)
        .GetMethod(method, System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Static)!
        .MakeGenericMethod(types)
        .Invoke(null, arguments)!;
}
