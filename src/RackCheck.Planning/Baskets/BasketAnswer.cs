using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>What came of planning a basket: a report, or faults of the request.</summary>
public sealed record BasketAnswer
{
    /// <summary>The report; null where there are faults.</summary>
    public BasketReport? Report { get; init; }

    /// <summary>Why the basket is no single rack, with pointers into the request; empty where there is a report.</summary>
    public IReadOnlyList<Fault> Faults { get; init; } = [];
}
