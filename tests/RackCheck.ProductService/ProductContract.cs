using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.OpenApi;
using RackCheck.Model;
using RackCheck.Model.Json;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.ProductService;

/// <summary>The contract at /openapi/catalogue.v1.json, made of the records that the client reads with.</summary>
internal static class ProductContract
{
    /// <summary>Registers the generator.</summary>
    public static void AddProductContract(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSwaggerGen(options =>
        {
            options.SwaggerDoc("catalogue.v1", new OpenApiInfo
            {
                Title = "Product service",
                Version = "v1",
                Description = """
                    What the rack check service asks of whoever keeps the products, where it is set up with an address instead of a file. The rack check service calls; the product service answers.

                    Answers are read strictly: a member that is not in this contract, a value outside its range, or a product that was not asked for makes the whole answer of no use.

                    Each kind of product has members of its own, and a member of another kind is a fault: cabinet - cabinet; equipment, shelf, blanking-panel - item; fan-tray - item and fans; roof-fans - fans; pdu - pdu; support - support; door - door; air-conditioner - airConditioner; earth-bar - earthBar; earth-lead - earthLead; cord - cord; fixings - fixing.

                    Beyond what the schemas require, a cabinet has heightU, widthMm and depthMm and neither partNumber nor placement; an item has heightU, which is 0 for equipment that stands on a shelf and for nothing else, and its ups no feeds; a PDU has ratedA and groups, whose ids differ; minSpacingMm is at most maxSpacingMm. A member that may be left out may also be null.

                    408, 429 and 5xx are asked again a few times, 429 and 503 after Retry-After; all other refusals are not.

                    Lengths are in mm, masses in kg, power in W, current in A, temperature in C, flow in m3/h; the unit ends each name.
                    """,
            });
            options.AddServer(new OpenApiServer { Url = "/", Description = "The product service" });
            options.IncludeXmlComments(typeof(Product).Assembly);
            options.SupportNonNullableReferenceTypes();
            options.SchemaFilter<ContractSchemaFilter>();
            options.SchemaFilter<StrictAnswers>();
            options.OperationFilter<Words>();
            options.DocumentFilter<Tags>();
        });
    }

    /// <summary>Serves it.</summary>
    public static void MapProductContract(this WebApplication app) =>
        app.MapSwagger("openapi/{documentName}.json", options => options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1);

    // Here it is the answers that are read strictly; only a problem may say more.
    private sealed class StrictAnswers : ISchemaFilter
    {
        public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
        {
            if (schema is OpenApiSchema { Properties: not null } own && context.Type != typeof(Problem) && context.Type != typeof(Fault) && ContractJson.Default.GetTypeInfo(context.Type) is not null)
            {
                own.AdditionalPropertiesAllowed = false;
            }
        }
    }

    private sealed class Words : IOperationFilter
    {
        private static readonly Dictionary<string, string> Meanings = new(StringComparer.Ordinal)
        {
            ["200"] = "The products.",
            ["400"] = "The text is no JSON.",
            ["413"] = "The request is too large.",
            ["415"] = "The request is not sent as JSON in UTF-8.",
            ["422"] = "The request is not valid.",
            ["429"] = "Too many calls; Retry-After says when to ask again.",
            ["503"] = "The products cannot be given now; Retry-After may say when to ask again.",
        };

        public void Apply(OpenApiOperation operation, OperationFilterContext context)
        {
            foreach (var (status, response) in operation.Responses ?? [])
            {
                response.Description = Meanings[status];
                if (status is "429" or "503" && response is OpenApiResponse own)
                {
                    own.Headers = new Dictionary<string, IOpenApiHeader>(StringComparer.Ordinal)
                    {
                        ["Retry-After"] = new OpenApiHeader { Description = "Seconds to wait, or a date.", Schema = new OpenApiSchema { Type = JsonSchemaType.String } },
                    };
                }
            }

            if (operation.RequestBody is OpenApiRequestBody { Content: { } content } body && content["application/json"] is OpenApiMediaType media)
            {
                body.Description = "The part numbers.";
                body.Required = true;
                media.Example = new JsonObject { ["partNumbers"] = new JsonArray("QWL-CAB-42-8-10", "QWL-AMP-32") };
            }
        }
    }

    private sealed class Tags : IDocumentFilter
    {
        public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context) =>
            swaggerDoc.Tags = new HashSet<OpenApiTag> { new() { Name = "Products", Description = "What part numbers stand for." } };
    }
}
