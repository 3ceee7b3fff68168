namespace RackCheck.Documents.Pages;

/// <summary>How a web shop uses the service: from a basket to buttons, pictures and texts in the shop's language.</summary>
internal static class ShopPage
{
    /// <summary>What the page has, in a sentence.</summary>
    public const string Summary =
        "A basket page in a shop: what to show beside each line, what each button does to the lines, pictures, texts and time limits.";

    /// <summary>Writes the page.</summary>
    public static Html Write() => Html.Of($$"""
        <h1>Web shop</h1>
        <p class="lead">{{Summary}}</p>
        <h2 id="post">Post the basket</h2>
        <p>{{Link(Paths.Operations + "#checkBasket", "POST /v1/baskets/checks")}} takes part numbers with quantities, the customer's own equipment with its
        data, and what is known of the site. Send it on every change of the basket, from your own server: the answer depends on nothing but the
        request, the ruleset and the catalogue, so it can be repeated and cached. A basket of twenty lines takes some tens of milliseconds; give the
        request five seconds, then show the basket without the check.</p>
        <p>Part numbers are those of the catalogue that the service was set up with, spelt exactly. The service does not list them; ask whoever operates it.
        {{Link(Paths.Parts, "The parts of the sample catalogue")}} are for trying it.</p>
        <h2 id="show">Show the lines</h2>
        <p><code>lineStatus</code> has one entry for each line of the request, in its order. Its <code>message</code> already contains the reason of the
        exchange or the excess. A line is <code>ok</code> where it stays as it is. Parts that it needs can still be missing: <code>forLines</code> of
        a missing line leads back to it. Show <code>verdicts.product</code>; <code>verdicts.site</code> is for the installer.</p>
        <pre data-copy="typescript"><code>{{Sample}}</code></pre>
        <h2 id="buttons">Turn entries into buttons</h2>
        {{Html.Table("What a button does", [new("Entry"), new("What the button does to the lines")], Buttons())}}
        <p>All buttons of one answer can be pressed together; that is what <code>completedBasket</code> is, and posted as it is it lacks nothing. Pressed one by
        one, post the basket again after each: pointers are those of the request that was answered. A part number that a line without options has already is
        added to that line.</p>
        <p><code>findingLines</code> names for each finding of the racks the lines behind it and, in <code>clearedBy</code>, the entries that clear it.
        What stays after all buttons has <code>stays</code>. Remedies in the reports change the rack as described, without the
        catalogue: they are for an engineer.</p>
        <h2 id="pictures">Show the rack</h2>
        <p>Post <code>completedRack</code>, or one of <code>racks[].rack</code>, to {{Link(Paths.Operations + "#drawRacks", "POST /v1/elevations")}} with
        <code>view=front</code> and <code>frame=none</code> for the cabinet alone. The header <code>Accept</code> chooses <code>image/svg+xml</code> or
        <code>image/png</code>. The SVG has no script and no link, its text is escaped and its style stands in the document: use it in an
        <code>img</code>, or inline where your content security policy allows inline styles. It follows the reader's dark mode; <code>theme=light</code> keeps
        it light, and it scales to its box where that sets a width.</p>
        <h2 id="texts">Word it in another language</h2>
        <p>Every text has a key and values: {{Link(Paths.Concepts + "#wordings", "texts in other languages")}} has the rules and
        {{Link(Paths.Tables + "/wordings", "the table of wordings")}} the templates.</p>
        <h2 id="prices">Prices</h2>
        <p>Missing, exchanged and added lines have <code>price</code> for one order unit and <code>currency</code> where the catalogue has them. Take the price
        that the customer pays from your own shop.</p>
        <h2 id="from-proposal">From a proposal to a basket</h2>
        <p>The equipment of the request and the <code>addedLines</code> of an alternative of
        {{Link(Paths.Operations + "#proposeRack", "POST /v1/proposals")}} make a basket: one line for each part number. Quantities belong
        to baskets alone; a proposal has one entry for each item.</p>
        <h2 id="errors">When no answer comes</h2>
        <p>422 names the member at fault by a pointer into your request. 429 and 503 have <code>Retry-After</code>: of 503,
        {{Link(Paths.Problems + "/unavailable", "unavailable")}} is a catalogue that does not answer,
        {{Link(Paths.Problems + "/overloaded", "overloaded")}} a busy moment. 413 is a basket over the size limit.
        {{Link(Paths.Testing, "Recorded answers")}} let you try all of these without provoking them.</p>
        """);

    private const string Sample = """
        const answer = await fetch(service + "v1/baskets/checks", {
          method: "POST",
          headers: { "Content-Type": "application/json" },
          body: JSON.stringify(basket),
          signal: AbortSignal.timeout(5000),
        });
        const report = await answer.json();
        if (!answer.ok) throw new Error(report.detail);
        for (const [index, line] of basket.lines.entries()) {
          const { status, message, didYouMean } = report.lineStatus[index];
          const missing = report.missingLines.filter((m) => m.forLines.includes(`/lines/${index}`));
          show(line, status, message, didYouMean, missing);
        }
        """;

    private static IEnumerable<Html[]> Buttons() =>
    [
        [Html.Of($"<code>missingLines</code>"), Html.Of($"Adds a line with <code>partNumber</code> and <code>quantity</code>.")],
        [
            Html.Of($"<code>missingLines[].alternatives</code>"),
            Html.Of($"Adds this part number with its quantity in place of the missing line. Three at most, the cheapest first where all have prices."),
        ],
        [
            Html.Of($"<code>replaceLines</code>"),
            Html.Of($"Takes <code>quantity</code> off the line at <code>line</code> and adds the part number with that quantity and the options of the line."),
        ],
        [
            Html.Of($"<code>excessLines</code>"),
            Html.Of($"Takes <code>quantity</code> off the line at <code>line</code>; a line without quantity goes."),
        ],
        [Html.Of($"<code>lineStatus[].didYouMean</code>"), Html.Of($"Puts this part number in place of the unknown one.")],
        [Html.Of($"<code>unmet</code>"), Html.Of($"No button: nothing on offer meets the need, or no solution was found. The text says which.")],
    ];

    private static Html Link(string to, string text) => PageFrame.Link(Paths.Shop, to, text);
}
