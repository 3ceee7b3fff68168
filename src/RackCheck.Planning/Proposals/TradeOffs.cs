using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey;

namespace RackCheck.Planning.Proposals;

/// <summary>What one alternative has over another, in words.</summary>
internal static class TradeOffs
{
    // Nobody chooses a rack for less of a difference in its price.
    private const double LeastShare = 0.01;

    /// <summary>What an alternative gains and gives up against another.</summary>
    /// <param name="one">Its racks.</param>
    /// <param name="other">The racks of the other.</param>
    public static (IReadOnlyList<WordedText> Gained, IReadOnlyList<WordedText> GivenUp) Of(IReadOnlyList<Trial> one, IReadOnlyList<Trial> other)
    {
        List<WordedText> gained = [], givenUp = [];
        var isRow = one.Count > 1 || other.Count > 1;
        Compare(isRow ? ProposalWordings.HighestCabinet : ProposalWordings.Height, r => r.Max(t => t.Offer.HeightU));
        Compare(isRow ? ProposalWordings.DeepestCabinet : ProposalWordings.Depth, r => r.Max(t => t.Offer.DepthMm));
        Compare(isRow ? ProposalWordings.RowWidth : ProposalWordings.Width, r => r.Sum(t => t.Offer.WidthMm));
        Compare(ProposalWordings.FreeHeight, r => r.Sum(t => t.FreeU), isMoreBetter: true);
        Compare(ProposalWordings.Warnings, r => r.Sum(t => RuleChecks.FaultsOf(t.Found).Warnings));
        CompareFigures();
        CompareCosts();
        Compare(ProposalWordings.AddedUnits, r => r.Sum(t => AddedParts.Of(t).Sum(p => p.Quantity)));
        return (gained, givenUp);

        void Compare(MessageWording what, Func<IReadOnlyList<Trial>, double> figure, bool isMoreBetter = false) =>
            Add(what, figure(one), figure(other), isMoreBetter);

        void Add(MessageWording what, double? value, double? otherValue, bool isMoreBetter = false, string? currency = null)
        {
            if (value is { } own && otherValue is { } its && own != its)
            {
                (own < its != isMoreBetter ? gained : givenUp).Add(currency is null
                    ? new WordedText(what, ("value", own), ("other", its))
                    : new WordedText(what, ("value", own), ("other", its), ("currency", currency)));
            }
        }

        void CompareFigures()
        {
            RackSurvey[] surveys = [.. one.Select(SurveyOf)], others = [.. other.Select(SurveyOf)];
            Add(ProposalWordings.Loading, LoadingOf(surveys), LoadingOf(others));
            Add(ProposalWordings.FreeOutlets, surveys.Sum(FreeOutlets), others.Sum(FreeOutlets), isMoreBetter: true);
            Add(ProposalWordings.HottestInlet, InletOf(surveys), InletOf(others));
        }

        void CompareCosts()
        {
            var (cost, its) = (RackCost.Of(one), RackCost.Of(other));
            if (cost is { IsKnown: true, Currency: { } currency } && its.IsKnown && its.Currency == currency
                && Math.Abs(cost.Amount - its.Amount) >= LeastShare * Math.Min(cost.Amount, its.Amount))
            {
                Add(ProposalWordings.Cost, Quantities.Round(cost.Amount), Quantities.Round(its.Amount), currency: currency);
            }
        }
    }

    private static RackSurvey SurveyOf(Trial trial) => RackSurvey.Lazily(trial.Resolved);

    // Full percents and tenths of a kelvin: less makes no difference to anyone.
    private static double? LoadingOf(RackSurvey[] racks) => racks
        .SelectMany(r => (r.Power.Figures?.Supplies ?? []).Select(s => s.LoadingPercent).Concat((r.Power.Figures?.Pdus ?? []).Select(u => u.LoadingPercent)))
        .Max() is { } most ? Math.Round(most) : null;

    private static int FreeOutlets(RackSurvey rack) =>
        (rack.Description.Pdus ?? []).Sum(SupplyChoice.CountOf) - rack.Power.Cords.Count(c => c.Group is not null);

    private static double? InletOf(RackSurvey[] racks) => racks.Max(r => r.Heat.Figures?.HottestInletC) is { } hottest ? Math.Round(hottest, 1) : null;
}
