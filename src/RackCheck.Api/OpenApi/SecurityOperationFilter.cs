using Microsoft.OpenApi;
using RackCheck.Api.Access;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Says which credentials an operation takes. An operator can permit calls without any.</summary>
internal sealed class SecurityOperationFilter : IOperationFilter
{
    /// <summary>Name of the scheme with bearer tokens.</summary>
    public const string Bearer = "Bearer";

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var scope = context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<ScopeRequirement>().FirstOrDefault();
        List<string> scopes = scope?.Scope is { } name ? [name] : [];
        operation.Security =
        [
            Scheme(ApiKeyHandler.Name, scopes, context.Document),
            Scheme(Bearer, scopes, context.Document),
            new OpenApiSecurityRequirement(),
        ];
    }

    private static OpenApiSecurityRequirement Scheme(string name, List<string> scopes, OpenApiDocument document) =>
        new() { [new OpenApiSecuritySchemeReference(name, document)] = scopes };
}
