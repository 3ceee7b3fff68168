using RackCheck.Model;
using RackCheck.Survey.Assumed;

namespace RackCheck.Testing;

/// <summary>The assumptions of a report one by one.</summary>
public static class AssumedValues
{
    /// <summary>One value for each pointer of each assumption; ranges are left out.</summary>
    /// <param name="report">The report.</param>
    public static IEnumerable<AssumedValue> Assumed(this CheckReport report) => report.Assumptions.Where(a => a.Value is not null).SelectMany(
        a => a.Pointers.Select(p => new AssumedValue { Pointer = p, Value = a.Value!.Value, Unit = a.Unit, Basis = new WordedText(a.BasisKey, a.Basis) }));
}
