using RackCheck.Model;
using RackCheck.Model.Converters;

namespace RackCheck.Planning.Proposals;

/// <summary>What one alternative has over another, in words.</summary>
internal static class TradeOffs
{
    // Nobody chooses a rack for less of a difference in its price.
    private const double LeastShare = 0.01;

    /// <summary>What an alternative gains and gives up against another.</summary>
    /// <param name="one">The figures of its racks.</param>
    /// <param name="other">Those of the other.</param>
    /// <param name="verdicts">The gravest verdicts on the products of both; null where they are not known yet.</param>
    public static (IReadOnlyList<WordedText> Gained, IReadOnlyList<WordedText> GivenUp) Of(
        RackFigures one, RackFigures other, (Verdict One, Verdict Other)? verdicts = null)
    {
        List<WordedText> gained = [], givenUp = [];
        var isRow = one.IsRow || other.IsRow;
        if (verdicts is var (own, its) && own != its)
        {
            (own < its ? gained : givenUp).Add(new WordedText(ProposalWordings.Verdict, ("value", NameOf(own)), ("other", NameOf(its))));
        }

        Add(isRow ? ProposalWordings.HighestCabinet : ProposalWordings.Height, one.HeightU, other.HeightU);
        Add(isRow ? ProposalWordings.DeepestCabinet : ProposalWordings.Depth, one.DepthMm, other.DepthMm);
        Add(isRow ? ProposalWordings.RowWidth : ProposalWordings.Width, one.WidthMm, other.WidthMm);
        Add(ProposalWordings.FreeHeight, one.FreeU, other.FreeU, isMoreBetter: true);
        Add(ProposalWordings.Warnings, one.Warnings, other.Warnings);
        Add(ProposalWordings.SupplyCount, one.Supplies, other.Supplies);
        Add(ProposalWordings.Loading, one.Loading, other.Loading);
        Add(ProposalWordings.FreeOutlets, one.FreeOutlets, other.FreeOutlets, isMoreBetter: true);
        Add(ProposalWordings.HottestInlet, one.InletC, other.InletC);
        CompareCosts();
        Add(ProposalWordings.AddedUnits, one.AddedUnits, other.AddedUnits);
        return (gained, givenUp);

        void Add(MessageWording what, double? value, double? otherValue, bool isMoreBetter = false, string? currency = null)
        {
            if (value is { } ours && otherValue is { } theirs && ours != theirs)
            {
                (ours < theirs != isMoreBetter ? gained : givenUp).Add(currency is null
                    ? new WordedText(what, ("value", ours), ("other", theirs))
                    : new WordedText(what, ("value", ours), ("other", theirs), ("currency", currency)));
            }
        }

        void CompareCosts()
        {
            if (one.Cost is { IsKnown: true, Currency: { } currency } cost && other.Cost.IsKnown && other.Cost.Currency == currency
                && Math.Abs(cost.Amount - other.Cost.Amount) >= LeastShare * Math.Min(cost.Amount, other.Cost.Amount))
            {
                Add(ProposalWordings.Cost, Quantities.Round(cost.Amount), Quantities.Round(other.Cost.Amount), currency: currency);
            }
        }
    }

    /// <summary>
    /// Whether an alternative gains something over another that someone may choose it for: fewer packs of small parts are no reason, nor are free outlets that
    /// take a further supply.
    /// </summary>
    /// <param name="one">The figures of its racks.</param>
    /// <param name="other">Those of the other.</param>
    public static bool Gains(RackFigures one, RackFigures other) =>
        Of(one, other).Gained.Any(g => g.Key != ProposalWordings.AddedUnits.Key
            && (one.Supplies <= other.Supplies || g.Key != ProposalWordings.FreeOutlets.Key));

    private static string NameOf(Verdict verdict) => NamedEnumConverter<Verdict>.Name(verdict);
}
