using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace RackCheck.Api.Access;

/// <summary>Recognizes callers by API key. Only hashes of keys are known, and all are compared in the same time.</summary>
/// <param name="access">The callers.</param>
/// <param name="options">Options of the scheme.</param>
/// <param name="logger">Log of the framework.</param>
/// <param name="encoder">Unused by keys.</param>
internal sealed class ApiKeyHandler(
    IOptions<AccessOptions> access, IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string Name = "ApiKey";

    private const int MostCharacters = 512;

    /// <inheritdoc/>
    protected override Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers[Credentials.KeyHeader];
        if (header.Count == 0)
        {
            return Task.FromResult(AuthenticateResult.NoResult());
        }

        return Task.FromResult(header is [{ Length: > 0 and <= MostCharacters } key] && Find(key) is { } client
            ? AuthenticateResult.Success(new AuthenticationTicket(Caller(client), Name))
            : AuthenticateResult.Fail("The API key is not valid."));
    }

    /// <inheritdoc/>
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        Response.Headers.WWWAuthenticate = access.Value.Jwt.Authority is null ? Name : new[] { Name, "Bearer" };
        return Task.CompletedTask;
    }

    private ClientOptions? Find(string key)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(key));
        ClientOptions? found = null;
        foreach (var client in access.Value.Clients)
        {
            foreach (var known in client.KeyHashes)
            {
                if (CryptographicOperations.FixedTimeEquals(hash, Convert.FromHexString(known)))
                {
                    found = client;
                }
            }
        }

        return found;
    }

    private static ClaimsPrincipal Caller(ClientOptions client)
    {
        var scopes = client.Scopes.Length > 0 ? client.Scopes : Scopes.All;
        return new(new ClaimsIdentity([new Claim(ClientRates.ClientClaim, client.Name), .. scopes.Select(s => new Claim(Scopes.Claim, s))], Name));
    }
}
