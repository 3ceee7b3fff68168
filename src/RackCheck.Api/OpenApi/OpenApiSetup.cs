using Microsoft.OpenApi;
using RackCheck.Api.Access;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Api.OpenApi;

/// <summary>The contract.</summary>
internal static class OpenApiSetup
{
    /// <summary>Name of the service.</summary>
    public const string Title = "Rack check service";

    /// <summary>Registers the generator.</summary>
    public static void AddOpenApiDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSwaggerGen(options =>
        {
            options.SwaggerDoc("v1", new OpenApiInfo
            {
                Title = Title,
                Version = "v1",

                // Links are relative to the explorer's page: a service behind a path prefix does not know it.
                Description = $"""
                    Checks the description of a 19-inch rack before it is ordered: layout, depth, load, power, earthing, cooling, cabling, service
                    and delivery. The response has findings that a program can act on, the figures behind them, the assumptions and what could
                    not be assessed.

                    {Cautions.General.Text}

                    Meaning and formula of each rule: [the rules](../../docs/rules).

                    Lengths are in mm, masses in kg, power in W, current in A, temperature in C, flow in m3/h; each member name ends with its unit.

                    **Requests can be repeated.** The service stores nothing. A POST computes an answer, and the same request gets the same one as long as
                    Ruleset-Version and the product data are the same. After 429, 503 or a broken connection send it again.

                    **What v1 keeps.** No path, member or status is taken away, no valid request becomes invalid, and no enum of an answer gets a further
                    value, unless the request asks for it by a value of its own that is new. Without notice
                    there can be new paths, optional members and parameters of requests, members of answers, values of enums in requests,
                    rules, problem types, fault codes and tables. So a client takes members, rule ids, problem types and codes that it does not know, and
                    compares no message texts. An address that is going to end sends the headers Deprecation (RFC 9745) and Sunset (RFC 8594)
                    for at least six months before, while v2 answers beside v1. New rulesets change findings, not the contract: GET /v1/rulesets.

                    **Problems.** Refusals are application/problem+json (RFC 9457). `type` is an address of this service with a page:
                    [problem types](../../docs/problems).

                    An optional member of a request can have `x-default`, the value that its absence means, or `x-assumed`, the value that is assumed where
                    neither product data nor a range takes its place. The report lists assumptions.
                    """,
            });

            // Relative to the address of the contract, so that it holds behind a path prefix too.
            options.AddServer(new OpenApiServer { Url = "..", Description = "This service" });
            options.IncludeXmlComments(typeof(RackDescription).Assembly);
            options.IncludeXmlComments(typeof(OpenApiSetup).Assembly);
            options.SupportNonNullableReferenceTypes();
            options.MapType<Scalar>(() => new OpenApiSchema
            {
                Description = "A number, a string, a Boolean, or a list of numbers or strings.",
            });
            options.MapType<BasketCabinet>(() => new OpenApiSchema
            {
                Description = "The cabinet of a basket that orders none: none, or the cabinet that the customer has.",
                OneOf =
                [
                    new OpenApiSchema { Type = JsonSchemaType.String, Enum = [BasketCabinet.NoCabinet] },
                    new OpenApiSchemaReference(nameof(ExistingCabinet)),
                ],
            });
            options.SchemaFilter<ContractSchemaFilter>();
            options.SchemaFilter<EnumSchemaFilter>();
            options.AddSecurityDefinition(ApiKeyHandler.Name, new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.ApiKey,
                In = ParameterLocation.Header,
                Name = Credentials.KeyHeader,
                Description = "A key that the operator of the service gives out.",
            });
            options.AddSecurityDefinition(SecurityOperationFilter.Bearer, new OpenApiSecurityScheme
            {
                Type = SecuritySchemeType.Http,
                Scheme = "bearer",
                BearerFormat = "JWT",
                Description = "A token of the issuer that the operator has set. Its claim `scope` names what the caller may do: check, plan, documents.",
            });
            options.OperationFilter<ExampleOperationFilter>();
            options.OperationFilter<ResponseOperationFilter>();
            options.OperationFilter<SecurityOperationFilter>();
            options.DocumentFilter<TagDocumentFilter>();
            options.DocumentFilter<SharedPartsFilter>();
        });
    }
}
