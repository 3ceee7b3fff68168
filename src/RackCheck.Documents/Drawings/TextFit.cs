using System.Text;

namespace RackCheck.Documents.Drawings;

/// <summary>Makes text fit to be drawn: without control characters, cut to a width, or wrapped.</summary>
public static class TextFit
{
    private const string Ellipsis = "\u2026";

    /// <summary>A text without control characters, half surrogate pairs, line ends and marks that turn the direction of what follows.</summary>
    /// <param name="words">The text.</param>
    /// <returns>The text on one line. What cannot be shown becomes U+FFFD.</returns>
    public static string Clean(string words)
    {
        foreach (var letter in words)
        {
            if (letter is < ' ' or >= '\u007F')
            {
                return CleanSlowly(words);
            }
        }

        return words;
    }

    /// <summary>A name in the midst of other words: what runs from right to left is isolated.</summary>
    /// <param name="name">The name.</param>
    /// <returns>The name, clean.</returns>
    public static string Isolate(string name)
    {
        name = Clean(name);
        return name.Any(Bidi.IsRightToLeft) ? $"\u2068{name}\u2069" : name;
    }

    /// <summary>A text cut to a width, with an ellipsis.</summary>
    /// <param name="words">The text, clean.</param>
    /// <param name="width">The width.</param>
    /// <param name="size">Height of the font.</param>
    /// <param name="isBold">Whether it is bold.</param>
    /// <returns>The text; empty where not even the ellipsis fits.</returns>
    public static string Cut(string words, double width, double size, bool isBold = false)
    {
        if (DrawingFont.Width(words, size, isBold) <= width)
        {
            return words;
        }

        var left = width - DrawingFont.Width(Ellipsis, size, isBold);
        if (left < 0)
        {
            return "";
        }

        var end = 0;
        while (end < words.Length)
        {
            var step = char.IsHighSurrogate(words[end]) && end + 1 < words.Length ? 2 : 1;
            left -= DrawingFont.Width(words.Substring(end, step), size, isBold);
            if (left < 0)
            {
                break;
            }

            end += step;
        }

        var kept = words[..end].TrimEnd();
        return kept + (kept.Contains('\u2068', StringComparison.Ordinal) ? "\u2069" : "") + Ellipsis;
    }

    /// <summary>Whether a word may be broken after a letter: ids and part numbers are read in the groups that these separate.</summary>
    /// <param name="letter">The letter.</param>
    public static bool IsBreak(char letter) => letter is '-' or '_' or '/' or '.' or ':';

    /// <summary>A text on several lines. A word that is wider than a line is broken, after a hyphen or the like where it has one.</summary>
    /// <param name="words">The text, clean.</param>
    /// <param name="width">Width of a line.</param>
    /// <param name="size">Height of the font.</param>
    /// <param name="isBold">Whether it is bold.</param>
    /// <returns>The lines, at least one.</returns>
    public static List<string> Wrap(string words, double width, double size, bool isBold = false)
    {
        var lines = new List<string>();
        var space = DrawingFont.Width(" ", size, isBold);
        var line = new StringBuilder();
        var used = 0.0;
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            var needed = DrawingFont.Width(rest, size, isBold);
            if (line.Length > 0 && used + space + needed > width)
            {
                lines.Add(line.ToString());
                (used, _) = (0, line.Clear());
            }

            while (needed > width && Fitting(rest, width, size, isBold) is var end && end < rest.Length)
            {
                lines.Add(rest[..end]);
                rest = rest[end..];
                needed = DrawingFont.Width(rest, size, isBold);
            }

            used += (line.Length > 0 ? space : 0) + needed;
            line.Append(line.Length > 0 ? " " : "").Append(rest);
        }

        if (line.Length > 0 || lines.Count == 0)
        {
            lines.Add(line.ToString());
        }

        return lines;
    }

    private static int Fitting(string word, double width, double size, bool isBold)
    {
        var end = 0;
        while (end < word.Length)
        {
            var step = char.IsHighSurrogate(word[end]) && end + 1 < word.Length ? 2 : 1;
            width -= DrawingFont.Width(word.Substring(end, step), size, isBold);
            if (width < 0 && end > 0)
            {
                break;
            }

            end += step;
        }

        // A short first piece is no better than a break within a group.
        for (var after = end; end < word.Length && after > end / 3; after--)
        {
            if (IsBreak(word[after - 1]))
            {
                return after;
            }
        }

        return end;
    }

    private static string CleanSlowly(string words)
    {
        var clean = new StringBuilder(words.Length);
        for (var i = 0; i < words.Length; i++)
        {
            var letter = words[i];
            if (char.IsHighSurrogate(letter) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
            {
                clean.Append(letter).Append(words[++i]);
            }
            else if (letter is '\t' or '\n' or '\r' or '\u0085' or '\u2028' or '\u2029')
            {
                clean.Append(' ');
            }
            else if (letter is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\u200E' or '\u200F' or '\u061C')
            {
                continue;
            }
            else
            {
                clean.Append(char.IsControl(letter) || char.IsSurrogate(letter) || letter is '\uFFFE' or '\uFFFF' ? '\uFFFD' : letter);
            }
        }

        return clean.ToString();
    }
}
