using Microsoft.AspNetCore.Authorization;
using Microsoft.OpenApi;
using RackCheck.Api.Access;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Says which credentials an operation takes. An operator can permit calls without any, so none is an alternative everywhere.</summary>
internal sealed class SecurityOperationFilter : IOperationFilter
{
    /// <summary>Name of the scheme with bearer tokens.</summary>
    public const string Bearer = "Bearer";

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        operation.Security = [new OpenApiSecurityRequirement()];
        var policies = context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<AuthorizationPolicy>();
        if (policies.SelectMany(p => p.Requirements).OfType<ScopeRequirement>().FirstOrDefault() is not { } requirement)
        {
            return;
        }

        operation.Security.Insert(0, Scheme(ApiKeyHandler.Name, context.Document));
        operation.Security.Insert(1, Scheme(Bearer, context.Document));
        if (requirement.Scope is { } scope)
        {
            operation.Description += $" Credentials need the scope `{scope}`.";
        }
    }

    private static OpenApiSecurityRequirement Scheme(string name, OpenApiDocument document) =>
        new() { [new OpenApiSecuritySchemeReference(name, document)] = [] };
}
