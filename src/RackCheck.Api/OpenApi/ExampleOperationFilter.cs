using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Endpoints;
using RackCheck.Documents;
using RackCheck.Model;
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
                    ["remedies"],
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
            case ElevationsEndpoints.DrawRacks:
                DescribeDrawing(operation, context.Document);
                break;
            case SpecificationsEndpoints.WriteSheet:
                DescribeSheet(operation);
                break;
            case RulesEndpoints.GetRule:
                AddChoice(operation, "id", "Id of the rule.", ContractSchemaFilter.RuleIds(), "depth.cabinet-too-shallow");
                break;
            case ReferenceEndpoints.GetTable:
                AddChoice(operation, "table", "Name of the table.", ReferencePages.All.Select(t => (JsonNode)JsonValue.Create(t.Table)), "rack-geometry");
                break;
            case PartsListsEndpoints.ListParts:
                AddBodies(operation, "The rack.", Examples.Racks);
                operation.Responses!["200"].Content![PartsListsEndpoints.Csv] =
                    new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
                operation.Responses["406"].Description = "The client accepts neither JSON nor CSV.";
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
            var reference = (rack["racks"]?[0] ?? rack["after"] ?? rack)["reference"] ?? rack["reference"];
            media.Examples[example.Name] = new OpenApiExample { Summary = reference!.GetValue<string>(), Value = rack };
        }
    }

    private static void DescribeDrawing(OpenApiOperation operation, OpenApiDocument document)
    {
        AddBodies(operation, "One rack, up to six racks, or a rack before and after a change.", [Examples.Racks[^1], .. Examples.Elevations]);
        ((OpenApiMediaType)operation.RequestBody!.Content!["application/json"]).Schema = new OpenApiSchema
        {
            OneOf =
            [
                new OpenApiSchemaReference(nameof(RackDescription), document), new OpenApiSchemaReference(nameof(ElevationRequest), document),
            ],
        };
        var content = operation.Responses!["200"].Content!;
        content[ElevationsEndpoints.Svg] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
        content[ElevationsEndpoints.Png] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } };
        operation.Responses["406"].Description = "The client accepts neither SVG nor PNG.";
        AddOption(operation, ElevationsEndpoints.ViewParameter, ElevationsEndpoints.ViewNames, "The sides to draw. Default all.");
        operation.Parameters!.Add(new OpenApiParameter
        {
            Name = ElevationsEndpoints.WidthParameter,
            In = ParameterLocation.Query,
            Description = FormattableString.Invariant(
                $"Width of a PNG, pixels. Default {ElevationsEndpoints.DefaultWidth} for each rack. A picture of more than {
                    ElevationsEndpoints.MostPixels / 1_000_000} million pixels is made smaller."),
            Schema = new OpenApiSchema
            {
                Type = JsonSchemaType.Integer,
                Minimum = ElevationsEndpoints.LeastWidth.ToString(CultureInfo.InvariantCulture),
                Maximum = ElevationsEndpoints.MostWidth.ToString(CultureInfo.InvariantCulture),
            },
        });
    }

    private static void DescribeSheet(OpenApiOperation operation)
    {
        AddBodies(operation, "The rack.", Examples.Racks);
        var content = operation.Responses!["200"].Content!;
        content[SpecificationsEndpoints.Html] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
        content[SpecificationsEndpoints.Pdf] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } };
        operation.Responses["406"].Description = "The client accepts neither HTML nor PDF.";
        AddOption(operation, SpecificationsEndpoints.DocumentParameter, SpecificationsEndpoints.DocumentNames, "The document. Default specification.");
    }

    // Without an example, so that the docs page leaves the parameter empty. A check does not need it.
    private static void AddOption(OpenApiOperation operation, string name, IEnumerable<string> values, string description) =>
        (operation.Parameters ??= []).Add(new OpenApiParameter
        {
            Name = name,
            In = ParameterLocation.Query,
            Description = description,
            Schema = new OpenApiSchema { Type = JsonSchemaType.String, Enum = [.. values.Select(v => (JsonNode)JsonValue.Create(v))] },
        });

    private static void AddChoice(OpenApiOperation operation, string name, string description, IEnumerable<JsonNode> choices, string example)
    {
        var parameter = (OpenApiParameter)operation.Parameters!.Single(p => p.Name == name);
        parameter.Description = description;
        parameter.Example = example;
        ((OpenApiSchema)parameter.Schema!).Enum = [.. choices];
    }
}
