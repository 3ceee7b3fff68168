using System.Collections.Frozen;
using RackCheck.Model;
using RackCheck.Remedies.Verification;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Limits;

namespace RackCheck.Rules;

/// <summary>Input and output of a rule. The pipeline uses one context for all rules of a request.</summary>
public sealed class RuleContext
{
    private readonly FindingList findings;
    private readonly List<NotAssessed> notAssessed;
    private readonly RemedyTrials? trials;
    private readonly RackSurvey? survey;
    private RuleDescriptor descriptor = null!;
    private RulePolicy? policy;
    private List<string>? missing;
    private (MissingData Wording, string Message, IReadOnlyList<(string Name, Scalar Value)> Data)? missingMessage;
    private bool isProbe;

    internal RuleContext(ResolvedRack rack, RackSurvey? survey, FindingList findings, List<NotAssessed> notAssessed, RemedyTrials? trials) =>
        (Rack, this.survey, this.findings, this.notAssessed, this.trials) = (rack, survey, findings, notAssessed, trials);

    /// <summary>The description as posted, and with its part numbers filled in.</summary>
    public ResolvedRack Rack { get; }

    /// <summary>The facts of the rack.</summary>
    /// <exception cref="InvalidOperationException">Essential data is missing; only rules about part numbers are applied.</exception>
    public RackSurvey Survey => survey ?? throw new InvalidOperationException("Essential data of the rack is missing.");

    internal bool HasSurvey => survey is not null;

    /// <summary>The value of a limit: set by the policy, or the default.</summary>
    /// <param name="limit">The limit.</param>
    /// <returns>Its value in its unit.</returns>
    public double Limit(RuleLimit limit) => RulePolicyReader.ValueOf(policy, limit);

    /// <summary>Reports a defect.</summary>
    /// <param name="draft">The defect.</param>
    public void Report(FindingDraft draft)
    {
        var severity = SeverityOf(draft.Severity ?? descriptor.Severity);
        var fingerprint = Fingerprints.Of(descriptor.Id, draft.Identity);
        if (findings.IsFull)
        {
            findings.Omit(descriptor.Id, severity, fingerprint, draft.UtilisationPercent);
            return;
        }

        if (findings.IsOutline || isProbe)
        {
            findings.Add(OutlineOf(draft, severity, fingerprint));
            return;
        }

        var data = new Dictionary<string, Scalar>(draft.Data.Count, StringComparer.Ordinal);
        foreach (var (name, value) in draft.Data)
        {
            data[name] = value.Number is { } number ? Quantities.Round(Finite(number, name)) : value;
        }

        var finding = new Finding
        {
            Rule = descriptor.Id,
            Fingerprint = fingerprint,
            Severity = severity,
            Safety = descriptor.Safety,
            Subject = draft.Subject.Text,
            SubjectKey = draft.Subject.Key,
            SubjectData = draft.Subject.Values,
            UtilisationPercent = Utilisation(draft),
            Message = draft.Message.Render(draft.Data),
            MessageKey = draft.Message.Key,
            MessageData = data,
            Pointers = draft.Pointers,
            Actual = Finite(draft.Actual),
            Limit = Finite(draft.Limit),
            Calculation = draft.Calculation,
            Sources = descriptor.SourceKeys,
            Remedies = draft.Remedies,
        };
        findings.Add(finding);
        if (draft.Candidates is { } candidates)
        {
            trials?.Add(finding, candidates);
        }
    }

    /// <summary>Reports a missing member of the description, without which the rule cannot be applied to the whole rack.</summary>
    /// <param name="pointer">Pointer to the missing member.</param>
    /// <param name="wording">
    /// Consequence for the rule. Of several messages the first in ordinal order is kept, so that the report does not depend on the order of items.
    /// </param>
    /// <param name="data">The values of the message.</param>
    public void ReportMissing(string pointer, MissingData wording, IReadOnlyList<(string Name, Scalar Value)>? data = null)
    {
        Keep(wording, data ?? []);
        missing ??= [];
        if (!missing.Contains(pointer))
        {
            missing.Add(pointer);
        }
    }

    /// <summary>Reports that the rule cannot be applied although nothing is missing: the values are outside the range of its formula.</summary>
    /// <param name="wording">Consequence for the rule.</param>
    public void ReportNotAssessed(MissingData wording)
    {
        Keep(wording, []);
        missing ??= [];
    }

