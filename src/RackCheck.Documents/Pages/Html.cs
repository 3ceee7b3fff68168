using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;

namespace RackCheck.Documents.Pages;

/// <summary>HTML markup. Text that is put into it is escaped; markup that is put into it stays markup.</summary>
/// <param name="Markup">The markup.</param>
public readonly partial record struct Html(string Markup)
{
    /// <summary>No markup.</summary>
    public static readonly Html None = new("");

    /// <summary>Makes markup of an interpolated string: the string itself is markup, the values in it are escaped unless they are markup.</summary>
    /// <param name="writer">The interpolated string.</param>
    public static Html Of(HtmlHandler writer) => new(writer.Markup);

    /// <summary>Escapes text for elements and for attributes in quotation marks.</summary>
    /// <param name="text">The text.</param>
    public static Html Text(string text) => Of($"{text}");

    /// <summary>Escapes text; what stands between backticks becomes code.</summary>
    /// <param name="text">The text.</param>
    public static Html Marked(string text) => Join(text.Split('`').Select((part, index) => index % 2 == 0 ? Text(part) : Of($"<code>{part}</code>")));

    /// <summary>
    /// Text of the contract: an empty line separates paragraphs, lines with a hyphen are a list, backticks are code. Pictures are left out, and of links to
    /// pages of this site the text stays.
    /// </summary>
    /// <param name="text">The text.</param>
    public static Html Prose(string text) => Join(text.Split("\n\n").Select(part => part.StartsWith("- ", StringComparison.Ordinal)
        ? List(part[2..].Split("\n- ").Select(Marked))
        : Of($"<p>{Marked(Links().Replace(part, static m => m.Value[0] == '!' ? "" : m.Groups[1].Value).Trim())}</p>")));

    [GeneratedRegex(@"!?\[([^]]*)\]\([^)]*\)")]
    private static partial Regex Links();

    /// <summary>Joins markup.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="separator">Markup between them.</param>
    public static Html Join(IEnumerable<Html> parts, string separator = "") => new(string.Join(separator, parts.Select(p => p.Markup)));

    /// <summary>A list, each entry an item.</summary>
    /// <param name="entries">The entries.</param>
    public static Html List(IEnumerable<Html> entries) => Of($"<ul>{entries.Select(e => Of($"<li>{e}</li>"))}</ul>\n");

    /// <summary>A list of texts.</summary>
    /// <param name="entries">The entries.</param>
    public static Html List(IEnumerable<string> entries) => List(entries.Select(Text));

    /// <summary>A table in a frame that scrolls by itself where the window is narrower than the table.</summary>
    /// <param name="name">What the table shows.</param>
    /// <param name="heads">Heads of the columns.</param>
    /// <param name="rows">Rows of cells; the first cell of a row is its head.</param>
    /// <param name="isStacked">Whether the cells of a row stand one below the other in a narrow window.</param>
    public static Html Table(string name, IEnumerable<Html> heads, IEnumerable<IReadOnlyList<Html>> rows, bool isStacked = false) => Of($"""
        <div class="wide" role="region" aria-label="{name}" tabindex="0"><table{new Html(isStacked ? " class=\"stacked\"" : "")}>
        <thead><tr>{heads.Select(h => Of($"<th scope=\"col\">{h}</th>"))}</tr></thead>
        <tbody>{rows.Select(Row)}</tbody>
        </table></div>

        """);

    private static Html Row(IReadOnlyList<Html> cells) =>
        Of($"<tr><th scope=\"row\">{cells[0]}</th>{cells.Skip(1).Select(c => Of($"<td>{c}</td>"))}</tr>\n");
}

/// <summary>Collects an interpolated string as markup.</summary>
[InterpolatedStringHandler]
public readonly ref struct HtmlHandler
{
    private readonly StringBuilder text;

    /// <summary>Starts.</summary>
    /// <param name="literalLength">Length of the constant parts.</param>
    /// <param name="formattedCount">Number of values.</param>
    public HtmlHandler(int literalLength, int formattedCount) => text = new StringBuilder(literalLength + (formattedCount * 32));

    /// <summary>The markup so far.</summary>
    public string Markup => text.ToString();

    /// <summary>Adds a constant part.</summary>
    /// <param name="value">Markup.</param>
    public void AppendLiteral(string value) => text.Append(value);

    /// <summary>Adds a text, escaped.</summary>
    /// <param name="value">The text; null is nothing.</param>
    public void AppendFormatted(string? value)
    {
        foreach (var letter in value ?? "")
        {
            _ = letter switch
            {
                '&' => text.Append("&amp;"),
                '<' => text.Append("&lt;"),
                '>' => text.Append("&gt;"),
                '"' => text.Append("&quot;"),
                _ => text.Append(letter),
            };
        }
    }

    /// <summary>Adds a number in the invariant culture.</summary>
    /// <param name="value">The number.</param>
    public void AppendFormatted(double value) => text.Append(CultureInfo.InvariantCulture, $"{value}");

    /// <summary>Adds markup.</summary>
    /// <param name="value">The markup.</param>
    public void AppendFormatted(Html value) => text.Append(value.Markup);

    /// <summary>Adds several pieces of markup.</summary>
    /// <param name="values">The pieces.</param>
    public void AppendFormatted(IEnumerable<Html> values)
    {
        foreach (var value in values)
        {
            text.Append(value.Markup);
        }
    }
}
