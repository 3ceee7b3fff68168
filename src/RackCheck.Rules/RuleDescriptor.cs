using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Limits;

namespace RackCheck.Rules;

/// <summary>Documentation and limits of a rule: the source of its page, the list of rules, the contract documentation and its tests.</summary>
public sealed record RuleDescriptor
{
    /// <summary>Theme and slug; stable, and never reused.</summary>
    public required string Id { get; init; }

    /// <summary>The defect in a few words; unique.</summary>
    public required string Title { get; init; }

    /// <summary>Severity of its findings.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Severity of its milder findings, where it has two severities.</summary>
    public Severity? MilderSeverity { get; init; }

    /// <summary>Whether the rule protects people: a policy can make it stricter, never weaker, and its findings cannot be accepted.</summary>
    public bool Safety { get; init; }

    /// <summary>The verdict for which its findings count.</summary>
    public Concern Concern { get; init; } = Concern.Product;

    /// <summary>Defects that the rule finds.</summary>
    public required string What { get; init; }

    /// <summary>Consequence of the defect.</summary>
    public required string Why { get; init; }

    /// <summary>Formula or condition.</summary>
    public required string Formula { get; init; }

    /// <summary>Sources of formula and limits.</summary>
    public required IReadOnlyList<Source> Sources { get; init; }

    /// <summary>Limits that a policy can set.</summary>
    public IReadOnlyList<RuleLimit> Limits { get; init; } = [];

    /// <summary>Members of the description that it reads; * stands for an index.</summary>
    public required IReadOnlyList<string> Needs { get; init; }

    /// <summary>Decisions on cases that formula and sources leave open.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Possible remedies, best first.</summary>
    public required IReadOnlyList<string> Remedies { get; init; }

    /// <summary>Safety notes for work on a finding.</summary>
    public IReadOnlyList<WordedText> Cautions { get; init; } = [];

    /// <summary>Classes whose wordings it uses besides its own.</summary>
    public IReadOnlyList<Type> SharesWordingsOf { get; init; } = [];

    /// <summary>The part of the id before the point.</summary>
    public string Theme => Id[..Id.IndexOf('.', StringComparison.Ordinal)];

    /// <summary>Name of the rule's class and files: the part of the id after the point, as one word.</summary>
    public string ClassName => string.Concat(Id[(Theme.Length + 1)..].Split('-').Select(w => char.ToUpperInvariant(w[0]) + w[1..]));

    /// <summary>JSON of a rack with a finding of the rule. Read from its file on first use: the pages of the rules are made at start.</summary>
    public string FailingRack => failingRack ??= RuleExamples.Read(ClassName, "fails");

    /// <summary>JSON of a rack at the limit, without a finding.</summary>
    public string PassingRack => passingRack ??= RuleExamples.Read(ClassName, "passes");

    /// <summary>Keys of the sources, as findings cite them.</summary>
    public IReadOnlyList<string> SourceKeys => sourceKeys ??= [.. Sources.Select(s => s.Key)];

    private string? failingRack;

    private string? passingRack;

    private string[]? sourceKeys;
}
