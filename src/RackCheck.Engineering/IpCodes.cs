using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A first digit of the IP code determined by openings.</summary>
/// <param name="Digit">The digit, 1 to 4.</param>
/// <param name="HoleUnderMm">Openings must be narrower than this, mm.</param>
/// <param name="KeepsOut">Object kept out.</param>
public sealed record IpOpening(int Digit, double HoleUnderMm, string KeepsOut);

/// <summary>Degrees of protection, IP code.</summary>
/// <remarks>
/// IEC 60529 (value from memory). Openings are only one part of a degree of protection: gaps and cable entries also count, and dust and water need a test.
/// Second digits up to 6 include the lower ones; 7 and 8 (immersion) include those up to 4 but not jets; 9 includes no other digit.
/// </remarks>
public static class IpCodes
{
    private const int Unknown = -1;

    /// <summary>The first digits determined by openings.</summary>
    public static ImmutableArray<IpOpening> Openings { get; } =
    [
        new(1, 50, "back of a hand"),
        new(2, 12.5, "finger"),
        new(3, 2.5, "tool"),
        new(4, 1, "wire"),
    ];

    /// <summary>First digit permitted by an opening.</summary>
    /// <param name="holeMm">Smallest dimension of the widest opening, mm: diameter of a hole or width of a slot; 0 without openings.</param>
    /// <returns>0 to 4: the highest digit whose probe does not enter. Also 4 without openings, because 5 and 6 need a test.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not a finite number.</exception>
    /// <example>6 mm: 2; 2 mm: 3; 12.5 mm: 1, because the 12.5 mm probe enters; 0.9 mm: 4.</example>
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

    /// <summary>Whether a degree of protection meets a required one.</summary>
    /// <param name="code">Existing degree: two characters, 0 to 6 and 0 to 9, X for not specified; an "IP" prefix is optional.</param>
    /// <param name="required">Required degree in the same form; X means no requirement.</param>
    /// <returns>True where both digits meet the requirement. X in the existing degree counts as 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a valid IP code.</exception>
    /// <example>IP54 meets IP20 and IPX4, not IP55; IP2X meets IP20, not IP21; IP67 meets IP64, not IP65.</example>
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
            : throw new ArgumentOutOfRangeException(name, code.ToString(), "The code must be two characters, 0 to 6 and 0 to 9, X for not specified.");

        static bool IsDigit(char c, char last) => c == 'X' || (c >= '0' && c <= last);
        static int Value(char c) => c == 'X' ? Unknown : c - '0';
    }
}
