namespace RackCheck.Model;

/// <summary>The order of findings in a report: errors first, then by rule id, then by pointer, then by fingerprint.</summary>
public static class FindingOrder
{
    /// <summary>Compares two findings.</summary>
    /// <param name="x">The first finding.</param>
    /// <param name="y">The second finding.</param>
    /// <returns>Less than 0 where the first finding comes first.</returns>
    public static int Compare(Finding x, Finding y)
    {
        var order = x.Severity.CompareTo(y.Severity);
        order = order != 0 ? order : string.CompareOrdinal(x.Rule, y.Rule);
        for (var i = 0; order == 0 && i < Math.Min(x.Pointers.Count, y.Pointers.Count); i++)
        {
            order = PointerOrder.Instance.Compare(x.Pointers[i], y.Pointers[i]);
        }

        order = order != 0 ? order : x.Pointers.Count.CompareTo(y.Pointers.Count);
        return order != 0 ? order : string.CompareOrdinal(x.Fingerprint, y.Fingerprint);
    }
}
