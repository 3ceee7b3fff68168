using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Proposals;

/// <summary>What one rack has over another, in words.</summary>
internal static class TradeOffs
{
    /// <summary>What a rack gains and gives up against another.</summary>
    public static (IReadOnlyList<WordedText> Gained, IReadOnlyList<WordedText> GivenUp) Of(Trial one, Trial other)
    {
        List<WordedText> gained = [], givenUp = [];
        Compare(ProposalWordings.Height, one.Offer.HeightU, other.Offer.HeightU);
        Compare(ProposalWordings.Depth, one.Offer.DepthMm, other.Offer.DepthMm);
        Compare(ProposalWordings.Width, one.Offer.WidthMm, other.Offer.WidthMm);
        Compare(ProposalWordings.FreeHeight, one.FreeU, other.FreeU, isMoreBetter: true);
        Compare(ProposalWordings.Warnings, RuleChecks.FaultsOf(one.Found).Warnings, RuleChecks.FaultsOf(other.Found).Warnings);
        Compare(ProposalWordings.AddedUnits, AddedParts.Of(one).Sum(p => p.Quantity), AddedParts.Of(other).Sum(p => p.Quantity));
        return (gained, givenUp);

        void Compare(MessageWording what, double value, double otherValue, bool isMoreBetter = false)
        {
            if (value != otherValue)
            {
                (value < otherValue != isMoreBetter ? gained : givenUp).Add(new WordedText(what, ("value", value), ("other", otherValue)));
            }
        }
    }
}
