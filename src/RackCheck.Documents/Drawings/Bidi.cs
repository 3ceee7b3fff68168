using System.Globalization;

namespace RackCheck.Documents.Drawings;

/// <summary>Text that runs from right to left.</summary>
internal static class Bidi
{
    private enum Kind
    {
        Neutral,
        Left,
        Right,
        Number,
    }

    /// <summary>Whether a letter runs from right to left: Hebrew, Arabic and their neighbours.</summary>
    public static bool IsRightToLeft(char letter) =>
        letter is (>= '\u0590' and <= '\u08FF') or (>= '\uFB1D' and <= '\uFDFF') or (>= '\uFE70' and <= '\uFEFC');

    /// <summary>The runs of a line in the order in which they stand, from left to right. The line runs as its first letter does.</summary>
    /// <param name="words">The line.</param>
    /// <returns>The runs, with their direction.</returns>
    /// <remarks>The Unicode bidirectional algorithm (UAX 9) without embeddings and brackets, which names and messages do not need.</remarks>
    public static IReadOnlyList<(string Words, bool IsRightToLeft)> Runs(string words)
    {
        var levels = Levels(words);
        var runs = new List<(string Words, int Level)>();
        for (var i = 0; i < words.Length;)
        {
            var end = i + 1;
            while (end < words.Length && levels[end] == levels[i])
            {
                end++;
            }

            runs.Add((words[i..end], levels[i]));
            i = end;
        }

        for (var level = 2; level > 0; level--)
        {
            ReverseFrom(runs, level);
        }

        return [.. runs.Select(r => (r.Words, r.Level == 1))];
    }

    private static void ReverseFrom(List<(string Words, int Level)> runs, int level)
    {
        for (var i = 0; i < runs.Count; i++)
        {
            var end = i;
            while (end < runs.Count && runs[end].Level >= level)
            {
                end++;
            }

            runs.Reverse(i, end - i);
            i = Math.Max(i, end);
        }
    }

    private static int[] Levels(string words)
    {
        var kinds = Kinds(words);
        var isLineRight = Array.Find(kinds, k => k is Kind.Left or Kind.Right) == Kind.Right;
        var line = isLineRight ? Kind.Right : Kind.Left;
        var strong = line;
        for (var i = 0; i < kinds.Length; i++)
        {
            strong = kinds[i] is Kind.Left or Kind.Right ? kinds[i] : strong;
            kinds[i] = kinds[i] == Kind.Number && strong == Kind.Left ? Kind.Left : kinds[i];
        }

        ResolveNeutrals(kinds, line);
        return [.. kinds.Select(k => k switch { Kind.Right => 1, Kind.Number => 2, _ => isLineRight ? 2 : 0 })];
    }

    // Signs and spaces between letters of one direction take it, others that of the line. A number beside them counts as right to left.
    private static void ResolveNeutrals(Kind[] kinds, Kind line)
    {
        var before = line;
        for (var i = 0; i < kinds.Length;)
        {
            if (kinds[i] != Kind.Neutral)
            {
                before = kinds[i] == Kind.Number ? Kind.Right : kinds[i];
                i++;
                continue;
            }

            var end = i;
            while (end < kinds.Length && kinds[end] == Kind.Neutral)
            {
                end++;
            }

            var after = end == kinds.Length ? line : kinds[end] == Kind.Number ? Kind.Right : kinds[end];
            Array.Fill(kinds, before == after ? before : line, i, end - i);
            i = end;
        }
    }

    private static Kind[] Kinds(string words)
    {
        var kinds = new Kind[words.Length];
        for (var i = 0; i < words.Length; i++)
        {
            var letter = words[i];
            kinds[i] = letter is (>= '0' and <= '9') or (>= '\u0660' and <= '\u0669') ? Kind.Number
                : char.GetUnicodeCategory(letter) == UnicodeCategory.NonSpacingMark && i > 0 ? kinds[i - 1]
                : IsRightToLeft(letter) ? Kind.Right
                : char.IsLetter(letter) || char.IsSurrogate(letter) ? Kind.Left
                : Kind.Neutral;
        }

        return kinds;
    }
}
