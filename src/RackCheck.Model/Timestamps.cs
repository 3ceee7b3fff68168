using System.Globalization;

namespace RackCheck.Model;

/// <summary>Points in time of the contract: RFC 3339 text with an offset, so that no time zone of a machine has a part in an answer.</summary>
public static class Timestamps
{
    /// <summary>Form of the text, as a regular expression.</summary>
    public const string Pattern = @"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{1,7})?(Z|[+-][0-9]{2}:[0-9]{2})$";

    /// <summary>Reads a point in time.</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">The point in time.</param>
    /// <returns>Whether the text is a date and time that exists, with an offset.</returns>
    public static bool TryParse(string text, out DateTimeOffset at) =>
        DateTimeOffset.TryParseExact(
            text,
            ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"],
            CultureInfo.InvariantCulture,
            DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal,
            out at);

    /// <summary>Whether a point in time is after another one.</summary>
    /// <param name="one">A valid point in time.</param>
    /// <param name="other">Another one.</param>
    /// <exception cref="FormatException">One of them is not valid; requests are checked before.</exception>
    public static bool IsAfter(string one, string other) => Parse(one) > Parse(other);

    private static DateTimeOffset Parse(string text) => TryParse(text, out var at) ? at : throw new FormatException($"{text} is no date and time.");
}
