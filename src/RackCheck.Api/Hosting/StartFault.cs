using System.Text.RegularExpressions;
using Microsoft.Extensions.Options;

namespace RackCheck.Api.Hosting;

/// <summary>Describes in one line why the service cannot start.</summary>
internal static partial class StartFault
{
    /// <summary>The line.</summary>
    public static string Describe(Exception fault)
    {
        var text = fault is OptionsValidationException invalid
            ? string.Join(' ', invalid.Failures.Select(f => $"{SectionOf(invalid.OptionsType)}: {FrameworkWords().Replace(f, "")}"))
            : string.Join(' ', Chain(fault).Select(f => f.Message));
        return Blanks().Replace(text, " ").Trim();
    }

    private static string SectionOf(Type options) => (string?)options.GetField("Section")?.GetValue(null) ?? options.Name;

    // A file that cannot be read or is not valid has the reason inside; elsewhere the outermost message says it all.
    private static IEnumerable<Exception> Chain(Exception fault)
    {
        yield return fault;
        if (fault is InvalidDataException)
        {
            for (var inner = fault.InnerException; inner is not null; inner = inner.InnerException)
            {
                yield return inner;
            }
        }
    }

    [GeneratedRegex("^DataAnnotation validation failed for .* with the error: '|'\\.?$")]
    private static partial Regex FrameworkWords();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
