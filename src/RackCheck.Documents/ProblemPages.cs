using System.Globalization;
using System.Net;
using System.Text;

namespace RackCheck.Documents;

/// <summary>A kind of problem document, for its page.</summary>
/// <param name="Type">Type of the problem: the address of the page.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Title">Title of the problem type.</param>
/// <param name="Meaning">What has happened.</param>
/// <param name="Remedy">What the caller does.</param>
/// <param name="Example">A recorded problem document, JSON.</param>
public sealed record DescribedProblem(string Type, int Status, string Title, string Meaning, string Remedy, string Example);

/// <summary>The kinds of problem documents as HTML pages, to which their types lead.</summary>
public static class ProblemPages
{
    /// <summary>Writes the page of a kind.</summary>
    /// <param name="problem">The kind.</param>
    /// <param name="codes">Codes of faults with their meanings; empty for a kind that lists no faults.</param>
    /// <returns>HTML. Its style sheet is that of the rules.</returns>
    public static string Write(DescribedProblem problem, IReadOnlyList<(string Code, string Meaning)> codes)
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="en">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>{Text(problem.Title)}</title>
            <link rel="stylesheet" href="../rules.css"></head>
            <body>
            <h1>{Text(problem.Title)}</h1>
            <p>HTTP status {problem.Status}, problem type <code>{Text(problem.Type)}</code>. <a href="../problems">All problem types</a></p>
            <dl>
            <dt>What has happened</dt><dd>{Marked(problem.Meaning)}</dd>
            <dt>What to do</dt><dd>{Marked(problem.Remedy)}</dd>
            </dl>
            <h2>Example</h2>
            <pre><code>{Text(problem.Example.TrimEnd())}</code></pre>

            """);
        if (codes.Count > 0)
        {
            html.AppendLine("<h2>Codes of faults</h2>").AppendLine("<table><tr><th>code</th><th>meaning</th></tr>");
            foreach (var (code, meaning) in codes)
            {
                html.AppendLine(CultureInfo.InvariantCulture, $"<tr id=\"{Text(code)}\"><td><code>{Text(code)}</code></td><td>{Text(meaning)}</td></tr>");
            }

            html.AppendLine("</table>");
        }

        return html.AppendLine("</body></html>").ToString();
    }

    /// <summary>Writes the page that lists the kinds.</summary>
    /// <param name="problems">The kinds.</param>
    /// <returns>HTML. Its style sheet is that of the rules.</returns>
    public static string WriteIndex(IEnumerable<DescribedProblem> problems)
    {
        var html = new StringBuilder("""
            <!DOCTYPE html>
            <html lang="en">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Problem types of the rack check service</title>
            <link rel="stylesheet" href="rules.css"></head>
            <body>
            <h1>Problem types of the rack check service</h1>
            <p>A refused request gets a problem document, RFC 9457. Its type is the address of one of these pages. Later versions may have further types.</p>
            <table><tr><th>status</th><th>problem</th><th>meaning</th></tr>

            """);
        foreach (var problem in problems)
        {
            var name = problem.Type[(problem.Type.LastIndexOf('/') + 1)..];
            html.AppendLine(
                CultureInfo.InvariantCulture,
                $"<tr><td>{problem.Status}</td><td><a href=\"problems/{Text(name)}\">{Text(problem.Title)}</a></td><td>{Marked(problem.Meaning)}</td></tr>");
        }

        return html.AppendLine("</table>").AppendLine("</body></html>").ToString();
    }

    private static string Text(string text) => WebUtility.HtmlEncode(text);

    // `name` as code.
    private static string Marked(string text) =>
        string.Concat(text.Split('`').Select((part, index) => index % 2 == 0 ? Text(part) : $"<code>{Text(part)}</code>"));
}
