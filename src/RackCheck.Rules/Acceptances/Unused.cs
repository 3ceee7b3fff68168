using System.Globalization;
using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Rules.Acceptances;

/// <summary>Finds acceptances that match no finding of this rack.</summary>
public sealed class Unused : ReportRule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "acceptance.unused",
        Title = "Acceptance without a finding",
        Severity = Severity.Advice,
        What = "Finds acceptances that match no finding of this rack.",
        Why = "An obsolete acceptance can hide a later finding of the same rule at the same place.",
        Formula = "An acceptance matches a finding of the same rule with the same fingerprint, or with a pointer equal to its pointer or below it.",
        Sources = [Sources.Bookkeeping],
        Needs = ["/acceptances"],
        Notes =
        [
            "An acceptance by pointer covers what lies below the pointer, from an element of a list on.",
        ],
        Remedies = ["Remove the acceptance."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context, IReadOnlyList<Finding> findings)
    {
        var acceptances = context.Survey.Description.Acceptances;
        for (var i = 0; i < acceptances?.Count; i++)
        {
            var acceptance = acceptances[i];
            if (findings.Any(f => AcceptanceMarks.Fits(acceptance, f)))
            {
                continue;
            }

            var pointer = string.Create(CultureInfo.InvariantCulture, $"/acceptances/{i}");
            context.Report(new FindingDraft
            {
                Message = "The acceptance of rule {rule} by {acceptedBy} matches no finding of this rack.",
                Data = [("acceptedBy", acceptance.AcceptedBy), ("rule", acceptance.Rule)],
                Subject = $"acceptance of {acceptance.Rule}",
                Identity = [acceptance.Rule, acceptance.Fingerprint ?? acceptance.Pointer ?? ""],
                Pointers = [pointer],
                Remedies = [new Remedy { Title = "Remove the acceptance", Patch = [new PatchOperation { Op = "remove", Path = pointer }] }],
            });
        }
    }
}
