using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>
/// Checks the members of a contract record against its attributes: ranges, lengths, formats, counts. It is made once per type, from the same
/// attributes as the OpenAPI document. A request causes no reflection and no boxing.
/// </summary>
/// <typeparam name="T">The record type.</typeparam>
internal sealed class RangeValidation<T>
    where T : class
{
    private readonly MemberCheck<T>[] checks;

    private RangeValidation() => checks = [.. ContractMember<T>.All.Select(MemberCheckFactory.Make).OfType<MemberCheck<T>>()];

    /// <summary>The checks of this type.</summary>
    public static RangeValidation<T> Instance { get; } = new();

    /// <summary>Whether all members of a record and of records below it satisfy their attributes.</summary>
    public bool Hold(T owner)
    {
        foreach (var check in checks)
        {
            if (!check.Holds(owner))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Adds a fault for each member that does not.</summary>
    public void Report(T owner, string pointer, FaultList faults)
    {
        foreach (var check in checks)
        {
            if (!faults.HasMore && !check.Holds(owner))
            {
                check.Report(owner, FaultList.Below(pointer, check.Name), faults);
            }
        }
    }
}

/// <summary>One member of a record.</summary>
internal abstract class MemberCheck<T>(string name)
{
    /// <summary>Name of the member in JSON.</summary>
    public string Name { get; } = name;

    public abstract bool Holds(T owner);

    public abstract void Report(T owner, string pointer, FaultList faults);
}

/// <summary>A number and its range.</summary>
internal sealed class NumberCheck<T>(string name, Func<T, double?> get, double least, double greatest) : MemberCheck<T>(name)
{
    public override bool Holds(T owner) => get(owner) is not { } value || (value >= least && value <= greatest);

    public override void Report(T owner, string pointer, FaultList faults) =>
        faults.Add(pointer, FaultCodes.OutOfRange, RangeWording.Outside(get(owner)!.Value, least, greatest));
}

/// <summary>An integer and its range, or its allowed values.</summary>
internal sealed class WholeNumberCheck<T>(string name, Func<T, int?> get, int least, int greatest, int[]? allowed) : MemberCheck<T>(name)
{
    public override bool Holds(T owner) =>
        get(owner) is not { } value || (allowed is null ? value >= least && value <= greatest : Array.IndexOf(allowed, value) >= 0);

    public override void Report(T owner, string pointer, FaultList faults) => faults.Add(
        pointer,
        FaultCodes.OutOfRange,
        allowed is null ? RangeWording.Outside(get(owner)!.Value, least, greatest) : RangeWording.NotAllowed(get(owner)!.Value, allowed));
}

/// <summary>A string, its length and format. Control characters are not allowed, since strings go into logs, sheets and drawings.</summary>
internal sealed class TextCheck<T>(string name, Func<T, string?> get, int least, int greatest, Regex? form) : MemberCheck<T>(name)
{
    public override bool Holds(T owner) => get(owner) is not { } value || (HasLength(value) && HasForm(value));

    public override void Report(T owner, string pointer, FaultList faults)
    {
        var value = get(owner)!;
        if (!HasLength(value))
        {
            faults.Add(
                pointer,
                FaultCodes.WrongLength,
                string.Create(CultureInfo.InvariantCulture, $"It has {Characters.Count(value)} characters; {least} to {greatest} are allowed."));
        }
        else
        {
            faults.Add(
                pointer,
                FaultCodes.WrongForm,
                form is null ? "It contains a control character."
                    : form.ToString() == Timestamps.Pattern ? "It is not an RFC 3339 date and time with an offset, such as 2026-11-28T09:00:00Z."
                    : $"It does not match the format {form}.");
        }
    }

    private bool HasLength(string value) => value.Length >= least && Characters.IsAtMost(value, greatest);

    private bool HasForm(string value) => form?.IsMatch(value) ?? !value.AsSpan().ContainsAnyInRange('\0', '\u001f');
}

/// <summary>A nested record.</summary>
internal sealed class ChildCheck<T, TChild>(string name, Func<T, TChild?> get) : MemberCheck<T>(name)
    where TChild : class
{
    private RangeValidation<TChild>? checks;

    // Fetched at first use, since a type may contain itself.
    private RangeValidation<TChild> Checks => checks ??= RangeValidation<TChild>.Instance;

    public override bool Holds(T owner) => get(owner) is not { } child || Checks.Hold(child);

    public override void Report(T owner, string pointer, FaultList faults) => Checks.Report(get(owner)!, pointer, faults);
}

/// <summary>A list, its count, and no null elements.</summary>
internal class ListCheck<T, TItem>(string name, Func<T, IReadOnlyList<TItem>?> get, int least, int greatest) : MemberCheck<T>(name)
{
    public override bool Holds(T owner)
    {
        if (get(owner) is not { } list)
        {
            return true;
        }

        if (!HasCount(list))
        {
            return false;
        }

        for (var i = 0; i < list.Count; i++)
        {
            if (list[i] is null || !ElementHolds(list[i]))
            {
                return false;
            }
        }

        return true;
    }

    public override void Report(T owner, string pointer, FaultList faults)
    {
        var list = get(owner)!;
        if (!HasCount(list))
        {
            faults.HasTooLongList |= list.Count > greatest;
            faults.Add(
                pointer,
                FaultCodes.WrongCount,
                string.Create(CultureInfo.InvariantCulture, $"It has {list.Count} elements; {least} to {greatest} are allowed."));
            return;
        }

        for (var i = 0; i < list.Count && !faults.HasMore; i++)
        {
            var below = FaultList.Below(pointer, i.ToString(CultureInfo.InvariantCulture));
            if (list[i] is not { } element)
            {
                faults.Add(below, FaultCodes.NullValue, "A list element must not be null.");
            }
            else
            {
                ReportElement(element, below, faults);
            }
        }
    }

    protected virtual bool ElementHolds(TItem element) => true;

    protected virtual void ReportElement(TItem element, string pointer, FaultList faults)
    {
    }

    private bool HasCount(IReadOnlyList<TItem> list) => list.Count >= least && list.Count <= greatest;
}

/// <summary>A list of records.</summary>
internal sealed class RecordListCheck<T, TItem>(string name, Func<T, IReadOnlyList<TItem>?> get, int least, int greatest)
    : ListCheck<T, TItem>(name, get, least, greatest)
    where TItem : class
{
    private RangeValidation<TItem>? checks;

    private RangeValidation<TItem> Checks => checks ??= RangeValidation<TItem>.Instance;

    protected override bool ElementHolds(TItem element) => Checks.Hold(element);

    protected override void ReportElement(TItem element, string pointer, FaultList faults) => Checks.Report(element, pointer, faults);
}

/// <summary>A list of ids: none is empty, too long or contains control characters.</summary>
internal sealed class TextListCheck<T>(string name, Func<T, IReadOnlyList<string>?> get, int least, int greatest)
    : ListCheck<T, string>(name, get, least, greatest)
{
    private const int MostCharacters = 64;

    protected override bool ElementHolds(string element) =>
        element.Length > 0 && Characters.IsAtMost(element, MostCharacters) && !element.AsSpan().ContainsAnyInRange('\0', '\u001f');

    protected override void ReportElement(string element, string pointer, FaultList faults)
    {
        if (!ElementHolds(element))
        {
            faults.Add(
                pointer,
                FaultCodes.WrongLength,
                string.Create(CultureInfo.InvariantCulture, $"An id has 1 to {MostCharacters} characters and no control character."));
        }
    }
}

/// <summary>Creates the check of a member from its attributes and type.</summary>
internal static class MemberCheckFactory
{
    public static MemberCheck<T>? Make<T>(ContractMember<T> member)
        where T : class
    {
        var type = member.ValueType;
        if (type == typeof(double))
        {
            var range = Needed<RangeAttribute>(member.Property);
            return new NumberCheck<T>(member.Name, member.ValueGetter<double>(), Number(range.Minimum), Number(range.Maximum));
        }

        if (type == typeof(int))
        {
            var allowed = member.Property.GetCustomAttribute<AllowedValuesAttribute>()?.Values.OfType<int>().ToArray();
            var range = allowed is null ? Needed<RangeAttribute>(member.Property) : null;
            return new WholeNumberCheck<T>(member.Name, member.ValueGetter<int>(), (int)(range?.Minimum ?? 0), (int)(range?.Maximum ?? 0), allowed);
        }

        if (type == typeof(string))
        {
            return MakeText(member);
        }

        if (member.ElementType is { } element)
        {
            return MakeList(member, element);
        }

        // A converter reads it, so that the serializer names no members.
        if (type == typeof(BasketCabinet))
        {
            var cabinet = (Func<T, BasketCabinet?>)member.Getter();
            return new ChildCheck<T, ExistingCabinet>(
                member.Name, owner => cabinet(owner)?.Existing is { } existing ? new ExistingCabinet { Existing = existing } : null);
        }

        // Enums and Booleans have no range. Maps occur in the policy only, and the rule descriptors define their content.
        // A report was written by this service; nothing is calculated from its values.
        if (type.IsValueType || member.IsMap || type == typeof(CheckReport))
        {
            return null;
        }

        return ContractJson.Default.GetTypeInfo(type)!.Kind != JsonTypeInfoKind.Object
            ? throw new InvalidOperationException($"The members of {type.Name} are not known here; they would not be checked.")
            : (MemberCheck<T>)Activator.CreateInstance(typeof(ChildCheck<,>).MakeGenericType(typeof(T), type), member.Name, member.Getter())!;
    }

    private static TextCheck<T> MakeText<T>(ContractMember<T> member)
        where T : class
    {
        var form = member.Property.GetCustomAttribute<RegularExpressionAttribute>() is { } pattern
            ? new Regex(pattern.Pattern, RegexOptions.CultureInvariant | RegexOptions.Compiled, TimeSpan.FromMilliseconds(100))
            : null;
        var length = form is null ? Needed<StringLengthAttribute>(member.Property) : new StringLengthAttribute(64);
        return new TextCheck<T>(member.Name, (Func<T, string?>)member.Getter(), length.MinimumLength, length.MaximumLength, form);
    }

    private static MemberCheck<T> MakeList<T>(ContractMember<T> member, Type element)
        where T : class
    {
        var length = member.Property.GetCustomAttribute<LengthAttribute>();
        var least = length?.MinimumLength ?? 0;
        var greatest = length?.MaximumLength ?? Needed<MaxLengthAttribute>(member.Property).Length;
        var kind = element == typeof(string) ? typeof(TextListCheck<>).MakeGenericType(typeof(T))
            : element.IsClass ? typeof(RecordListCheck<,>).MakeGenericType(typeof(T), element)
            : typeof(ListCheck<,>).MakeGenericType(typeof(T), element);
        return (MemberCheck<T>)Activator.CreateInstance(kind, member.Name, member.Getter(), least, greatest)!;
    }

    private static double Number(object bound) => Convert.ToDouble(bound, CultureInfo.InvariantCulture);

    private static TAttribute Needed<TAttribute>(PropertyInfo property)
        where TAttribute : Attribute =>
        property.GetCustomAttribute<TAttribute>()
        ?? throw new InvalidOperationException($"{property.DeclaringType!.Name}.{property.Name} requires a {typeof(TAttribute).Name}.");
}
