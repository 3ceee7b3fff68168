using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>What racks of a search are compared by.</summary>
/// <param name="Findings">The findings in report order, without remedies.</param>
/// <param name="NotAssessed">Number of rules that were not assessed with what the description gives.</param>
/// <param name="Assignment">The cords with their outlets, as the check assigns them; null without PDUs.</param>
public sealed record RackFindings(IReadOnlyList<Finding> Findings, int NotAssessed, IReadOnlyList<Connection>? Assignment);
