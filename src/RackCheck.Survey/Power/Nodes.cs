using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;

namespace RackCheck.Survey.Power;

/// <summary>A cord of an item: one plug, and the share of the item's power that it carries.</summary>
public sealed class Cord
{
    /// <summary>The item.</summary>
    public required MountedItem Item { get; init; }

    /// <summary>Which of the item's plugs, counted from 0.</summary>
    public required int Plug { get; init; }

    /// <summary>The plug.</summary>
    public required ConnectorCode Code { get; init; }

    /// <summary>How many cords the item has.</summary>
    public required int Siblings { get; init; }

    /// <summary>Index of the caller's connection that says where it goes; null where the service may choose.</summary>
    public int? Connection { get; internal set; }

    /// <summary>The outlet group that it hangs on; null where no outlet takes it.</summary>
    public GroupNode? Group { get; internal set; }

    /// <summary>The socket that it goes into; null where it hangs on a group without going into one of its outlets.</summary>
    public ConnectorCode? Socket { get; internal set; }

    /// <summary>Whether that outlet can be switched from afar.</summary>
    public bool Switched { get; internal set; }

    /// <summary>Active power in normal use, W.</summary>
    public double Watts { get; internal set; }

    /// <summary>Power factor of its item.</summary>
    public double PowerFactor { get; init; }

    /// <summary>Active power with each supply lost, W, by index of the supply; null where none is tried.</summary>
    internal double[]? WattsWithout { get; set; }

    /// <summary>Most active power with a supply lost, W; as in normal use unless the item is redundant.</summary>
    public double WorstWatts { get; internal set; }

    /// <summary>Inrush, A; null where the item's is not given.</summary>
    public double? InrushA { get; internal set; }

    /// <summary>Protective conductor current, mA; null where the item's is not given.</summary>
    public double? LeakageMa { get; internal set; }

    /// <summary>Whether the power of its item is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    /// <summary>Apparent power in normal use, VA.</summary>
    public double VoltAmperes => Watts / PowerFactor;

    /// <summary>Apparent power with the worst supply lost, VA.</summary>
    public double WorstVoltAmperes => WorstWatts / PowerFactor;

    /// <summary>Active power in a state, W.</summary>
    /// <param name="lost">The supply that is lost; null for normal use.</param>
    /// <returns>The power.</returns>
    public double WattsIn(SupplyNode? lost) => lost is null ? Watts : WattsWithout?[lost.Index] ?? Watts;

    /// <summary>Whether it draws on three lines alike.</summary>
    public bool IsThreePhase => PlugFit.IsThreePhase(Code);

    /// <summary>Whether its item needs an outlet that is remotely switched: its power is to be cycled from elsewhere, or it is a stand-by unit.</summary>
    public bool NeedsSwitchedOutlet => Item.Item is { RemotePowerCycle: true } or { Spare: true };

    /// <summary>Whether its item can do with one cord less.</summary>
    public bool IsRedundant => Item.Item!.Power?.Redundant == true;
}

/// <summary>What hangs on a line or breaker: normal current, and the most that any lost supply leaves it with.</summary>
public sealed class LoadPoint
{
    /// <summary>Current in normal use, A.</summary>
    public double NormalA { get; internal set; }

    /// <summary>Most current, over normal use and the loss of each supply, A.</summary>
    public double WorstA { get; internal set; }

    /// <summary>The supply whose loss brings the most current; null where normal use does.</summary>
    public SupplyNode? WorstWithout { get; internal set; }

    internal void Note(double current, SupplyNode? lost)
    {
        if (lost is null)
        {
            (NormalA, WorstA) = (current, current);
        }
        else if (current > WorstA * (1 + 1e-12))
        {
            (WorstA, WorstWithout) = (current, lost);
        }
    }
}

/// <summary>A supply with what hangs on it.</summary>
public sealed class SupplyNode
{
    /// <summary>Index in the request.</summary>
    public required int Index { get; init; }

