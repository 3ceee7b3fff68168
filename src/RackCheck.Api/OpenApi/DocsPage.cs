namespace RackCheck.Api.OpenApi;

/// <summary>Style and content security policy of the docs page.</summary>
internal static class DocsPage
{
    /// <summary>Name of the page's style sheet.</summary>
    public const string StylePath = "page.css";

    /// <summary>The service has one contract, so the bar for choosing a contract is hidden.</summary>
    public const string Style = ".swagger-ui .topbar { display: none }";

    /// <summary>
    /// Everything comes from this service; nothing is loaded, framed or sent elsewhere. A picture in an answer is a blob. The hash allows the one inline
    /// style of this version of the UI. After an update the browser test reports the new hash.
    /// </summary>
    public const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'sha256-RL3ie0nH+Lzz2YNqQN83mnU0J1ot4QL7b99vMdIX99w='; img-src 'self' data: blob:; "
        + "font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";
}
