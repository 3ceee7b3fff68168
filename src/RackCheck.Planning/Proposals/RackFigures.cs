using RackCheck.Planning.Building;
using RackCheck.Survey;

namespace RackCheck.Planning.Proposals;

/// <summary>The figures of the racks of an alternative, by which alternatives are compared. Worked out once.</summary>
internal sealed class RackFigures
{
    /// <summary>Works out the figures.</summary>
    /// <param name="trials">The racks.</param>
    public RackFigures(IReadOnlyList<Trial> trials)
    {
        RackSurvey[] surveys = [.. trials.Select(t => RackSurvey.Lazily(t.Resolved))];
        IsRow = trials.Count > 1;
        HeightU = trials.Max(t => t.Offer.HeightU);
        DepthMm = trials.Max(t => t.Offer.DepthMm);
        WidthMm = trials.Sum(t => t.Offer.WidthMm);
        FreeU = trials.Sum(t => t.FreeU);
        Warnings = trials.Sum(t => RuleChecks.FaultsOf(t.Found).Warnings);
        Supplies = trials.SelectMany(t => (t.Rack.Supplies ?? []).Select(s => s.Id)).Distinct().Count();
        Loading = surveys
            .Select(r => r.Power.Figures)
            .SelectMany(p => (p?.Supplies ?? []).Select(s => s.LoadingPercent).Concat((p?.Pdus ?? []).Select(u => u.LoadingPercent)))
            .Max() is { } most ? Math.Round(most) : null;
        FreeOutlets = surveys.Sum(r => (r.Description.Pdus ?? []).Sum(SupplyChoice.CountOf) - r.Power.Cords.Count(c => c.Group is not null));
        InletC = surveys.Max(r => r.Heat.Figures?.HottestInletC) is { } hottest ? Math.Round(hottest, 1) : null;
        Cost = RackCost.Of(trials);
        AddedUnits = trials.Sum(t => AddedParts.Of(t).Sum(p => p.Quantity));
    }

    /// <summary>Whether there are several racks.</summary>
    public bool IsRow { get; }

    /// <summary>Height of the highest cabinet, U.</summary>
    public int HeightU { get; }

    /// <summary>Depth of the deepest cabinet, mm.</summary>
    public double DepthMm { get; }

    /// <summary>Width of all cabinets, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Free height, U.</summary>
    public int FreeU { get; }

    /// <summary>Open warnings.</summary>
    public int Warnings { get; }

    /// <summary>Electrical supplies.</summary>
    public int Supplies { get; }

    /// <summary>Loading of the most loaded supply or PDU in full percents: less makes no difference to anyone.</summary>
    public double? Loading { get; }

    /// <summary>Outlets without a cord.</summary>
    public int FreeOutlets { get; }

    /// <summary>Highest temperature of the air at an inlet in tenths of a degree, C.</summary>
    public double? InletC { get; }

    /// <summary>What they cost.</summary>
    public RackCost Cost { get; }

    /// <summary>Order units of the added lines.</summary>
    public int AddedUnits { get; }
}
