using System.ComponentModel.DataAnnotations;

namespace RackCheck.Api.Access;

/// <summary>Settings of access, section <c>Access</c>: who may call.</summary>
public sealed class AccessOptions : IValidatableObject
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Access";

    private const int HashLength = 64;

    /// <summary>Whether requests without credentials are answered, though there are API keys or an issuer; wrong credentials are still refused.</summary>
    public bool Anonymous { get; init; }

    /// <summary>Whether documentation, contract, rules and reference tables are served without credentials.</summary>
    public bool PublicDocs { get; init; } = true;

    /// <summary>Callers with API keys.</summary>
    public ClientOptions[] Clients { get; init; } = [];

    /// <summary>Bearer tokens of an OpenID Connect issuer.</summary>
    public JwtOptions Jwt { get; init; } = new();

    /// <summary>Whether there are API keys or an issuer.</summary>
    internal bool HasCredentials => Clients.Length > 0 || Jwt.Authority is not null;

    /// <summary>Whether requests without credentials are answered.</summary>
    internal bool IsOpen => Anonymous || !HasCredentials;

    /// <inheritdoc/>
    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Clients.Select(c => c.Name).Distinct(StringComparer.Ordinal).Count() < Clients.Length)
        {
            yield return new ValidationResult("Two clients have the same name.", [nameof(Clients)]);
        }

        foreach (var client in Clients)
        {
            if (client.Name.Length is 0 or > 64)
            {
                yield return new ValidationResult("A client has a name of 1 to 64 characters.", [nameof(Clients)]);
            }

            if (client.KeyHashes is not { Length: 1 or 2 } || !client.KeyHashes.All(h => h.Length == HashLength && h.All(char.IsAsciiHexDigit)))
            {
                yield return new ValidationResult($"Client '{client.Name}' needs one or two key hashes of 64 hexadecimal digits (SHA-256).", [nameof(Clients)]);
            }

            if (client.Scopes.Except(Scopes.All, StringComparer.Ordinal).FirstOrDefault() is { } unknown)
            {
                yield return new ValidationResult(
                    $"Client '{client.Name}' has the unknown scope '{unknown}'. Scopes: {string.Join(", ", Scopes.All)}.", [nameof(Clients)]);
            }
        }

        if (Jwt.Authority is { } authority && !(authority.IsAbsoluteUri && (authority.Scheme == "https" || (authority.Scheme == "http" && !Jwt.RequireHttps))))
        {
            yield return new ValidationResult("Jwt:Authority is not an https address.", [nameof(Jwt)]);
        }

        if (Jwt.Authority is not null != Jwt.Audience is not null)
        {
            yield return new ValidationResult("Jwt:Authority and Jwt:Audience are set together.", [nameof(Jwt)]);
        }
    }
}

/// <summary>A caller with API keys.</summary>
public sealed class ClientOptions
{
    /// <summary>Name, for rate limits and logs.</summary>
    public string Name { get; init; } = "";

    /// <summary>SHA-256 of the keys, hexadecimal. Two, so that a key can be replaced without an interruption.</summary>
    public string[] KeyHashes { get; init; } = [];

    /// <summary>What the caller may do; nothing given is everything.</summary>
    public string[] Scopes { get; init; } = [];

    /// <summary>Rate of this caller in place of the common one, requests a minute; 0 is unlimited.</summary>
    [Range(0, 10_000_000)]
    public int? PerMinute { get; init; }
}

/// <summary>Bearer tokens of an OpenID Connect issuer.</summary>
public sealed class JwtOptions
{
    /// <summary>Address of the issuer; its discovery document is below it.</summary>
    public Uri? Authority { get; init; }

    /// <summary>Audience of the tokens.</summary>
    public string? Audience { get; init; }

    /// <summary>Whether the issuer must be reached over TLS.</summary>
    public bool RequireHttps { get; init; } = true;
}
