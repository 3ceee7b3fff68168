using RackCheck.Model;

namespace RackCheck.Documents.Pages;

/// <summary>The start page: what the service does, one drawing, one rack to try, a quick start.</summary>
internal static class StartPage
{
    /// <summary>What the service does, in a sentence.</summary>
    public const string Summary =
        "Post the JSON description of a 19-inch cabinet and learn, before it is ordered, whether it can be built, closed, powered, cooled, earthed, "
        + "delivered and serviced.";

    /// <summary>Writes the page.</summary>
    /// <param name="example">The rack to try, JSON.</param>
    /// <param name="rules">Number of rules.</param>
    public static Html Write(string example, int rules) => Html.Of($"""
        <h1>{PageFrame.Service}</h1>
        <p class="lead">{Summary}</p>
        <p>The answer has findings that a program can act on. Each has its arithmetic and its sources, remedies are verified before they are offered, and
        everything assumed or missing is listed. {rules} {Link(Paths.Rules, "rules")} check layout, depth, load, power, earthing, cooling, cabling, service and
        delivery.</p>
        <figure class="figure drawing">
        <a href="{Root}{Paths.Drawing}"><picture><source media="(max-width: 40rem)" srcset="{Root}{Paths.SideDrawing}" width="600" height="1000">
        <img src="{Root}{Paths.Drawing}"
        alt="Elevation of a cabinet; the equipment is too deep for its doors, and the finding is marked in the side view"
        width="1148" height="1040"></picture></a>
        <figcaption>A checked rack, drawn by <code>POST /v1/elevations</code>. Finding 1: the doors do not close.</figcaption></figure>
        <h2 id="try">Try this rack</h2>
        <p>It is the rack of the drawing: three items in a cabinet 800 mm deep.</p>
        <p data-try="v1/checks" data-body="{Paths.Examples}/{SampleCode.Example}.json" hidden><button type="button" class="main">Check this rack</button></p>
        <div data-answer role="status"></div>
        <details><summary>The request</summary>
        {JsonListing.Plain(example)}</details>
        <p><a href="{Root}{Paths.Explorer}/index.html#/Checks/checkRack">Open the operation in the explorer</a> ·
        {CaseLink.Check(Paths.Start, example, "Open the rack in the workbench")}</p>
        <h2 id="verdicts">Three verdicts</h2>
        {Html.Table("Verdicts", [new("Verdict"), new("When"), new("The order")], Verdicts())}
        <p>Each rule counts for the product or for the site, and each has its own verdict; <code>verdict</code> is the more severe.
        {Link(Paths.Concepts, "Concepts")} explains the rest.</p>
        <h2 id="quick-start">Quick start</h2>
        {SampleCode.All.Select((s, i) => Sample(s, i == 0))}
        <p>Where the service asks for credentials, send them in the header <code>X-API-Key</code> or as a bearer token.</p>
        <h2 id="doors">Where to go on</h2>
        <div class="cards">
        <section><h3>Order entry</h3><p>Release, hold, or send to an engineer. Post the rack of an order and act on <code>verdict</code>; pass on
        <code>questions</code>; apply a remedy as a JSON patch.</p>
        <p>{Operation("Checks", "checkRack", "POST /v1/checks")}<br>{Link(Paths.Concepts + "#questions", "Questions")} ·
        {Link(Paths.Concepts + "#acceptances", "Acceptances")} · {Link(Paths.Operations, "Operations")} · {Link(Paths.Problems, "Problems")} ·
        {Link(Paths.Testing, "Testing")}</p></section>
        <section><h3>Web shop</h3><p>Turn part numbers and quantities into a checked rack, and show what is missing from the basket and why.</p>
        <p>{Operation("Baskets", "checkBasket", "POST /v1/baskets/checks")}<br>{Link(Paths.Shop, "A basket page, step by step")} ·
        {Link(Paths.Members + "/basket-report", "The answer, member by member")}</p></section>
        <section><h3>Engineer</h3><p>Follow every number to its formula and source; let the service propose a layout, draw it and list the small parts.</p>
        <p>{Link(Paths.Rules, "Rules")} · {Link(Paths.Dimensions, "Dimensions")} · {Link(Paths.Tables, "Tables")}<br>
        {Operation("Proposals", "proposeRack", "POST /v1/proposals")}</p></section>
        </div>
        <h2 id="safety">Safety</h2>
        <div class="caution" role="note"><p>A cabinet can hurt people: mains voltage, falling and tipping weight, heat. This service gives advice. It does not
        replace local codes and regulations, the manufacturers' instructions or licensed practice. Isolate and prove dead before work, secure a rack against
        tipping, and lift heavy equipment with two people or a lifting aid.</p></div>
        """);

    private static string Root => Paths.RootOf(Paths.Start);

    private static Html Link(string to, string text) => PageFrame.Link(Paths.Start, to, text);

    private static Html Operation(string tag, string operation, string text) =>
        Html.Of($"<a href=\"{Root}{Paths.Explorer}/index.html#/{tag}/{operation}\"><code>{text}</code></a>");

    private static IEnumerable<Html[]> Verdicts() =>
    [
        [Signs.Of(Verdict.Release), new("no open error, warning or question, and all safety rules assessed"), new("can go")],
        [Signs.Of(Verdict.Review), new("an open warning or question, or a safety rule that could not be assessed"), new("goes to an engineer")],
        [Signs.Of(Verdict.Hold), new("an open error"), new("waits until it is corrected")],
    ];

    private static Html Sample((string Language, string Name, string Code) sample, bool isOpen) => Html.Of($"""
        <details name="sample"{new Html(isOpen ? " open" : "")}><summary>{sample.Language}</summary>
        <pre data-copy="{sample.Name}" data-base="{SampleCode.Base}"><code>{sample.Code}</code></pre></details>

        """);
}
