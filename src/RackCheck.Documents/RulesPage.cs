using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Documents;

/// <summary>The rules as an HTML page, made from the same data as the rules API.</summary>
public static class RulesPage
{
    /// <summary>The page's style sheet.</summary>
    public const string Style = """
        body { font: 16px/1.5 system-ui, sans-serif; color: #1d2530; background: #fff; margin: 2rem auto; max-width: 60rem; padding: 0 1rem }
        h1, h2, h3 { line-height: 1.2 } h2 { margin-top: 3rem; border-bottom: 2px solid #1d2530; text-transform: capitalize } article { margin: 2.5rem 0 }
        h3 code { font-size: 1.1rem } .error { background: #a4161a } .warning { background: #8a5a00 } .advice { background: #33608c }
        .mark { color: #fff; border-radius: .3rem; padding: .1rem .5rem; font-size: .85rem; margin-right: .4rem; vertical-align: middle }
        dt { font-weight: 600; margin-top: .6rem } dd { margin: 0 } table { border-collapse: collapse }
        th, td { text-align: left; padding: .2rem .8rem .2rem 0; vertical-align: top }
        pre { background: #f2f4f7; padding: .8rem; overflow-x: auto; font-size: .85rem } ul { margin: 0; padding-left: 1.2rem } nav a { margin-right: 1rem }
        .caution { border-left: .3rem solid #8a5a00; padding-left: .8rem }
        """;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes the page.</summary>
    /// <param name="catalogue">The rules.</param>
    /// <param name="caution">Safety note.</param>
    /// <param name="stylePath">Address of the style sheet.</param>
    /// <returns>HTML.</returns>
    public static string Write(RuleCatalogue catalogue, string caution, string stylePath)
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="en">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Rules of the rack check service</title>
            <link rel="stylesheet" href="{Text(stylePath)}"></head>
            <body>
            <h1>Rules of the rack check service</h1>
            <p>Version {Text(catalogue.List.Ruleset.Version)}, {catalogue.Pages.Length} rules. <a href="/docs/">Documentation of the service</a></p>
            <p class="caution">{Text(caution)}</p>

            """);
        var themes = catalogue.Pages.GroupBy(p => p.Theme).ToArray();
        html.Append("<nav>").AppendJoin("", themes.Select(t => $"<a href=\"#{Text(t.Key)}\">{Text(t.Key)}</a>"))
            .AppendLine("<a href=\"#changes\">changes</a></nav>");
        foreach (var theme in themes)
        {
            html.AppendLine(CultureInfo.InvariantCulture, $"<h2 id=\"{Text(theme.Key)}\">{Text(theme.Key)}</h2>");
            foreach (var rule in theme)
            {
                Append(html, rule);
            }
        }

        html.AppendLine("<h2 id=\"changes\">Changes</h2>");
        foreach (var change in catalogue.List.Changes)
        {
            html.AppendLine(CultureInfo.InvariantCulture, $"<h3>{Text(change.Version)}</h3>{List(change.Changes)}");
        }

        return html.AppendLine("</body></html>").ToString();
    }

    private static void Append(StringBuilder html, RulePage rule)
    {
        var marks = $"{Mark(rule.Severity)}{(rule.MilderSeverity is { } milder ? Mark(milder) : "")}"
            + (rule.Safety ? "<span class=\"mark error\">safety</span>" : "")
            + (rule.Concern == Concern.Site ? "<span class=\"mark advice\">site</span>" : "");
        html.Append(CultureInfo.InvariantCulture, $"""
            <article id="{Text(rule.Id)}">
            <h3>{Text(rule.Title)} <code>{Text(rule.Id)}</code></h3>
            <p>{marks}</p>
            <dl>
            <dt>What it does</dt><dd>{Text(rule.What)}</dd>
            <dt>Why it matters</dt><dd>{Text(rule.Why)}</dd>
            <dt>What it computes</dt><dd>{Text(rule.Formula)}</dd>
            <dt>Remedies</dt><dd>{List(rule.Remedies)}</dd>
            <dt>Sources</dt><dd>{List(rule.Sources.Select(s => $"{s.Text} ({s.Standing})"))}</dd>
            <dt>Data needed</dt><dd>{List(rule.Needs)}</dd>

            """);
        if (rule.Notes is { } notes)
        {
            html.AppendLine(CultureInfo.InvariantCulture, $"<dt>Notes</dt><dd>{List(notes)}</dd>");
        }

        if (rule.Limits.Count > 0)
        {
            html.Append("<dt>Limits that a policy can set</dt><dd><table>")
                .Append("<tr><th>name</th><th>meaning</th><th>default</th><th>range</th><th>stricter</th></tr>");
            foreach (var limit in rule.Limits)
            {
                html.Append(CultureInfo.InvariantCulture, $"<tr><td><code>{Text(limit.Name)}</code></td><td>{Text(limit.Meaning)}</td>")
                    .Append(CultureInfo.InvariantCulture, $"<td>{limit.Default} {Text(limit.Unit)}</td><td>{limit.Minimum} to {limit.Maximum}</td>")
                    .Append(CultureInfo.InvariantCulture, $"<td>{Text(limit.Stricter)}</td></tr>");
            }

            html.AppendLine("</table></dd>");
        }

        html.Append(CultureInfo.InvariantCulture, $"""
            </dl>
            <details><summary>A rack that breaks the rule, and one at the limit that passes</summary>
            <pre>{Rack(rule.FailingRack)}</pre>
            <pre>{Rack(rule.PassingRack)}</pre>
            </details>
            </article>

            """);
    }

    private static string Mark(Severity severity)
    {
        var name = NamedEnumConverter<Severity>.Name(severity);
        return $"<span class=\"mark {name}\">{name}</span>";
    }

    private static string List(IEnumerable<string> lines) => $"<ul>{string.Concat(lines.Select(l => $"<li>{Text(l)}</li>"))}</ul>";

    private static string Rack(JsonElement rack) => Text(JsonSerializer.Serialize(rack, Indented));

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}
