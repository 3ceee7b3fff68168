using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>What an item draws.</summary>
public sealed record ItemPower
{
    /// <summary>Rated power, W. Loading is judged on it.</summary>
    [Range(0d, 100000d)]
    public double? RatedW { get; init; }

    /// <summary>Typical power, W. Reported, and taken as heat.</summary>
    [Range(0d, 100000d)]
    public double? TypicalW { get; init; }

    /// <summary>Power factor; 0.95 unless told.</summary>
    [Range(0.05d, 1d)]
    public double? PowerFactor { get; init; }

    /// <summary>Voltage, V.</summary>
    [Range(1d, 1000d)]
    public double? VoltageV { get; init; }

    /// <summary>Inrush current at switch-on, A.</summary>
    [Range(0d, 10000d)]
    public double? InrushA { get; init; }

    /// <summary>Protective conductor current, mA.</summary>
    [Range(0d, 10000d)]
    public double? LeakageMa { get; init; }

    /// <summary>The plugs at the ends of its cords.</summary>
    [MaxLength(8)]
    public IReadOnlyList<ConnectorCode>? Plugs { get; init; }

    /// <summary>Whether each cord alone can carry it.</summary>
    public bool? Redundant { get; init; }
}

/// <summary>What an uninterruptible power supply can do.</summary>
public sealed record Ups
{
    /// <summary>Rated active power, W.</summary>
    [Range(1d, 1000000d)]
    public double? RatedW { get; init; }

    /// <summary>Rated apparent power, VA.</summary>
    [Range(1d, 1000000d)]
    public double? RatedVa { get; init; }

    /// <summary>Run time at <c>runLoadW</c>, minutes.</summary>
    [Range(0.1d, 10000d)]
    public double? RunMinutes { get; init; }

    /// <summary>Load that the run time is given at, W.</summary>
    [Range(1d, 1000000d)]
    public double? RunLoadW { get; init; }

    /// <summary>Ids of the PDUs that it feeds.</summary>
    [MaxLength(32)]
    public IReadOnlyList<string>? Feeds { get; init; }
}

/// <summary>An electrical supply that reaches the rack.</summary>
public sealed record Supply
{
    /// <summary>The caller's id of it, unique among supplies.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Voltage as an outlet sees it, V: line to neutral in uk and eu.</summary>
    [Range(1d, 1000d)]
    public required double VoltageV { get; init; }

    /// <summary>Number of phases: 1 or 3; 1 unless told.</summary>
    [AllowedValues(1, 3)]
    public int? Phases { get; init; }

    /// <summary>Rated current of a line, A.</summary>
    [Range(0.1d, 10000d)]
    public required double RatedA { get; init; }

    /// <summary>The circuit breaker.</summary>
    public Breaker? Breaker { get; init; }

    /// <summary>The socket that it ends in.</summary>
    public ConnectorCode? Socket { get; init; }

    /// <summary>The cable that leads to it.</summary>
    public SupplyCable? Cable { get; init; }

    /// <summary>Rated residual current of the RCD, mA.</summary>
    [Range(1d, 10000d)]
    public double? RcdMa { get; init; }

    /// <summary>Prospective fault current, A.</summary>
    [Range(0d, 1000000d)]
    public double? FaultCurrentA { get; init; }

    /// <summary>Time in which a fault is cut off, s.</summary>
    [Range(0d, 100d)]
    public double? DisconnectionTimeS { get; init; }
}

/// <summary>A circuit breaker.</summary>
public sealed record Breaker
{
    /// <summary>Trip curve.</summary>
    public BreakerCurve? Curve { get; init; }

    /// <summary>Rated current, A.</summary>
    [Range(0.1d, 10000d)]
    public double? RatedA { get; init; }
}

/// <summary>The cable of a supply.</summary>
public sealed record SupplyCable
{
    /// <summary>Length, m.</summary>
    [Range(0d, 10000d)]
    public double? LengthM { get; init; }

    /// <summary>Section of a line conductor, mm2.</summary>
    [Range(0.1d, 1000d)]
    public double? CrossSectionMm2 { get; init; }
}

/// <summary>What is true of every PDU of one product: what a part number can tell of it.</summary>
public abstract record PduFacts
{
    /// <summary>Rated current of a line, A. May come from the part number.</summary>
    [Range(0.1d, 10000d)]
    public double? RatedA { get; init; }

    /// <summary>The plug at the end of its lead.</summary>
    public ConnectorCode? Plug { get; init; }

    /// <summary>Vertical or horizontal.</summary>
    public PduMounting? Mounting { get; init; }

    /// <summary>Its outlets, group by group. May come from the part number.</summary>
    [Length(1, 24)]
    public IReadOnlyList<OutletGroup>? Groups { get; init; }

    /// <summary>Whether its outlets can be switched from afar.</summary>
    public bool? RemoteSwitched { get; init; }
}

/// <summary>What the product catalogue tells of a PDU.</summary>
public sealed record ProductPdu : PduFacts;

/// <summary>A PDU.</summary>
public sealed record Pdu : PduFacts
{
    /// <summary>The caller's id of it, unique among PDUs.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Id of the supply that it is plugged into.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Supply { get; init; }

    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>Where a horizontal one is mounted.</summary>
    public Position? Position { get; init; }
}

/// <summary>Outlets behind one breaker of a PDU.</summary>
public sealed record OutletGroup
{
    /// <summary>The caller's id of it, unique in its unit.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>The line that it hangs on; L1 unless told.</summary>
    public Phase? Phase { get; init; }

    /// <summary>Rated current of its breaker, A.</summary>
    [Range(0.1d, 10000d)]
    public double? BreakerA { get; init; }

    /// <summary>Its outlets, type by type.</summary>
    [Length(1, 24)]
    public required IReadOnlyList<OutletSet> Outlets { get; init; }
}

/// <summary>Outlets of one type.</summary>
public sealed record OutletSet
{
    /// <summary>The socket.</summary>
    public required ConnectorCode Socket { get; init; }

    /// <summary>How many.</summary>
    [Range(1, 100)]
    public required int Count { get; init; }

    /// <summary>Whether they can be switched from afar.</summary>
    public bool? Switched { get; init; }
}

/// <summary>A cord in an outlet.</summary>
public sealed record Connection
{
    /// <summary>Id of the item that the cord belongs to.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Item { get; init; }

    /// <summary>Which of the item's plugs, counted from 0; 0 unless told.</summary>
    [Range(0, 7)]
    public int? Plug { get; init; }

    /// <summary>Id of the PDU.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Pdu { get; init; }

    /// <summary>Id of the outlet group.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Group { get; init; }
}
