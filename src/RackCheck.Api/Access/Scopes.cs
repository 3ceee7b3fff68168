using System.Security.Claims;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Extensions.Options;
using RackCheck.Api.Http;
using RackCheck.Model;

namespace RackCheck.Api.Access;

/// <summary>What a caller may do.</summary>
internal static class Scopes
{
    /// <summary>Check racks.</summary>
    public const string Check = "check";

    /// <summary>Check baskets and get proposals.</summary>
    public const string Plan = "plan";

    /// <summary>Get drawings, lists and sheets.</summary>
    public const string Documents = "documents";

    /// <summary>Claim that holds scopes, separated by spaces, in tokens of most issuers.</summary>
    public const string Claim = "scope";

    // Claim of some issuers.
    private const string OtherClaim = "scp";

    /// <summary>All scopes.</summary>
    public static readonly string[] All = [Check, Plan, Documents];

    /// <summary>Requires a scope for an operation and limits its rate.</summary>
    public static RouteHandlerBuilder RequireScope(this RouteHandlerBuilder operation, string scope) => operation
        .RequireAuthorization(policy => policy.AddRequirements(new ScopeRequirement(scope)))
        .WithMetadata(new ScopeRequirement(scope))
        .Produces<Problem>(StatusCodes.Status401Unauthorized, Problems.MediaType)
        .Produces<Problem>(StatusCodes.Status403Forbidden, Problems.MediaType)
        .Produces<Problem>(StatusCodes.Status429TooManyRequests, Problems.MediaType);

    /// <summary>Serves an operation without credentials where documentation is public.</summary>
    public static TBuilder RequireReader<TBuilder>(this TBuilder operation)
        where TBuilder : IEndpointConventionBuilder =>
        operation.RequireAuthorization(policy => policy.AddRequirements(new ScopeRequirement(null)));

    /// <summary>Whether a caller has a scope.</summary>
    public static bool Has(this ClaimsPrincipal caller, string scope) => caller.Claims
        .Where(c => c.Type is Claim or OtherClaim)
        .Any(c => c.Value.Split(' ').Contains(scope, StringComparer.Ordinal));
}

/// <summary>A scope, or, if null, permission to read the documentation.</summary>
/// <param name="Scope">The scope.</param>
internal sealed record ScopeRequirement(string? Scope) : IAuthorizationRequirement;

/// <summary>Judges scopes.</summary>
/// <param name="options">Settings.</param>
internal sealed class ScopeHandler(IOptions<AccessOptions> options) : AuthorizationHandler<ScopeRequirement>
{
    /// <inheritdoc/>
    protected override Task HandleRequirementAsync(AuthorizationHandlerContext context, ScopeRequirement requirement)
    {
        var access = options.Value;
        var mayPass = context.User.Identity?.IsAuthenticated == true
            ? requirement.Scope is null || context.User.Has(requirement.Scope)
            : context.Resource is HttpContext request
                && (!access.HasCredentials || !Credentials.ArePresented(request.Request))
                && (access.IsOpen || (requirement.Scope is null && access.PublicDocs));
        if (mayPass)
        {
            context.Succeed(requirement);
        }

        return Task.CompletedTask;
    }
}
