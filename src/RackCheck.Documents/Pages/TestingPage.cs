namespace RackCheck.Documents.Pages;

/// <summary>Example requests and recorded answers, and how to test a client without the service.</summary>
internal static class TestingPage
{
    /// <summary>What the page has, in a sentence.</summary>
    public const string Summary = "Example requests, the recorded answer to each, a problem of every type, and a mock in twenty lines.";

    /// <summary>Writes the page.</summary>
    /// <param name="examples">Names of the example requests.</param>
    /// <param name="answers">Names of the recorded answers.</param>
    public static Html Write(IEnumerable<string> examples, IReadOnlySet<string> answers) => Html.Of($"""
        {PageFrame.Trail(Paths.Testing, (Paths.Reference, "Reference"))}
        <h1>Testing and mocking</h1>
        <p class="lead">{Summary}</p>
        <p>The same request gets the same answer, so a recorded one is as good as a live one. {File(Paths.Answers + "/index.json", "index.json")} lists the
        recorded answers: <code>answer</code> is the file beside it, <code>method</code> and <code>path</code> the operation, <code>request</code> the file of
        the request, <code>status</code> and <code>mediaType</code> what a mock sends with it. Problems have no request: send one in place of an answer to see
        how your program takes it. The trace id and the headers <code>Trace-Id</code>, <code>Date</code> and <code>RateLimit</code> differ from call to
        call.</p>
        <h2 id="requests">Requests and answers</h2>
        {Html.Table("Requests and answers", [new("Request"), new("Answer")], examples.Order(StringComparer.Ordinal).Select(e => Row(e, answers)))}
        <h2 id="problems">Problems</h2>
        {Html.List(answers.Where(a => a.StartsWith("problem-", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(a => File($"{Paths.Answers}/{a}.json", a)))}
        <h2 id="mock">A mock</h2>
        <p>It answers each operation with its first recorded answer. Reports differ by the rack, not in form, so a mock seldom needs to know the request.</p>
        <pre data-copy="python" data-base="{SampleCode.Base}"><code>{Mock}</code></pre>
        <h2 id="try">What a client should be tried with</h2>
        {Html.List((string[])[
            "A 503 with Retry-After: 1, once for unavailable and once for overloaded; a 429; an answer that takes longer than your time limit.",
            "A 422 with several faults, each pointer led back to what the user typed.",
            "An answer with a member, a rule id and a fault code that your program does not know: later versions have more of these.",
            "A report without findings, and one with an unassessed safety rule.",
        ])}
        <h2 id="limits">Time limits</h2>
        <p>{Html.Marked("A check takes milliseconds; give it 5 seconds. A basket takes up to a second, a proposal up to a few with `effort` `quick` and up to "
            + "30 with `thorough`, a document up to two: give them 10 seconds and `thorough` 40. A busy service answers 503 at once rather than late.")}</p>
        """);

    private const string Mock = """
        import http.server, json
        from urllib.request import urlopen

        base = "http://localhost:5080/docs/examples/answers/"
        index = json.load(urlopen(base + "index.json"))
        bodies = {}
        for entry in index:
            if entry.get("path") not in bodies and entry["answer"].endswith(".json"):
                bodies[entry.get("path")] = (entry, urlopen(base + entry["answer"]).read())

        class Mock(http.server.BaseHTTPRequestHandler):
            def do_POST(self):
                self.rfile.read(int(self.headers["Content-Length"]))
                entry, body = bodies[self.path.split("?")[0]]
                self.send_response(entry["status"])
                self.send_header("Content-Type", entry["mediaType"])
                self.send_header("Content-Length", str(len(body)))
                self.end_headers()
                self.wfile.write(body)

        http.server.HTTPServer(("127.0.0.1", 5081), Mock).serve_forever()
        """;

    private static Html[] Row(string example, IReadOnlySet<string> answers) =>
    [
        File($"{Paths.Examples}/{example}.json", example),
        Html.Join(
            ((string[])[example, "parts-" + example]).Where(answers.Contains).Select(a => File($"{Paths.Answers}/{a}.json", a)), ", "),
    ];

    private static Html File(string path, string text) => PageFrame.Link(Paths.Testing, path, text);
}
