using System.Numerics;
using RackCheck.Engineering;

namespace RackCheck.Survey.Power;

/// <summary>Currents of one state of the tree: normal use, or one supply lost.</summary>
internal sealed class PowerSolver(PowerTree tree)
{
    private readonly bool[] alive = new bool[tree.Units.Length];
    private readonly double[] groupVa = new double[tree.Groups.Length];
    private readonly double[] lineVa = new double[3 * tree.Units.Length];
    private readonly double[] lineW = new double[3 * tree.Units.Length];
    private readonly double[] lineVar = new double[3 * tree.Units.Length];

    public void Run(SupplyNode? lost)
    {
        FindLiveUnits(lost);
        SpreadItems(lost);
        SpreadUps(lost);
        foreach (var group in tree.Groups)
        {
            group.Load.Note(groupVa[group.FlatIndex] / group.Unit.Supply.Source.VoltageV, lost);
        }

        Span<double> lines = stackalloc double[3];
        Span<Complex> phasors = stackalloc Complex[3];
        foreach (var unit in tree.Units)
        {
            Clear(lines, phasors);
            Collect(unit, lines, phasors);
            LinesOf(unit.Supply, lines, phasors);
            for (var line = 0; line < unit.LineList.Length; line++)
            {
                unit.LineList[line].Note(lines[line], lost);
            }
        }

        foreach (var supply in tree.Supplies)
        {
            SumUp(supply, lost);
        }
    }

    // A PDU behind a UPS is supplied while one cord of the UPS is: the battery bridges a time, it is not a supply.
    private void FindLiveUnits(SupplyNode? lost)
    {
        for (var round = 0; round <= tree.Ups.Length; round++)
        {
            foreach (var unit in tree.Units)
            {
                alive[unit.Index] = unit.IsBehindUps
                    ? Array.Exists(unit.FedBy!.Cords, c => c.Group is { } group && alive[group.Unit.Index])
                    : !ReferenceEquals(unit.Supply, lost);
            }
        }
    }

    private void SpreadItems(SupplyNode? lost)
    {
        var cords = tree.Cords;
        for (var first = 0; first < cords.Length; first += cords[first].Siblings)
        {
            if (cords[first].Item.Item!.Ups is null)
            {
                Spread(cords.AsSpan(first, cords[first].Siblings), PowerTree.WattsOf(cords[first].Item.Item!), cords[first].IsKnown, lost);
            }
        }
    }

    private void Spread(ReadOnlySpan<Cord> cords, double watts, bool known, SupplyNode? lost)
    {
        var live = 0;
        foreach (var cord in cords)
        {
            live += cord.Group is { } group && alive[group.Unit.Index] ? 1 : 0;
        }

        foreach (var cord in cords)
        {
            // An item that is not redundant loads each of its cords; a redundant item puts its full load on the cords that are still supplied.
            var share = watts / (cord.IsRedundant && lost is not null ? Math.Max(1, live) : cords.Length);
            cord.Watts = lost is null ? share : cord.Watts;
            cord.IsKnown = known;
            var isAlive = cord.Group is { } at && alive[at.Unit.Index];
            if (lost is not null)
            {
                (cord.WattsWithout ??= new double[tree.Supplies.Length])[lost.Index] = isAlive ? share : 0;
            }

            if (isAlive && cord.Group is { } group)
            {
                cord.WorstWatts = lost is null ? share : Math.Max(cord.WorstWatts, share);
                Add(cord, group, share, known);
            }
        }
    }

    private void Add(Cord cord, GroupNode group, double watts, bool known)
    {
        var unit = group.Unit;
        var lines = cord.IsThreePhase ? unit.LineList.Length : 1;
        var va = watts / cord.PowerFactor / lines;
        var reactive = va * Math.Sqrt(1 - (cord.PowerFactor * cord.PowerFactor));
        groupVa[group.FlatIndex] += va;
        for (var i = 0; i < lines; i++)
        {
            var at = (3 * unit.Index) + (lines == 1 ? group.Line : i);
            lineVa[at] += va;
            lineW[at] += watts / lines;
            lineVar[at] += reactive;
        }

        if (!known)
        {
            unit.IsKnown = false;
            unit.Supply.IsKnown &= unit.IsBehindUps;
        }
    }

