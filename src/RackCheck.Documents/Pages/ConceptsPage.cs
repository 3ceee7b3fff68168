using RackCheck.Model;

namespace RackCheck.Documents.Pages;

/// <summary>The concepts of the service, each in a paragraph or two.</summary>
internal static class ConceptsPage
{
    /// <summary>The concepts: anchor, title, text.</summary>
    public static IReadOnlyList<(string Id, string Title, Html Text)> All { get; } =
    [
        ("verdict", "Verdict", Html.Of($"""
            <p>What may happen to the order. {Signs.Of(Verdict.Release)} neither an open error, an open warning nor an open question.
            {Signs.Of(Verdict.Review)}
            an open warning, an open question, a safety rule that could not be assessed, or a rule that failed: an engineer decides.
            {Signs.Of(Verdict.Hold)} an open error, or an error rule that failed: do not release the order.</p>
            <p>There are two, <code>verdicts.product</code> and <code>verdicts.site</code>: does what is ordered fit and work together, and is the
            place fit for
            it. A shop reads the first, an installer the second. <code>verdict</code> is the graver of the two, and <code>verdictReasons</code> lists
            everything
            that keeps it from release.</p>
            """)),
        ("finding", "Finding", Html.Of($"""
            <p>A defect of the rack. It names the rule, the members concerned as JSON pointers (RFC 6901), the actual value and the limit, the
            calculation with its
            numbers and the sources. Severity: {Signs.Of(Severity.Error)} the rack cannot be built, closed, operated or delivered as described;
            {Signs.Of(Severity.Warning)} an engineer should review it; {Signs.Of(Severity.Advice)} an improvement is possible.</p>
            <p>The <code>fingerprint</code> is made from the rule and the ids concerned, not from places in lists: it stays the same when items are
            reordered.</p>
            """)),
        ("safety", "Safety rules", Html.Of($"""
            <p>Rules that guard against people being hurt: mains voltage, falling and tipping weight, heat. A policy can make them stricter, never weaker, and
            their findings cannot be accepted. A qualified person can sign off a safety warning, or a safety rule that could not be assessed, as
            judged outside
            the service; a safety error stays.</p>
            """)),
        ("missing-data", "Missing data, bounds and assumptions", Html.Of($"""
            <p>No rack is described in full. What is missing has a plausible range, its bounds, in the table
            <a href="{Paths.RootOf(Paths.Concepts)}{Paths.Tables}/bounds">bounds</a>. A rule whose answer is the same over the whole range is
            assessed, and the range
            is listed as an assumption. Only a rule whose answer turns within the range waits for the fact.</p>
            <p>A rule that waits is listed under <code>notAssessed</code> with the pointers of what is missing. Nothing passes in silence, and less
            said is never
            better: leaving out a fact never turns hold or review into release.</p>
            """)),
        ("questions", "Questions", Html.Of($"""
            <p>The missing facts that can change a verdict, merged to one question a fact, the most decisive first. Each says which verdicts are
            possible if the
            answer is favourable. An ERP can pass <code>ask</code> on to the customer as it is.</p>
            """)),
        ("remedies", "Remedies", Html.Of($"""
            <p>Changes that clear a finding, each as a JSON patch (RFC 6902) to the request. A remedy is offered only after all rules have checked the changed
            rack: its finding is gone and no error is new. Otherwise <code>noRemedy</code> says why there is none. <code>POST /v1/checks?apply=remedies</code>
            applies the first remedies of errors, one after the other, and returns the changed rack.</p>
            """)),
        ("wordings", "Texts in other languages", Html.Of($"""
            <p>Every sentence of a report has a key and its values: <code>message</code> has <code>messageKey</code> and <code>messageData</code>,
            <code>subject</code> has <code>subjectKey</code> and <code>subjectData</code>, and so on. Values are numbers, ids, codes and lists of these; a
            value with a space comes from the request or the catalogue. The page of a rule has the templates of its messages,
            <code>GET /v1/reference/questions</code> those of questions and <code>GET /v1/reference/wordings</code> all others. Keys joined by plus signs are
            several texts: sentences one after another, or the steps of a title. The names of the second text's values end in 2, of the third one's in 3.
            Where a template has <code>{Words.Brace("message")}</code> or <code>{Words.Brace("title")}</code>, the texts that follow take its place;
            <code>{Words.Brace("need")}</code> is the next text alone. Texts in a list have their keys in a list beside it: those of <code>cautions</code> are
            in <code>cautionKeys</code>. An assumed <code>value</code> without <code>valueKey</code> is a number, a code or true or false. A
            <code>calculation</code> has no key: it is arithmetic.</p>
            """)),
        ("policy", "Policy", Html.Of($"""
            <p><code>policy.rules</code> sets limits and severities by rule id. The page of a rule has its limits with their defaults and ranges.</p>
            """)),
        ("acceptances", "Acceptances and sign-offs", Html.Of($"""
            <p>An acceptance keeps a finding in the report but no longer lets it hold the order: who accepts it, why, and up to which value or date. Past
            <code>upTo</code>, or after <code>expiresAt</code> against the request's <code>asOf</code>, the finding is open again and says so. Safety
            findings cannot
            be accepted; safety warnings take a sign-off by a qualified person.</p>
            """)),
        ("part-numbers", "Part numbers", Html.Of($"""
            <p>A part number on a cabinet, a door, an earth bar, an item or a PDU fills in what the description leaves out. Values in the description take
            precedence, and a contradiction is a finding. While the catalogue is unavailable, requests that need it get 503 with
            <code>Retry-After</code>; all others
            are answered.</p>
            """)),
        ("repeatable", "Same request, same bytes", Html.Of($"""
            <p>The same description and ruleset give the same bytes on every machine. <code>descriptionDigest</code> is the SHA-256 of the canonical
            description
            (RFC 8785): it proves later what was checked. <code>rackDigest</code> leaves out reference, policy, acceptances, sign-offs, date and
            descriptions, so that
            the same rack is known again in another order. All POST requests are safe to repeat: the service stores nothing.</p>
            """)),
        ("problems", "Problems and findings", Html.Of($"""
            <p>A fault in the <em>description</em> is a <a href="{Paths.RootOf(Paths.Concepts)}{Paths.Problems}">problem</a> with a status from 400,
            and nothing is
            checked. A fault in the <em>rack</em> is a finding with status 200. Reading is strict: unknown and duplicate members, numbers as strings,
            comments and
            trailing commas are refused.</p>
            """)),
    ];

    /// <summary>Writes the page.</summary>
    public static Html Write() => Html.Of($"""
        {PageFrame.Trail(Paths.Concepts, (Paths.Reference, "Reference"))}
        <h1>Concepts</h1>
        {All.Select(c => Html.Of($"<h2 id=\"{c.Id}\">{c.Title}</h2>{c.Text}\n"))}
        """);
}
