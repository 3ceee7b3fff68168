using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.OpenApi;
using RackCheck.Model;
using RackCheck.Model.Json;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.ProductService;

/// <summary>The contract at /openapi/catalogue.v1.json, made from the records of the client.</summary>
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
                    Contract between the rack check service and a product service. It applies if the rack check service is configured with
                    an address instead of a file. The rack check service calls; the product service responds.

                    Responses are read strictly. A product with a value outside its range, a product that was not requested, and products with
                    the same part number are left out; the others of the response are used. A response that is not a list of products is
                    not used. A member that is not in this contract is ignored; if the rack check service is configured so, it makes the product
                    invalid.

                    Each kind of product has its own members, and a member of another kind is a fault: cabinet - cabinet;
                    equipment, shelf, blanking-panel - item; fan-tray - item and fans; roof-fans - fans; pdu - pdu; support - support;
                    door - door; air-conditioner - airConditioner; earth-bar - earthBar; earth-lead - earthLead; cord - cord; fixings - fixing. Any
                    of them may have price with currency, inStock and preferred; cordIncluded and railsIncluded are true for equipment only.

                    In addition to the schemas, a cabinet has heightU, widthMm and depthMm and neither partNumber nor placement. An item has
                    heightU, which is 0 only for equipment on a shelf, and its ups has no feeds. A PDU has ratedA and groups with unique ids.
                    minSpacingMm is at most maxSpacingMm. An optional member may also be null.

                    The rack check service can send an API key or another fixed header, or a bearer token by OAuth 2 client credentials.

                    Calls with status 408, 429 and 5xx are retried a few times, 429 and 503 after Retry-After. Other refusals are not retried.

                    Lengths are in mm, masses in kg, power in W, current in A, temperature in C, flow in m3/h; each member name ends with its unit.
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

    /// <summary>Serves the contract.</summary>
    public static void MapProductContract(this WebApplication app) =>
        app.MapSwagger("openapi/{documentName}.json", options => options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1);

    // The responses are read strictly; only a problem document may have further members.
    private sealed class StrictAnswers : ISchemaFilter
    {
        public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
        {
            if (schema is OpenApiSchema { Properties: not null } own
                && context.Type != typeof(Problem)
                && context.Type != typeof(Fault)
                && ContractJson.Default.GetTypeInfo(context.Type) is not null)
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
            ["400"] = "The request body is not valid JSON.",
            ["413"] = "The request is too large.",
            ["415"] = "The request body is not JSON in UTF-8.",
            ["422"] = "The request is not valid.",
            ["429"] = "Too many calls; Retry-After gives the time to wait.",
            ["503"] = "The service is unavailable; Retry-After may give the time to wait.",
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
                        ["Retry-After"] = new OpenApiHeader
                        {
                            Description = "Seconds to wait, or a date.",
                            Schema = new OpenApiSchema { Type = JsonSchemaType.String },
                        },
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
            swaggerDoc.Tags = new HashSet<OpenApiTag> { new() { Name = "Products", Description = "Product data by part number." } };
    }
}
