namespace RackCheck.Api.OpenApi;

/// <summary>How the docs page looks, and what it may do in a browser.</summary>
internal static class DocsPage
{
    /// <summary>Name of the page's own style sheet.</summary>
    public const string StylePath = "page.css";

    /// <summary>The service has one contract, so the bar to choose among several goes, and with it the mark of the UI's maker.</summary>
    public const string Style = ".swagger-ui .topbar { display: none }";

    /// <summary>
    /// Everything comes from this service; nothing is loaded, framed or sent elsewhere. The hash allows the one style that this version of the
    /// UI sets in line; after an update the browser test tells the new one.
    /// </summary>
    public const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'sha256-RL3ie0nH+Lzz2YNqQN83mnU0J1ot4QL7b99vMdIX99w='; img-src 'self' data:; font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";
}
