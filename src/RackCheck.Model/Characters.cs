namespace RackCheck.Model;

/// <summary>
/// The length of text as a contract in JSON Schema counts it: in characters of Unicode. A character outside the basic plane, such as an emoji, is two
/// UTF-16 units and one character.
/// </summary>
public static class Characters
{
    /// <summary>Number of characters.</summary>
    /// <param name="value">The text. A surrogate without its other half counts as one.</param>
    public static int Count(string value)
    {
        var pairs = 0;
        for (var i = 1; i < value.Length; i++)
        {
            if (char.IsSurrogatePair(value[i - 1], value[i]))
            {
                pairs++;
                i++;
            }
        }

        return value.Length - pairs;
    }

    /// <summary>Whether a text has no more than a number of characters. Only one with more UTF-16 units is counted.</summary>
    /// <param name="value">The text.</param>
    /// <param name="most">The greatest number.</param>
    public static bool IsAtMost(string value, int most) => value.Length <= most || Count(value) <= most;
}
