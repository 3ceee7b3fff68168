using System.Text.Json;

namespace RackCheck.Model;

/// <summary>The rules that a check applies.</summary>
public sealed record RuleList
{
    /// <summary>Their version.</summary>
    public required RulesetInfo Ruleset { get; init; }

    /// <summary>One entry a rule, by id.</summary>
    public required IReadOnlyList<RuleSummary> Rules { get; init; }
}

/// <summary>A rule in short.</summary>
public sealed record RuleSummary
{
    /// <summary>Its id: theme and slug, stable for ever.</summary>
    public required string Id { get; init; }

    /// <summary>Its theme.</summary>
    public required string Theme { get; init; }

    /// <summary>The defect that it finds.</summary>
    public required string Title { get; init; }

    /// <summary>Severity of its findings.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Severity of its milder findings, where it grades.</summary>
    public Severity? MilderSeverity { get; init; }

    /// <summary>Whether it guards against people being hurt.</summary>
    public required bool Safety { get; init; }

    /// <summary>What it does.</summary>
    public required string What { get; init; }
}

/// <summary>All there is to know of a rule.</summary>
public sealed record RulePage
{
    /// <summary>Its id: theme and slug, stable for ever.</summary>
    public required string Id { get; init; }

    /// <summary>Its theme.</summary>
    public required string Theme { get; init; }

    /// <summary>The defect that it finds.</summary>
    public required string Title { get; init; }

    /// <summary>Severity of its findings.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Severity of its milder findings, where it grades.</summary>
    public Severity? MilderSeverity { get; init; }

    /// <summary>Whether it guards against people being hurt: it can be made stricter, never weaker, and its findings are never accepted.</summary>
    public required bool Safety { get; init; }

    /// <summary>What it does.</summary>
    public required string What { get; init; }

    /// <summary>Why that is bad.</summary>
    public required string Why { get; init; }

    /// <summary>What it computes.</summary>
    public required string Formula { get; init; }

    /// <summary>Members of the description that it reads; * stands for an index.</summary>
    public required IReadOnlyList<string> Needs { get; init; }

    /// <summary>Limits that a policy can set.</summary>
    public required IReadOnlyList<RuleLimitPage> Limits { get; init; }

    /// <summary>Where formula and limits come from.</summary>
    public required IReadOnlyList<SourcePage> Sources { get; init; }

    /// <summary>What can cure it, best first.</summary>
    public required IReadOnlyList<string> Remedies { get; init; }

    /// <summary>A rack that breaks the rule.</summary>
    public required JsonElement FailingRack { get; init; }

    /// <summary>A rack at the limit that does not.</summary>
    public required JsonElement PassingRack { get; init; }
}

/// <summary>A limit that a policy can set.</summary>
public sealed record RuleLimitPage
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>What it limits.</summary>
    public required string Meaning { get; init; }

    /// <summary>Value while no policy sets it.</summary>
    public required double Default { get; init; }

    /// <summary>Its unit.</summary>
    public required string Unit { get; init; }

    /// <summary>Least value that a policy can set.</summary>
    public required double Minimum { get; init; }

    /// <summary>Greatest value that a policy can set.</summary>
    public required double Maximum { get; init; }

    /// <summary>Which way is stricter: lower or higher.</summary>
    public required string Stricter { get; init; }
}

/// <summary>Where a formula or a limit comes from.</summary>
public sealed record SourcePage
{
    /// <summary>The key that findings name it by.</summary>
    public required string Key { get; init; }

    /// <summary>Title and clause.</summary>
    public required string Text { get; init; }

    /// <summary>How far it was seen: a page that quotes it, memory, or common practice without a source.</summary>
    public required string Standing { get; init; }
}

/// <summary>A table that the rules rely on.</summary>
public sealed record ReferenceTable
{
    /// <summary>Its name.</summary>
    public required string Table { get; init; }

    /// <summary>What it holds.</summary>
    public required string Title { get; init; }

    /// <summary>Its columns.</summary>
    public required IReadOnlyList<ReferenceColumn> Columns { get; init; }

    /// <summary>Its rows, each with a value a column.</summary>
    public required IReadOnlyList<IReadOnlyList<Scalar>> Rows { get; init; }

    /// <summary>Where they come from.</summary>
    public required IReadOnlyList<SourcePage> Sources { get; init; }
}

/// <summary>A column of a reference table.</summary>
public sealed record ReferenceColumn
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Unit of its values; absent for words.</summary>
    public string? Unit { get; init; }
}
