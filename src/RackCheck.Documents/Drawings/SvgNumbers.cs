using System.Text;

namespace RackCheck.Documents.Drawings;

/// <summary>Numbers of coordinates and lengths in SVG.</summary>
internal static class SvgNumbers
{
    /// <summary>Adds a number with two decimals at most, which are 0.001 mm on the sheet; quicker than a format string.</summary>
    /// <param name="text">The text.</param>
    /// <param name="value">The number.</param>
    /// <returns>The text.</returns>
    public static StringBuilder Number(this StringBuilder text, double value)
    {
        var hundredths = (long)Math.Round(value * 100, MidpointRounding.AwayFromZero);
        if (hundredths < 0)
        {
            text.Append('-');
            hundredths = -hundredths;
        }

        text.Append(hundredths / 100);
        var rest = (int)(hundredths % 100);
        if (rest > 0)
        {
            text.Append('.').Append((char)('0' + (rest / 10)));
            if (rest % 10 > 0)
            {
                text.Append((char)('0' + (rest % 10)));
            }
        }

        return text;
    }
}
