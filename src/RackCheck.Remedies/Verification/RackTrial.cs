namespace RackCheck.Remedies.Verification;

/// <summary>The check of a changed rack.</summary>
/// <param name="Findings">Its findings with what the description gives.</param>
/// <param name="OverRanges">
/// Adds the findings that hold for every plausible value of what the description does not give, which costs more; null where no rule waits for such a value.
/// </param>
public sealed record RackTrial(FindingList Findings, Func<FindingList>? OverRanges);
