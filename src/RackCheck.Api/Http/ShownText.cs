using System.Globalization;
using System.Text;

namespace RackCheck.Api.Http;

/// <summary>Text of a client in logs and problem documents: cut, and without characters that change how the rest is displayed.</summary>
internal static class ShownText
{
    private const int MostCharacters = 80;

    /// <summary>Shortens and escapes a text.</summary>
    /// <param name="text">A text of a client.</param>
    /// <returns>Letters, digits, punctuation and spaces as they are; control and formatting characters, such as bidirectional marks, as \uXXXX.</returns>
    public static string Of(string text)
    {
        var shown = new StringBuilder();
        foreach (var c in text.AsSpan(0, Math.Min(text.Length, MostCharacters)))
        {
            if (IsPlain(c))
            {
                shown.Append(c);
            }
            else
            {
                shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}");
            }
        }

        return text.Length > MostCharacters ? shown.Append("...").ToString() : shown.ToString();
    }

    private static bool IsPlain(char c) => char.GetUnicodeCategory(c) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
        or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
