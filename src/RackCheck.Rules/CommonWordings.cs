using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>Wordings that every rule can have.</summary>
internal static class CommonWordings
{
    /// <summary>Ends a message of a finding that holds over the whole range of what is missing.</summary>
    public const string HoldsAnyway = " This holds whatever the missing values are.";

    /// <summary>Ends the key of such a message.</summary>
    public const string HoldsAnywayKey = ".over-range";

    /// <summary>The policy switches the rule off.</summary>
    public static readonly MissingData SwitchedOff = new("not-assessed.policy", "The policy of the request switches the rule off.");

    /// <summary>The rule failed.</summary>
    public static readonly MissingData Failed = new("not-assessed.failed", "The rule failed inside the service and was not applied to this rack.");

    /// <summary>The rack is not described.</summary>
    public static readonly MissingData Essential = new(
        "not-assessed.essential", "This essential data is missing, and the part numbers do not supply it, so the rack cannot be checked.");

    /// <summary>An acceptance ended.</summary>
    public static readonly MessageWording Expired = new("acceptance-lapsed.expired", "The acceptance by {acceptedBy} expired at {expiresAt}.");

    /// <summary>A finding is worse than accepted.</summary>
    public static readonly MessageWording Exceeded = new(
        "acceptance-lapsed.exceeded", "{accepted} {unit} was accepted by {acceptedBy}; it is {actual} {unit} now.");

    /// <summary>A finding cannot be compared with what was accepted.</summary>
    public static readonly MessageWording NoActual = new(
        "acceptance-lapsed.no-actual", "{accepted} {unit} was accepted; the finding has no actual value in {unit}.");

    /// <summary>The wording of a finding that holds over the whole range of what is missing.</summary>
    /// <param name="wording">The wording of the finding.</param>
    public static MessageWording OverRange(MessageWording wording) => new(wording.Key + HoldsAnywayKey, wording.Template + HoldsAnyway);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<MessageWording> All => [SwitchedOff, Failed, Essential, Expired, Exceeded, NoActual];
}
