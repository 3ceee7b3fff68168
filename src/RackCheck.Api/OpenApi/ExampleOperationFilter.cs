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
        ["400"] = "The text is no JSON, or the query asks for something that there is not.",
        ["404"] = "There is nothing of that name.",
        ["406"] = "The caller does not take JSON.",
        ["413"] = "The request is too large.",
        ["415"] = "The request is not sent as JSON in UTF-8.",
        ["422"] = "The request is not valid; every fault is listed with its place.",
        ["503"] = "The service cannot answer now, or it needs the product catalogue and that cannot be asked; Retry-After says when to try again.",
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
                AddBodies(operation, "The rack.", Examples.Racks);
                AddOption(operation, ChecksEndpoints.ApplyParameter, "remedies", "Applies first remedies of errors, one after the other, until no error is left or none helps; the report is on the rack as it then is, which `applied` holds with what was done.");
                break;
            case BasketsEndpoints.CheckBasket:
                AddBodies(operation, "The basket.", Examples.Baskets);
                break;
            case RulesEndpoints.GetRule:
                AddChoice(operation, "id", "Id of the rule.", ContractSchemaFilter.RuleIds(), "depth.cabinet-too-shallow");
                break;
            case ReferenceEndpoints.GetTable:
                AddChoice(operation, "table", "Name of the table.", DataTables.All.Select(t => (JsonNode)JsonValue.Create(t.Name)), "rack-geometry");
                break;
        }
    }

    private static void AddBodies(OpenApiOperation operation, string description, IEnumerable<Example> examples)
    {
        if (operation.RequestBody is not OpenApiRequestBody { Content: { } content } body || content["application/json"] is not OpenApiMediaType media)
        {
            throw new InvalidOperationException($"{operation.OperationId} has no JSON body in the contract.");
        }

        body.Description = description;
        body.Required = true;
        media.Examples = new Dictionary<string, IOpenApiExample>(StringComparer.Ordinal);
        foreach (var example in examples)
        {
            var rack = JsonNode.Parse(example.Json)!;
            media.Examples[example.Name] = new OpenApiExample { Summary = rack["reference"]!.GetValue<string>(), Value = rack };
        }
    }

    // Without an example, so that the docs page leaves the choice open; a check does not need it.
    private static void AddOption(OpenApiOperation operation, string name, string value, string description) => (operation.Parameters ??= []).Add(new OpenApiParameter
    {
        Name = name,
        In = ParameterLocation.Query,
        Description = description,
        Schema = new OpenApiSchema { Type = JsonSchemaType.String, Enum = [JsonValue.Create(value)] },
    });

    private static void AddChoice(OpenApiOperation operation, string name, string description, IEnumerable<JsonNode> choices, string example)
    {
        var parameter = (OpenApiParameter)operation.Parameters!.Single(p => p.Name == name);
        parameter.Description = description;
        parameter.Example = example;
        ((OpenApiSchema)parameter.Schema!).Enum = [.. choices];
    }
}