    /// <summary>The supply of the request.</summary>
    public required Supply Source { get; init; }

    /// <summary>1 or 3.</summary>
    public required int Phases { get; init; }

    /// <summary>Rated current of its breaker, A: as given, else the supply's own.</summary>
    public required double BreakerA { get; init; }

    /// <summary>Its id.</summary>
    public string Id => Source.Id;

    /// <summary>What it may carry on a line, A: the less of its rating and its breaker's.</summary>
    public double RatedA => Math.Min(Source.RatedA, BreakerA);

    /// <summary>What it may carry on a line without a break, A: in North America a share of its breaker.</summary>
    public double ContinuousA => IsNorthAmerica ? Math.Min(RatedA, Limits.SupplyContinuousShare * BreakerA) : RatedA;

    /// <summary>What a design puts on a line, A.</summary>
    public double DesignA => Limits.SupplyDesignShare * RatedA;

    /// <summary>The limits in force.</summary>
    public required LimitsInForce Limits { get; init; }

    /// <summary>Whether North American practice holds.</summary>
    public required bool IsNorthAmerica { get; init; }

    /// <summary>Units that are plugged into it; those behind a UPS whose cords are known are not.</summary>
    public IReadOnlyList<PduNode> Units => UnitList;

    /// <summary>Its lines, one or three.</summary>
    public IReadOnlyList<LoadPoint> Lines => LineList;

    /// <summary>Neutral current of three phases: the sum of the phasors of the lines, each lagging by its own power factor.</summary>
    public LoadPoint Neutral { get; } = new();

    /// <summary>Inrush of what switches on at once on the worst line, A: of the items whose inrush is given.</summary>
    public double InrushA { get; internal set; }

    /// <summary>The line on which it is, 0 to 2.</summary>
    public int InrushLine { get; internal set; }

    /// <summary>Whether the inrush of all that hangs on it is given.</summary>
    public bool InrushIsKnown { get; internal set; } = true;

    /// <summary>Protective conductor current, mA: of the items whose current is given.</summary>
    public double LeakageMa { get; internal set; }

    /// <summary>Whether the protective conductor current of all that hangs on it is given.</summary>
    public bool LeakageIsKnown { get; internal set; } = true;

    /// <summary>Whether the power of all that hangs on it is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    /// <summary>Drop along its cable in normal use, percent of its voltage; null where length or section is not given.</summary>
    public double? VoltageDropPercent => Source.Cable is { LengthM: { } length, CrossSectionMm2: { } section }
        ? Cables.DropPercent(Cables.DropMvPerAM(section), length, MostLoaded.NormalA, Neutral.NormalA, Source.VoltageV)
        : null;

    /// <summary>The line with the most current in normal use.</summary>
    public LoadPoint MostLoaded
    {
        get
        {
            var most = LineList[0];
            foreach (var line in LineList)
            {
                most = line.NormalA > most.NormalA ? line : most;
            }

            return most;
        }
    }

    internal List<PduNode> UnitList { get; } = [];

    internal LoadPoint[] LineList { get; init; } = [];
}

/// <summary>A PDU with what hangs on it.</summary>
public sealed class PduNode
{
    /// <summary>Index in the request.</summary>
    public required int Index { get; init; }

    /// <summary>The unit of the request.</summary>
    public required Pdu Source { get; init; }

    /// <summary>Its supply.</summary>
    public required SupplyNode Supply { get; init; }

    /// <summary>The UPS that feeds it; null where it is plugged into the supply.</summary>
    public UpsNode? FedBy { get; internal set; }

    /// <summary>Its id.</summary>
    public string Id => Source.Id;

    /// <summary>What it may carry on a line, A.</summary>
    public double RatedA => Source.RatedA!.Value;

