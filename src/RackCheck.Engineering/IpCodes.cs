using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A first digit of the IP code that openings alone decide.</summary>
/// <param name="Digit">The digit, 1 to 4.</param>
/// <param name="HoleUnderMm">Openings are narrower than this, mm.</param>
/// <param name="KeepsOut">What does not get in.</param>
public sealed record IpOpening(int Digit, double HoleUnderMm, string KeepsOut);

/// <summary>Degrees of protection by the IP code.</summary>
/// <remarks>
/// IEC 60529 (value from memory). Openings are one part of a degree: gaps and cable entries count too, dust and water are for tests. Second digits up to 6 include
/// the lower ones; 7 and 8, immersion, include those up to 4 but no jets, and 9 stands alone.
/// </remarks>
public static class IpCodes
{
    private const int Unknown = -1;

    /// <summary>The digits that openings decide.</summary>
    public static ImmutableArray<IpOpening> Openings { get; } =
    [
        new(1, 50, "back of a hand"),
        new(2, 12.5, "finger"),
        new(3, 2.5, "tool"),
        new(4, 1, "wire"),
    ];

    /// <summary>First digit that an opening leaves.</summary>
    /// <param name="holeMm">Least dimension across the widest opening: diameter of a hole, width of a slot, mm; 0 without any.</param>
    /// <returns>0 to 4: the greatest digit whose probe does not go in. Without openings 4 too, for 5 and 6 are for tests.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or no number.</exception>
    /// <example>6: 2; 2: 3; 12.5: 1, for the probe of 12.5 goes in; 0.9: 4.</example>
    public static int FirstDigit(double holeMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(holeMm, 0);
        var digit = 0;
        foreach (var opening in Openings)
        {
            if (holeMm < opening.HoleUnderMm)
            {
                digit = opening.Digit;
            }
        }

        return digit;
    }

    /// <summary>Whether a degree of protection does what another asks for.</summary>
    /// <param name="code">What there is: two characters, 0 to 6 and 0 to 9, X for what is not told; "IP" may stand before them.</param>
    /// <param name="required">What is asked for, written alike; X asks for nothing.</param>
    /// <returns>Whether both digits do. What is not told does only what 0 does.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such code.</exception>
    /// <example>IP54 does IP20 and IPX4, not IP55; IP2X does IP20, not IP21; IP67 does IP64, not IP65.</example>
    public static bool Satisfies(ReadOnlySpan<char> code, ReadOnlySpan<char> required)
    {
        var (solid, water) = Read(code, nameof(code));
        var (solidAsked, waterAsked) = Read(required, nameof(required));
        return Math.Max(solid, 0) >= solidAsked && Keeps(Math.Max(water, 0), Math.Max(waterAsked, 0));
    }

    private static bool Keeps(int water, int asked) => asked switch
    {
        0 => true,
        <= 4 => water >= asked && water <= 8,
        5 or 6 => water >= asked && water <= 6,
        7 => water is 7 or 8,
        _ => water == asked,
    };

    private static (int Solid, int Water) Read(ReadOnlySpan<char> code, string name)
    {
        var digits = code.StartsWith("IP", StringComparison.Ordinal) ? code[2..] : code;
        return digits.Length == 2 && IsDigit(digits[0], '6') && IsDigit(digits[1], '9')
            ? (Value(digits[0]), Value(digits[1]))
            : throw new ArgumentOutOfRangeException(name, code.ToString(), "Two characters, 0 to 6 and 0 to 9, X for what is not told.");

        static bool IsDigit(char c, char last) => c == 'X' || (c >= '0' && c <= last);
        static int Value(char c) => c == 'X' ? Unknown : c - '0';
    }
}
