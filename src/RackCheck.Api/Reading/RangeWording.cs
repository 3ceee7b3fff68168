using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using static System.FormattableString;

namespace RackCheck.Api.Reading;

/// <summary>What callers are told about a number that its member does not take.</summary>
internal static class RangeWording
{
    /// <summary>A number outside its range.</summary>
    /// <param name="value">The number; infinite if it is beyond what the service can hold.</param>
    /// <param name="least">The least allowed.</param>
    /// <param name="greatest">The greatest allowed.</param>
    /// <param name="unit">Unit of the range, after a space; empty if the member's name has it.</param>
    public static string Outside(double value, double least, double greatest, string unit = "") => double.IsFinite(value)
        ? Invariant($"{value} is outside {least} to {greatest}{unit}.")
        : Invariant($"The number is too {(value > 0 ? "large" : "small")}; {least} to {greatest}{unit} is allowed.");

    /// <summary>A number that is none of the few allowed.</summary>
    /// <param name="value">The number; infinite if it is beyond what the service can hold.</param>
    /// <param name="allowed">Those allowed.</param>
    public static string NotAllowed(double value, IEnumerable<int> allowed)
    {
        var number = double.IsFinite(value) ? value.ToString(CultureInfo.InvariantCulture) : "The number";
        return Invariant($"{number} is not one of the allowed values: {string.Join(", ", allowed)}.");
    }

    /// <summary>A number that the type of its member cannot hold, by the attributes of the member.</summary>
    /// <param name="member">The member; null for an element of a list.</param>
    /// <param name="value">The number; infinite if it is beyond what the service can hold.</param>
    /// <returns>The sentence; null if nothing says what is allowed.</returns>
    public static string? Of(ICustomAttributeProvider? member, double value)
    {
        foreach (var attribute in member?.GetCustomAttributes(inherit: true) ?? [])
        {
            switch (attribute)
            {
                case AllowedValuesAttribute few:
                    return NotAllowed(value, few.Values.OfType<int>());
                case RangeAttribute range:
                    return Outside(
                        value,
                        Convert.ToDouble(range.Minimum, CultureInfo.InvariantCulture),
                        Convert.ToDouble(range.Maximum, CultureInfo.InvariantCulture));
            }
        }

        return null;
    }
}
