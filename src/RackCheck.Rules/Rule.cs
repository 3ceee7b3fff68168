using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>
/// A rule of either kind. One sealed class in one file with one descriptor; it has no state. <see cref="RuleSet"/> finds every one in this
/// assembly, so that a new rule is one new file.
/// </summary>
public abstract class RuleBase
{
    /// <summary>Documentation and limits of the rule.</summary>
    public abstract RuleDescriptor Descriptor { get; }

    /// <summary>Wordings of its messages, by key: those of its class, of the classes that it shares, and those that every rule has.</summary>
    public IReadOnlyList<MessageWording> Wordings => wordings ??= [.. Collect().OrderBy(w => w.Key, StringComparer.Ordinal)];

    private IReadOnlyList<MessageWording>? wordings;

    private IEnumerable<MessageWording> Collect()
    {
        var own = Descriptor.SharesWordingsOf.Prepend(GetType()).SelectMany(MessageWording.DeclaredIn).ToArray();
        var ranged = this is Rule ? own.Where(w => w is not MissingData).Select(CommonWordings.OverRange) : [];
        return own.Concat(ranged).Concat(CommonWordings.All);
    }
}

/// <summary>A rule about the rack: it reads the survey, writes findings and knows no other rule.</summary>
public abstract class Rule : RuleBase
{
    /// <summary>Applies the rule.</summary>
    /// <param name="context">The survey, the limits in force and the list of findings.</param>
    public abstract void Check(RuleContext context);
}

/// <summary>A rule about the part numbers of the description. It is applied even where the essential data of the rack is missing.</summary>
public abstract class PartRule : RuleBase
{
    /// <summary>Applies the rule.</summary>
    /// <param name="context">The rack with its part numbers, and the list of findings. There may be no survey.</param>
    public abstract void Check(RuleContext context);
}

/// <summary>A rule about the report itself, applied after all other rules.</summary>
public abstract class ReportRule : RuleBase
{
    /// <summary>Applies the rule.</summary>
    /// <param name="context">The survey, the limits in force and the list of findings.</param>
    /// <param name="findings">What the other rules found, with acceptances marked.</param>
    /// <param name="notAssessed">Rules that were not assessed, with sign-offs marked.</param>
    public abstract void Check(RuleContext context, IReadOnlyList<Model.Finding> findings, IReadOnlyList<Model.NotAssessed> notAssessed);
}
