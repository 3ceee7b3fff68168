using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Endpoints;
using RackCheck.Engineering;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Gives each operation an example that runs with one click, and names the faults that it answers with.</summary>
internal sealed class ExampleOperationFilter : IOperationFilter
{
    private static readonly Dictionary<string, string> Meanings = new(StringComparer.Ordinal)
    {
        ["200"] = "The answer.",
        ["400"] = "The text is no JSON.",
        ["404"] = "There is nothing of that name.",
        ["406"] = "The caller does not take JSON.",
        ["413"] = "The description is too large.",
        ["415"] = "The description is not sent as JSON in UTF-8.",
        ["422"] = "The description is not valid; every fault is listed with its place.",
        ["503"] = "The service cannot answer now.",
    };

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        foreach (var (status, response) in operation.Responses ?? [])
        {
            response.Description = Meanings[status];
        }

        switch (operation.OperationId)
        {
            case ChecksEndpoints.CheckRack:
                AddBodies(operation);
                break;
            case RulesEndpoints.GetRule:
                AddChoice(operation, "id", "Id of the rule.", ContractSchemaFilter.RuleIds(), "depth.cabinet-too-shallow");
                break;
            case ReferenceEndpoints.GetTable:
                AddChoice(operation, "table", "Name of the table.", DataTables.All.Select(t => (JsonNode)JsonValue.Create(t.Name)), "rack-geometry");
                break;
        }
    }

    private static void AddBodies(OpenApiOperation operation)
    {
        if (operation.RequestBody is not OpenApiRequestBody { Content: { } content } body || content["application/json"] is not OpenApiMediaType media)
        {
            throw new InvalidOperationException("The check has no JSON body in the contract.");
        }

        body.Description = "The rack.";
        body.Required = true;
        media.Examples = new Dictionary<string, IOpenApiExample>(StringComparer.Ordinal);
        foreach (var example in Examples.All)
        {
            var rack = JsonNode.Parse(example.Json)!;
            media.Examples[example.Name] = new OpenApiExample { Summary = rack["reference"]!.GetValue<string>(), Value = rack };
        }
    }

    private static void AddChoice(OpenApiOperation operation, string name, string description, IEnumerable<JsonNode> choices, string example)
    {
        var parameter = (OpenApiParameter)operation.Parameters!.Single(p => p.Name == name);
        parameter.Description = description;
        parameter.Example = example;
        ((OpenApiSchema)parameter.Schema!).Enum = [.. choices];
    }
}
