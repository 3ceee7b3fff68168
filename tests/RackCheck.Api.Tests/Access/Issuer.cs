using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.IdentityModel.JsonWebTokens;
using Microsoft.IdentityModel.Tokens;

namespace RackCheck.Api.Tests.Access;

/// <summary>An OpenID Connect issuer on a loopback port: discovery document and keys, as any issuer serves them, and tokens.</summary>
internal sealed class Issuer : IAsyncDisposable
{
    private const string Audience = "rack-check";
    private readonly WebApplication app;
    private readonly List<RsaSecurityKey> published = [];

    private Issuer(WebApplication app) => this.app = app;

    public string Authority => app.Urls.First();

    public static async Task<Issuer> StartAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var issuer = new Issuer(builder.Build());
        issuer.app.MapGet("/.well-known/openid-configuration", () => Results.Json(new { issuer = issuer.Authority, jwks_uri = issuer.Authority + "/keys" }));
        issuer.app.MapGet("/keys", () => Results.Json(new { keys = issuer.published.Select(Published) }));
        await issuer.app.StartAsync();
        issuer.NewKey();
        return issuer;
    }

    /// <summary>Makes a key and publishes it beside the others. The next tokens are signed with it.</summary>
    public RsaSecurityKey NewKey()
    {
        var key = new RsaSecurityKey(RSA.Create(2048)) { KeyId = $"key-{published.Count}-{Guid.NewGuid():N}" };
        published.Add(key);
        return key;
    }

    /// <summary>Withdraws all keys but the newest.</summary>
    public void WithdrawOldKeys() => published.RemoveRange(0, published.Count - 1);

    public string Token(object? scope, string audience = Audience, string? issuer = null, TimeSpan? lifetime = null, RsaSecurityKey? key = null)
    {
        var now = DateTimeOffset.UtcNow.UtcDateTime;
        var expires = now + (lifetime ?? TimeSpan.FromHours(1));
        var claims = new Dictionary<string, object> { ["client_id"] = "order-entry" };
        if (scope is not null)
        {
            claims[scope is string ? "scope" : "scp"] = scope;
        }

        return new JsonWebTokenHandler().CreateToken(new SecurityTokenDescriptor
        {
            Issuer = issuer ?? Authority,
            Audience = audience,
            NotBefore = expires.AddHours(-2),
            IssuedAt = expires.AddHours(-2),
            Expires = expires,
            Claims = claims,
            SigningCredentials = new SigningCredentials(key ?? published[^1], SecurityAlgorithms.RsaSha256),
        });
    }

    public async ValueTask DisposeAsync() => await app.DisposeAsync();

    private static object Published(RsaSecurityKey key)
    {
        var parameters = key.Rsa.ExportParameters(includePrivateParameters: false);
        var (n, e) = (Base64UrlEncoder.Encode(parameters.Modulus), Base64UrlEncoder.Encode(parameters.Exponent));
        return new { kty = "RSA", use = "sig", kid = key.KeyId, n, e };
    }
}
