using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Survey.Power;

/// <summary>A cord of an item: one plug, and the share of the power of the item that it carries.</summary>
public sealed class Cord
{
    /// <summary>The item.</summary>
    public required MountedItem Item { get; init; }

    /// <summary>Index of its plug in the item, from 0.</summary>
    public required int Plug { get; init; }

    /// <summary>The plug.</summary>
    public required ConnectorCode Code { get; init; }

    /// <summary>Number of cords of the item.</summary>
    public required int Siblings { get; init; }

    /// <summary>Index of the caller's connection for it; null if the service can choose.</summary>
    public int? Connection { get; internal set; }

    /// <summary>The outlet group that feeds it; null if it has no outlet.</summary>
    public GroupNode? Group { get; internal set; }

    /// <summary>The socket of its outlet; null if it is connected to a group without taking one of its outlets.</summary>
    public ConnectorCode? Socket { get; internal set; }

    /// <summary>Whether that outlet is remotely switched.</summary>
    public bool Switched { get; internal set; }

    /// <summary>Active power in normal use, W.</summary>
    public double Watts { get; internal set; }

    /// <summary>Power factor of the item.</summary>
    public double PowerFactor { get; init; }

    /// <summary>Active power with each supply lost, W, by index of the supply; null if the loss of a supply is not simulated.</summary>
    internal double[]? WattsWithout { get; set; }

    /// <summary>Maximum active power with a supply lost, W; as in normal use unless the item is redundant.</summary>
    public double WorstWatts { get; internal set; }

    /// <summary>Inrush current, A; null if that of the item is missing.</summary>
    public double? InrushA { get; internal set; }

    /// <summary>Protective conductor current, mA; null if that of the item is missing.</summary>
    public double? LeakageMa { get; internal set; }

    /// <summary>Whether the power of the item is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    /// <summary>Apparent power in normal use, VA.</summary>
    public double VoltAmperes => Watts / PowerFactor;

    /// <summary>Apparent power with the worst supply lost, VA.</summary>
    public double WorstVoltAmperes => WorstWatts / PowerFactor;

    /// <summary>Active power in a state, W.</summary>
    /// <param name="lost">The supply that is lost; null for normal use.</param>
    public double WattsIn(SupplyNode? lost) => lost is null ? Watts : WattsWithout?[lost.Index] ?? Watts;

    /// <summary>Whether it loads three lines equally.</summary>
    public bool IsThreePhase => PlugFit.IsThreePhase(Code);

    /// <summary>Whether its item needs a remotely switched outlet: it must be power cycled remotely, or it is a standby item.</summary>
    public bool NeedsSwitchedOutlet => Item.Item is { RemotePowerCycle: true } or { Spare: true };

    /// <summary>Whether its item can operate with one cord less.</summary>
    public bool IsRedundant => Item.Item!.Power?.Redundant == true;
}

/// <summary>The load of a line or breaker: current in normal use, and the maximum with any supply lost.</summary>
public sealed class LoadPoint
{
    /// <summary>Current in normal use, A.</summary>
    public double NormalA { get; internal set; }

    /// <summary>Maximum current, over normal use and the loss of each supply, A.</summary>
    public double WorstA { get; internal set; }

    /// <summary>The supply whose loss causes the maximum current; null if normal use does.</summary>
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

/// <summary>A supply and its load.</summary>
public sealed class SupplyNode
{
    /// <summary>Index in the request.</summary>
    public required int Index { get; init; }

    /// <summary>The supply of the request.</summary>
    public required Supply Source { get; init; }

    /// <summary>Number of phases, 1 or 3.</summary>
    public required int Phases { get; init; }

    /// <summary>Whether its outlets are fed from line to line, so that each line carries the current of two pairs.</summary>
    public bool IsLineToLine { get; init; }

    /// <summary>Rated current of its breaker, A: as given, else that of the supply.</summary>
    public required double BreakerA { get; init; }

    /// <summary>Its id.</summary>
    public string Id => Source.Id;

    /// <summary>Permitted line current, A: the lower of its rating and the rating of its breaker.</summary>
    public double RatedA => Math.Min(Source.RatedA, BreakerA);

    /// <summary>Permitted continuous line current, A: in North America a share of its breaker.</summary>
    public double ContinuousA => IsNorthAmerica ? Math.Min(RatedA, Limits.SupplyContinuousShare * BreakerA) : RatedA;

