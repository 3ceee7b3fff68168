using System.Globalization;
using System.Text;
using System.Text.Json;
using Microsoft.OpenApi;
using RackCheck.Api.Access;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Api.Reading;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Pages;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using Swashbuckle.AspNetCore.Swagger;

namespace RackCheck.Api.OpenApi;

/// <summary>The contract at /openapi/v1.json, the documentation at /docs and the explorer at /docs/explorer.</summary>
internal static class DocsSetup
{
    private const string Root = "/" + Paths.Start;

    /// <summary>Leads addresses that the documentation had before to those that it has now. Stands before addresses are compared.</summary>
    public static void UseFormerDocsAddresses(this IApplicationBuilder app) => app.Use(static (context, next) =>
    {
        string? now = context.Request.Path.Value switch
        {
            Root + "/" => "../" + Paths.Start,
            Root + "/index.html" => "explorer/index.html",
            _ => null,
        };
        if (now is null || !HttpMethods.IsGet(context.Request.Method))
        {
            return next(context);
        }

        context.Response.Redirect(now);
        return Task.CompletedTask;
    });

    /// <summary>Serves the contract and the documentation. Pages are made when they are first asked for: they change only with the service.</summary>
    public static void UseDocs(this WebApplication app)
    {
        app.UseWhen(
            static context => context.Request.Path.StartsWithSegments(Root, StringComparison.Ordinal),
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
        var contract = new Lazy<byte[]>(() => Contract(app.Services.GetRequiredService<ISwaggerProvider>()));
        app.MapFile("/openapi/v1.json", "application/json; charset=utf-8", () => contract.Value);
        app.MapFile("/docs/elevation.svg", ElevationsEndpoints.Svg, () => ElevationDrawing.Svg([Drawn(app.Services, Examples.Drawn)]));
        app.MapFile("/" + Paths.Drawing, ElevationsEndpoints.Svg, () => ElevationDrawing.Svg([Drawn(app.Services, SampleCode.Example)]));
        app.MapFile("/" + Paths.SideDrawing, ElevationsEndpoints.Svg, () => SideDrawing(app.Services));
        var site = new DocsSite(new DocsContent(
            app.Services.GetRequiredService<RackChecker>(),
            new Lazy<JsonElement>(() => JsonElement.Parse(contract.Value)),
            ByName([.. Examples.Racks, .. Examples.Baskets, .. Examples.Proposals, .. Examples.Comparisons, .. Examples.Elevations]),
            ByName(Examples.Answers),
            new Lazy<IReadOnlyList<Product>>(SampleParts),
            [.. ProblemKind.All.Select(Topic)],
            new Lazy<IReadOnlyList<FaultTopic>>(
                () => [.. FaultCodes.All.Select(c => new FaultTopic(c.Code, DocumentedMembers.Of(typeof(FaultCodes), c.Name)))])));
        foreach (var (path, file) in site.Files)
        {
            var route = app.MapFile("/" + path, file.MediaType, file.Make);
            if (path == Paths.Search)
            {
                route.TakesQuery("q");
            }
        }
    }

    private static Dictionary<string, byte[]> ByName(IEnumerable<Example> examples) =>
        examples.ToDictionary(e => e.Name, e => e.Json, StringComparer.Ordinal);

    // The catalogue that the service has unless another is set.
    private static IReadOnlyList<Product> SampleParts()
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Catalogue", "products.json");
        return File.Exists(path) ? JsonSerializer.Deserialize(File.ReadAllBytes(path), ContractJson.Default.ProductList)!.Products : [];
    }

    private static ProblemTopic Topic(ProblemKind kind) => new(
        kind.Name,
        kind.Status,
        kind.Title,
        kind.Meaning,
        kind.Remedy,
        Examples.AnswerText(Examples.AnswerOf(kind)),
        ListsFaults: kind == ProblemKind.Invalid || kind == ProblemKind.NotJson);

    private static RouteHandlerBuilder MapFile(this IEndpointRouteBuilder routes, string path, string mediaType, Func<byte[]> make)
    {
        var answer = new Lazy<StaticAnswer>(() => new StaticAnswer(make(), mediaType));
        return routes.MapGet(path, (Delegate)((HttpContext context) => answer.Value.WriteAsync(context))).RequireReader().ExcludeFromDescription();
    }

    // An example with its report, to show what drawings look like.
    private static DrawnRack Drawn(IServiceProvider services, string name)
    {
        var example = Examples.Racks.Single(e => e.Name == name);
        var rack = services.GetRequiredService<DescriptionReader>().Read(example.Json).Document!;
        return DrawnRack.Of(ResolvedRack.Plain(rack), services.GetRequiredService<RackChecker>());
    }

    private static byte[] SideDrawing(IServiceProvider services) =>
        SvgWriter.Document(ElevationDrawing.Figure(Drawn(services, SampleCode.Example), ElevationView.Side)!);

    // It takes longer than a check.
    private static byte[] Contract(ISwaggerProvider provider)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        provider.GetSwagger("v1").SerializeAsV31(new OpenApiJsonWriter(text));
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // Addresses are relative to its page, so that it works behind any path prefix.
    private static void UseExplorer(this IApplicationBuilder app) => app.UseSwaggerUI(options =>
    {
        options.RoutePrefix = Paths.Explorer;
        options.DocumentTitle = OpenApiSetup.Title;
        options.SwaggerEndpoint("../../openapi/v1.json", OpenApiSetup.Title);
        options.EnableTryItOutByDefault();
        options.EnableDeepLinking();
        options.EnableFilter();
        options.DefaultModelsExpandDepth(0);
        options.DisplayRequestDuration();
        options.DisplayOperationId();
        options.InjectStylesheet(DocsSite.ExplorerStyle);
        options.InjectJavascript(DocsSite.ExplorerScript);
    });
}
