namespace RackCheck.Model;

/// <summary>A missing fact that can change a verdict, asked once for everything that it concerns.</summary>
public sealed record Question
{
    /// <summary>Id: the member of the description, without indices, such as "items.massKg".</summary>
    public required string Id { get; init; }

    /// <summary>
    /// The missing members, RFC 6901 pointers. Each takes a value as the description has it. Where they are members of different names, the first that is
    /// given answers the question for its owner: the list of bonded parts, or the bond of each door.
    /// </summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>The question in words that can be passed on to the customer.</summary>
    public required string Ask { get; init; }

    /// <summary>Key of the wording, for translation into other languages.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the question, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }

    /// <summary>Unit of the answer, such as kg. Absent where the answer is not one number with a unit.</summary>
    public string? Unit { get; init; }

    /// <summary>Ids of the rules whose answer depends on it.</summary>
    public required IReadOnlyList<string> Rules { get; init; }

    /// <summary>The verdict that it decides: product where it decides both.</summary>
    public required Concern Decides { get; init; }

    /// <summary>The verdicts that are possible if the answer is favourable and everything else stays as it is.</summary>
    public required Verdicts IfAnsweredWell { get; init; }
}

/// <summary>One thing that keeps a verdict from release.</summary>
public sealed record VerdictReason
{
    /// <summary>The verdict concerned.</summary>
    public required Concern Concern { get; init; }

    /// <summary>Id of the rule. Absent for a question.</summary>
    public string? Rule { get; init; }

    /// <summary>Fingerprint of the finding. Absent where the reason is no finding, or findings that the report omits.</summary>
    public string? Fingerprint { get; init; }

    /// <summary>Id of the question. Absent where the reason is not a question.</summary>
    public string? Question { get; init; }

    /// <summary>The verdict that it makes by itself.</summary>
    public required Verdict Makes { get; init; }
}