    /// <summary>Design line current, A.</summary>
    public double DesignA => Limits.SupplyDesignShare * RatedA;

    /// <summary>The limits in force.</summary>
    public required LimitsInForce Limits { get; init; }

    /// <summary>Whether North American practice applies.</summary>
    public required bool IsNorthAmerica { get; init; }

    /// <summary>PDUs connected to it, without those behind a UPS whose cords are known.</summary>
    public IReadOnlyList<PduNode> Units => UnitList;

    /// <summary>Its lines, one or three.</summary>
    public IReadOnlyList<LoadPoint> Lines => LineList;

    /// <summary>Neutral current of three phases: the phasor sum of the lines, each with its own power factor.</summary>
    public LoadPoint Neutral { get; } = new();

    /// <summary>Power of fans and air conditioner connected to the supply itself, W.</summary>
    public double CoolingW { get; init; }

    /// <summary>The line, or pair of lines, that the cooling is taken on: the one with the lowest load, 0 to 2.</summary>
    public int CoolingLine { get; internal set; }

    /// <summary>
    /// Current of a two-conductor loop with the same voltage drop: the line current of one phase, half of line and neutral currents of three phases, half of
    /// the difference of two lines from line to line.
    /// </summary>
    public LoadPoint Loop { get; } = new();

    /// <summary>Inrush current on the worst line of all equipment that starts together, A, as far as given.</summary>
    public double InrushA { get; internal set; }

    /// <summary>The line with that inrush current, 0 to 2.</summary>
    public int InrushLine { get; internal set; }

    /// <summary>Whether the inrush current of all connected items is given.</summary>
    public bool InrushIsKnown { get; internal set; } = true;

    /// <summary>Protective conductor current, mA, of the items whose current is given.</summary>
    public double LeakageMa { get; internal set; }

    /// <summary>Whether the protective conductor current of all connected items is given.</summary>
    public bool LeakageIsKnown { get; internal set; } = true;

    /// <summary>Whether the power of all connected items is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    /// <summary>Length of a single cable with the same loop as its cable, m: of a ring a quarter; null if the length is missing.</summary>
    public double? LoopLengthM => Source.Cable is { LengthM: { } length } cable ? Cables.LoopLengthM(length, cable.Ring == true) : null;

    /// <summary>That length as a calculation, "15" or "60 / 4"; empty if the length is missing.</summary>
    public string LoopLength => Source.Cable is { LengthM: { } length } cable
        ? cable.Ring == true ? Invariant($"{length:0.###} / {Cables.RingShare:0}") : Invariant($"{length:0.###}")
        : "";

    /// <summary>Voltage drop of its cable in normal use, percent; null if the length or the cross-sectional area is missing.</summary>
    public double? VoltageDropPercent => (LoopLengthM, Source.Cable?.CrossSectionMm2) is ({ } length, { } section)
        ? Cables.DropPercent(Cables.DropMvPerAM(section), length, Loop.NormalA, Source.VoltageV)
        : null;

    /// <summary>The line with the highest current in normal use.</summary>
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

/// <summary>A PDU and its load.</summary>
public sealed class PduNode
{
    /// <summary>Index in the request.</summary>
    public required int Index { get; init; }

    /// <summary>The PDU of the request.</summary>
    public required Pdu Source { get; init; }

    /// <summary>Its supply.</summary>
    public required SupplyNode Supply { get; init; }

    /// <summary>The UPS that feeds it; null if it is connected to the supply.</summary>
    public UpsNode? FedBy { get; internal set; }

    /// <summary>Its id.</summary>
    public string Id => Source.Id;

    /// <summary>Permitted line current, A.</summary>
    public double RatedA => Source.RatedA!.Value;

    /// <summary>Permitted continuous line current, A: in North America at most a share of the breaker that feeds it.</summary>
    public double ContinuousA => Supply.IsNorthAmerica && FedBy is null
        ? Math.Min(RatedA, Supply.Limits.PduContinuousShare * Supply.BreakerA)
        : RatedA;

    /// <summary>Design line current, A.</summary>
    public double DesignA => Supply.Limits.PduDesignShare * RatedA;

    /// <summary>Rated current of the breaker or plug fuse that protects it, A.</summary>
    public double UpstreamA => Source.Plug == ConnectorCode.Bs1363 ? Math.Min(Supply.BreakerA, Connectors.Bs1363FuseA) : Supply.BreakerA;

