using System.Runtime.CompilerServices;

namespace RackCheck.Engineering;

/// <summary>Rejects arguments that are not physical. The framework's own guards accept infinity.</summary>
internal static class Require
{
    /// <summary>Requires a finite number.</summary>
    public static void Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "The value must be a finite number.");
        }
    }

    /// <summary>Requires a finite number of 0 or more.</summary>
    public static void NotNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfLessThan(value, 0, name);
    }

    /// <summary>Requires a finite number above 0.</summary>
    public static void Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        Finite(value, name);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(value, 0, name);
    }
}
