using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Endpoints;
using RackCheck.Documents;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Adds an example to each operation that runs with one click, and describes its responses.</summary>
internal sealed class ExampleOperationFilter : IOperationFilter
{
    private static readonly Dictionary<string, string> Meanings = new(StringComparer.Ordinal)
    {
        ["200"] = "The response.",
        ["400"] = "The request is not valid JSON, or a query parameter is unknown or has an unsupported value.",
        ["304"] = "The client has the current version.",
        ["401"] = "Valid credentials are required.",
        ["403"] = "The credentials do not permit this operation.",
        ["404"] = "There is no resource with that name.",
        ["406"] = "The client does not accept JSON.",
        ["408"] = "The request took too long to arrive.",
        ["413"] = "The request is too large.",
        ["415"] = "The request body is not JSON in UTF-8, or its content encoding is not supported.",
        ["422"] = "The request is not valid. Every fault is listed with its JSON pointer.",
        ["429"] = "The caller exceeds its rate. Retry-After gives the time to wait.",
        ["503"] = "The service is busy, or the product catalogue that the request needs is unavailable. Retry-After gives the time to wait.",
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
                AddOption(
                    operation,
                    ChecksEndpoints.ApplyParameter,
                    "remedies",
                    "Applies the first remedies of errors, one after the other, until no error is left or no remedy helps. "
                    + "The report is on the resulting rack; `applied` holds that rack and the remedies applied.");
                break;
            case BasketsEndpoints.CheckBasket:
                AddBodies(operation, "The basket.", Examples.Baskets);
                break;
            case ProposalsEndpoints.ProposeRack:
                AddBodies(operation, "The equipment.", Examples.Proposals);
                break;
            case ComparisonsEndpoints.CompareRacks:
                AddBodies(operation, "The two racks.", Examples.Comparisons);
                break;
            case RulesEndpoints.GetRule:
                AddChoice(operation, "id", "Id of the rule.", ContractSchemaFilter.RuleIds(), "depth.cabinet-too-shallow");
                break;
            case ReferenceEndpoints.GetTable:
                AddChoice(operation, "table", "Name of the table.", ReferencePages.All.Select(t => (JsonNode)JsonValue.Create(t.Table)), "rack-geometry");
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

    // Without an example, so that the docs page leaves the parameter empty. A check does not need it.
    private static void AddOption(OpenApiOperation operation, string name, string value, string description) =>
        (operation.Parameters ??= []).Add(new OpenApiParameter
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
