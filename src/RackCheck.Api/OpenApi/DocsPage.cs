namespace RackCheck.Api.OpenApi;

/// <summary>How the docs page looks, and what it may do in a browser.</summary>
internal static class DocsPage
{
    /// <summary>Name of the page's own style sheet.</summary>
    public const string StylePath = "page.css";

    /// <summary>The service has one contract, so the bar to choose among several goes, and with it the mark of the UI's maker.</summary>
    public const string Style = ".swagger-ui .topbar { display: none }";

    /// <summary>Everything comes from this service; nothing is loaded, framed or sent elsewhere. A browser test shows that the page works under it.</summary>
    public const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";
}
