namespace RackCheck.Documents.Pages;

/// <summary>The entrance of the reference.</summary>
internal static class ReferenceIndex
{
    private static readonly (string Path, string Title, string Text)[] Parts =
    [
        (Paths.Concepts, "Concepts", "Verdict, findings, questions, bounds, remedies, acceptances: what the words of a report mean."),
        (Paths.Operations, "Operations", "Every operation with media types, parameters, headers, statuses and scopes."),
        (Paths.Dimensions, "Dimensions", "Setback, projections, usable depth, upright spacing and others, each with a drawing."),
        (Paths.Members, "Members", "Every member of requests and answers with unit, range and meaning."),
        (Paths.Tables, "Tables", "The values that rules calculate with, their units and sources, as pages and CSV."),
        (Paths.Problems, "Problems", "Every problem type and fault code with its cause and what to do about it."),
        (Paths.Testing, "Testing and mocking", "Example requests with recorded answers, problems of every type, a mock, time limits."),
        (Paths.Parts, "Sample parts", "Part numbers of the sample catalogue, to try baskets and proposals with."),
        (Paths.Rules, "Rules", "What each rule computes, from which sources, with a rack that breaks it."),
        (Paths.Search, "Search", "One search over operations, rules, members, tables, dimensions, concepts, examples and problems."),
    ];

    /// <summary>Writes the page.</summary>
    public static Html Write() => Html.Of($"""
        <h1>Reference</h1>
        <ul class="cards">{Parts.Select(Card)}</ul>
        """);

    private static Html Card((string Path, string Title, string Text) part) =>
        Html.Of($"<li><h2 class=\"plain\">{PageFrame.Link(Paths.Reference, part.Path, part.Title)}</h2><p>{part.Text}</p></li>\n");
}
