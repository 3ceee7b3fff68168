using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Chooses PDUs for cords: the fewest that take all that they can, and of several sets of as many the cheapest.</summary>
internal static class PduSets
{
    /// <summary>Chooses the PDUs.</summary>
    /// <param name="context">What building a rack needs.</param>
    /// <param name="build">The rack.</param>
    /// <param name="wanting">The cords, the greatest first, each with the id of the supply that it is not to have; null for any.</param>
    /// <param name="isSecond">Whether the cords are the second ones of dual-corded items, which carry everything with the first supply lost.</param>
    /// <returns>The PDUs with the cords on each; no cord is on two, and some may be on none.</returns>
    public static IReadOnlyList<(Product Product, Cord[] Cords)> Choose(
        BasketContext context, RackBuild build, IReadOnlyList<(Cord Cord, string? But)> wanting, bool isSecond)
    {
        var filling = new Filling(context, build, wanting, isSecond);
        var chosen = filling.Fewest();
        var horizontal = chosen.Count(c => IsHorizontal(c.Product));
        if (horizontal > 0 && Outlets.FreePlaces(build, horizontal) is var places && places < horizontal)
        {
            filling.MostHorizontal = places;
            chosen = filling.Fewest();
        }

        return [.. chosen.Select(c => (c.Product, c.Cords))];
    }

    /// <summary>Whether a PDU takes a U position.</summary>
    public static bool IsHorizontal(Product product) => product.Pdu?.Mounting == PduMounting.Horizontal;

    private sealed record Chosen(Product Product, Supply Supply, Cord[] Cords);

    private sealed class Filling(BasketContext context, RackBuild build, IReadOnlyList<(Cord Cord, string? But)> wanting, bool isSecond)
    {
        private readonly Product[] offered =
        [
            .. context.Offered(ProductKind.Pdu).Where(p => p.Pdu?.Groups is not null && !SupplyChoice.IsForUps(p)
                && (build.HasGivenSupplies || SupplyChoice.SuitsRegion(build.Region, p.Pdu))),
        ];

        /// <summary>How many horizontal PDUs find a U position. More are chosen only where no other PDU takes the cords.</summary>
        public int MostHorizontal { get; set; } = int.MaxValue;

        public List<Chosen> Fewest()
        {
            var mixed = Fill(offered);
            if (build.HasGivenSupplies || (mixed.Count < 2 && Left(mixed) == 0 && !mixed.Exists(IsUnbalanced)))
            {
                return mixed;
            }

            // What takes the most cords first may leave a few that need another large one, or phases that it cannot balance.
            var alike = offered.Select(p => Fill([p])).Where(s => s.Count > 0).MinBy(RankOf);
            if (alike is null)
            {
                return mixed;
            }

            var last = alike[^1];
            if (Best(offered, [.. wanting.Where(w => last.Cords.Contains(w.Cord))], [.. alike.SkipLast(1)]) is { } other
                && other.Cords.Length == last.Cords.Length)
            {
                alike[^1] = other;
            }

            return RankOf(alike).CompareTo(RankOf(mixed)) < 0 ? alike : mixed;
        }

        private int Left(List<Chosen> chosen) => wanting.Count - chosen.Sum(c => c.Cords.Length);

        private (int Left, int NotPlaced, int Unbalanced, int Count, bool IsUnswitched, bool Trips, bool IsUnsuited, double Price) RankOf(
            List<Chosen> chosen) => (
            Left(chosen),
            Math.Max(0, chosen.Count(c => IsHorizontal(c.Product)) - MostHorizontal),
            chosen.Count(IsUnbalanced),
            chosen.Count,
            chosen.Exists(IsUnswitched),
            chosen.Exists(c => OutletNeeds.MayTrip(c.Product.Pdu!, c.Supply, c.Cords)),
            chosen.Exists(c => PduRank.IsUnsuited(context, build, c.Product.Pdu!)),
            context.HasPduPrices ? chosen.Sum(c => c.Product.Price!.Value) : 0);

        // As the rule finds it, with each cord on the phase with the lowest load.
        private bool IsUnbalanced(Chosen chosen)
        {
            if (chosen.Supply.Phases != 3 || context.Rules.IsOff<PhaseBalance>())
            {
                return false;
            }

            var phasesA = new double[3];
            foreach (var cord in chosen.Cords.Where(c => !c.IsThreePhase))
            {
                phasesA[Array.IndexOf(phasesA, phasesA.Min())] += cord.VoltAmperes / chosen.Supply.VoltageV;
            }

            var (worstA, meanA) = (phasesA.Max(), phasesA.Average());
            return worstA >= context.Rules.Limit<PhaseBalance>(PhaseBalance.LeastSharePercent) / 100 * chosen.Supply.RatedA
                && Comparison.IsOver(100 * ((worstA / meanA) - 1), context.Rules.Limit<PhaseBalance>(PhaseBalance.UnbalancePercent));
        }

        private bool IsUnswitched(Chosen chosen) => chosen.Cords.Any(context.WantsSwitchedOutlet) && chosen.Product.Pdu!.RemoteSwitched != true;

        // One after the other, each the one that takes the most of what is left.
        private List<Chosen> Fill(Product[] from)
        {
            List<Chosen> found = [];
            List<(Cord Cord, string? But)> left = [.. wanting];
            while (left.Count > 0 && build.Units.Count + found.Count < Outlets.MostUnits && Best(from, left, found) is { } next)
            {
                found.Add(next);
                left.RemoveAll(w => next.Cords.Contains(w.Cord));
            }

            return found;
        }

        // The PDU that takes the most cords within its rating, on a second supply with the first one lost. Then one that is remotely switched where needed.
        private Chosen? Best(Product[] from, List<(Cord Cord, string? But)> left, List<Chosen> found)
        {
            var outlets = SupplyChoice.Outlets(build);
            foreach (var one in found)
            {
                outlets[one.Supply.Id] = outlets.GetValueOrDefault(one.Supply.Id) + SupplyChoice.CountOf(one.Product.Pdu!);
            }

            var isFull = found.Count(c => IsHorizontal(c.Product)) >= MostHorizontal;
            return from
                .Select(p => (Product: p, Supply: SupplyChoice.For(build, p.Pdu!, outlets)))
                .Where(c => c.Supply is not null)
                .Select(c => new Chosen(
                    c.Product,
                    c.Supply!,
                    OutletNeeds.Take(
                        c.Product.Pdu!,
                        c.Supply!,
                        left.Where(w => w.But != c.Supply!.Id).Select(w => (w.Cord, isSecond ? PduPairs.LoadAlone(w.Cord) : w.Cord.VoltAmperes)),
                        isSecond ? PduPairs.ShareAlone(context, build) : context.Limits.PduDesignShare,
                        OutletNeeds.MostLeakageMa(
                            context, build, c.Product.Pdu!, SupplyChoice.LeavesAnother(build, c.Product.Pdu!, c.Supply!, outlets)))))
                .Where(c => c.Cords.Length > 0)
                .OrderBy(c => isFull && IsHorizontal(c.Product))
                .ThenByDescending(c => c.Cords.Length)
                .ThenBy(IsUnswitched)
                .ThenBy(c => PduRank.Of(context, build, c.Product, c.Supply, c.Cords))
                .FirstOrDefault();
        }
    }
}