    // From the loads upwards: a UPS draws its load and its own losses.
    private void SpreadUps(SupplyNode? lost)
    {
        var left = tree.Ups.ToList();
        while (left.Count > 0)
        {
            var next = left.FindIndex(u =>
                !left.Exists(o => !ReferenceEquals(o, u) && Array.Exists(o.Cords, c => c.Group is { } g && ReferenceEquals(g.Unit.FedBy, u))));
            var ups = left[Math.Max(0, next)];
            left.Remove(ups);
            double watts = 0, va = 0;
            var known = ups.Source.Feeds is not null;
            foreach (var unit in ups.UnitList)
            {
                known &= unit.IsKnown;
                for (var at = 3 * unit.Index; at < (3 * unit.Index) + 3; at++)
                {
                    watts += lineW[at];
                    va += lineVa[at];
                }
            }

            (ups.WorstW, ups.WorstVa) = lost is null ? (watts, va) : (Math.Max(ups.WorstW, watts), Math.Max(ups.WorstVa, va));
            if (lost is null)
            {
                (ups.LoadW, ups.LoadVa, ups.IsKnown) = (watts, va, known);
            }

            var own = ups.Item.Item!;
            var drawn = ups.Source.Feeds is null ? PowerTree.WattsOf(own) : watts + (own.HeatW ?? 0);
            Spread(ups.Cords, drawn, known || (ups.Source.Feeds is null && own.Power?.RatedW is not null), lost);
        }
    }

    private void SumUp(SupplyNode supply, SupplyNode? lost)
    {
        Span<double> lines = stackalloc double[3];
        Span<Complex> phasors = stackalloc Complex[3];
        foreach (var unit in supply.UnitList)
        {
            if (!unit.IsBehindUps)
            {
                Collect(unit, lines, phasors);
            }
        }

        AddCooling(supply, lines, phasors, lost);
        LinesOf(supply, lines, phasors);
        for (var line = 0; line < supply.LineList.Length; line++)
        {
            supply.LineList[line].Note(lines[line], lost);
        }

        if (supply.IsLineToLine)
        {
            // No neutral. The voltage drop of a pair is that of the difference of its lines.
            supply.Neutral.Note(0, lost);
            var most = Math.Max((phasors[0] - phasors[1]).Magnitude, Math.Max((phasors[1] - phasors[2]).Magnitude, (phasors[2] - phasors[0]).Magnitude));
            supply.Loop.Note(most / 2, lost);
        }
        else if (supply.Phases == 3)
        {
            var neutral = Currents.NeutralA(phasors[0], phasors[1], phasors[2]);
            supply.Neutral.Note(neutral, lost);

            // An unknown load can balance the three phases and so cancel the neutral current. The drop along the phase conductor is certain.
            supply.Loop.Note((Math.Max(lines[0], Math.Max(lines[1], lines[2])) + (supply.IsKnown ? neutral : 0)) / 2, lost);
        }
        else
        {
            supply.Neutral.Note(lines[0], lost);
            supply.Loop.Note(lines[0], lost);
        }
    }

    // An installer connects cooling to the line with the lowest load; it stays there when a supply is lost.
    private static void AddCooling(SupplyNode supply, Span<double> lines, Span<Complex> phasors, SupplyNode? lost)
    {
        if (supply.CoolingW <= 0)
        {
            return;
        }

        if (lost is null)
        {
            for (var line = 1; line < supply.LineList.Length; line++)
            {
                supply.CoolingLine = lines[line] < lines[supply.CoolingLine] ? line : supply.CoolingLine;
            }
        }

        var current = Currents.SinglePhaseA(supply.CoolingW, supply.Source.VoltageV, Currents.UsualPowerFactor);
        lines[supply.CoolingLine] += current;
        phasors[supply.CoolingLine] += Currents.Phasor(current, Currents.UsualPowerFactor);
    }

    private static void Clear(Span<double> lines, Span<Complex> phasors)
    {
        lines.Clear();
        phasors.Clear();
    }

    // Adds the currents of a PDU, of its lines or of its pairs of lines.
    private void Collect(PduNode unit, Span<double> lines, Span<Complex> phasors)
    {
        var voltage = unit.Supply.Source.VoltageV;
        for (var line = 0; line < unit.LineList.Length; line++)
        {
            var at = (3 * unit.Index) + line;
            lines[line] += lineVa[at] / voltage;
            phasors[line] += new Complex(lineW[at] / voltage, -lineVar[at] / voltage);
        }
    }

    // From line to line the sums are those of pairs: each line carries the phasor difference of two. Elsewhere they are those of lines.
    private static void LinesOf(SupplyNode supply, Span<double> lines, Span<Complex> phasors)
    {
        if (supply.IsLineToLine)
        {
            (phasors[0], phasors[1], phasors[2]) = Currents.LinesOfPairs(phasors[0], phasors[1], phasors[2]);
            (lines[0], lines[1], lines[2]) = (phasors[0].Magnitude, phasors[1].Magnitude, phasors[2].Magnitude);
        }
    }
}
