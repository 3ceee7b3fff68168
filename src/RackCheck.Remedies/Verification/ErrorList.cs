using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Remedies.Verification;

/// <summary>The errors of one rack by fingerprint, each with how bad it is, for the comparison of two racks.</summary>
public sealed class ErrorList
{
    private readonly Dictionary<string, double> utilisations = new(StringComparer.Ordinal);

    /// <summary>Adds an error.</summary>
    /// <param name="fingerprint">Its fingerprint, which is made from the rule and the ids concerned.</param>
    /// <param name="utilisationPercent">Actual value as a share of the limit, percent; null where the rule gives none.</param>
    public void Add(string fingerprint, double? utilisationPercent)
    {
        // Two errors with one fingerprint count as the worse of the two.
        var own = utilisationPercent is { } percent && double.IsFinite(percent) ? Quantities.Round(percent) : 0;
        utilisations[fingerprint] = Math.Max(own, utilisations.GetValueOrDefault(fingerprint));
    }

    /// <summary>Adds the errors of another list.</summary>
    /// <param name="other">The other list.</param>
    public void AddRange(ErrorList other)
    {
        foreach (var (fingerprint, percent) in other.utilisations)
        {
            Add(fingerprint, percent);
        }
    }

    /// <summary>Whether this rack has an error.</summary>
    /// <param name="fingerprint">Its fingerprint.</param>
    public bool Contains(string fingerprint) => utilisations.ContainsKey(fingerprint);

    /// <summary>Whether an error of another rack is new, or worse than in this one.</summary>
    /// <param name="error">An error of the other rack.</param>
    public bool IsExceededBy(Finding error) => IsExceededBy(error.Fingerprint, error.UtilisationPercent ?? 0);

    /// <summary>Whether any error of another rack is new, or worse than in this one.</summary>
    /// <param name="other">The errors of the other rack.</param>
    public bool IsExceededBy(ErrorList other)
    {
        foreach (var (fingerprint, percent) in other.utilisations)
        {
            if (IsExceededBy(fingerprint, percent))
            {
                return true;
            }
        }

        return false;
    }

    private bool IsExceededBy(string fingerprint, double percent) =>
        !utilisations.TryGetValue(fingerprint, out var own) || Comparison.IsOver(percent, own);
}
