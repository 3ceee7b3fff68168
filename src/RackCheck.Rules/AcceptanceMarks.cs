using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>Marks accepted findings.</summary>
internal static class AcceptanceMarks
{
    /// <summary>Whether an acceptance matches a finding: same rule, and the same fingerprint or a pointer that covers one of the finding.</summary>
    public static bool Fits(Acceptance acceptance, Finding finding) =>
        acceptance.Rule == finding.Rule
        && (acceptance.Fingerprint is { } fingerprint
            ? fingerprint == finding.Fingerprint
            : acceptance.Pointer is { } pointer && finding.Pointers.Any(p => Covers(pointer, p)));

    // A pointer covers all pointers below it: /items/3 covers /items/3/position. A whole list covers nothing.
    private static bool Covers(string pointer, string place) =>
        place == pointer
        || (pointer.LastIndexOf('/') > 0 && place.Length > pointer.Length && place[pointer.Length] == '/'
            && place.StartsWith(pointer, StringComparison.Ordinal));

    /// <summary>The acceptance of a finding; null without one. A safety finding has none.</summary>
    public static Acceptance? Of(Finding finding, IReadOnlyList<Acceptance>? acceptances) =>
        finding.Safety ? null : acceptances?.FirstOrDefault(a => Fits(a, finding));

    /// <summary>Marks in place. A safety finding is never marked; the request validation rejects its acceptance as well.</summary>
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
