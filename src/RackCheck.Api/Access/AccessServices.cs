using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.JwtBearer;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.Extensions.Options;
using Microsoft.IdentityModel.Tokens;

namespace RackCheck.Api.Access;

/// <summary>Registers authentication, scopes and rate limits.</summary>
internal static class AccessServices
{
    private const string Either = "Access";

    /// <summary>Registers them.</summary>
    public static void AddAccess(this IServiceCollection services)
    {
        services.AddOptions<AccessOptions>().BindConfiguration(AccessOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddOptions<RateLimitOptions>().BindConfiguration(RateLimitOptions.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddAuthentication(Either)
            .AddPolicyScheme(Either, null, options => options.ForwardDefaultSelector = static context =>
                Credentials.IsBearer(context.Request) && context.RequestServices.GetRequiredService<IOptions<AccessOptions>>().Value.Jwt.Authority is not null
                    ? JwtBearerDefaults.AuthenticationScheme
                    : ApiKeyHandler.Name)
            .AddScheme<AuthenticationSchemeOptions, ApiKeyHandler>(ApiKeyHandler.Name, null)
            .AddJwtBearer();
        services.AddOptions<JwtBearerOptions>(JwtBearerDefaults.AuthenticationScheme).Configure<IOptions<AccessOptions>>(static (bearer, access) =>
        {
            var jwt = access.Value.Jwt;
            bearer.Authority = jwt.Authority?.ToString();
            bearer.Audience = jwt.Audience;
            bearer.RequireHttpsMetadata = jwt.RequireHttps;
            bearer.MapInboundClaims = false;

            // At most twice a minute, so that tokens with invented keys do not load the issuer, and a new key of the issuer serves soon.
            bearer.RefreshInterval = TimeSpan.FromSeconds(30);
        }).PostConfigure(static bearer =>
        {
            // A key that the issuer has withdrawn is no longer valid.
            if (bearer.ConfigurationManager is BaseConfigurationManager issuer)
            {
                issuer.UseLastKnownGoodConfiguration = false;
            }
        });
        services.AddAuthorization();
        services.AddSingleton<IAuthorizationHandler, ScopeHandler>();
        services.AddSingleton<ClientRates>();
        services.AddRateLimiter(_ => { });
        services.AddOptions<RateLimiterOptions>().Configure<ClientRates>(static (limiter, rates) =>
        {
            limiter.GlobalLimiter = rates.Limiter;
            limiter.OnRejected = (rejected, _) => new ValueTask(rates.RefuseAsync(rejected.HttpContext, rejected.Lease));
        });
    }

    /// <summary>Adds authentication, rate limits and authorization to the pipeline, behind routing.</summary>
    public static void UseAccess(this WebApplication app)
    {
        app.UseAuthentication();
        app.UseRateLimiter();
        var rates = app.Services.GetRequiredService<ClientRates>();
        app.Use((context, next) =>
        {
            rates.Describe(context);
            return next(context);
        });
        app.UseAuthorization();
    }

    /// <summary>Refuses callers that may not read the documentation, for pages that are not endpoints.</summary>
    public static void UseReaders(this IApplicationBuilder app)
    {
        var policy = new AuthorizationPolicyBuilder().AddRequirements(new ScopeRequirement(null)).Build();
        app.Use(async (context, next) =>
        {
            var service = context.RequestServices.GetRequiredService<IAuthorizationService>();
            if ((await service.AuthorizeAsync(context.User, context, policy)).Succeeded)
            {
                await next(context);
            }
            else
            {
                await context.ChallengeAsync();
            }
        });
    }
}
