namespace RackCheck.Rules;

/// <summary>
/// A rule of either kind. One sealed class in one file with one descriptor; it has no state. <see cref="RuleSet"/> finds every one in this
/// assembly, so that a new rule is one new file.
/// </summary>
public abstract class RuleBase
{
    /// <summary>All that there is to say about it.</summary>
    public abstract RuleDescriptor Descriptor { get; }
}

/// <summary>A rule about the rack: it reads the survey, writes findings and knows no other rule.</summary>
public abstract class Rule : RuleBase
{
    /// <summary>Applies the rule.</summary>
    /// <param name="context">The survey to read, the limits in force, and where findings go.</param>
    public abstract void Check(RuleContext context);
}

/// <summary>A rule about the part numbers of the description: it reads what they stand for, and is applied even where the rack cannot be worked out without them.</summary>
public abstract class PartRule : RuleBase
{
    /// <summary>Applies the rule.</summary>
    /// <param name="context">The rack with its part numbers, and where findings go. There need be no survey.</param>
    public abstract void Check(RuleContext context);
}

/// <summary>A rule about the report itself, applied when the findings of all other rules stand.</summary>
public abstract class ReportRule : RuleBase
{
    /// <summary>Applies the rule.</summary>
    /// <param name="context">The survey to read, the limits in force, and where findings go.</param>
    /// <param name="findings">What the other rules found, with acceptances marked.</param>
    public abstract void Check(RuleContext context, IReadOnlyList<Model.Finding> findings);
}
