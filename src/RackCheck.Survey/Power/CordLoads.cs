using RackCheck.Engineering;

namespace RackCheck.Survey.Power;

/// <summary>The power of a cord and the number of lines that share it.</summary>
internal readonly record struct CordDemand(double VoltAmperes, double WorstVoltAmperes, double Watts, double WorstWatts, int Lines)
{
    public static CordDemand Of(Cord cord) =>
        new(cord.VoltAmperes, cord.WorstVoltAmperes, cord.Watts, cord.WorstWatts, cord.IsThreePhase ? 3 : 1);
}

/// <summary>
/// The points that an outlet group loads, numbered as in <see cref="CordLoads"/>, and the UPS before it, -1 for none. Behind a UPS no supply line: the cord
/// of the UPS loads it.
/// </summary>
internal readonly record struct LoadPath(int Group, int PduLine, int SupplyLine, int Ups, double PerVolt);

/// <summary>
/// Currents during the assignment of cords: on the breaker of each outlet group and on each line of each PDU and supply,
/// with their limits; and the power that each UPS carries, with its ratings. Cooling that is connected to a supply loads it before any cord does.
/// </summary>
internal sealed class CordLoads
{
    // Points: the groups, padded to a multiple of four, then four for each PDU and each supply, three of them its lines.
    private const int PointsPerNode = 4;
    private const int Lines = 3;

    private readonly PowerTree tree;
    private readonly int firstLine;
    private readonly Point[] points;
    private readonly bool[] holdsPairs;
    private readonly Point[] upsWatts;
    private readonly Point[] upsVoltAmperes;

    public CordLoads(PowerTree tree)
    {
        this.tree = tree;
        firstLine = (tree.Groups.Length + PointsPerNode - 1) / PointsPerNode * PointsPerNode;
        points = new Point[firstLine + (PointsPerNode * (tree.Units.Length + tree.Supplies.Length))];
        holdsPairs = new bool[points.Length / PointsPerNode];
        foreach (var pdu in tree.Units)
        {
            holdsPairs[PduLine(pdu, 0) / PointsPerNode] = pdu.Supply.IsLineToLine;
        }

        (upsWatts, upsVoltAmperes) = tree.Ups.Length == 0 ? ([], []) : (new Point[tree.Ups.Length], new Point[tree.Ups.Length]);
        for (var i = 0; i < tree.Ups.Length; i++)
        {
            var (watts, voltAmperes) = (tree.Ups[i].Source.RatedW ?? double.PositiveInfinity, tree.Ups[i].Source.RatedVa ?? double.PositiveInfinity);
            upsWatts[i].Limit(watts, watts);
            upsVoltAmperes[i].Limit(voltAmperes, voltAmperes);
        }

        foreach (var group in tree.Groups)
        {
            points[group.FlatIndex].Limit(group.ContinuousA ?? double.PositiveInfinity, group.DesignA ?? double.PositiveInfinity);
        }

        for (var line = 0; line < Lines; line++)
        {
            foreach (var pdu in tree.Units)
            {
                points[PduLine(pdu, line)].Limit(pdu.ContinuousA, pdu.DesignA);
            }

            foreach (var supply in tree.Supplies)
            {
                points[SupplyLine(supply, line)].Limit(supply.ContinuousA, supply.DesignA);
            }
        }

        foreach (var supply in tree.Supplies)
        {
            // Of three phases the line that is left with the lowest load gets it, so that cords go to the others.
            var cooling = CoolingA(supply);
            holdsPairs[SupplyLine(supply, 0) / PointsPerNode] = supply.IsLineToLine;
            points[SupplyLine(supply, 0)].Add(cooling, cooling);
        }
    }

    /// <summary>The points that a cord in a group loads.</summary>
    public LoadPath PathOf(GroupNode group)
    {
        var pdu = group.Unit;
        var isBehindUps = pdu.FedBy is { Item.Item.Power.Plugs.Count: > 0 };
        return new(
            group.FlatIndex, PduLine(pdu, group.Line), isBehindUps ? -1 : SupplyLine(pdu.Supply, group.Line),
            pdu.FedBy is { } ups ? Array.IndexOf(tree.Ups, ups) : -1, 1 / pdu.Supply.Source.VoltageV);
    }

    public void Add(in LoadPath path, in CordDemand demand) => Add(path, demand, 1);