    /// <summary>What it may carry on a line without a break, A: in North America at most a share of the breaker that it hangs on.</summary>
    public double ContinuousA => Supply.IsNorthAmerica && FedBy is null
        ? Math.Min(RatedA, Supply.Limits.PduContinuousShare * Supply.BreakerA)
        : RatedA;

    /// <summary>What a design puts on a line, A.</summary>
    public double DesignA => Supply.Limits.PduDesignShare * RatedA;

    /// <summary>Its outlet groups.</summary>
    public IReadOnlyList<GroupNode> Groups => GroupList;

    /// <summary>Its lines, as many as its supply has.</summary>
    public IReadOnlyList<LoadPoint> Lines => LineList;

    /// <summary>Whether it hangs on more than one line.</summary>
    public bool IsThreePhase => Supply.Phases == 3 && (GroupList.Exists(g => g.Line > 0) || (Source.Plug is { } plug && PlugFit.IsThreePhase(plug)));

    /// <summary>Whether what it carries comes through the cords of a UPS.</summary>
    public bool IsBehindUps { get; internal set; }

    /// <summary>Protective conductor current, mA: of the items whose current is given.</summary>
    public double LeakageMa { get; internal set; }

    /// <summary>Whether the protective conductor current of all that hangs on it is given.</summary>
    public bool LeakageIsKnown { get; internal set; } = true;

    /// <summary>Whether the power of all that hangs on it is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    internal List<GroupNode> GroupList { get; } = [];

    internal LoadPoint[] LineList { get; init; } = [];
}

/// <summary>Outlets behind one breaker of a PDU.</summary>
public sealed class GroupNode
{
    /// <summary>Index in its unit.</summary>
    public required int Index { get; init; }

    /// <summary>Its unit.</summary>
    public required PduNode Unit { get; init; }

    /// <summary>The group of the request.</summary>
    public required OutletGroup Source { get; init; }

    /// <summary>The line that it hangs on, 0 to 2.</summary>
    public required int Line { get; init; }

    /// <summary>Its id.</summary>
    public string Id => Source.Id;

    /// <summary>Rated current of its breaker, A; null where it has none of its own.</summary>
    public double? BreakerA => Source.BreakerA;

    /// <summary>What it may carry without a break, A: in North America a share of its breaker; null where it has none of its own.</summary>
    public double? ContinuousA => Unit.Supply.IsNorthAmerica ? Unit.Supply.Limits.PduContinuousShare * BreakerA : BreakerA;

    /// <summary>What a design puts on it, A; null where it has no breaker of its own.</summary>
    public double? DesignA => Unit.Supply.Limits.PduDesignShare * BreakerA;

    /// <summary>Its current.</summary>
    public LoadPoint Load { get; } = new();

    /// <summary>Index among the groups of all units.</summary>
    public int FlatIndex { get; init; }

    /// <summary>Its place in the request.</summary>
    public string Pointer => FormattableString.Invariant($"/pdus/{Unit.Index}/groups/{Index}");
}

/// <summary>An uninterruptible power supply with what hangs on it.</summary>
public sealed class UpsNode
{
    /// <summary>The item.</summary>
    public required MountedItem Item { get; init; }

    /// <summary>What it can do.</summary>
    public required Ups Source { get; init; }

    /// <summary>Units that it feeds.</summary>
    public IReadOnlyList<PduNode> Units => UnitList;

    /// <summary>Active power of what hangs on it in normal use, W.</summary>
    public double LoadW { get; internal set; }

    /// <summary>Apparent power of what hangs on it in normal use, VA.</summary>
    public double LoadVa { get; internal set; }

    /// <summary>Most active power, with a supply lost, W.</summary>
    public double WorstW { get; internal set; }

    /// <summary>Most apparent power, with a supply lost, VA.</summary>
    public double WorstVa { get; internal set; }

    /// <summary>Whether it is said what it feeds, and all of that is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    internal List<PduNode> UnitList { get; } = [];

    internal Cord[] Cords { get; set; } = [];
}
