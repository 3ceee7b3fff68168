using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Api.Streaming;
using RackCheck.Documents;
using RackCheck.Model;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Adds an example to each operation that runs with one click, and describes its responses.</summary>
internal sealed class ExampleOperationFilter : IOperationFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        switch (operation.OperationId)
        {
            case ChecksEndpoints.CheckRack:
                AddBodies(operation, context.Document, "The rack.", Examples.Racks);
                AddAnswer(operation, "rack-doors-do-not-close", "rack-sound");
                AddOption(
                    operation,
                    ChecksEndpoints.ApplyParameter,
                    ["remedies"],
                    "Applies the first remedies of errors, one after the other, until no error is left or no remedy helps. "
                    + "The report is on the resulting rack; `applied` holds that rack and the remedies applied.");
                AddFields(operation);
                break;
            case StreamEndpoints.CheckRacks:
                DescribeStream(operation);
                break;
            case BasketsEndpoints.CheckBasket:
                AddBodies(operation, context.Document, "The basket.", Examples.Baskets);
                AddAnswer(operation, "basket-no-cabinet");
                break;
            case ProposalsEndpoints.ProposeRack:
                AddBodies(operation, context.Document, "The equipment.", Examples.Proposals);
                AddAnswer(operation, "proposal-conflict", "proposal-own-equipment");
                break;
            case ComparisonsEndpoints.CompareRacks:
                AddBodies(operation, context.Document, "The two racks.", Examples.Comparisons);
                AddAnswer(operation, "comparison-cabinet");
                break;
            case ElevationsEndpoints.DrawRacks:
                DescribeDrawing(operation, context.Document);
                break;
            case SpecificationsEndpoints.WriteSheet:
                DescribeSheet(operation, context.Document);
                break;
            case RulesEndpoints.GetRule:
                var id = Describe(operation, "id", "Id of the rule.", "depth.cabinet-too-shallow");
                id.Schema = RuleIds.Reference();
                break;
            case ReferenceEndpoints.GetTable:
                AddChoice(operation, "table", "Name of the table.", ReferencePages.All.Select(t => (JsonNode)JsonValue.Create(t.Table)), "rack-geometry");
                break;
            case PartsListsEndpoints.ListParts:
                AddBodies(operation, context.Document, "The rack.", Examples.Racks);
                AddAnswer(operation, "parts-rack-sound");
                operation.Responses!["200"].Content![PartsListsEndpoints.Csv] =
                    new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
                break;
        }
    }

    private static void AddBodies(OpenApiOperation operation, OpenApiDocument document, string description, IEnumerable<Example> examples)
    {
        if (operation.RequestBody is not OpenApiRequestBody { Content: { } content } body || content["application/json"] is not OpenApiMediaType media)
        {
            throw new InvalidOperationException($"{operation.OperationId} has no JSON body in the contract.");
        }

        operation.Description += " Nothing is stored: the request can be repeated safely.";
        body.Description = description;
        body.Required = true;
        media.Examples = new Dictionary<string, IOpenApiExample>(StringComparer.Ordinal);
        foreach (var example in examples)
        {
            media.Examples[example.Name] = new OpenApiExampleReference(example.Name, document);
        }
    }

    private static void AddAnswer(OpenApiOperation operation, params string[] names)
    {
        var media = (OpenApiMediaType)operation.Responses!["200"].Content!["application/json"];
        media.Examples = names.ToDictionary(
            n => n,
            n => (IOpenApiExample)new OpenApiExample { Summary = $"Answer to {n}", Value = Examples.Answer(n) },
            StringComparer.Ordinal);
    }

    // A text of lines has no schema of its own in this version of OpenAPI: it is a string, and the schema of its content is that of a line. With the media
    // type of the content said too, the explorer would ask for a file.
    private static void DescribeStream(OpenApiOperation operation)
    {
        const string Member = "descriptionDigest";
        Example[] racks = [Examples.Racks.Single(r => r.Name == "rack-sound"), Examples.Racks.Single(r => r.Name == "rack-doors-do-not-close")];
        operation.Description += " Nothing is stored: the request can be repeated safely.";
        operation.RequestBody!.Content![StreamEndpoints.Lines] = LinesOf(
            nameof(RackDescription), racks.Select(r => JsonNode.Parse(r.Json)!.ToJsonString()), "Two racks");
        ((OpenApiRequestBody)operation.RequestBody).Description = "One rack a line.";
        ((OpenApiRequestBody)operation.RequestBody).Required = true;
        operation.Responses!["200"].Content![StreamEndpoints.Lines] = LinesOf(
            nameof(StreamedAnswer),
            racks.Select((r, i) => new JsonObject
            {
                ["line"] = i + 1,
                ["report"] = new JsonObject
                {
                    ["verdict"] = Examples.Answer(r.Name)["verdict"]!.DeepClone(), [Member] = Examples.Answer(r.Name)[Member]!.DeepClone(),
                },
            }.ToJsonString()),
            $"Answer with fields=verdict,{Member}");
        AddFields(operation);

        OpenApiMediaType LinesOf(string line, IEnumerable<string> lines, string summary) => new()
        {
            Schema = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Extensions = new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal)
                {
                    ["contentSchema"] = new JsonNodeExtension(new JsonObject { ["$ref"] = "#/components/schemas/" + line }),
                },
            },
            Examples = new Dictionary<string, IOpenApiExample>(StringComparer.Ordinal)
            {
                ["lines"] = new OpenApiExample { Summary = summary, Value = string.Join('\n', lines) + "\n" },
            },
        };
    }

    private static void DescribeDrawing(OpenApiOperation operation, OpenApiDocument document)
    {
        AddBodies(operation, document, "One rack, up to six racks, or a rack before and after a change.", [Examples.Racks[^1], .. Examples.Elevations]);
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
        AddOption(
            operation, ElevationsEndpoints.FrameParameter, ElevationsEndpoints.Frames,
            "With `none` the views of one rack without legend, notes and title block, for a page of your own. Default sheet.");
        AddOption(
            operation, ElevationsEndpoints.ThemeParameter, ElevationsEndpoints.Themes,
            "With `light` an SVG stays light where the viewer prefers dark. Default auto.");
    }

    private static void AddFields(OpenApiOperation operation) => operation.Parameters!.Add(new OpenApiParameter
    {
        Name = ChecksEndpoints.FieldsParameter,
        In = ParameterLocation.Query,
        Style = ParameterStyle.Form,
        Explode = false,
        Description =
            "Members of the report, separated by commas, for callers that check many racks: `verdict,descriptionDigest,rackDigest,ruleset`. The "
            + "response has no others, also of those that a whole report always has. Without `findings` no remedies are looked for, which takes most of the "
            + "time of a check.",
        Schema = new OpenApiSchema
        {
            Type = JsonSchemaType.Array,
            MinItems = 1,
            Items = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Enum = [.. ReportFields.All.Select(f => (JsonNode)JsonValue.Create(f))],
            },
        },
    });

    private static void DescribeSheet(OpenApiOperation operation, OpenApiDocument document)
    {
        AddBodies(operation, document, "The rack.", Examples.Racks);
        var content = operation.Responses!["200"].Content!;
        content[SpecificationsEndpoints.Html] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String } };
        content[SpecificationsEndpoints.Pdf] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } };
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

    private static void AddChoice(OpenApiOperation operation, string name, string description, IEnumerable<JsonNode> choices, string example) =>
        ((OpenApiSchema)Describe(operation, name, description, example).Schema!).Enum = [.. choices];

    private static OpenApiParameter Describe(OpenApiOperation operation, string name, string description, string example)
    {
        var parameter = (OpenApiParameter)operation.Parameters!.Single(p => p.Name == name);
        parameter.Description = description;
        parameter.Example = example;
        return parameter;
    }
}
