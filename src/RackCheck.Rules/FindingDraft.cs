using System.Text;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules;

/// <summary>What a rule says of one defect; the pipeline makes the <see cref="Finding"/> of it.</summary>
public sealed class FindingDraft
{
    /// <summary>One sentence with the names of values in braces, as "{item} needs {needed} mm."</summary>
    public required string Message { get; init; }

    /// <summary>The values of the message by name. Every value that the message shows is here, so that it can be worded anew.</summary>
    public required IReadOnlyList<(string Name, Scalar Value)> Data { get; init; }

    /// <summary>Readable place.</summary>
    public required string Subject { get; init; }

    /// <summary>Ids concerned, in an order that does not hang on the order of items: with the rule they make the fingerprint.</summary>
    public required IReadOnlyList<string> Identity { get; init; }

    /// <summary>What it is known by when two reports are compared, where that is not its rule and ids: rules that name the worst of several, or one fact from two sides, give what those share.</summary>
    public string? Root { get; init; }

    /// <summary>Places in the request; the first is the culprit.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>Severity, where the rule grades; else the descriptor's.</summary>
    public Severity? Severity { get; init; }

    /// <summary>What the rack has.</summary>
    public Quantity? Actual { get; init; }

    /// <summary>What it may have at most, or needs at least.</summary>
    public Quantity? Limit { get; init; }

    /// <summary>Actual to limit, percent.</summary>
    public double? UtilisationPercent { get; init; }

    /// <summary>The arithmetic with the numbers put in.</summary>
    public string? Calculation { get; init; }

    /// <summary>What cures it, best first, where the rule itself is sure of it: for rules about the report, which no trial comes after.</summary>
    public IReadOnlyList<Remedy> Remedies { get; init; } = [];

    /// <summary>What might cure it, best first: the pipeline tries each when all findings stand, and offers what holds. Read late, and not at all while a cure is tried.</summary>
    public IEnumerable<Cure>? Cures { get; init; }

    internal string RenderMessage()
    {
        // In one pass: an id may itself look like the name of a value in braces.
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
