using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>Result of planning a basket: a report, or faults of the request.</summary>
public sealed record BasketAnswer
{
    /// <summary>The report; null if there are faults.</summary>
    public BasketReport? Report { get; init; }

    /// <summary>Faults that prevent planning, with pointers into the request; empty if there is a report.</summary>
    public IReadOnlyList<Fault> Faults { get; init; } = [];
}
