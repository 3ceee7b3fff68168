namespace RackCheck.Documents.Pages;

/// <summary>Words on pages.</summary>
internal static class Words
{
    /// <summary>Begins a text with a capital letter.</summary>
    /// <param name="text">A text that is not empty.</param>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A parameter in an address.</summary>
    /// <param name="name">Its name.</param>
    public static string Brace(string name) => "{" + name + "}";
}
