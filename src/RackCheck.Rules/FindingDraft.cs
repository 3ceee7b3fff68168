using System.Text;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules;

/// <summary>One defect as a rule reports it; the pipeline turns it into a <see cref="Finding"/>.</summary>
public sealed class FindingDraft
{
    /// <summary>One sentence with the names of values in braces, for example "{item} needs {needed} mm."</summary>
    public required string Message { get; init; }

    /// <summary>The values of the message by name, so that a client can write its own message from them.</summary>
    public required IReadOnlyList<(string Name, Scalar Value)> Data { get; init; }

    /// <summary>Place in words.</summary>
    public required string Subject { get; init; }

    /// <summary>Ids concerned, in an order that does not depend on the order of items. The fingerprint is made from the rule and these ids.</summary>
    public required IReadOnlyList<string> Identity { get; init; }

    /// <summary>Places in the request; the first is the cause.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>Severity, where the rule has two; default the descriptor's.</summary>
    public Severity? Severity { get; init; }

    /// <summary>Actual value.</summary>
    public Quantity? Actual { get; init; }

    /// <summary>Permitted maximum or required minimum.</summary>
    public Quantity? Limit { get; init; }

    /// <summary>Actual value as a share of the limit, percent.</summary>
    public double? UtilisationPercent { get; init; }

    /// <summary>The calculation with its values.</summary>
    public string? Calculation { get; init; }

    /// <summary>Remedies, best first, that need no verification: for rules about the report, which run after all trials.</summary>
    public IReadOnlyList<Remedy> Remedies { get; init; } = [];

    /// <summary>
    /// Remedy candidates, best first. After all rules the pipeline verifies each candidate and offers the verified remedies. Not read during a trial.
    /// </summary>
    public IEnumerable<RemedyCandidate>? Candidates { get; init; }

    internal string RenderMessage()
    {
        // In one pass, because an id can look like the name of a value in braces.
        var text = new StringBuilder();
        var at = 0;
        for (var open = Message.IndexOf('{'); open >= 0; open = Message.IndexOf('{', at))
        {
            var close = Message.IndexOf('}', open);
            var name = Message[(open + 1)..close];
            text.Append(Message, at, open - at).Append(Quantities.InSentence(Data.First(d => d.Name == name).Value, Data));
            at = close + 1;
        }

        return text.Append(Message, at, Message.Length - at).ToString();
    }
}
