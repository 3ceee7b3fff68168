using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Rules;

/// <summary>Marks findings that the description accepts or signs off, and findings whose acceptance has lapsed.</summary>
internal static class AcceptanceMarks
{
    /// <summary>Whether an acceptance matches a finding: same rule, and the same fingerprint, the item, or a pointer that covers one of the finding.</summary>
    public static bool Fits(Acceptance acceptance, Finding finding, RackDescription description) =>
        acceptance.Rule == finding.Rule
        && (acceptance.Fingerprint is { } fingerprint ? fingerprint == finding.Fingerprint
            : acceptance.Item is { } item ? PointsTo(finding, PointerOf(item, description))
            : acceptance.Pointer is { } pointer && PointsTo(finding, pointer));

    /// <summary>Whether a sign-off matches a finding: the fingerprint of a safety warning.</summary>
    public static bool Fits(SignOff signOff, Finding finding) =>
        signOff.Rule == finding.Rule && signOff.Fingerprint == finding.Fingerprint && finding is { Safety: true, Severity: not Severity.Error };

    /// <summary>Whether a sign-off matches a safety rule that was not assessed.</summary>
    public static bool Fits(SignOff signOff, NotAssessed entry) =>
        signOff.Rule == entry.Rule && signOff.Fingerprint is null && entry is { Safety: true, Reason: NotAssessedReason.Missing };

    /// <summary>Whether an acceptance covers a finding now. A safety finding has none.</summary>
    public static bool IsAccepted(Finding finding, RackDescription description) =>
        !finding.Safety && description.Acceptances?.Any(a => Fits(a, finding, description) && LapseOf(a, finding, description) is null) == true;

    /// <summary>Marks in place. A safety finding is never accepted; the request validation rejects its acceptance as well.</summary>
    public static void Mark(List<Finding> findings, List<NotAssessed> notAssessed, RackDescription description)
    {
        for (var i = 0; i < findings.Count && (description.Acceptances ?? (object?)description.SignOffs) is not null; i++)
        {
            findings[i] = findings[i].Safety ? SignedOff(findings[i], description) : Accepted(findings[i], description);
        }

        for (var i = 0; i < notAssessed.Count && description.SignOffs is not null; i++)
        {
            var entry = notAssessed[i];
            notAssessed[i] = description.SignOffs.FirstOrDefault(s => Fits(s, entry)) is { } signOff ? entry with { SignedOff = MarkOf(signOff) } : entry;
        }
    }

    private static Finding SignedOff(Finding finding, RackDescription description) =>
        description.SignOffs?.FirstOrDefault(s => Fits(s, finding)) is { } signOff ? finding with { SignedOff = MarkOf(signOff) } : finding;

    private static Finding Accepted(Finding finding, RackDescription description)
    {
        LapsedAcceptance? lapsed = null;
        foreach (var acceptance in description.Acceptances ?? [])
        {
            if (!Fits(acceptance, finding, description))
            {
                continue;
            }

            if (LapseOf(acceptance, finding, description) is not { } lapse)
            {
                return finding with { Accepted = MarkOf(acceptance) };
            }

            lapsed ??= lapse;
        }

        return lapsed is null ? finding : finding with { LapsedAcceptance = lapsed };
    }

    private static LapsedAcceptance? LapseOf(Acceptance acceptance, Finding finding, RackDescription description)
    {
        if (acceptance.ExpiresAt is { } end && description.AsOf is { } now && Timestamps.IsAfter(now, end))
        {
            return Lapse(LapseReason.Expired, CommonWordings.Expired, [("acceptedBy", acceptance.AcceptedBy), ("expiresAt", end)]);
        }

        if (acceptance.UpTo is not { } upTo)
        {
            return null;
        }

        if (finding.Actual is not { } actual || actual.Unit != upTo.Unit)
        {
            return Lapse(LapseReason.Exceeded, CommonWordings.NoActual, [("accepted", Quantities.Round(upTo.Value)), ("unit", upTo.Unit)]);
        }

        // Worse is further from the limit: more where the actual value is over the limit, less where it is under it.
        var isWorse = finding.Limit is { } limit && actual.Value < limit.Value ? actual.Value < upTo.Value : actual.Value > upTo.Value;
        return isWorse
            ? Lapse(
                LapseReason.Exceeded, CommonWordings.Exceeded,
                [
                    ("accepted", Quantities.Round(upTo.Value)), ("unit", upTo.Unit), ("acceptedBy", acceptance.AcceptedBy),
                    ("actual", Quantities.Round(actual.Value)),
                ])
            : null;

        LapsedAcceptance Lapse(LapseReason reason, MessageWording wording, IReadOnlyList<(string Name, Scalar Value)> data) => new()
        {
            Reason = reason, Acceptance = MarkOf(acceptance), Message = wording.Render(data), MessageKey = wording.Key,
            MessageData = data.ToDictionary(d => d.Name, d => d.Value, StringComparer.Ordinal),
        };
    }

    // A pointer covers all pointers below it: /items/3 covers /items/3/position. A whole list covers nothing.
    private static bool PointsTo(Finding finding, string? pointer) =>
        pointer is not null && finding.Pointers.Any(place => place == pointer
            || (pointer.LastIndexOf('/') > 0 && place.Length > pointer.Length && place[pointer.Length] == '/'
                && place.StartsWith(pointer, StringComparison.Ordinal)));

    private static string? PointerOf(string item, RackDescription description)
    {
        for (var i = 0; i < description.Items.Count; i++)
        {
            if (description.Items[i].Id == item)
            {
                return Invariant($"/items/{i}");
            }
        }

        return null;
    }

    private static AcceptedMark MarkOf(Acceptance acceptance) => new()
    {
        Reason = acceptance.Reason,
        AcceptedBy = acceptance.AcceptedBy,
        AcceptedAt = acceptance.AcceptedAt,
        ExpiresAt = acceptance.ExpiresAt,
        UpTo = acceptance.UpTo,
    };

    private static SignOffMark MarkOf(SignOff signOff) => new() { By = signOff.By, Role = signOff.Role, Reason = signOff.Reason, At = signOff.At };
}