    private void Keep(MissingData wording, IReadOnlyList<(string Name, Scalar Value)> data)
    {
        if (ReferenceEquals(wording, missingMessage?.Wording) && data.Count == 0)
        {
            return;
        }

        var message = wording.Render(data);
        if (missingMessage is not { Message: var kept } || string.CompareOrdinal(message, kept) < 0)
        {
            missingMessage = (wording, message, data);
        }
    }

    // What two racks are compared by. It fails where the whole finding would, so that a trial sees a rule that fails.
    private Finding OutlineOf(FindingDraft draft, Severity severity, string fingerprint)
    {
        foreach (var (name, value) in draft.Data)
        {
            Finite(value.Number ?? 0, name);
        }

        Finite(draft.Actual);
        Finite(draft.Limit);
        return new Finding
        {
            Rule = descriptor.Id,
            Fingerprint = fingerprint,
            Severity = severity,
            Safety = descriptor.Safety,
            Subject = "",
            SubjectKey = draft.Subject.Key,
            SubjectData = FrozenDictionary<string, Scalar>.Empty,
            UtilisationPercent = Utilisation(draft),
            Message = "",
            MessageKey = draft.Message.Key,
            MessageData = FrozenDictionary<string, Scalar>.Empty,
            Pointers = draft.Pointers,
            Sources = descriptor.SourceKeys,
            Remedies = [],
        };
    }

    internal void Begin(RuleDescriptor rule, RulePolicy? rulePolicy)
    {
        descriptor = rule;
        policy = rulePolicy;
        missing = null;
        missingMessage = null;
        findings.Begin();
    }

    internal void End()
    {
        if (missing is not null)
        {
            missing.Sort(PointerOrder.Instance);
            var (wording, _, data) = missingMessage!.Value;
            notAssessed.Add(NotAssessedOf(descriptor, NotAssessedReason.Missing, missing, wording, data));
        }
    }

    /// <summary>Applies a rule by itself. Nothing of it stays in this context.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="rulePolicy">The policy of the rule.</param>
    /// <param name="inFull">Whether its findings are written out, or only known by fingerprint and severity.</param>
    internal RuleAnswer Ask(Rule rule, RulePolicy? rulePolicy, bool inFull)
    {
        findings.Written.Clear();
        isProbe = !inFull;
        Begin(rule.Descriptor, rulePolicy);
        rule.Check(this);
        return findings.Written.Count == 0 && missing is null
            ? RuleAnswer.Clean
            : new RuleAnswer([.. findings.Written], missing ?? (IReadOnlyList<string>)[], false);
    }

    internal void SwitchedOff(RuleDescriptor rule) =>
        notAssessed.Add(NotAssessedOf(rule, NotAssessedReason.Policy, [$"/policy/rules/{rule.Id}/severity"], CommonWordings.SwitchedOff, []));

    internal void Fail()
    {
        findings.Fail(descriptor.Id);
        trials?.Drop(f => f.Rule == descriptor.Id);
        notAssessed.Add(NotAssessedOf(descriptor, NotAssessedReason.Failed, [], CommonWordings.Failed, []));
    }

    internal static NotAssessed NotAssessedOf(
        RuleDescriptor rule,
        NotAssessedReason reason,
        IReadOnlyList<string> missing,
        MessageWording wording,
        IReadOnlyList<(string Name, Scalar Value)> data) => new()
        {
            Rule = rule.Id,
            Safety = rule.Safety,
            Reason = reason,
            Missing = missing,
            Message = wording.Render(data),
            MessageKey = wording.Key,
            MessageData = data.ToDictionary(d => d.Name, d => d.Value, StringComparer.Ordinal),
        };

    // A limit of 0 has no ratio.
    private static double? Utilisation(FindingDraft draft) =>
        draft.UtilisationPercent is { } percent && double.IsFinite(percent) ? Quantities.Round(percent) : null;

    // JSON cannot represent such a number: the rule fails instead of the whole response.
    private static double Finite(double value, string name) =>
        double.IsFinite(value) ? value : throw new InvalidOperationException($"{name} is not a finite number.");

    private static Quantity? Finite(Quantity? quantity)
    {
        if (quantity is not null)
        {
            Finite(quantity.Value, quantity.Unit);
        }

        return quantity;
    }

    private Severity SeverityOf(Severity own) => policy?.Severity switch
    {
        PolicySeverity.Error => Severity.Error,
        PolicySeverity.Warning => Severity.Warning,
        PolicySeverity.Advice => Severity.Advice,
        _ => own,
    };
}
