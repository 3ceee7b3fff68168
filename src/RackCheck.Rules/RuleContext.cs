using RackCheck.Survey.Limits;
using System.Security.Cryptography;
using System.Text;
using RackCheck.Model;
using RackCheck.Remedies.Verification;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Rules;

/// <summary>What a rule reads and where it writes. One for a request; the pipeline turns it from rule to rule.</summary>
public sealed class RuleContext
{
    private readonly FindingList findings;
    private readonly List<NotAssessed> notAssessed;
    private readonly CureTrials? trials;
    private readonly RackSurvey? survey;
    private RuleDescriptor descriptor = null!;
    private RulePolicy? policy;
    private List<string>? lacking;
    private string? lackingMessage;

    internal RuleContext(ResolvedRack rack, RackSurvey? survey, FindingList findings, List<NotAssessed> notAssessed, CureTrials? trials) =>
        (Rack, this.survey, this.findings, this.notAssessed, this.trials) = (rack, survey, findings, notAssessed, trials);

    /// <summary>The description as posted, and with its part numbers filled in.</summary>
    public ResolvedRack Rack { get; }

    /// <summary>The facts of the rack.</summary>
    /// <exception cref="InvalidOperationException">The rack cannot be worked out; only rules about part numbers are applied then.</exception>
    public RackSurvey Survey => survey ?? throw new InvalidOperationException("The rack cannot be worked out.");

    /// <summary>The value of a limit: the policy's, else the default.</summary>
    /// <param name="limit">The limit.</param>
    /// <returns>Its value in its unit.</returns>
    public double Limit(RuleLimit limit) => RulePolicyReader.ValueOf(policy, limit);

    /// <summary>Reports a defect.</summary>
    /// <param name="draft">What is to be said of it.</param>
    public void Report(FindingDraft draft)
    {
        var severity = SeverityOf(draft.Severity ?? descriptor.Severity);
        if (findings.IsFull)
        {
            findings.Omit(descriptor.Id, severity, RootOf(draft) ?? Fingerprint(descriptor.Id, draft.Identity));
            return;
        }

        var data = new Dictionary<string, Scalar>(draft.Data.Count, StringComparer.Ordinal);
        foreach (var (name, value) in draft.Data)
        {
            data[name] = value.Number is { } number ? Quantities.Round(Finite(number, name)) : value;
        }

        var fingerprint = Fingerprint(descriptor.Id, draft.Identity);
        var finding = new Finding
        {
            Rule = descriptor.Id,
            Fingerprint = fingerprint,
            Root = RootOf(draft) ?? fingerprint,
            Severity = severity,
            Safety = descriptor.Safety,
            Subject = draft.Subject,

            // To a limit of nothing there is no ratio.
            UtilisationPercent = draft.UtilisationPercent is { } percent && double.IsFinite(percent) ? Quantities.Round(percent) : null,
            Message = draft.RenderMessage(),
            MessageData = data,
            Pointers = draft.Pointers,
            Actual = Finite(draft.Actual),
            Limit = Finite(draft.Limit),
            Calculation = draft.Calculation,
            Sources = descriptor.SourceKeys,
            Remedies = draft.Remedies,
        };
        findings.Add(finding);
        if (draft.Cures is { } cures)
        {
            trials?.Add(finding, cures);
        }
    }

    /// <summary>Says that a member of the description is absent without which the rule cannot be applied to all of the rack.</summary>
    /// <param name="pointer">Where it would stand.</param>
    /// <param name="message">What that means. Of several the one that sorts first is kept, so that it does not hang on the order of items.</param>
    public void Lacks(string pointer, string message)
    {
        lackingMessage = lackingMessage is null || string.CompareOrdinal(message, lackingMessage) < 0 ? message : lackingMessage;
        lacking ??= [];
        if (!lacking.Contains(pointer))
        {
            lacking.Add(pointer);
        }
    }

    internal void Begin(RuleDescriptor rule, RulePolicy? rulePolicy)
    {
        descriptor = rule;
        policy = rulePolicy;
        lacking = null;
        lackingMessage = null;
        findings.Begin();
    }

    internal void End()
    {
        if (lacking is not null)
        {
            lacking.Sort(PointerOrder.Instance);
            notAssessed.Add(new NotAssessed
            {
                Rule = descriptor.Id,
                Safety = descriptor.Safety,
                Reason = NotAssessedReason.Missing,
                Missing = lacking,
                Message = lackingMessage!,
            });
        }
    }

    internal void SwitchedOff(RuleDescriptor rule) => notAssessed.Add(new NotAssessed
    {
        Rule = rule.Id,
        Safety = rule.Safety,
        Reason = NotAssessedReason.Policy,
        Missing = [$"/policy/rules/{rule.Id}/severity"],
        Message = "The caller's policy switches the rule off.",
    });

    internal void Fail()
    {
        findings.Fail(descriptor.Id);
        trials?.Drop(f => f.Rule == descriptor.Id);
        notAssessed.Add(new NotAssessed
        {
            Rule = descriptor.Id,
            Safety = descriptor.Safety,
            Reason = NotAssessedReason.Failed,
            Missing = [],
            Message = "The rule failed inside the service and says nothing about this rack.",
        });
    }

    // A number that JSON cannot hold would break the whole answer; as a failure of its rule it is known for what it is.
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

    private static string? RootOf(FindingDraft draft) => draft.Root is { } root ? Fingerprint("", [root]) : null;

    private static string Fingerprint(string rule, IReadOnlyList<string> identity)
    {
        // Ids can hold any character but a control character, so the separator cannot be forged.
        var text = rule + '\u001f' + string.Join('\u001f', identity);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 8));
    }

    private Severity SeverityOf(Severity own) => policy?.Severity switch
    {
        PolicySeverity.Error => Severity.Error,
        PolicySeverity.Warning => Severity.Warning,
        PolicySeverity.Advice => Severity.Advice,
        _ => own,
    };
}
