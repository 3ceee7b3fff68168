using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Documents.Pages;

/// <summary>Severities and verdicts as a shape and a word, so that neither colour nor shape alone carries the meaning.</summary>
internal static class Signs
{
    // The shapes of the balloons on drawings: octagon, triangle, circle.
    private static readonly Html Octagon = new("<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><path d=\"M5 0h6l5 5v6l-5 5H5l-5-5V5z\"/></svg>");
    private static readonly Html Triangle = new("<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><path d=\"M8 1l8 14H0z\"/></svg>");
    private static readonly Html Circle = new("<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><circle cx=\"8\" cy=\"8\" r=\"7\"/></svg>");
    private static readonly Html Check = new(
        "<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><path d=\"M2 8.5l4 4L14 4\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.5\"/></svg>");
    private static readonly Html Shield = new(
        "<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\"><path d=\"M8 0l7 2v6c0 4-3 6.5-7 8-4-1.5-7-4-7-8V2z\"/></svg>");

    /// <summary>A severity.</summary>
    /// <param name="severity">The severity.</param>
    public static Html Of(Severity severity) => Sign(NamedEnumConverter<Severity>.Name(severity), severity switch
    {
        Severity.Error => Octagon,
        Severity.Warning => Triangle,
        _ => Circle,
    });

    /// <summary>A verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static Html Of(Verdict verdict) => Sign(NamedEnumConverter<Verdict>.Name(verdict), verdict switch
    {
        Verdict.Hold => Octagon,
        Verdict.Review => Triangle,
        _ => Check,
    });

    /// <summary>The severities of a rule, and whether it is a safety rule.</summary>
    /// <param name="rule">The rule.</param>
    public static Html Of(Rules.RuleDescriptor rule)
    {
        var severities = rule.MilderSeverity is { } milder ? Html.Of($"{Of(rule.Severity)}{Of(milder)}") : Of(rule.Severity);
        return rule.Safety ? Html.Of($"{severities}<span class=\"sign\">{Shield}safety</span>") : severities;
    }

    private static Html Sign(string word, Html shape) => Html.Of($"<span class=\"sign {word}\">{shape}{word}</span>");
}
