using System.Text;
using System.Text.Json;

namespace RackCheck.Documents.Pages;

/// <summary>Listings of JSON. Each member has its own line, except where a whole object or list fits a short one.</summary>
internal static class JsonListing
{
    // Fits half the width of a page and the window of a telephone, nearly.
    private const int ShortLine = 44;

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
    public static Html Plain(string text) => Html.Of($"<pre data-copy=\"json\"><code>{Layout(text)}</code></pre>\n");

    /// <summary>Breaks a text into short lines. Members stay in their order, numbers and strings as they are written.</summary>
    /// <param name="text">JSON.</param>
    public static string Layout(string text)
    {
        using var document = JsonDocument.Parse(text);
        var lines = new StringBuilder();
        Write(document.RootElement, "", 0, lines);
        return lines.ToString();
    }

    // Used is what stands on the line before the value.
    private static void Write(JsonElement value, string indent, int used, StringBuilder lines)
    {
        var isObject = value.ValueKind == JsonValueKind.Object;
        if ((!isObject && value.ValueKind != JsonValueKind.Array) || (indent.Length > 0 && OneLine(value) is { } whole && used + whole.Length <= ShortLine))
        {
            lines.Append(OneLine(value));
            return;
        }

        (string Name, JsonElement Value)[] children = isObject
            ? [.. value.EnumerateObject().Select(m => ($"\"{m.Name}\": ", m.Value))]
            : [.. value.EnumerateArray().Select(e => ("", e))];
        var inner = indent + "  ";
        lines.Append(isObject ? '{' : '[');
        for (var i = 0; i < children.Length; i++)
        {
            lines.Append(i == 0 ? "\n" : ",\n").Append(inner).Append(children[i].Name);
            Write(children[i].Value, inner, inner.Length + children[i].Name.Length, lines);
        }

        lines.Append('\n').Append(indent).Append(isObject ? '}' : ']');
    }

    private static string OneLine(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object when value.GetPropertyCount() == 0 => "{}",
        JsonValueKind.Object => $"{{ {string.Join(", ", value.EnumerateObject().Select(m => $"\"{m.Name}\": {OneLine(m.Value)}"))} }}",
        JsonValueKind.Array => $"[{string.Join(", ", value.EnumerateArray().Select(OneLine))}]",
        _ => value.GetRawText(),
    };

    private static string[] Lines(string text) => Layout(text).Split('\n');

    private static Html Listing(string[] lines, bool[] isCommon)
    {
        var shown = lines.Select((l, i) => isCommon[i] ? Html.Text(l) : Html.Of($"<mark>{l}</mark>"));
        return Html.Of($"<pre data-copy=\"json\"><code>{Html.Join(shown, "\n")}</code></pre>\n");
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
