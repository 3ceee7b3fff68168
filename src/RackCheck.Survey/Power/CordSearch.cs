namespace RackCheck.Survey.Power;

/// <content>The complete search, the matching of sockets alone, and the levelling of phases.</content>
internal sealed partial class CordAssignment
{
    private const double CloseShare = 0.05;

    private int[]? twins;

    // Depth first, largest cord first. Twins go into bins in ascending order, and of groups alike only the first is tried: else the same
    // assignment would be looked at under many names.
    private bool Complete(Wish wish)
    {
        Clear();
        steps = MostNodes;
        twins ??= FindTwins();
        return Deepen(0, wish);
    }

    private bool Deepen(int cord, Wish wish)
    {
        if (cord == free)
        {
            return true;
        }

        var from = twins![cord] >= 0 ? place[twins![cord]] : 0;
        Span<bool> tried = stackalloc bool[bins.Length];
        while (true)
        {
            var best = -1;
            var least = double.PositiveInfinity;
            for (var bin = from; bin < bins.Length; bin++)
            {
                if (!tried[bin] && Fits(cord, bin, wish) && Score(cord, bins[bin]) is var score && score < least)
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
            if (seen[bin] || !takes[row[cord] + bin])
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
        var spread = Spread(start, 0, 0, 0);
        var least = 1e-6 * Math.Max(1, spread);
        var (bestCord, bestBin, bestOther, best) = (-1, -1, -1, spread - least);
        for (var cord = 0; cord < free; cord++)
        {
            if (LineOn(cord, start) is not (>= 0 and var line))
            {
                continue;
            }

            var from = place[cord];
            var load = va[cord] * bins[from].PerVolt;
            for (var bin = 0; bin < bins.Length; bin++)
            {
                var to = bins[bin].SupplyNode - start;
                if (to is >= 0 and < 3 && to != line && Spread(start, line, to, load) < best && CanMove(cord, bin))
                {
                    (bestCord, bestBin, bestOther, best) = (cord, bin, -1, Spread(start, line, to, load));
                }
            }

            // Lines that are close already are left: exchanges cost more to look for than they bring.
            for (var other = cord + 1; other < free && spread > CloseShare * nodes[start + line].NormalA; other++)
            {
                if (row[other] == row[cord] && LineOn(other, start) is >= 0 and var to && to != line
                    && Spread(start, line, to, load - (va[other] * bins[place[other]].PerVolt)) is var now && now < best && CanExchange(cord, other))
                {
                    (bestCord, bestBin, bestOther, best) = (cord, place[other], other, now);
                }
            }
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
    }

    // The line of a supply that a cord hangs on, 0 to 2; -1 where it hangs elsewhere, on all lines, or nowhere.
    private int LineOn(int cord, int start)
    {
        var line = place[cord] < 0 || lines[cord] == 3 ? -1 : bins[place[cord]].SupplyNode - start;
        return line is >= 0 and < 3 ? line : -1;
    }

    private bool CanMove(int cord, int to)
    {
        var from = place[cord];
        Take(cord);
        var can = IsAsGood(cord, from, to);
        Put(cord, from);
        return can;
    }

    private bool CanExchange(int cord, int other)
    {
        var (from, to) = (place[cord], place[other]);
        Take(cord);
        Take(other);
        var can = IsAsGood(other, to, from);
        if (can)
        {
            Put(other, from);
            can = IsAsGood(cord, from, to);
            Take(other);
        }

        Put(cord, from);
        Put(other, to);
        return can;
    }

    // A move may not use up a socket made for others, nor take a cord off an outlet that has to be switched, nor pass a limit that is kept.
    private bool IsAsGood(int cord, int from, int to) =>
        bins[to].Others <= bins[from].Others && bins[to].Switched == bins[from].Switched && Fits(cord, to, Wish.DesignShare);

    // Between the most and the least loaded line of a supply, with a load taken from one line to another.
    private double Spread(int start, int from, int to, double load)
    {
        Span<double> loads = [nodes[start].NormalA, nodes[start + 1].NormalA, nodes[start + 2].NormalA];
        loads[from] -= load;
        loads[to] += load;
        return Math.Max(loads[0], Math.Max(loads[1], loads[2])) - Math.Min(loads[0], Math.Min(loads[1], loads[2]));
    }
}
