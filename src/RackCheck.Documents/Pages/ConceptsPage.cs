using RackCheck.Model;

namespace RackCheck.Documents.Pages;

/// <summary>The concepts of the service, each in a paragraph or two.</summary>
internal static class ConceptsPage
{
    /// <summary>The concepts: anchor, title, text.</summary>
    public static IReadOnlyList<(string Id, string Title, Html Text)> All { get; } =
    [
        ("verdict", "Verdict", Html.Of($"""
            <p>What may happen to the order.</p>
            <dl><dt>{Signs.Of(Verdict.Release)}</dt><dd>No open error, no open warning and no open question.</dd>
            <dt>{Signs.Of(Verdict.Review)}</dt><dd>An open warning, an open question, a safety rule that could not be assessed, or a rule that failed.</dd>
            <dt>{Signs.Of(Verdict.Hold)}</dt><dd>An open error, or an error rule that failed: do not release the order.</dd></dl>
            <p>There are two, <code>verdicts.product</code> and <code>verdicts.site</code>: does what is ordered fit and work together, and is the place fit for
            it. A shop acts on the first, an installer on the second. <code>verdict</code> is the more severe of the two.</p>
            <p><code>verdictReasons</code> lists everything that keeps a verdict from release: the most severe first, of these product before site, then
            findings and rules by id, then questions. An order desk can act on it like this:</p>
            {Html.Table("What to do with a verdict", [new("Verdict"), new("Reasons"), new("The order")], Actions())}
            """)),
        ("finding", "Finding", Html.Of($"""
            <p>A defect of the rack. It names the rule, the members concerned as JSON pointers (RFC 6901), the actual value and the limit, the
            calculation with its numbers and the sources. Findings are sorted by severity, rule and pointer.</p>
            <dl><dt>{Signs.Of(Severity.Error)}</dt><dd>The rack cannot be built, closed, operated or delivered as described.</dd>
            <dt>{Signs.Of(Severity.Warning)}</dt><dd>An engineer should review it.</dd>
            <dt>{Signs.Of(Severity.Advice)}</dt><dd>An improvement is possible.</dd></dl>
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
            <p>A rule that waits is listed under <code>notAssessed</code> with the pointers of what is missing. Leaving out a fact never turns hold or review
            into release.</p>
            <p>An absent list is not known, an empty one says that there is none: without <code>site.delivery.openings</code> the doors on the way are
            asked for, with <code>[]</code> there are none to pass.</p>
            """)),
        ("questions", "Questions", Html.Of($"""
            <p>The missing facts that can change a verdict, merged to one question a fact, the most decisive first. An ERP can pass <code>ask</code> on to the
            customer as it is; <code>unit</code> is that of the answer. <code>ifAnsweredWell</code> has the verdicts that are possible if the answer is
            favourable and all else stays, an open error too.</p>
            <p>Write the answer to each of the <code>pointers</code>, as the type of the member wants it: a number for each item, or a list of doors. Where a
            question has pointers of different members, any one of them answers it: for the question <code>earthing.bonded</code> give
            <code>/earthing/bonded</code>, the list of bonded parts, or <code>bonded</code> of each door. Answers can lead to further questions, as a
            rule that was assessed over a range of one value waits for another now.</p>
            """)),
        ("remedies", "Remedies", Html.Of($"""
            <p>Changes that clear a finding, each as a JSON patch (RFC 6902) to the request. A remedy is offered only after all rules have checked the changed
            rack: its finding is gone and no error is new. Otherwise <code>noRemedy</code> says why there is none. Findings alike can have different remedies:
            at most three are offered, and what works for one item can bring an error for another.</p>
            <p>A remedy changes the description, not the world: check with the customer that the change can be had. <code>removesItems</code> names the items
            that the change takes out of the rack, to be mounted elsewhere or not ordered. Such remedies come last.</p>
            <p><code>POST /v1/checks?apply=remedies</code> applies the first remedies of errors, one after the other, and returns the changed rack. It never
            takes equipment out.</p>
            """)),
        ("ups", "UPS, PDUs and supplies", Html.Of($"""
            <p>Power goes from a supply through a PDU to the cords of equipment. A UPS is an item: its own cord is fed from a PDU, and
            <code>ups.feeds</code> lists the PDUs behind it. Cords go to outlets of PDUs only, so two things are described as a PDU that are none:</p>
            <ul><li>Outlets of the UPS itself: a PDU with those outlets, listed in <code>ups.feeds</code>.</li>
            <li>A wall socket that the UPS is plugged into: a PDU on that supply with one outlet.</li></ul>
            <p>A PDU behind a UPS is fed from wherever the UPS takes its power. Its own <code>supply</code> is then only the side that it counts for when the
            service divides the two cords of an item. So an item with one cord behind the UPS and one on supply B is fed from two supplies only if the UPS
            itself is fed from another supply than B; <code>connections</code> says where its cord goes, else the service chooses.</p>
            <pre><code>{UpsExample}</code></pre>
            """)),
        ("wordings", "Texts in other languages", Html.Of($"""
            <p>Every sentence of a report has a key and its values: <code>message</code> has <code>messageKey</code> and <code>messageData</code>,
            <code>subject</code> has <code>subjectKey</code> and <code>subjectData</code>, and so on. Values are numbers, ids, codes and lists of these; a
            value with a space comes from the request or the catalogue.</p>
            <p>A template has names in braces. {Words.Brace("x")} is a number, a text or a list. A number has at most two decimals, from 100 up at most one, and
            more, up to three, where another number of the sentence would look the same; zeros at the end are left out, and halves are rounded away from zero.
            A list names all up to four, "a, b, c and d", from five on three and how many more.</p>
            {Html.Table("Endings of names in templates", [new("Ending"), new("Meaning"), new("Value"), new("Text")], Endings())}
            <p>The page of a rule has the templates of its messages,
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
            precedence, and a contradiction is a finding. Part numbers are those of the catalogue that the service was set up with; it does not list them.
            {PageFrame.Link(Paths.Concepts, Paths.Parts, "Those of the sample catalogue")} are for trying.</p>
            <p>While the catalogue is unavailable, a rack with part numbers and every basket get 503 with <code>Retry-After</code>. A rack without part numbers
            is answered as ever. A proposal for equipment with its own data is answered with status 200 and says in <code>givenUp</code> that no product is on
            offer.</p>
            """)),
        ("repeatable", "Audit: same request, same bytes", Html.Of($"""
            <p>The same description, ruleset and product data give the same bytes on every machine. Keep with an order the request, <code>ruleset</code>,
            <code>descriptionDigest</code> and, with part numbers, <code>resolvedDigest</code>: with them anyone can show later what was checked.</p>
            <dl><dt><code>descriptionDigest</code></dt><dd>SHA-256 of the request in canonical form (RFC 8785), members that are null left out.</dd>
            <dt><code>rackDigest</code></dt><dd>The same without reference, policy, acceptances, sign-offs, <code>asOf</code> and descriptions: the same rack
            in another order, or on another day, has the same one. Compare this one from night to night.</dd>
            <dt><code>resolvedDigest</code></dt><dd>The description with everything that part numbers filled in: it changes when the catalogue does. Absent
            where nothing was filled in.</dd></dl>
            <p>All POST requests are safe to repeat: the service stores nothing.</p>
            """)),
        ("problems", "Problems and findings", Html.Of($"""
            <p>A fault in the <em>description</em> is a <a href="{Paths.RootOf(Paths.Concepts)}{Paths.Problems}">problem</a> with a status from 400,
            and nothing is
            checked. A fault in the <em>rack</em> is a finding with status 200. Reading is strict: comments and trailing commas are not JSON (400), unknown and
            duplicate members and numbers as strings are not a description (422).</p>
            """)),
    ];

