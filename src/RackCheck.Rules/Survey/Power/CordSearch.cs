namespace RackCheck.Rules.Survey.Power;

/// <content>The complete search, the matching of sockets alone, and the levelling of phases.</content>
internal sealed partial class CordAssignment
{
    // Depth first, largest cord first. Twins go into bins in ascending order, and of groups alike only the first is tried: else the same
    // assignment would be looked at under many names.
    private bool Complete(Wish wish)
    {
        Clear();
        steps = MostNodes;
        return Deepen(0, wish);
    }

    private bool Deepen(int cord, Wish wish)
    {
        if (cord == free)
        {
            return true;
        }

        var from = sameAsBefore[cord] >= 0 ? place[sameAsBefore[cord]] : 0;
        Span<bool> tried = stackalloc bool[bins.Length];
        while (true)
        {
            var best = -1;
            var least = double.PositiveInfinity;
            for (var bin = from; bin < bins.Length; bin++)
            {
                if (!tried[bin] && Fits(cord, bin, wish) && Score(cord, bin) is var score && score < least)
                {
                    (best, least) = (bin, score);
                }
            }

            if (best < 0 || --steps < 0)
            {
                return false;
            }

            tried[best] = true;
            for (var bin = from; bin < bins.Length; bin++)
            {
                tried[bin] |= AreAlike(bin, best);
            }

            Put(cord, best);
            if (Deepen(cord + 1, wish))
            {
                return true;
            }

            Take(cord);
        }
    }

    private bool AreAlike(int one, int other)
    {
        var (a, b) = (bins[one], bins[other]);
        return a.Socket == b.Socket && a.Switched == b.Switched && a.Free == b.Free && a.LineNode == b.LineNode
            && ReferenceEquals(a.Group.Unit, b.Group.Unit) && a.Group.GroupTypes == 1 && b.Group.GroupTypes == 1
            && nodes[a.GroupNode].LimitA == nodes[b.GroupNode].LimitA && nodes[a.GroupNode].WorstA == nodes[b.GroupNode].WorstA
            && nodes[a.GroupNode].NormalA == nodes[b.GroupNode].NormalA;
    }

    // The most cords that find sockets: augmenting paths, starting from what stands. Without regard to supplies it is a plain matching, and the most is found.
    private bool Match()
    {
        var all = true;
        Span<bool> seen = stackalloc bool[bins.Length];
        for (var cord = 0; cord < free; cord++)
        {
            if (place[cord] < 0)
            {
                seen.Clear();
                all &= Augment(cord, seen);
            }
        }

        return all;
    }

    private bool Augment(int cord, Span<bool> seen)
    {
        for (var bin = 0; bin < bins.Length; bin++)
        {
            if (seen[bin] || !takes[(cord * bins.Length) + bin])
            {
                continue;
            }

            if (bins[bin].Free > 0)
            {
                Put(cord, bin);
                return true;
            }

            seen[bin] = true;
            for (var other = 0; other < free; other++)
            {
                if (place[other] != bin)
                {
                    continue;
                }

                Take(other);
                if (Augment(other, seen))
                {
                    Put(cord, bin);
                    return true;
                }

                Put(other, bin);
            }
        }

        return false;
    }

    // Three phases: while moving a cord, or exchanging two, brings the lines of a supply closer together and breaks nothing, it is done.
    private void Level()
    {
        foreach (var supply in tree.Supplies)
        {
            if (supply.Phases != 3)
            {
                continue;
            }

            for (var round = 0; round < free && MoveOne(supply); round++)
            {
            }
        }
    }

    private bool MoveOne(SupplyNode supply)
    {
        var start = SupplyNodeOf(supply.Index, 0);
        var spread = Spread(start);
        var (bestCord, bestBin, bestOther, bestSpread) = (-1, -1, -1, spread - (1e-6 * Math.Max(1, spread)));
        for (var cord = 0; cord < free; cord++)
        {
            if (place[cord] is not (>= 0 and var from) || !ReferenceEquals(bins[from].Group.Unit.Supply, supply) || bins[from].SupplyNode < 0)
            {
                continue;
            }

            Take(cord);
            for (var bin = 0; bin < bins.Length; bin++)
            {
                if (bin != from && bins[bin].SupplyNode >= start && bins[bin].SupplyNode < start + 3 && IsAsGood(cord, from, bin))
                {
                    Try(cord, bin, -1);
                }
            }

            Put(cord, from);
            TryExchanges(cord, from);
        }

        if (bestCord < 0)
        {
            return false;
        }

        var away = place[bestCord];
        Take(bestCord);
        if (bestOther >= 0)
        {
            Take(bestOther);
            Put(bestOther, away);
        }

        Put(bestCord, bestBin);
        return true;

        void Try(int cord, int bin, int other)
        {
            Put(cord, bin);
            if (Spread(start) is var now && now < bestSpread)
            {
                (bestCord, bestBin, bestOther, bestSpread) = (cord, bin, other, now);
            }

            Take(cord);
        }

        void TryExchanges(int cord, int from)
        {
            for (var other = cord + 1; other < free; other++)
            {
                if (place[other] is not (>= 0 and var to) || to == from || bins[to].SupplyNode == bins[from].SupplyNode
                    || bins[to].SupplyNode < start || bins[to].SupplyNode >= start + 3 || cords[cord].Code != cords[other].Code)
                {
                    continue;
                }

                Take(cord);
                Take(other);
                if (IsAsGood(other, to, from))
                {
                    Put(other, from);
                    if (IsAsGood(cord, from, to))
                    {
                        Try(cord, to, other);
                    }

                    Take(other);
                }

                Put(cord, from);
                Put(other, to);
            }
        }
    }

    // A move may not use up a socket made for others, nor take a cord off an outlet that has to be switched, nor pass a limit that is kept.
    private bool IsAsGood(int cord, int from, int to) =>
        bins[to].Others <= bins[from].Others && bins[to].Switched == bins[from].Switched && Fits(cord, to, Wish.DesignShare);

    private double Spread(int start)
    {
        var most = Math.Max(nodes[start].NormalA, Math.Max(nodes[start + 1].NormalA, nodes[start + 2].NormalA));
        var least = Math.Min(nodes[start].NormalA, Math.Min(nodes[start + 1].NormalA, nodes[start + 2].NormalA));
        return most - least;
    }
}
