using System.Text.Json;

namespace RackCheck.Model;

/// <summary>Rules applied by a check.</summary>
public sealed record RuleList
{
    /// <summary>Version of the ruleset.</summary>
    public required RulesetInfo Ruleset { get; init; }

    /// <summary>Changes of the ruleset, newest version first.</summary>
    public required IReadOnlyList<RulesetChange> Changes { get; init; }

    /// <summary>One entry per rule, sorted by id.</summary>
    public required IReadOnlyList<RuleSummary> Rules { get; init; }
}

/// <summary>What a version of the ruleset changed.</summary>
public sealed record RulesetChange
{
    /// <summary>Version of the ruleset: year, month, counter.</summary>
    public required string Version { get; init; }

    /// <summary>The changes, one sentence each.</summary>
    public required IReadOnlyList<string> Changes { get; init; }
}

/// <summary>What each version of the ruleset changed.</summary>
public sealed record RulesetHistory
{
    /// <summary>The versions, newest first.</summary>
    public required IReadOnlyList<RulesetVersion> Rulesets { get; init; }
}

/// <summary>A version of the ruleset.</summary>
public sealed record RulesetVersion
{
    /// <summary>Version of the ruleset: year, month, counter.</summary>
    public required string Version { get; init; }

    /// <summary>The changes.</summary>
    public required IReadOnlyList<RulesetEntry> Changes { get; init; }
}

/// <summary>One change of the ruleset.</summary>
public sealed record RulesetEntry
{
    /// <summary>The change, one or more sentences.</summary>
    public required string Text { get; init; }

    /// <summary>Ids of the rules that the change names. Empty for a change that concerns many rules, or the report.</summary>
    public required IReadOnlyList<string> Rules { get; init; }
}

/// <summary>Summary of a rule.</summary>
public sealed record RuleSummary
{
    /// <summary>Id: theme and short name. It never changes.</summary>
    public required string Id { get; init; }

    /// <summary>Theme of the rule.</summary>
    public required string Theme { get; init; }

    /// <summary>The defect that the rule finds.</summary>
    public required string Title { get; init; }

    /// <summary>Severity of the findings.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Severity of milder findings, where the rule has two severities.</summary>
    public Severity? MilderSeverity { get; init; }

    /// <summary>The verdict for which its findings count: product or site.</summary>
    public required Concern Concern { get; init; }

    /// <summary>Whether the rule protects people from injury.</summary>
    public required bool Safety { get; init; }

    /// <summary>What the rule checks.</summary>
    public required string What { get; init; }

    /// <summary>Latest version of the ruleset with a change that names the rule; absent where none does. GET /v1/rulesets has the changes.</summary>
    public string? ChangedIn { get; init; }
}

/// <summary>Full description of a rule.</summary>
public sealed record RulePage
{
    /// <summary>Id: theme and short name. It never changes.</summary>
    public required string Id { get; init; }

    /// <summary>Theme of the rule.</summary>
    public required string Theme { get; init; }

    /// <summary>The defect that the rule finds.</summary>
    public required string Title { get; init; }

    /// <summary>Severity of the findings.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Severity of milder findings, where the rule has two severities.</summary>
    public Severity? MilderSeverity { get; init; }

    /// <summary>The verdict for which its findings count: product or site.</summary>
    public required Concern Concern { get; init; }

    /// <summary>Whether the rule protects people from injury. It can be made stricter, never weaker, and its findings cannot be accepted.</summary>
    public required bool Safety { get; init; }

    /// <summary>What the rule checks.</summary>
    public required string What { get; init; }

    /// <summary>Latest version of the ruleset with a change that names the rule; absent where none does. GET /v1/rulesets has the changes.</summary>
    public string? ChangedIn { get; init; }

    /// <summary>Why the defect matters.</summary>
    public required string Why { get; init; }

    /// <summary>The formula that the rule applies.</summary>
    public required string Formula { get; init; }

    /// <summary>Decisions on cases that formula and sources leave open; absent where there are none.</summary>
    public IReadOnlyList<string>? Notes { get; init; }

    /// <summary>Members of the description that the rule reads; * stands for an index.</summary>
    public required IReadOnlyList<string> Needs { get; init; }

    /// <summary>Limits that a policy can change.</summary>
    public required IReadOnlyList<RuleLimitPage> Limits { get; init; }

    /// <summary>Sources of the formula and the limits.</summary>
    public required IReadOnlyList<SourcePage> Sources { get; init; }

    /// <summary>Possible remedies, best first.</summary>
    public required IReadOnlyList<string> Remedies { get; init; }

    /// <summary>Wordings of its messages, by key.</summary>
    public required IReadOnlyList<WordingPage> Wordings { get; init; }

    /// <summary>Example of a rack that fails the rule.</summary>
    public required JsonElement FailingRack { get; init; }

    /// <summary>Example of a rack at the limit that passes the rule.</summary>
    public required JsonElement PassingRack { get; init; }
}

/// <summary>A wording of messages.</summary>
public sealed record WordingPage
{
    /// <summary>Key that messages name.</summary>
    public required string MessageKey { get; init; }

    /// <summary>
    /// The sentence in English with the names of <c>messageData</c> in braces. A list is rendered as "a, b and c", from five values on as "a, b, c and 2
    /// more"; {name:all} names all; {name:exact} is a number with up to three decimals, or all of a list with commas; {name:words} is a code in words,
    /// front-door as "front door"; {name:units} is a range of U positions, as "U10-U13"; {name:u} is a list of heights, as "6 U and 2 U".
    /// </summary>
    public required string Template { get; init; }
}

/// <summary>A limit that a policy can change.</summary>
public sealed record RuleLimitPage
{
    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>What it limits.</summary>
    public required string Meaning { get; init; }

    /// <summary>Default value.</summary>
    public required double Default { get; init; }

    /// <summary>Unit of measure.</summary>
    public required string Unit { get; init; }

    /// <summary>Minimum value that a policy can set.</summary>
    public required double Minimum { get; init; }

    /// <summary>Maximum value that a policy can set.</summary>
    public required double Maximum { get; init; }

    /// <summary>Direction that makes the rule stricter: lower or higher.</summary>
    public required string Stricter { get; init; }
}

/// <summary>Source of a formula or a limit.</summary>
public sealed record SourcePage
{
    /// <summary>Key that findings cite.</summary>
    public required string Key { get; init; }

    /// <summary>Title and clause.</summary>
    public required string Text { get; init; }

    /// <summary>How the source was consulted: a page that quotes it, from memory, common practice without a source, or derived.</summary>
    public required string Standing { get; init; }
}

/// <summary>A reference table used by the rules.</summary>
public sealed record ReferenceTable
{
    /// <summary>Name.</summary>
    public required string Table { get; init; }

    /// <summary>Title of the table.</summary>
    public required string Title { get; init; }

    /// <summary>Columns of the table.</summary>
    public required IReadOnlyList<ReferenceColumn> Columns { get; init; }

    /// <summary>Rows of the table, each with one value per column.</summary>
    public required IReadOnlyList<IReadOnlyList<Scalar>> Rows { get; init; }

    /// <summary>Sources of the values.</summary>
    public required IReadOnlyList<SourcePage> Sources { get; init; }
}

/// <summary>A column of a reference table.</summary>
public sealed record ReferenceColumn
{
    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Unit of measure of the values. Absent for text.</summary>
    public string? Unit { get; init; }
}
