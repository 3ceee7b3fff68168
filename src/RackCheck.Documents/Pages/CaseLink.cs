using System.Buffers.Text;
using System.IO.Compression;
using System.Text;

namespace RackCheck.Documents.Pages;

/// <summary>Links that open a case in the workbench. The case is in the fragment: its text, compressed (deflate), in base64url.</summary>
internal static class CaseLink
{
    /// <summary>A link that opens the description of a rack.</summary>
    /// <param name="from">Address of the page that it is on.</param>
    /// <param name="rack">The description, JSON.</param>
    /// <param name="text">Its text.</param>
    public static Html Check(string from, string rack, string text) => PageFrame.Link(from, $"{Paths.Workbench}#check={Code(JsonListing.Layout(rack))}", text);

    private static string Code(string text)
    {
        using var output = new MemoryStream();
        using (var stream = new DeflateStream(output, CompressionLevel.SmallestSize))
        {
            stream.Write(Encoding.UTF8.GetBytes(text));
        }

        return Base64Url.EncodeToString(output.ToArray());
    }
}
