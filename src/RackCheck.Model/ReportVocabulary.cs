using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>How grave a finding is.</summary>
[JsonConverter(typeof(NamedEnumConverter<Severity>))]
public enum Severity
{
    /// <summary>The rack cannot be built, closed, run or delivered as described.</summary>
    Error,

    /// <summary>An engineer should look at it.</summary>
    Warning,

    /// <summary>It could be better.</summary>
    Advice,
}

/// <summary>The severity that a caller's policy gives to a rule.</summary>
[JsonConverter(typeof(NamedEnumConverter<PolicySeverity>))]
public enum PolicySeverity
{
    /// <summary>Every finding of the rule is an error.</summary>
    Error,

    /// <summary>Every finding of the rule is a warning.</summary>
    Warning,

    /// <summary>Every finding of the rule is advice.</summary>
    Advice,

    /// <summary>The rule is not run.</summary>
    Off,
}

/// <summary>What may be done with the order.</summary>
[JsonConverter(typeof(NamedEnumConverter<Verdict>))]
public enum Verdict
{
    /// <summary>No open error or warning, and no safety rule left unassessed.</summary>
    Release,

    /// <summary>An open warning, or a safety rule that could not be assessed: an engineer looks at it.</summary>
    Review,

    /// <summary>An open error.</summary>
    Hold,
}

/// <summary>Why a rule was not applied to all of the rack.</summary>
[JsonConverter(typeof(NamedEnumConverter<NotAssessedReason>))]
public enum NotAssessedReason
{
    /// <summary>The description does not give what it needs.</summary>
    Missing,

    /// <summary>The caller's policy switches it off.</summary>
    Policy,

    /// <summary>It failed inside the service.</summary>
    Failed,
}
