using System.Globalization;
using System.Text;
using Microsoft.OpenApi;
using RackCheck.Api.Access;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Documents;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using Swashbuckle.AspNetCore.Swagger;

namespace RackCheck.Api.OpenApi;

/// <summary>The contract at /openapi/v1.json and the docs page at /docs.</summary>
internal static class OpenApiSetup
{
    private const string Title = "Rack check service";

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
                Description = $"""
                    Checks the description of a 19-inch rack before it is ordered: layout, depth, load, power, earthing, cooling, cabling, service
                    and delivery. The response has findings that a program can act on, the figures behind them, the assumptions and what could
                    not be assessed.

                    {Cautions.General}

                    Meaning and formula of each rule: [the rules](/docs/rules).

                    Lengths are in mm, masses in kg, power in W, current in A, temperature in C, flow in m3/h; each member name ends with its unit.

                    **Requests can be repeated.** The service stores nothing. A POST computes an answer, and the same request gets the same one as long as
                    Ruleset-Version and the product data are the same. After 429, 503 or a broken connection send it again.

                    **What v1 keeps.** No path, member or status is taken away, no valid request becomes invalid, and no enum of an answer gets a further
                    value. Without notice there can be new paths, optional members and parameters of requests, members of answers, values of enums in requests,
                    rules, problem types, fault codes and tables. So a client takes members, rule ids, problem types and codes that it does not know, and
                    compares no message texts. What is to end has the headers Deprecation (RFC 9745) and Sunset (RFC 8594) at least six months before,
                    and is followed by v2 beside v1. New rulesets change findings, not the contract: GET /v1/rulesets.

                    **Problems.** Refusals are application/problem+json (RFC 9457). `type` is an address of this service with a page:
                    [problem types](/docs/problems).

                    An optional member of a request can have `x-default`, the value that its absence means, or `x-assumed`, the value that is assumed where
                    neither product data nor a range takes its place. The report lists assumptions.
                    """,
            });
            options.AddServer(new OpenApiServer { Url = "/", Description = "This service" });
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

    // The rules do not change at run time, so the page is written once.
    private static void MapRulesPage(this IEndpointRouteBuilder routes)
    {
        var page = RulesPage.Write(new RuleCatalogue(RuleSet.Default), Cautions.General, "/docs/rules.css");
        routes.MapPage("/docs/rules", page, "text/html; charset=utf-8");
        routes.MapPage("/docs/rules.css", RulesPage.Style, "text/css; charset=utf-8");
    }

    // The type of each problem document leads to its page.
    private static void MapProblemPages(this IEndpointRouteBuilder routes)
    {
        DescribedProblem[] problems =
        [
            .. ProblemKind.All.Select(k => new DescribedProblem(k.Type, k.Status, k.Title, k.Meaning, k.Remedy, Examples.AnswerText(Examples.AnswerOf(k)))),
        ];
        var codes = FaultCodes.All.Select(c => (c.Code, DocumentedMembers.Of(typeof(FaultCodes), c.Name))).ToArray();
        foreach (var problem in problems)
        {
            routes.MapPage(
                problem.Type,
                ProblemPages.Write(problem, problem.Type == ProblemKind.Invalid.Type || problem.Type == ProblemKind.NotJson.Type ? codes : []),
                "text/html; charset=utf-8");
        }

        routes.MapPage("/docs/problems", ProblemPages.WriteIndex(problems), "text/html; charset=utf-8");
    }

    /// <summary>Serves the contract and the docs page.</summary>
    public static void UseDocsPage(this WebApplication app)
    {
        app.UseWhen(
            static context => context.Request.Path.StartsWithSegments("/docs", StringComparison.Ordinal),
            docs =>
            {
                docs.Use(static (context, next) =>
                {
                    context.Response.Headers.ContentSecurityPolicy = DocsPage.ContentSecurityPolicy;
                    return next(context);
                });
                docs.UseReaders();
                docs.UseExplorer();
            });
        var contract = new Lazy<StaticAnswer>(() => Contract(app.Services.GetRequiredService<ISwaggerProvider>()));
        var picture = new Lazy<StaticAnswer>(() => Picture(app.Services));
        app.MapGet("/docs/elevation.svg", (Delegate)((HttpContext context) => picture.Value.WriteAsync(context))).RequireReader().ExcludeFromDescription();
        app.MapGet("/openapi/v1.json", (Delegate)((HttpContext context) => contract.Value.WriteAsync(context))).RequireReader().ExcludeFromDescription();
        app.MapPage("/docs/" + DocsPage.StylePath, DocsPage.Style, "text/css; charset=utf-8");
        app.MapRulesPage();
        app.MapProblemPages();
    }

    // The drawing of an example, to show what drawings look like.
    private static StaticAnswer Picture(IServiceProvider services)
    {
        var example = Examples.Racks.Single(e => e.Name == Examples.Drawn);
        var rack = services.GetRequiredService<DescriptionReader>().Read(example.Json).Document!;
        var drawn = DrawnRack.Of(ResolvedRack.Plain(rack), services.GetRequiredService<RackChecker>());
        return new StaticAnswer(ElevationDrawing.Svg([drawn]), ElevationsEndpoints.Svg);
    }

    // Made once: it takes longer than a check, and changes only with the service.
    private static StaticAnswer Contract(ISwaggerProvider provider)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        provider.GetSwagger("v1").SerializeAsV31(new OpenApiJsonWriter(text));
        return new StaticAnswer(Encoding.UTF8.GetBytes(text.ToString()), "application/json; charset=utf-8");
    }

    private static void MapPage(this IEndpointRouteBuilder routes, string path, string page, string mediaType)
    {
        var answer = new StaticAnswer(Encoding.UTF8.GetBytes(page), mediaType);
        routes.MapGet(path, (Delegate)((HttpContext context) => answer.WriteAsync(context))).RequireReader().ExcludeFromDescription();
    }

    private static void UseExplorer(this IApplicationBuilder app) => app.UseSwaggerUI(options =>
    {
        options.RoutePrefix = "docs";
        options.DocumentTitle = Title;
        options.SwaggerEndpoint("/openapi/v1.json", Title);
        options.EnableTryItOutByDefault();
        options.DefaultModelsExpandDepth(0);
        options.DisplayRequestDuration();
        options.DisplayOperationId();
        options.InjectStylesheet(DocsPage.StylePath);
    });
}
