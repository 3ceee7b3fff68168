using System.Globalization;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Acceptances;

/// <summary>Finds acceptances that match no finding of this rack.</summary>
public sealed class Unused : ReportRule
{
    private static readonly MessageWording SignOff = new(
        "acceptance.unused.sign-off",
        "The sign-off of rule {rule} by {by} matches no safety warning of this rack and no safety rule that was not assessed.");

    private static readonly MessageWording AcceptanceDefect = new(
        "acceptance.unused.acceptance",
        "The acceptance of rule {rule} by {acceptedBy} matches no finding of this rack.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "acceptance.unused",
        Title = "Acceptance or sign-off without a finding",
        Severity = Severity.Advice,
        What = "Finds acceptances that match no finding of this rack, and sign-offs that match neither a safety warning nor a safety rule that was "
            + "not assessed.",
        Why = "An obsolete acceptance can hide a later finding of the same rule at the same place.",
        Formula = "An acceptance matches a finding of the same rule with the same fingerprint, on the item, or with a pointer equal to its pointer "
            + "or below it.",
        Sources = [Sources.Bookkeeping],
        Needs = ["/acceptances", "/signOffs"],
        Notes =
        [
            "An acceptance by pointer covers what lies below the pointer, from an element of a list on.",
            "Identical acceptances are one finding.",
            "A sign-off never covers a safety error, so one that names an error is reported here.",
        ],
        Remedies = ["Remove the acceptance."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context, IReadOnlyList<Finding> findings, IReadOnlyList<NotAssessed> notAssessed)
    {
        CheckSignOffs(context, findings, notAssessed);
        if (context.Survey.Description.Acceptances is not { } acceptances)
        {
            return;
        }

        // Identical acceptances are one finding with one remedy: while one of them stays, the defect stays.
        var seen = new HashSet<(string Rule, string Place)>();
        for (var i = 0; i < acceptances.Count; i++)
        {
            var acceptance = acceptances[i];
            if (!findings.Any(f => AcceptanceMarks.Fits(acceptance, f, context.Survey.Description)) && seen.Add(KeyOf(acceptance)))
            {
                Report(context, acceptance, [.. Enumerable.Range(i, acceptances.Count - i).Where(n => KeyOf(acceptances[n]) == KeyOf(acceptance))]);
            }
        }
    }

    private static string PlaceOf(Acceptance acceptance) => acceptance.Fingerprint ?? acceptance.Item ?? acceptance.Pointer ?? "";

    private static void CheckSignOffs(RuleContext context, IReadOnlyList<Finding> findings, IReadOnlyList<NotAssessed> notAssessed)
    {
        var signOffs = context.Survey.Description.SignOffs ?? [];
        var unused = Enumerable.Range(0, signOffs.Count)
            .Where(i => !findings.Any(f => AcceptanceMarks.Fits(signOffs[i], f)) && !notAssessed.Any(n => AcceptanceMarks.Fits(signOffs[i], n)))
            .GroupBy(i => (signOffs[i].Rule, signOffs[i].Fingerprint));
        foreach (var alike in unused)
        {
            context.Report(new FindingDraft
            {
                Message = SignOff,
                Data = [("by", signOffs[alike.First()].By), ("rule", alike.Key.Rule)],
                Subject = Subjects.SignOff(alike.Key.Rule),
                Identity = ["sign-off", alike.Key.Rule, alike.Key.Fingerprint ?? ""],
                Pointers = PointersTo("signOffs", alike),
                Remedies = [RemovalOf("sign-off", PointersTo("signOffs", alike))],
            });
        }
    }

    private static string[] PointersTo(string list, IEnumerable<int> indices) =>
        [.. indices.Select(i => string.Create(CultureInfo.InvariantCulture, $"/{list}/{i}"))];

    // From the last one, so that the indices before it stay right.
    private static Remedy RemovalOf(string what, string[] pointers) =>
        Removal(pointers, new(RemedyTitles.Unused.With(pointers.Length == 1 ? "one" : null), ("what", what), ("count", pointers.Length)));

    private static Remedy Removal(string[] pointers, WordedText title) => new()
    {
        Title = title.Text,
        TitleKey = title.Key,
        TitleData = title.Values,
        RemovesItems = [],
        Patch = [.. pointers.Reverse().Select(p => new PatchOperation { Op = "remove", Path = p })],
    };

    private static (string Rule, string Place) KeyOf(Acceptance acceptance) => (acceptance.Rule, PlaceOf(acceptance));

    private static void Report(RuleContext context, Acceptance acceptance, int[] indices)
    {
        var pointers = PointersTo("acceptances", indices);
        context.Report(new FindingDraft
        {
            Message = AcceptanceDefect,
            Data = [("acceptedBy", acceptance.AcceptedBy), ("rule", acceptance.Rule)],
            Subject = Subjects.Acceptance(acceptance.Rule),
            Identity = [acceptance.Rule, PlaceOf(acceptance)],
            Pointers = pointers,
            Remedies = [RemovalOf("acceptance", pointers)],
        });
    }
}
