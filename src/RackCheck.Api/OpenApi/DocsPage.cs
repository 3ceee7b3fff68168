using System.Security.Cryptography;
using System.Text;
using RackCheck.Documents.Pages;

namespace RackCheck.Api.OpenApi;

/// <summary>The content security policy of the documentation.</summary>
internal static class DocsPage
{
    /// <summary>
    /// Everything comes from this service; nothing is loaded, framed or sent elsewhere. A picture in an answer is a blob. The first hash allows the one
    /// inline style of this version of the UI; after an update the browser test reports the new hash. The second allows the style of drawings on pages.
    /// </summary>
    public static string ContentSecurityPolicy { get; } =
        $"default-src 'none'; script-src 'self'; style-src 'self' 'sha256-RL3ie0nH+Lzz2YNqQN83mnU0J1ot4QL7b99vMdIX99w=' 'sha256-{DrawingHash()}'; "
        + "img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";

    private static string DrawingHash() => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(DocsSite.DrawingStyle)));
}
