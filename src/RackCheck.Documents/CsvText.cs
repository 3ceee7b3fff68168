using System.Buffers;
using System.Text;

namespace RackCheck.Documents;

/// <summary>
/// CSV (RFC 4180): CRLF, fields with commas, quotes or line breaks in quotes. A spreadsheet takes text that begins with <c>=</c>, <c>+</c>, <c>-</c>,
/// <c>@</c>, tab, carriage return or line feed for a formula or drops it; such text gets an apostrophe in front.
/// </summary>
internal static class CsvText
{
    private static readonly SearchValues<char> Quotable = SearchValues.Create(",\"\r\n;'");

    /// <summary>Adds a line.</summary>
    /// <param name="text">The document.</param>
    /// <param name="fields">The fields.</param>
    public static void Add(StringBuilder text, IEnumerable<string> fields) => text.AppendJoin(',', fields.Select(Quoted)).Append("\r\n");

    /// <summary>Keeps a spreadsheet from taking a text for a formula.</summary>
    /// <param name="text">The text.</param>
    public static string? Safe(string? text) =>
        text is { Length: > 0 } && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' ? "'" + text : text;

    private static string Quoted(string field) =>
        field.AsSpan().IndexOfAny(Quotable) >= 0 || field.Length != field.AsSpan().Trim().Length
            ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : field;
}
