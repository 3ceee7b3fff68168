using System.Text;
using RackCheck.Documents.Drawings;

namespace RackCheck.Documents.Sheets;

/// <summary>Writes a document as a page of HTML that is also well-formed XML: no script, nothing from elsewhere, the same bytes each time.</summary>
public static class SheetHtml
{
    private const string Look = """

        :root{--ink:#141414;--faint:#5c5c5c;--paper:#fff;--soft:#f4f4f4;--line:#8a8a8a;color-scheme:light}
        @media screen and (prefers-color-scheme:dark){:root{--ink:#ececec;--faint:#b2b2b2;--paper:#15171a;--soft:#1d2024;--line:#70757c;color-scheme:dark}}
        *{box-sizing:border-box}
        body{font:9.5pt/1.35 'DejaVu Sans Condensed','Liberation Sans',Arial,Helvetica,sans-serif;color:var(--ink);background:var(--paper);
        max-width:190mm;margin:8mm auto;padding:0 5mm;overflow-wrap:anywhere}
        h1{font-size:19pt;margin:0 0 3mm;line-height:1.15}
        h2{font-size:12pt;margin:7mm 0 2mm;padding-bottom:.8mm;border-bottom:.5mm solid var(--ink);break-after:avoid}
        p{margin:0 0 2mm}ul,ol{margin:0 0 2mm;padding-left:6mm}li{margin-bottom:.7mm}
        .tick{list-style:none;padding-left:0}.tick li{padding-left:6mm;text-indent:-6mm}
        .tick li::before{content:'\2610';display:inline-block;width:6mm;text-indent:0}
        dl{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:0 6mm;margin:0 0 3mm}
        dl div{display:flex;gap:3mm;justify-content:space-between;border-bottom:.2mm solid var(--line);padding:.5mm 0}
        dl div:last-child:nth-child(odd){grid-column:1/-1}
        dt{color:var(--faint);flex:none;max-width:50%}dd{margin:0;text-align:right}
        .head{border:.6mm solid var(--ink);padding:4mm;margin-bottom:4mm}.head dl{margin:0}
        .notice{border:.6mm solid var(--ink);background:var(--soft);padding:3mm 4mm;margin:0 0 4mm;break-inside:avoid}
        .notice p:last-child{margin:0}.notice .title{font-weight:700;text-transform:uppercase;letter-spacing:.03em}
        table{border-collapse:collapse;table-layout:fixed;width:100%;margin:0 0 3mm;font-size:8.5pt}
        caption{text-align:left;font-weight:700;padding:1mm 0;break-after:avoid}
        th,td{text-align:left;vertical-align:top;padding:.7mm 1.5mm;border-bottom:.2mm solid var(--line)}
        th{border-bottom:.4mm solid var(--ink);overflow-wrap:normal}.n{text-align:right}
        thead{display:table-header-group}tr{break-inside:avoid}
        figure{margin:0 0 4mm;break-inside:avoid}figure svg{display:block;max-width:100%;height:auto;max-height:240mm}
        figcaption{color:var(--faint);margin-top:1mm}
        .sign td{height:14mm}
        .wide{overflow-x:auto}
        @media print{body{max-width:none;margin:0;padding:0;font-size:8.5pt}table{font-size:7.5pt}.wide{overflow:visible}}
        @media screen and (max-width:600px){dl{grid-template-columns:1fr}.wide table{min-width:180mm}.wide svg{min-width:150mm}}

        """;

    // What is wider than a telephone scrolls in a frame of its own, which the keyboard reaches; its name follows.
    private const string WideStart = "<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"";

    /// <summary>The style sheet of every page. Widths of columns are classes, as the policy of a page allows no style of an element.</summary>
    public static string Style { get; } =
        $"{Look}{string.Concat(Enumerable.Range(1, 100).Select(w => FormattableString.Invariant($".w{w}{{width:{w}%}}")))}\n";

