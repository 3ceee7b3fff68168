using System.Text.Json;

namespace RackCheck.Documents.Pages;

/// <summary>All operations on one page, made from the contract: what each takes, what it answers, which headers and scopes.</summary>
/// <param name="contract">The contract, OpenAPI 3.1.</param>
/// <param name="types">Its types.</param>
internal sealed class OperationsPage(JsonElement contract, ContractTypes types)
{
    /// <summary>What the page has, in a sentence.</summary>
    public const string Summary = "Every operation: what it takes, what it answers, media types, headers, statuses and scopes.";

    /// <summary>The operations: anchor, method and address, what it does.</summary>
    public IEnumerable<(string Id, string Name, string Text)> All =>
        Operations().Select(o => (o.Id, o.Name, ContractType.TextOf(o.Operation, "summary") + ". " + ContractType.TextOf(o.Operation, "description")));

    /// <summary>Writes the page.</summary>
    public Html Write() => Html.Of($"""
        {PageFrame.Trail(Paths.Operations, (Paths.Reference, "Reference"))}
        <h1>Operations</h1>
        <p class="lead">{Summary} {PageFrame.Link(Paths.Operations, Paths.Explorer + "/index.html", "The explorer")} sends them from a form.</p>
        <p>Where an operation has several media types, the header <code>Accept</code> chooses; without it the first is sent. Call the service from your own
        server: it sends no headers that let a browser call it from another site.</p>
        {Html.List(Operations().Select(o => Html.Of($"<a href=\"#{o.Id}\"><code>{o.Name}</code></a> {ContractType.TextOf(o.Operation, "summary")}")))}
        {Operations().Select(Operation)}
        """);

    private IEnumerable<(string Id, string Name, JsonElement Operation)> Operations() =>
        from path in contract.GetProperty("paths").EnumerateObject()
        from operation in path.Value.EnumerateObject()
        select (operation.Value.GetProperty("operationId").GetString()!, $"{operation.Name.ToUpperInvariant()} {path.Name}", operation.Value);

    private Html Operation((string Id, string Name, JsonElement Operation) entry)
    {
        var (id, name, operation) = entry;
        var parameters = operation.TryGetProperty("parameters", out var all) ? all.EnumerateArray().ToArray() : [];
        return Html.Of($"""
            <h2 id="{id}"><a href="#{id}">{ContractType.TextOf(operation, "summary")}</a><code>{name}</code></h2>
            {Html.Prose(ContractType.TextOf(operation, "description"))}
            {(operation.TryGetProperty("requestBody", out var body) ? Html.Of($"<p>Takes {Html.Join(Content(body), " or ")}.</p>\n") : Html.None)}
            {(parameters.Length == 0 ? Html.None : Html.Table(
                "Parameters of " + name, [new("Parameter"), new("In"), new("Values"), new("Meaning")], parameters.Select(Parameter), isStacked: true))}
            {Html.Table(
                "Answers of " + name, [new("Status"), new("Content"), new("Headers"), new("When")],
                operation.GetProperty("responses").EnumerateObject().Select(Answer), isStacked: true)}
            """);
    }

    private Html[] Parameter(JsonElement parameter)
    {
        var member = new ContractMember(parameter.GetProperty("name").GetString()!, parameter.GetProperty("schema"), isRequired: false);
        return
        [
            Html.Of($"<code>{member.Name}</code>"), Html.Text(parameter.GetProperty("in").GetString()!),
            Html.Text((member.IsList ? "list of " : "") + (member.Range.Length > 0 ? member.Range : member.Kind)),
            Html.Prose(ContractType.TextOf(parameter, "description")),
        ];
    }

    private Html[] Answer(JsonProperty answer)
    {
        var response = answer.Value.TryGetProperty("$ref", out var reference) ? Resolved(reference.GetString()!) : answer.Value;
        var headers = response.TryGetProperty("headers", out var own) ? own.EnumerateObject().Select(h => Html.Of($"<code>{h.Name}</code>")) : [];
        return [Html.Text(answer.Name), Html.Join(Content(response), ", "), Html.Join(headers, ", "), Html.Prose(ContractType.TextOf(response, "description"))];
    }

    private IEnumerable<Html> Content(JsonElement owner)
    {
        foreach (var content in owner.TryGetProperty("content", out var all) ? all.EnumerateObject() : default)
        {
            var type = content.Value.TryGetProperty("schema", out var schema) ? new ContractMember("", schema, isRequired: false).TypeName : null;
            yield return type is not null && types.Types.ContainsKey(type)
                ? Html.Of($"<code>{content.Name}</code> ({PageFrame.Link(Paths.Operations, types.AddressOf(type), type)})")
                : Html.Of($"<code>{content.Name}</code>");
        }
    }

    // A pointer into the contract.
    private JsonElement Resolved(string reference) =>
        reference.Split('/').Skip(1).Aggregate(contract, (now, name) => now.GetProperty(name));
}
