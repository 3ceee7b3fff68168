using RackCheck.Planning.Building;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>What one rack has over another, in words.</summary>
internal static class TradeOffs
{
    /// <summary>What a rack gains and gives up against another.</summary>
    public static (IReadOnlyList<string> Gained, IReadOnlyList<string> GivenUp) Of(Trial one, Trial other)
    {
        List<string> gained = [], givenUp = [];
        Compare("Cabinet height", one.Offer.HeightU, other.Offer.HeightU, " U");
        Compare("Cabinet depth", one.Offer.DepthMm, other.Offer.DepthMm, " mm");
        Compare("Cabinet width", one.Offer.WidthMm, other.Offer.WidthMm, " mm");
        Compare("Free height", one.FreeU, other.FreeU, " U", isMoreBetter: true);
        Compare("Open warnings", RuleChecks.FaultsOf(one.Found).Warnings, RuleChecks.FaultsOf(other.Found).Warnings, "");
        Compare("Order units added", AddedLines.Of(one).Sum(l => l.Quantity), AddedLines.Of(other).Sum(l => l.Quantity), "");
        return (gained, givenUp);

        void Compare(string what, double value, double otherValue, string unit, bool isMoreBetter = false)
        {
            if (value != otherValue)
            {
                (value < otherValue != isMoreBetter ? gained : givenUp).Add(Invariant($"{what} {value:0.###}{unit} instead of {otherValue:0.###}{unit}."));
            }
        }
    }
}
