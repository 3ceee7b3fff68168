using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>Marks the findings that somebody has accepted.</summary>
internal static class AcceptanceMarks
{
    /// <summary>Whether an acceptance is meant for a finding: same rule, and its fingerprint or a place that one of its pointers lies in.</summary>
    public static bool Fits(Acceptance acceptance, Finding finding) =>
        acceptance.Rule == finding.Rule
        && (acceptance.Fingerprint is { } fingerprint
            ? fingerprint == finding.Fingerprint
            : acceptance.Pointer is { } pointer && finding.Pointers.Any(p => Covers(pointer, p)));

    // A pointer covers what lies below it, so that /items/3 accepts what is found at /items/3/position; but a whole list is no place.
    private static bool Covers(string pointer, string place) =>
        place == pointer
        || (pointer.LastIndexOf('/') > 0 && place.Length > pointer.Length && place[pointer.Length] == '/' && place.StartsWith(pointer, StringComparison.Ordinal));

    /// <summary>The acceptance of a finding; null where nobody accepted it, or nobody can.</summary>
    public static Acceptance? Of(Finding finding, IReadOnlyList<Acceptance>? acceptances) =>
        finding.Safety ? null : acceptances?.FirstOrDefault(a => Fits(a, finding));

    /// <summary>Marks in place. A safety finding is never marked, whatever the request says; its validation refuses that besides.</summary>
    public static void Mark(List<Finding> findings, IReadOnlyList<Acceptance>? acceptances)
    {
        if (acceptances is null)
        {
            return;
        }

        for (var i = 0; i < findings.Count; i++)
        {
            var finding = findings[i];
            if (Of(finding, acceptances) is { } acceptance)
            {
                findings[i] = finding with { Accepted = new AcceptedMark { Reason = acceptance.Reason, AcceptedBy = acceptance.AcceptedBy } };
            }
        }
    }
}
