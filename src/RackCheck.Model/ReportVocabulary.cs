using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>Severity of a finding.</summary>
[JsonConverter(typeof(NamedEnumConverter<Severity>))]
public enum Severity
{
    /// <summary>The rack cannot be built, closed, operated or delivered as described.</summary>
    Error,

    /// <summary>An engineer should review it.</summary>
    Warning,

    /// <summary>An improvement is possible.</summary>
    Advice,
}

/// <summary>Severity that a caller's policy sets for a rule.</summary>
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

/// <summary>Release decision for the order.</summary>
[JsonConverter(typeof(NamedEnumConverter<Verdict>))]
public enum Verdict
{
    /// <summary>No open error, warning or question, and all safety rules assessed.</summary>
    Release,

    /// <summary>An open warning or question, or a safety rule that could not be assessed. An engineer must review the order.</summary>
    Review,

    /// <summary>An open error.</summary>
    Hold,
}

/// <summary>Why a rule was not applied to the whole rack.</summary>
[JsonConverter(typeof(NamedEnumConverter<NotAssessedReason>))]
public enum NotAssessedReason
{
    /// <summary>The description does not give the data that the rule needs.</summary>
    Missing,

    /// <summary>The caller's policy switches the rule off.</summary>
    Policy,

    /// <summary>The rule failed because of an internal error.</summary>
    Failed,
}

/// <summary>What a rule's findings are about.</summary>
[JsonConverter(typeof(NamedEnumConverter<Concern>))]
public enum Concern
{
    /// <summary>What is ordered: whether it fits and works together.</summary>
    Product,

    /// <summary>The place: whether it is fit for what is ordered.</summary>
    Site,
}

/// <summary>Why an acceptance no longer covers its finding.</summary>
[JsonConverter(typeof(NamedEnumConverter<LapseReason>))]
public enum LapseReason
{
    /// <summary>The actual value is worse than the accepted one, or cannot be compared with it.</summary>
    Exceeded,

    /// <summary>The acceptance expired before <c>asOf</c> of the request.</summary>
    Expired,
}
