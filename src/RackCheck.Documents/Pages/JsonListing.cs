namespace RackCheck.Documents.Pages;

/// <summary>Listings of JSON.</summary>
internal static class JsonListing
{
    /// <summary>Two listings, each with the lines marked that the other does not have.</summary>
    /// <param name="one">A text.</param>
    /// <param name="other">Another text.</param>
    public static (Html One, Html Other) Compare(string one, string other)
    {
        var (left, right) = (Lines(one), Lines(other));
        var common = Common(left, right);
        return (Listing(left, common.Left), Listing(right, common.Right));
    }

    /// <summary>A listing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="language">Name of its language, for readers of the page's source.</param>
    public static Html Plain(string text, string language = "json") =>
        Html.Of($"<pre tabindex=\"0\" data-copy=\"{language}\"><code>{text.TrimEnd()}</code></pre>\n");

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").TrimEnd().Split('\n');

    private static Html Listing(string[] lines, bool[] isCommon)
    {
        var shown = lines.Select((l, i) => isCommon[i] ? Html.Text(l) : Html.Of($"<mark>{l}</mark>"));
        return Html.Of($"<pre tabindex=\"0\" data-copy=\"json\"><code>{Html.Join(shown, "\n")}</code></pre>\n");
    }

    // The longest common subsequence. The texts are short: a rack has at most some hundred lines.
    private static (bool[] Left, bool[] Right) Common(string[] left, string[] right)
    {
        var longest = new int[left.Length + 1, right.Length + 1];
        for (var i = left.Length - 1; i >= 0; i--)
        {
            for (var j = right.Length - 1; j >= 0; j--)
            {
                longest[i, j] = left[i] == right[j] ? longest[i + 1, j + 1] + 1 : Math.Max(longest[i + 1, j], longest[i, j + 1]);
            }
        }

        var (inLeft, inRight) = (new bool[left.Length], new bool[right.Length]);
        for (int i = 0, j = 0; i < left.Length && j < right.Length;)
        {
            if (left[i] == right[j])
            {
                inLeft[i++] = inRight[j++] = true;
            }
            else if (longest[i + 1, j] >= longest[i, j + 1])
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        return (inLeft, inRight);
    }
}