    /// <summary>Writes a document.</summary>
    /// <param name="sheet">The document.</param>
    /// <returns>The page, UTF-8, without a byte order mark.</returns>
    public static byte[] Document(Sheet sheet)
    {
        var html = new StringBuilder(128 * 1024);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\">\n<head>\n<meta charset=\"utf-8\" />\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width\" />\n<title>");
        html.Escaped(sheet.Reference is { } name ? $"{sheet.Title}: {name}" : sheet.Title).Append("</title>\n<style>").Append(Style)
            .Append("</style>\n<style>").Append(PageStyle(sheet)).Append("</style>\n</head>\n<body>\n<main>\n<header class=\"head\">\n<h1 dir=\"auto\">")
            .Escaped(sheet.Title).Append("</h1>\n");
        Write(new Pairs(sheet.Head), html);
        html.Append("</header>\n");
        foreach (var block in sheet.Blocks)
        {
            Write(block, html);
        }

        return Encoding.UTF8.GetBytes(html.Append("</main>\n</body>\n</html>\n").ToString());
    }

    /// <summary>The style sheets of a page, exactly as they stand in it: all that a policy for its content has to allow.</summary>
    /// <param name="sheet">The document.</param>
    public static IReadOnlyList<string> Styles(Sheet sheet) => [Style, PageStyle(sheet), SvgWriter.Style];

    // Header and footer of printed pages.
    private static string PageStyle(Sheet sheet)
    {
        var css = new StringBuilder("@page{size:A4;margin:20mm 15mm 18mm;font:7pt 'DejaVu Sans Condensed','Liberation Sans',sans-serif;");
        css.Append("@top-left{content:").Quoted(sheet.Title).Append("}@top-right{content:").Quoted(sheet.Reference ?? "").Append("}@bottom-left{content:")
            .Quoted(sheet.Digest).Append(";width:70%}@bottom-right{content:").Quoted("Ruleset " + sheet.Ruleset)
            .Append("' \\B7 page ' counter(page) ' of ' counter(pages)}}");
        return css.ToString();
    }

    // Everything but letters and digits is written by its number, so that no text ends the string or the element.
    private static StringBuilder Quoted(this StringBuilder css, string words)
    {
        css.Append('\'');
        foreach (var rune in words.EnumerateRunes())
        {
            if (rune.IsAscii && char.IsAsciiLetterOrDigit((char)rune.Value))
            {
                css.Append((char)rune.Value);
            }
            else
            {
                css.Append('\\').Append(rune.Value.ToString("X", System.Globalization.CultureInfo.InvariantCulture)).Append(' ');
            }
        }

        return css.Append('\'');
    }

    private static void Write(Block block, StringBuilder html)
    {
        switch (block)
        {
            case Heading heading:
                html.Append("<h2>").Escaped(heading.Words).Append("</h2>\n");
                break;
            case Paragraph paragraph:
                html.Append("<p dir=\"auto\">").Escaped(paragraph.Words).Append("</p>\n");
                break;
            case Notice notice:
                html.Append("<section class=\"notice\"><p class=\"title\">").Escaped(notice.Head).Append("</p>\n");
                foreach (var line in notice.Lines)
                {
                    html.Append("<p dir=\"auto\">").Escaped(line).Append("</p>\n");
                }

                html.Append("</section>\n");
                break;
            case Bullets bullets:
                Write(bullets, html);
                break;
            case Pairs pairs:
                Write(pairs, html);
                break;
            case Grid grid:
                Write(grid, html);
                break;
            case Figure figure:
                html.Append("<figure>\n").Append(WideStart).Escaped(figure.Caption).Append("\">")
                    .Append(SvgWriter.Element(figure.Drawing)).Append("</div><figcaption>").Escaped(figure.Caption).Append("</figcaption>\n</figure>\n");
                break;
            case Signatures signatures:
                Write(signatures, html);
                break;
        }
    }

    private static void Write(Bullets bullets, StringBuilder html)
    {
        var tag = bullets.Mark == BulletMark.Number ? "ol" : "ul";
        html.Append('<').Append(tag).Append(bullets.Mark == BulletMark.Box ? " class=\"tick\">\n" : ">\n");
        foreach (var line in bullets.Lines)
        {
            html.Append("<li dir=\"auto\">").Escaped(line).Append("</li>\n");
        }

        html.Append("</").Append(tag).Append(">\n");
    }

    private static void Write(Pairs pairs, StringBuilder html)
    {
        html.Append("<dl>\n");
        foreach (var (name, value) in pairs.Entries)
        {
            html.Append("<div><dt>").Escaped(name).Append("</dt><dd dir=\"auto\">").Escaped(value).Append("</dd></div>\n");
        }

        html.Append("</dl>\n");
    }

    private static void Write(Grid grid, StringBuilder html)
    {
        html.Append(WideStart).Escaped(grid.Caption).Append("\"><table>\n<caption>").Escaped(grid.Caption).Append("</caption>\n<thead><tr>");
        var total = grid.Columns.Sum(c => c.Share);
        foreach (var column in grid.Columns)
        {
            var width = Math.Clamp((int)Math.Round(100 * column.Share / total, MidpointRounding.AwayFromZero), 1, 100);
            html.Append("<th scope=\"col\" class=\"w").Append(width).Append(column.IsNumber ? " n\">" : "\">")
                .Escaped(column.Head.Length > 0 ? column.Head : "\u2713").Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in grid.Rows)
        {
            html.Append("<tr>");
            for (var i = 0; i < row.Count; i++)
            {
                html.Append(grid.Columns[i].IsNumber ? "<td class=\"n\">" : "<td dir=\"auto\">").Breakable(row[i]).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table></div>\n");
    }

    private static void Write(Signatures signatures, StringBuilder html)
    {
        html.Append("<table class=\"sign\">\n<caption>Signatures</caption>\n<thead><tr>");
        foreach (var head in SignatureHeads)
        {
            html.Append("<th scope=\"col\">").Append(head).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (var role in signatures.Roles)
        {
            html.Append("<tr><td>").Escaped(role).Append("</td><td></td><td></td><td></td></tr>\n");
        }

        html.Append("</tbody>\n</table>\n");
    }

    /// <summary>Headings of the fields to sign.</summary>
    internal static readonly string[] SignatureHeads = ["For", "Name", "Date", "Signature"];

    // A long word of a narrow cell can be broken after hyphens and the like: browsers break none before a digit.
    private static StringBuilder Breakable(this StringBuilder html, string words)
    {
        const int Long = 8;
        foreach (var (index, word) in words.Split(' ').Index())
        {
            html.Append(index > 0 ? " " : "");
            var from = 0;
            for (var i = 1; word.Length > Long && i < word.Length; i++)
            {
                if (TextFit.IsBreak(word[i - 1]) && !TextFit.IsBreak(word[i]))
                {
                    html.Escaped(word[from..i]).Append("<wbr/>");
                    from = i;
                }
            }

            html.Escaped(word[from..]);
        }

        return html;
    }

    // What XML does not allow becomes U+FFFD.
    private static StringBuilder Escaped(this StringBuilder html, string words)
    {
        for (var i = 0; i < words.Length; i++)
        {
            var letter = words[i];
            if (char.IsHighSurrogate(letter) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
            {
                html.Append(letter).Append(words[++i]);
                continue;
            }

            _ = letter switch
            {
                '&' => html.Append("&amp;"),
                '<' => html.Append("&lt;"),
                '>' => html.Append("&gt;"),
                '"' => html.Append("&quot;"),
                '\uFFFE' or '\uFFFF' => html.Append('\uFFFD'),
                _ => html.Append(char.IsControl(letter) || char.IsSurrogate(letter) ? '\uFFFD' : letter),
            };
        }

        return html;
    }
}