    public void Remove(in LoadPath path, in CordDemand demand) => Add(path, demand, -1);

    /// <summary>Whether the limits hold with one more cord.</summary>
    public bool Keeps(in LoadPath path, in CordDemand demand, CordLimits limits)
    {
        if (limits == CordLimits.Sockets)
        {
            return true;
        }

        var normal = demand.VoltAmperes * path.PerVolt / demand.Lines;
        var worst = demand.WorstVoltAmperes * path.PerVolt / demand.Lines;
        if (!Keeps(path.Group, normal, worst, limits) || !KeepsUps(path.Ups, demand, limits))
        {
            return false;
        }

        if (limits != CordLimits.Breakers && holdsPairs[path.PduLine / PointsPerNode])
        {
            return KeepsPairs(path.PduLine, demand.Lines, normal, worst, limits) && KeepsPairs(path.SupplyLine, demand.Lines, normal, worst, limits);
        }

        for (var i = 0; i < demand.Lines && limits != CordLimits.Breakers; i++)
        {
            if (!Keeps(LineOf(path.PduLine, i, demand.Lines), normal, worst, limits) || !Keeps(LineOf(path.SupplyLine, i, demand.Lines), normal, worst, limits))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Sum of the loads on a path with one more cord, each as a share of its limit.</summary>
    public double SharesWith(in LoadPath path, in CordDemand demand)
    {
        var normal = demand.VoltAmperes * path.PerVolt;
        return points[path.Group].Share(normal) + points[path.PduLine].Share(normal) + (path.SupplyLine < 0 ? 0 : points[path.SupplyLine].Share(normal));
    }

    /// <summary>Whether two groups on one line of a PDU have the same breaker and the same load.</summary>
    public bool AreAlike(in LoadPath one, in LoadPath other)
    {
        ref readonly var a = ref points[one.Group];
        ref readonly var b = ref points[other.Group];
        return one.PduLine == other.PduLine && a.Limited == b.Limited && a.Worst == b.Worst && a.Normal == b.Normal;
    }

    /// <summary>The line of a supply that a path loads, 0 to 2; -1 if it loads none.</summary>
    public int LineOn(SupplyNode supply, in LoadPath path) => path.SupplyLine - SupplyLine(supply, 0) is >= 0 and < Lines and var line ? line : -1;

    /// <summary>Normal current of a line of a supply, A.</summary>
    public double LineA(SupplyNode supply, int line) => points[SupplyLine(supply, line)].Normal;

    /// <summary>Whether the total load is within the total capacity of the PDUs. If it is not, no assignment can hold.</summary>
    /// <param name="limits">The limits.</param>
    /// <param name="setAsideVoltAmperes">The part of the load that gets no outlet, VA.</param>
    public bool HasRoom(CordLimits limits, double setAsideVoltAmperes)
    {
        double load = -setAsideVoltAmperes, room = 0;
        foreach (var cord in tree.Cords)
        {
            load += cord.VoltAmperes;
        }

        foreach (var supply in tree.Supplies)
        {
            var pdus = 0.0;
            foreach (var pdu in supply.UnitList)
            {
                pdus += RoomOf(pdu, limits);
            }

            var own = (points[SupplyLine(supply, 0)].For(limits) * supply.LineList.Length) - CoolingA(supply);
            var isOpen = limits == CordLimits.Breakers || supply.UnitList.Exists(u => u.FedBy is not null);
            room += supply.Source.VoltageV * (isOpen ? pdus : Math.Min(own, pdus));
        }

        return !Comparison.IsOver(load, room);
    }

    private double RoomOf(PduNode pdu, CordLimits limits)
    {
        var amperes = 0.0;
        for (var line = 0; line < pdu.LineList.Length; line++)
        {
            var groups = 0.0;
            foreach (var group in pdu.GroupList)
            {
                groups += group.Line == line ? points[group.FlatIndex].For(limits) : 0;
            }

            amperes += limits == CordLimits.Breakers ? groups : Math.Min(points[PduLine(pdu, line)].For(limits), groups);
        }

        return amperes;
    }

    private static double CoolingA(SupplyNode supply) =>
        supply.CoolingW > 0 ? Currents.SinglePhaseA(supply.CoolingW, supply.Source.VoltageV, Currents.UsualPowerFactor) : 0;

    private int PduLine(PduNode pdu, int line) => firstLine + (PointsPerNode * pdu.Index) + line;

    private int SupplyLine(SupplyNode supply, int line) => firstLine + (PointsPerNode * (tree.Units.Length + supply.Index)) + line;

    // A three-phase cord loads all lines of a PDU or supply, whichever line its group is on.
    private static int LineOf(int point, int line, int onLines) => point < 0 || onLines == 1 ? point : point - (point % PointsPerNode) + line;

    private bool Keeps(int point, double normal, double worst, CordLimits limits) => point < 0 || Keeps(points[point], normal, worst, limits);

    private static bool Keeps(in Point at, double normal, double worst, CordLimits limits) =>
        !Comparison.IsOver(at.Normal + normal, at.For(limits))
            && (limits is CordLimits.Ratings or CordLimits.Breakers || !Comparison.IsOver(at.Worst + worst, at.Limited));

    private bool KeepsUps(int ups, in CordDemand demand, CordLimits limits) =>
        ups < 0 || limits == CordLimits.Breakers
            || (Keeps(upsWatts[ups], demand.Watts, demand.WorstWatts, limits)
                && Keeps(upsVoltAmperes[ups], demand.VoltAmperes, demand.WorstVoltAmperes, limits));

    // The points of a node from line to line hold the loads of its pairs; each of its lines carries two of them.
    private bool KeepsPairs(int point, int onLines, double normal, double worst, CordLimits limits)
    {
        if (point < 0)
        {
            return true;
        }

        var (first, pair) = (point - (point % PointsPerNode), point % PointsPerNode);
        for (var line = 0; line < Lines; line++)
        {
            var (one, other) = (line, (line + Lines - 1) % Lines);
            var (a, b) = (onLines == Lines || one == pair ? 1 : 0, onLines == Lines || other == pair ? 1 : 0);
            ref readonly var p = ref points[first + one];
            ref readonly var q = ref points[first + other];
            if (a + b > 0
                && (Comparison.IsOver(Currents.LineOfPairsA(Above0(p.Normal + (a * normal)), Above0(q.Normal + (b * normal))), p.For(limits))
                    || (limits is not (CordLimits.Ratings or CordLimits.Breakers)
                        && Comparison.IsOver(Currents.LineOfPairsA(Above0(p.Worst + (a * worst)), Above0(q.Worst + (b * worst))), p.Limited))))
            {
                return false;
            }
        }

        return true;

        // Cords that are taken out again leave the rounding of their sum behind.
        static double Above0(double currentA) => Math.Max(0, currentA);
    }

    private void Add(in LoadPath path, in CordDemand demand, int sign)
    {
        var normal = sign * demand.VoltAmperes * path.PerVolt / demand.Lines;
        var worst = sign * demand.WorstVoltAmperes * path.PerVolt / demand.Lines;
        Add(path.Group, normal, worst);
        for (var i = 0; i < demand.Lines; i++)
        {
            Add(LineOf(path.PduLine, i, demand.Lines), normal, worst);
            Add(LineOf(path.SupplyLine, i, demand.Lines), normal, worst);
        }

        if (path.Ups >= 0)
        {
            upsWatts[path.Ups].Add(sign * demand.Watts, sign * demand.WorstWatts);
            upsVoltAmperes[path.Ups].Add(sign * demand.VoltAmperes, sign * demand.WorstVoltAmperes);
        }
    }

    private void Add(int point, double normal, double worst)
    {
        if (point >= 0)
        {
            points[point].Add(normal, worst);
        }
    }

    /// <summary>A point with a limit: a breaker of a group, a line of a PDU or of a supply, in A; a UPS, in W and VA.</summary>
    private struct Point
    {
        private double designLimit;
        private double perLimit;

        public double Limited { get; private set; }

        public double Normal { get; private set; }

        public double Worst { get; private set; }

        public readonly double For(CordLimits limits) => limits == CordLimits.DesignShare ? designLimit : Limited;

        public readonly double Share(double more) => (Normal + more) * perLimit;

        public void Limit(double continuous, double design) =>
            (Limited, designLimit, perLimit) = (continuous, Math.Min(continuous, design), double.IsInfinity(continuous) ? 0 : 1 / continuous);

        public void Add(double normal, double worst) => (Normal, Worst) = (Normal + normal, Worst + worst);
    }
}
