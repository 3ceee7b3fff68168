namespace RackCheck.Model;

/// <summary>Finds names that are spelt alike.</summary>
public static class Edits
{
    /// <summary>Levenshtein distance of two names: the number of letters to change, add or leave out.</summary>
    /// <param name="one">A name.</param>
    /// <param name="other">Another.</param>
    /// <param name="atMost">Names that differ in length by as much, and names over 64 letters, are this far apart.</param>
    /// <returns>The distance.</returns>
    public static int Between(string one, string other, int atMost)
    {
        if (Math.Abs(one.Length - other.Length) >= atMost || one.Length > 64)
        {
            return atMost;
        }

        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var substitution = diagonal + (one[i - 1] == other[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(substitution, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
