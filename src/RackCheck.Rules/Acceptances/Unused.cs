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
            "Identical acceptances are one finding.",
        ],
        Remedies = ["Remove the acceptance."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context, IReadOnlyList<Finding> findings)
    {
        if (context.Survey.Description.Acceptances is not { } acceptances)
        {
            return;
        }

        // Identical acceptances are one finding with one remedy: while one of them stays, the defect stays.
        var seen = new HashSet<(string Rule, string Place)>();
        for (var i = 0; i < acceptances.Count; i++)
        {
            var acceptance = acceptances[i];
            if (!findings.Any(f => AcceptanceMarks.Fits(acceptance, f)) && seen.Add(KeyOf(acceptance)))
            {
                Report(context, acceptance, [.. Enumerable.Range(i, acceptances.Count - i).Where(n => KeyOf(acceptances[n]) == KeyOf(acceptance))]);
            }
        }
    }

    private static (string Rule, string Place) KeyOf(Acceptance acceptance) => (acceptance.Rule, acceptance.Fingerprint ?? acceptance.Pointer ?? "");

    private static void Report(RuleContext context, Acceptance acceptance, int[] indices)
    {
        string[] pointers = [.. indices.Select(i => string.Create(CultureInfo.InvariantCulture, $"/acceptances/{i}"))];
        context.Report(new FindingDraft
        {
            Message = "The acceptance of rule {rule} by {acceptedBy} matches no finding of this rack.",
            Data = [("acceptedBy", acceptance.AcceptedBy), ("rule", acceptance.Rule)],
            Subject = $"acceptance of {acceptance.Rule}",
            Identity = [acceptance.Rule, acceptance.Fingerprint ?? acceptance.Pointer ?? ""],
            Pointers = pointers,
            Remedies =
            [
                new Remedy
                {
                    Title = pointers.Length == 1 ? "Remove the acceptance" : $"Remove the {pointers.Length} identical acceptances",

                    // From the last one, so that the indices before it stay right.
                    Patch = [.. pointers.Reverse().Select(p => new PatchOperation { Op = "remove", Path = p })],
                },
            ],
        });
    }
}
