namespace RackCheck.Api.Catalogue;

/// <summary>A header with credentials, section <c>Catalogue:Header</c>.</summary>
public sealed class CatalogueHeaderOptions
{
    // Headers that the client sets itself.
    private static readonly string[] Own = ["Accept", "Connection", "Content-Length", "Content-Type", "Host", "Transfer-Encoding"];

    /// <summary>Name of the header, as <c>X-API-Key</c> or <c>Authorization</c>.</summary>
    public string? Name { get; init; }

    /// <summary>Its value.</summary>
    public string? Value { get; init; }

    /// <summary>A file with its value, read for each call, so that it can be replaced.</summary>
    public string? ValueFile { get; init; }

    /// <summary>Whether there is a header.</summary>
    internal bool IsSet => Name is not null || Value is not null || ValueFile is not null;

    /// <summary>The value.</summary>
    internal Secret Secret => new(Value, ValueFile);

    /// <summary>What is wrong with the settings.</summary>
    internal IEnumerable<string> Faults()
    {
        if (IsSet && (Name is not { Length: > 0 } name || !name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            || Own.Contains(name, StringComparer.OrdinalIgnoreCase)))
        {
            yield return "Header:Name is not a name of a header for credentials.";
        }

        if (IsSet && Secret.Fault("Header:Value") is { } fault)
        {
            yield return fault;
        }
    }
}

/// <summary>OAuth 2 client credentials, RFC 6749 section 4.4; section <c>Catalogue:OAuth</c>.</summary>
public sealed class CatalogueOAuthOptions
{
    /// <summary>Address of the token endpoint.</summary>
    public Uri? TokenEndpoint { get; init; }

    /// <summary>Client id.</summary>
    public string? ClientId { get; init; }

    /// <summary>Client secret.</summary>
    public string? ClientSecret { get; init; }

    /// <summary>A file with the client secret, read for each token, so that it can be replaced.</summary>
    public string? ClientSecretFile { get; init; }

    /// <summary>Scope to ask for; default the issuer's.</summary>
    public string? Scope { get; init; }

    /// <summary>Whether there are client credentials.</summary>
    internal bool IsSet => TokenEndpoint is not null || ClientId is not null || ClientSecret is not null || ClientSecretFile is not null || Scope is not null;

    /// <summary>The client secret.</summary>
    internal Secret Secret => new(ClientSecret, ClientSecretFile);

    /// <summary>What is wrong with the settings.</summary>
    internal IEnumerable<string> Faults(bool requireHttps)
    {
        if (!IsSet)
        {
            yield break;
        }

        if (TokenEndpoint is not { IsAbsoluteUri: true, Scheme: "http" or "https", UserInfo.Length: 0, Fragment.Length: 0 })
        {
            yield return "OAuth:TokenEndpoint is not a plain http or https address.";
        }
        else if (requireHttps && TokenEndpoint is { Scheme: "http", IsLoopback: false })
        {
            yield return "OAuth:TokenEndpoint must be an https address, since credentials are sent, or RequireHttps false.";
        }

        if (string.IsNullOrEmpty(ClientId))
        {
            yield return "OAuth:ClientId is missing.";
        }

        if (Secret.Fault("OAuth:ClientSecret") is { } fault)
        {
            yield return fault;
        }
    }
}

/// <summary>A secret from a setting or from a file. It is never shown.</summary>
/// <param name="value">The secret.</param>
/// <param name="file">A file with the secret; a relative path starts at the directory of the service.</param>
internal readonly struct Secret(string? value, string? file)
{
    /// <summary>Reads the secret.</summary>
    /// <returns>The secret without a line end; null if the file cannot be read, or it is not one line of visible characters.</returns>
    public string? Read()
    {
        try
        {
            var text = value ?? File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file!)).TrimEnd('\r', '\n');
            return text.Length > 0 && !text.AsSpan().ContainsAnyExceptInRange(' ', '~') ? text : null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>What is wrong with the settings of the secret.</summary>
    /// <param name="name">Name of the setting of its value.</param>
    /// <returns>The message; null if nothing is wrong.</returns>
    public string? Fault(string name) =>
        value is not null == file is not null ? $"{name} or {name}File is set, not both."
        : Read() is null ? $"{name}{(file is null ? "" : "File")} is not one line of visible ASCII characters{(file is null ? "" : ", or cannot be read")}."
        : null;
}
