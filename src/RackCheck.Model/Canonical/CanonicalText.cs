using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace RackCheck.Model.Canonical;

/// <summary>UTF-8 text in canonical form as it grows: RFC 8785 sections 3.2.2.2 and 3.2.2.3.</summary>
public sealed class CanonicalText
{
    // A double has at most 17 digits, a sign, a point, leading zeros and an exponent.
    private const int MostNumberBytes = 32;
    private static readonly SearchValues<char> Escaped = SearchValues.Create([.. Enumerable.Range(0, 0x20).Select(c => (char)c), '"', '\\']);

    private byte[] bytes = new byte[16 * 1024];
    private int length;

    /// <summary>What is written so far.</summary>
    public ReadOnlySpan<byte> Written => bytes.AsSpan(0, length);

    /// <summary>Starts anew.</summary>
    public void Clear() => length = 0;

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

        if (value == Math.Truncate(value) && Math.Abs(value) < 1e15)
        {
            Whole((long)value);
        }
        else
        {
            Fraction(value);
        }
    }

    // Most numbers of a rack have up to four digits, and these are written at every check: two digits at a time, from a table.
    private void Whole(long value)
    {
        var room = Room(MostNumberBytes);
        if ((ulong)value >= 10_000)
        {
            Utf8Formatter.TryFormat(value, room, out var written);
            length += written;
            return;
        }

        var number = (uint)value;
        var (high, low) = (number / 100, number % 100);
        var at = 0;
        if (high > 0)
        {
            at = Two(room, 0, high, skipZero: high < 10);
            at = Two(room, at, low, skipZero: false);
        }
        else
        {
            at = Two(room, 0, low, skipZero: low < 10);
        }

        length += at;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Two(Span<byte> room, int at, uint number, bool skipZero)
    {
        var digits = TwoDigits.Slice((int)number * 2, 2);
        if (skipZero)
        {
            room[at] = digits[1];
            return at + 1;
        }

        room[at + 1] = digits[1];
        room[at] = digits[0];
        return at + 2;
    }

    private static ReadOnlySpan<byte> TwoDigits =>
        "00010203040506070809101112131415161718192021222324252627282930313233343536373839404142434445464748495051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"u8;

    // The framework's shortest form has the digits that ECMAScript asks for; it goes to exponents at other places.
    private void Fraction(double value)
    {
        var size = Math.Abs(value);
        var thousandths = Math.Round(size * 1000);
        if (thousandths < 1e9 && thousandths / 1000 == size)
        {
            Thousandths(value < 0, (long)thousandths);
        }
        else if (size is >= 1e-4 and < 1e15)
        {
            value.TryFormat(Room(MostNumberBytes), out var written, "R", CultureInfo.InvariantCulture);
            length += written;
        }
        else
        {
            Utf8(Rare(value));
        }
    }

    // Numbers of data sheets have few decimals. Two decimals of up to 15 digits are never the same double, so the one that gives this double
    // is the shortest.
    private void Thousandths(bool negative, long thousandths)
    {
        if (negative)
        {
            Raw((byte)'-');
        }

        var (whole, rest) = (thousandths / 1000, (int)(thousandths % 1000));
        Whole(whole);
        var room = Room(4);
        room[0] = (byte)'.';
        room[1] = (byte)('0' + (rest / 100));
        room[2] = (byte)('0' + (rest / 10 % 10));
        room[3] = (byte)('0' + (rest % 10));
        length += rest % 10 != 0 ? 4 : rest % 100 != 0 ? 3 : 2;
    }

    private static string Rare(double value)
    {
        // Where the point stands is read off the shortest form: 17 digits can say otherwise, as 9.9999999999999992e22 for 1e23.
        var shortest = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture).Split('E');
        var exponent = shortest.Length > 1 ? int.Parse(shortest[1], CultureInfo.InvariantCulture) : 0;
        var point = shortest[0].Split('.')[0].Length + exponent;
        var digits = shortest[0].Replace(".", "", StringComparison.Ordinal).TrimEnd('0');
        var sign = value < 0 ? "-" : "";
        return sign + point switch
        {
            > 0 and <= 21 when digits.Length <= point => digits.PadRight(point, '0'),
            > 0 and <= 21 => digits[..point] + "." + digits[point..],
            > -6 and <= 0 => "0." + new string('0', -point) + digits,
            _ => digits[..1] + (digits.Length > 1 ? "." + digits[1..] : "") + "e" + (point > 0 ? "+" : "-")
                + Math.Abs(point - 1).ToString(CultureInfo.InvariantCulture),
        };
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
