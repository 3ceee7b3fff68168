using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Model;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>
/// Adds what operations share: the schemas that only a union or a reference names, headers, examples, and a response for each refusal. Lists that grow, of
/// problem types and fault codes, are extensions and not enums: a client has to take an entry that it does not know.
/// </summary>
internal sealed class SharedPartsFilter : IDocumentFilter
{
    /// <summary>Extension with the types of problems.</summary>
    public const string ProblemTypes = "x-problem-types";

    /// <summary>Extension with the codes of faults.</summary>
    public const string Codes = "x-fault-codes";

    // Known to the generators of clients.
    private const string PrimaryMessage = "x-ms-primary-error-message";

    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        context.SchemaGenerator.GenerateSchema(typeof(ExistingCabinet), context.SchemaRepository);
        context.SchemaGenerator.GenerateSchema(typeof(ElevationRequest), context.SchemaRepository);
        context.SchemaGenerator.GenerateSchema(typeof(Problem), context.SchemaRepository);
        var schemas = context.SchemaRepository.Schemas;
        schemas[RuleIds.Schema] = RuleIds.List();
        Property(schemas, nameof(Policy), "rules").PropertyNames = RuleIds.Reference();
        Extend(Property(schemas, nameof(Problem), "type"), ProblemTypes, ProblemKind.All.Select(k => new JsonObject
        {
            ["type"] = k.Type, ["status"] = k.Status, ["title"] = k.Title, ["meaning"] = k.Meaning, ["remedy"] = k.Remedy,
        }));
        Extend(Property(schemas, nameof(Fault), "code"), Codes, FaultCodes.All.Select(c => new JsonObject
        {
            ["code"] = c.Code, ["meaning"] = DocumentedMembers.Of(typeof(FaultCodes), c.Name),
        }));

        // What a generated client shows of a refusal: the text of its exception.
        ((OpenApiSchema)schemas[nameof(Problem)].Properties!["detail"]).Extensions ??= new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal);
        schemas[nameof(Problem)].Properties!["detail"].Extensions![PrimaryMessage] = new JsonNodeExtension(true);
        Headers.AddTo(swaggerDoc);
        Examples.AddTo(swaggerDoc);
        AddRefusals(swaggerDoc);
    }

    private static void AddRefusals(OpenApiDocument document)
    {
        document.Components!.Responses = new Dictionary<string, IOpenApiResponse>(StringComparer.Ordinal);
        foreach (var kinds in ProblemKind.All.GroupBy(k => k.Status))
        {
            document.Components.Responses[ResponseOperationFilter.NameOf(kinds.Key)] = new OpenApiResponse
            {
                Description = string.Join("\n\n", kinds.Select(k => k.Meaning)),
                Headers = Headers.Of(document, kinds.Key),
                Content = new Dictionary<string, IOpenApiMediaType>(StringComparer.Ordinal)
                {
                    [Problems.MediaType] = new OpenApiMediaType
                    {
                        Schema = new OpenApiSchemaReference(nameof(Problem), document),
                        Examples = kinds.ToDictionary(
                            k => k.Name,
                            k => (IOpenApiExample)new OpenApiExampleReference(Examples.AnswerOf(k), document),
                            StringComparer.Ordinal),
                    },
                },
            };
        }
    }

    private static OpenApiSchema Property(Dictionary<string, IOpenApiSchema> schemas, string owner, string name) =>
        (OpenApiSchema)((OpenApiSchema)schemas[owner]).Properties![name];

    private static void Extend(OpenApiSchema schema, string name, IEnumerable<JsonObject> entries) =>
        (schema.Extensions ??= new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal))[name] = new JsonNodeExtension(new JsonArray([.. entries]));
}
