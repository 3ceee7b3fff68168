namespace RackCheck.Documents.Pages;

/// <summary>A type of problem.</summary>
/// <param name="Name">Last part of its type.</param>
/// <param name="Status">HTTP status.</param>
/// <param name="Title">Its title.</param>
/// <param name="Cause">What has happened; names of members stand between backticks.</param>
/// <param name="Correction">What the caller does about it, likewise.</param>
/// <param name="Example">A recorded problem document, JSON.</param>
/// <param name="ListsFaults">Whether it lists faults with codes.</param>
public sealed record ProblemTopic(string Name, int Status, string Title, string Cause, string Correction, string Example, bool ListsFaults);

/// <summary>A code of faults in a request.</summary>
/// <param name="Code">The code.</param>
/// <param name="Meaning">What it means.</param>
public sealed record FaultTopic(string Code, string Meaning);

/// <summary>The pages of problems, to which the types of problem documents lead.</summary>
internal static class ProblemPages
{
    /// <summary>Writes the overview.</summary>
    /// <param name="problems">The types.</param>
    /// <param name="faults">The codes.</param>
    public static Html Index(IReadOnlyList<ProblemTopic> problems, IReadOnlyList<FaultTopic> faults) => Html.Of($"""
        {PageFrame.Trail(Paths.Problems, (Paths.Reference, "Reference"))}
        <h1>Problems</h1>
        <p class="lead">A refused request gets a problem document, <code>application/problem+json</code> (RFC 9457). Its <code>type</code> is the address of one
        of these pages.</p>
        <p>It has <code>type</code>, <code>title</code>, <code>status</code>, <code>detail</code> and <code>traceId</code>. Where the request is at fault,
        <code>errors</code> lists all faults at once, each with a JSON pointer (RFC 6901), a code and a sentence. Quote the trace id to the operator. Later
        versions may have further types and codes.</p>
        {Html.Table(
            "Problem types",
            [new("Type"), new("Status"), new("Cause")],
            problems.Select(p => new[] { PageFrame.Link(Paths.Problems, AddressOf(p), p.Name), Html.Of($"{p.Status}"), Html.Marked(p.Cause) }))}
        <h2 id="codes">Fault codes</h2>
        <div class="wide" role="region" aria-label="Fault codes" tabindex="0"><table>
        <thead><tr><th scope="col">Code</th><th scope="col">Meaning</th></tr></thead>
        <tbody>{faults.Select(f => Html.Of($"<tr id=\"{f.Code}\"><th scope=\"row\"><code>{f.Code}</code></th><td>{f.Meaning}</td></tr>\n"))}</tbody>
        </table></div>
        """);

    /// <summary>Address of a problem.</summary>
    /// <param name="problem">The problem.</param>
    public static string AddressOf(ProblemTopic problem) => $"{Paths.Problems}/{problem.Name}";

    /// <summary>Writes the page of a type.</summary>
    /// <param name="problem">The type.</param>
    public static Html Write(ProblemTopic problem)
    {
        var path = AddressOf(problem);
        var codes = problem.ListsFaults ? Html.Of($"<p>{PageFrame.Link(path, $"{Paths.Problems}#codes", "Codes of faults")}</p>") : Html.None;
        return Html.Of($"""
            {PageFrame.Trail(path, (Paths.Reference, "Reference"), (Paths.Problems, "Problems"))}
            <h1>{problem.Title}</h1>
            <p>HTTP status {problem.Status}, problem type <code>/{path}</code>.</p>
            <h2>What has happened</h2>
            <p>{Html.Marked(problem.Cause)}</p>
            <h2>What to do</h2>
            <p>{Html.Marked(problem.Correction)}</p>
            <h2>Example</h2>
            {JsonListing.Plain(problem.Example)}
            {codes}
            """);
    }
}
