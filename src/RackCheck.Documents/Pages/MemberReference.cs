namespace RackCheck.Documents.Pages;

/// <summary>The member reference: a page for each document of the contract, an anchor for each member. Made from the contract.</summary>
/// <param name="types">Types of the contract.</param>
internal sealed class MemberReference(ContractTypes types)
{
    /// <summary>Writes the overview.</summary>
    public Html Index() => Html.Of($"""
        {PageFrame.Trail(Paths.Members, (Paths.Reference, "Reference"))}
        <h1>Members</h1>
        <p class="lead">All members of requests and answers with their types, units, ranges and meanings. Each has an address of its own, as
        {PageFrame.Link(Paths.Members, types.AddressOfMember("/cabinet/depthMm")!, "Cabinet.depthMm")}.</p>
        <p>The name of a number ends with its unit: Mm, Kg, W, A, M3h (cubic metres per hour), C, K, Pa, Percent. The unit U is 44.45 mm.</p>
        {Html.List(types.All.Where(d => d.Types.Count > 0).Select(Listed))}
        """);

    /// <summary>Writes the page of a document.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="title">Its title.</param>
    public Html Write(string name, string title)
    {
        var path = $"{Paths.Members}/{name}";
        var own = types.All.Single(d => d.Name == name).Types;
        return Html.Of($"""
            {PageFrame.Trail(path, (Paths.Reference, "Reference"), (Paths.Members, "Members"))}
            <h1>{title}</h1>
            <p>{Html.Join(own.Select(t => Html.Of($"<a href=\"#{t.Name}\">{t.Name}</a>")), " · ")}</p>
            {own.Select(t => Type(path, t))}
            """);
    }

    private Html Listed(ContractDocument document) => Html.Of($"""
        {PageFrame.Link(Paths.Members, $"{Paths.Members}/{document.Name}", document.Title)}:
        {Html.Join(document.Types.Select(t => PageFrame.Link(Paths.Members, types.AddressOf(t.Name), t.Name)), ", ")}
        """);

    private Html Type(string path, ContractType type)
    {
        var values = type.Values.Count == 0
            ? Html.None
            : Html.Of($"<p>Values: {Html.Join(type.Values.Select(v => Html.Of($"<code>{v}</code>")), ", ")}.</p>\n");
        return Html.Of($"""
            <h2 id="{type.Name}"><a href="#{type.Name}">{type.Name}</a></h2>
            {Html.Prose(type.Description)}
            {values}{(type.Members.Count == 0 ? Html.None : Members(path, type))}
            """);
    }

    private Html Members(string path, ContractType type) => Html.Of($"""
        <div class="wide" role="region" aria-label="Members of {type.Name}" tabindex="0"><table class="stacked">
        <thead><tr><th scope="col">Member</th><th scope="col">Type</th><th scope="col">Range</th><th scope="col">Meaning</th></tr></thead>
        <tbody>{type.Members.Select(m => Member(path, type, m))}</tbody></table></div>

        """);

    private Html Member(string path, ContractType type, ContractMember member)
    {
        var kind = member.TypeName is { } name && types.Types.ContainsKey(name) ? PageFrame.Link(path, types.AddressOf(name), name) : Html.Text(member.Kind);
        var whole = member.IsList ? Html.Of($"list of {kind}") : member.IsMap ? Html.Of($"map of {kind}") : kind;
        var assumed = member.Assumed is { } value ? Html.Of($" Where absent: <code>{value}</code>.") : Html.None;
        var id = $"{type.Name}.{member.Name}";
        return Html.Of($"""
            <tr id="{id}"><th scope="row"><a href="#{id}"><code>{member.Name}</code></a>{(member.IsRequired ? " required" : "")}</th>
            <td>{whole}</td><td>{member.Range}</td><td>{Html.Prose(member.Description)}{assumed}</td></tr>

            """);
    }
}
