using System.Runtime.CompilerServices;

namespace RackCheck.Engineering;

/// <summary>Refuses arguments that no thing can have. The framework's own guards let infinity pass.</summary>
internal static class Require
{
    /// <summary>A number.</summary>
    public static void Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "Not a number that a place or a size can have.");
        }
    }

    /// <summary>A number of 0 or more.</summary>
    public static void NotNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfLessThan(value, 0, name);
    }

    /// <summary>A number over 0.</summary>
    public static void Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(value, 0, name);
    }
}
