using System.Security.Cryptography;
using System.Text;
using RackCheck.Documents.Pages;

namespace RackCheck.Api.OpenApi;

/// <summary>Style and script of the explorer, and the content security policy of the documentation.</summary>
internal static class DocsPage
{
    /// <summary>Name of the explorer's style sheet.</summary>
    public const string StylePath = "page.css";

    /// <summary>Name of the explorer's script.</summary>
    public const string ScriptPath = "page.js";

    /// <summary>Name of the explorer's plug-in, which its script defines.</summary>
    public const string PlugIn = "OneControlInOnePlace";

    /// <summary>
    /// The service has one contract and one server, so what chooses among several is hidden. On a telephone the description of a group stands below its name.
    /// </summary>
    public const string Style = """
        .swagger-ui .topbar, .swagger-ui .servers-title, .swagger-ui .servers { display: none }
        @media (max-width: 40rem) {
          .swagger-ui .opblock-tag { flex-wrap: wrap } .swagger-ui .opblock-tag small { flex-basis: 100%; order: 1; padding: 0 }
          .swagger-ui .opblock-summary-path { max-width: 100%; padding: .3rem 0 }
        }
        """;

    /// <summary>The explorer has a link inside of each button that opens an operation: no keyboard or screen reader can tell them apart. The text stays.</summary>
    public const string Script = $"window.{PlugIn} = () => ({{ wrapComponents: {{\n"
        + "  DeepLink: (_, system) => ({ text }) => system.React.createElement(\"span\", null, text),\n} });\n";

    /// <summary>
    /// Everything comes from this service; nothing is loaded, framed or sent elsewhere. A picture in an answer is a blob. The first hash allows the one
    /// inline style of this version of the UI; after an update the browser test reports the new hash. The second allows the style of drawings on pages.
    /// </summary>
    public static string ContentSecurityPolicy { get; } =
        $"default-src 'none'; script-src 'self'; style-src 'self' 'sha256-RL3ie0nH+Lzz2YNqQN83mnU0J1ot4QL7b99vMdIX99w=' 'sha256-{DrawingHash()}'; "
        + "img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";

    private static string DrawingHash() => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(DocsSite.DrawingStyle)));
}
