using System.Buffers;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace RackCheck.Model.Canonical;

/// <summary>UTF-8 text in canonical form as it grows: RFC 8785 sections 3.2.2.2 and 3.2.2.3.</summary>
public sealed class CanonicalText
{
    // A double has at most 17 digits, a sign, a point, leading zeros and an exponent.
    private const int MostNumberBytes = 32;

    // Below it every whole number is a double of its own and has all its digits.
    private const double LeastInexact = 1L << 53;

    // Places of the point, counted from the first digit, between which ECMAScript writes no exponent.
    private const int LeastPoint = -6;
    private const int MostPoint = 21;

    private static readonly SearchValues<char> Escaped = SearchValues.Create([.. Enumerable.Range(0, 0x20).Select(c => (char)c), '"', '\\']);

    private byte[] bytes = new byte[16 * 1024];
    private int length;

    /// <summary>What is written so far.</summary>
    public ReadOnlySpan<byte> Written => bytes.AsSpan(0, length);

    /// <summary>Starts anew.</summary>
    public void Clear() => length = 0;

    /// <summary>Begins an object, whose members are appended with a comma before each.</summary>
    /// <returns>Where it begins.</returns>
    public int Begin() => length;

    /// <summary>Ends an object.</summary>
    /// <param name="start">Where it begins: the comma of its first member becomes the brace.</param>
    public void End(int start)
    {
        if (start == length)
        {
            Raw((byte)'{');
        }
        else
        {
            bytes[start] = (byte)'{';
        }

        Raw((byte)'}');
    }

    /// <summary>Appends text as it is.</summary>
    /// <param name="text">UTF-8.</param>
    public void Raw(ReadOnlySpan<byte> text)
    {
        text.CopyTo(Room(text.Length));
        length += text.Length;
    }

    /// <summary>Appends one character as it is.</summary>
    /// <param name="character">An ASCII character.</param>
    public void Raw(byte character)
    {
        Room(1)[0] = character;
        length++;
    }

    /// <summary>Appends a string in quotes; of its characters only quotes, backslashes and control characters are escaped.</summary>
    /// <param name="text">The string.</param>
    public void String(string text)
    {
        Raw((byte)'"');
        var rest = text.AsSpan();
        for (var next = rest.IndexOfAny(Escaped); next >= 0; next = rest.IndexOfAny(Escaped))
        {
            Utf8(rest[..next]);
            Escape(rest[next]);
            rest = rest[(next + 1)..];
        }

        Utf8(rest);
        Raw((byte)'"');
    }

    /// <summary>Appends a number as ECMAScript writes it.</summary>
    /// <param name="value">A finite number. Examples: 1e21 gives 1e+21, 0.000001 gives 0.000001, -0 gives 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public void Number(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "JSON has no such number.");
        }

        var room = Room(MostNumberBytes);
        int written;
        if (value == Math.Truncate(value) && Math.Abs(value) < LeastInexact)
        {
            // The shortest form of a whole number needs no search; -0 becomes 0.
            ((long)value).TryFormat(room, out written, default, CultureInfo.InvariantCulture);
        }
        else
        {
            value.TryFormat(room, out written, default, CultureInfo.InvariantCulture);
            if (room[..written].IndexOf((byte)'E') is >= 0 and var exponent)
            {
                written = Relayout(room, exponent, written);
            }
        }

        length += written;
    }

    // The framework's shortest form has the digits that ECMAScript asks for (ECMA-262, Number::toString), but exponents of its own:
    // 1.5E+15 and 1.5E-05, where ECMAScript writes none from 1e-6 up to 1e+21, and no leading zero.
    private static int Relayout(Span<byte> room, int exponent, int written)
    {
        var sign = room[0] == (byte)'-' ? 1 : 0;
        Span<byte> digits = stackalloc byte[exponent - sign];
        room[sign..exponent].CopyTo(digits);
        if (digits.Length > 1)
        {
            // The point, after the first digit, is left out.
            digits[2..].CopyTo(digits[1..]);
            digits = digits[..^1];
        }

        var power = int.Parse(room[(exponent + 1)..written], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return sign + Layout(room[sign..], digits, power + 1);
    }

    private static int Layout(Span<byte> room, ReadOnlySpan<byte> digits, int point)
    {
        switch (point)
        {
            case > 0 and <= MostPoint when digits.Length < point:
                digits.CopyTo(room);
                room[digits.Length..point].Fill((byte)'0');
                return point;
            case > 0 and <= MostPoint:
                return WithPoint(room, digits, point);
            case > LeastPoint and <= 0:
                "0."u8.CopyTo(room);
                room.Slice(2, -point).Fill((byte)'0');
                digits.CopyTo(room[(2 - point)..]);
                return 2 - point + digits.Length;
            default:
                var at = WithPoint(room, digits, 1);
                room[at++] = (byte)'e';
                room[at++] = (byte)(point > 0 ? '+' : '-');
                Math.Abs(point - 1).TryFormat(room[at..], out var written, default, CultureInfo.InvariantCulture);
                return at + written;
        }
    }

    private static int WithPoint(Span<byte> room, ReadOnlySpan<byte> digits, int point)
    {
        digits[..point].CopyTo(room);
        if (digits.Length == point)
        {
            return point;
        }

        room[point] = (byte)'.';
        digits[point..].CopyTo(room[(point + 1)..]);
        return digits.Length + 1;
    }

    private void Escape(char character)
    {
        switch (character)
        {
            case '"' or '\\':
                Raw((byte)'\\');
                Raw((byte)character);
                break;
            case '\b':
                Raw("\\b"u8);
                break;
            case '\t':
                Raw("\\t"u8);
                break;
            case '\n':
                Raw("\\n"u8);
                break;
            case '\f':
                Raw("\\f"u8);
                break;
            case '\r':
                Raw("\\r"u8);
                break;
            default:
                Utf8(string.Create(CultureInfo.InvariantCulture, $"\\u{(int)character:x4}"));
                break;
        }
    }

    private void Utf8(ReadOnlySpan<char> text) => length += Encoding.UTF8.GetBytes(text, Room(3 * text.Length));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Span<byte> Room(int needed)
    {
        if (bytes.Length - length < needed)
        {
            Grow(needed);
        }

        return bytes.AsSpan(length);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Grow(int needed) => Array.Resize(ref bytes, Math.Max(2 * bytes.Length, length + needed));
}