    /// <summary>Lowest rated current of the breakers and the fuse upstream of an outlet group, A.</summary>
    public double ProtectionA(GroupNode group) => Math.Min(UpstreamA, group.BreakerA ?? double.PositiveInfinity);

    /// <summary>Its outlet groups.</summary>
    public IReadOnlyList<GroupNode> Groups => GroupList;

    /// <summary>Its lines, as many as its supply has.</summary>
    public IReadOnlyList<LoadPoint> Lines => LineList;

    /// <summary>Whether it uses more than one line.</summary>
    public bool IsThreePhase => Supply.Phases == 3 && (GroupList.Exists(g => g.Line > 0) || (Source.Plug is { } plug && PlugFit.IsThreePhase(plug)));

    /// <summary>Whether it is fed through the cords of a UPS.</summary>
    public bool IsBehindUps { get; internal set; }

    /// <summary>Protective conductor current, mA, of the items whose current is given.</summary>
    public double LeakageMa { get; internal set; }

    /// <summary>Whether the protective conductor current of all connected items is given.</summary>
    public bool LeakageIsKnown { get; internal set; } = true;

    /// <summary>Whether the power of all connected items is known.</summary>
    public bool IsKnown { get; internal set; } = true;

    internal List<GroupNode> GroupList { get; } = [];

    internal LoadPoint[] LineList { get; init; } = [];
}

/// <summary>Outlets behind one breaker of a PDU.</summary>
public sealed class GroupNode
{
    /// <summary>Index in its PDU.</summary>
    public required int Index { get; init; }

    /// <summary>Its PDU.</summary>
    public required PduNode Unit { get; init; }

    /// <summary>The group of the request.</summary>
    public required OutletGroup Source { get; init; }

    /// <summary>The line that feeds it, or the pair of lines from L1-L2, 0 to 2.</summary>
    public required int Line { get; init; }

    /// <summary>Whether it loads a line of its PDU and supply.</summary>
    /// <param name="line">The line, 0 to 2.</param>
    public bool Loads(int line) => Line == line || (Unit.Supply.IsLineToLine && (Line + 1) % 3 == line);

    /// <summary>Its id.</summary>
    public string Id => Source.Id;

    /// <summary>Rated current of its own breaker, A; null if it has none.</summary>
    public double? BreakerA => Source.BreakerA;

    /// <summary>Permitted continuous current, A: in North America a share of its own breaker; null if it has none.</summary>
    public double? ContinuousA => Unit.Supply.IsNorthAmerica ? Unit.Supply.Limits.PduContinuousShare * BreakerA : BreakerA;

    /// <summary>Design current, A; null without its own breaker.</summary>
    public double? DesignA => Unit.Supply.Limits.PduDesignShare * BreakerA;

    /// <summary>Its current.</summary>
    public LoadPoint Load { get; } = new();

    /// <summary>Index among the groups of all PDUs.</summary>
    public int FlatIndex { get; init; }

    /// <summary>JSON Pointer in the request.</summary>
    public string Pointer => FormattableString.Invariant($"/pdus/{Unit.Index}/groups/{Index}");
}

/// <summary>A UPS and its load.</summary>
public sealed class UpsNode
{
    /// <summary>The item.</summary>
    public required MountedItem Item { get; init; }

    /// <summary>Its ratings.</summary>
    public required Ups Source { get; init; }

    /// <summary>PDUs that it feeds.</summary>
    public IReadOnlyList<PduNode> Units => UnitList;

    /// <summary>Active power of its load in normal use, W.</summary>
    public double LoadW { get; internal set; }

    /// <summary>Apparent power of its load in normal use, VA.</summary>
    public double LoadVa { get; internal set; }

    /// <summary>Maximum active power with a supply lost, W.</summary>
    public double WorstW { get; internal set; }

    /// <summary>Maximum apparent power with a supply lost, VA.</summary>
    public double WorstVa { get; internal set; }

    /// <summary>Whether its load is specified and known.</summary>
    public bool IsKnown { get; internal set; } = true;

    internal List<PduNode> UnitList { get; } = [];

    internal Cord[] Cords { get; set; } = [];

    /// <summary>Whether the description has one of its PDUs on a supply.</summary>
    internal bool IsDescribedOn(SupplyNode supply)
    {
        foreach (var unit in UnitList)
        {
            if (ReferenceEquals(unit.Supply, supply))
            {
                return true;
            }
        }

        return false;
    }
}
