namespace RackCheck.Api.OpenApi;

/// <summary>What the docs page may do in a browser.</summary>
internal static class DocsPage
{
    /// <summary>Everything comes from this service. The hash is that of the style sheet in the page of the UI's version; a browser test finds it out.</summary>
    public const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";
}