    private const string UpsExample = """
        "supplies": [
          { "id": "A", "voltageV": 230, "phases": 1, "ratedA": 16 },
          { "id": "B", "voltageV": 230, "phases": 1, "ratedA": 16 }
        ],
        "items": [
          { "id": "ups", "heightU": 2, "category": "ups", "power": { "plugs": ["C20"] }, "ups": { "ratedVa": 3000, "feeds": ["pdu-ups"] } },
          { "id": "server", "heightU": 2, "power": { "ratedW": 400, "plugs": ["C14", "C14"], "redundant": true } }
        ],
        "pdus": [
          { "id": "wall", "supply": "A", "ratedA": 16, "groups": [ { "id": "g", "outlets": [ { "socket": "C19", "count": 1 } ] } ] },
          { "id": "pdu-ups", "supply": "A", "ratedA": 16, "groups": [ { "id": "g", "outlets": [ { "socket": "C13", "count": 8 } ] } ] },
          { "id": "pdu-b", "supply": "B", "ratedA": 16, "groups": [ { "id": "g", "outlets": [ { "socket": "C13", "count": 8 } ] } ] }
        ],
        "connections": [ { "item": "ups", "plug": 0, "pdu": "wall", "group": "g" } ]
        """;

    private static IEnumerable<Html[]> Actions() =>
    [
        [Signs.Of(Verdict.Release), new("none"), new("Release it.")],
        [Signs.Of(Verdict.Review), new("questions alone"), new("Pass the questions on to the customer, put in the answers, check again.")],
        [
            Signs.Of(Verdict.Review), new("findings, or rules that were not assessed"),
            new("Send it to an engineer, who accepts, signs off or changes it. Pass questions on meanwhile."),
        ],
        [
            Signs.Of(Verdict.Hold), new("at least one that makes <code>hold</code>"),
            new("Hold it. Show the remedies of the errors; pass questions on meanwhile."),
        ],
    ];

    private static IEnumerable<Html[]> Endings() =>
        from row in (string[][])
        [
            ["none", "as above", "209.95", "210"], ["none", "as above", "86.55", "86.55"],
            ["none", "as above", """["a","b","c","d","e"]""", "a, b, c and 2 more"], [":exact", "a number with up to three decimals", "209.9544", "209.954"],
            [":exact", "all of a list with commas", """["a","b"]""", "a, b"], [":all", "all of a list", """["a","b","c","d","e"]""", "a, b, c, d and e"],
            [":words", "a code in words", "front-door", "front door"], [":units", "a range of U positions", "[10,13]", "U10-U13"],
            [":u", "a list of heights", "[6,2]", "6 U and 2 U"],
        ]
        select new[] { Html.Of($"<code>{row[0]}</code>"), Html.Text(row[1]), Html.Of($"<code>{row[2]}</code>"), Html.Text(row[3]) };

    /// <summary>Writes the page.</summary>
    public static Html Write() => Html.Of($"""
        {PageFrame.Trail(Paths.Concepts, (Paths.Reference, "Reference"))}
        <h1>Concepts</h1>
        {All.Select(c => Html.Of($"<h2 id=\"{c.Id}\">{c.Title}</h2>{c.Text}\n"))}
        """);
}
