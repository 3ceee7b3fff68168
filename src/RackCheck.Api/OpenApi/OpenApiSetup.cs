using Microsoft.OpenApi;
using RackCheck.Documents;
using RackCheck.Model;
using RackCheck.Rules;

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
                    """,
            });
            options.AddServer(new OpenApiServer { Url = "/", Description = "This service" });
            options.IncludeXmlComments(typeof(RackDescription).Assembly);
            options.IncludeXmlComments(typeof(OpenApiSetup).Assembly);
            options.SupportNonNullableReferenceTypes();
            options.MapType<Scalar>(() => new OpenApiSchema
            {
                Type = JsonSchemaType.Number | JsonSchemaType.String | JsonSchemaType.Boolean,
                Description = "A number, a string or a Boolean.",
            });
            options.SchemaFilter<ContractSchemaFilter>();
            options.OperationFilter<ExampleOperationFilter>();
            options.DocumentFilter<TagDocumentFilter>();
        });
    }

    // The rules do not change at run time, so the page is written once.
    private static void MapRulesPage(this IEndpointRouteBuilder routes)
    {
        var page = RulesPage.Write(new RuleCatalogue(RuleSet.Default), Cautions.General, "/docs/rules.css");
        routes.MapGet("/docs/rules", () => Results.Text(page, "text/html", System.Text.Encoding.UTF8)).ExcludeFromDescription();
        routes.MapGet("/docs/rules.css", () => Results.Text(RulesPage.Style, "text/css")).ExcludeFromDescription();
    }

    /// <summary>Serves the contract and the docs page.</summary>
    public static void UseDocsPage(this WebApplication app)
    {
        app.UseWhen(
            context => context.Request.Path.StartsWithSegments("/docs", StringComparison.Ordinal),
            docs => docs.Use(static (context, next) =>
            {
                context.Response.Headers.ContentSecurityPolicy = DocsPage.ContentSecurityPolicy;
                context.Response.Headers.XContentTypeOptions = "nosniff";
                return next(context);
            }));
        app.MapSwagger("openapi/{documentName}.json", options => options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1);
        app.MapGet("/docs/" + DocsPage.StylePath, () => Results.Text(DocsPage.Style, "text/css")).ExcludeFromDescription();
        app.MapRulesPage();
        app.UseSwaggerUI(options =>
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
}
