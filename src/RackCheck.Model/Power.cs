using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>Electrical input of an item.</summary>
public sealed record ItemPower
{
    /// <summary>Rated power, W. Used for all loading checks.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedW { get; init; }

    /// <summary>Typical power, W. Reported, and used as the heat load.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? TypicalW { get; init; }

    /// <summary>Power factor. Default 0.95.</summary>
    [Range(0.05d, 1d)]
    [Kind(MemberKind.Fact)]
    public double? PowerFactor { get; init; }

    /// <summary>Voltage, V.</summary>
    [Range(1d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? VoltageV { get; init; }

    /// <summary>Inrush current at switch-on, A.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? InrushA { get; init; }

    /// <summary>Half-value width of the inrush pulse, ms.</summary>
    [Range(0.001d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? InrushMs { get; init; }

    /// <summary>Protective conductor current, mA.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? LeakageMa { get; init; }

    /// <summary>Plugs of the item's mains cords.</summary>
    [MaxLength(8)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<ConnectorCode>? Plugs { get; init; }

    /// <summary>Whether the item is dual-corded: any one cord can carry the full load.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? Redundant { get; init; }
}

/// <summary>Data of an uninterruptible power supply (UPS).</summary>
public sealed record Ups
{
    /// <summary>Rated active power, W.</summary>
    [Range(1d, 1000000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedW { get; init; }

    /// <summary>Rated apparent power, VA.</summary>
    [Range(1d, 1000000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedVa { get; init; }

    /// <summary>Run time at <c>runLoadW</c>, minutes.</summary>
    [Range(0.1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? RunMinutes { get; init; }

    /// <summary>Load at which the run time is specified, W.</summary>
    [Range(1d, 1000000d)]
    [Kind(MemberKind.Fact)]
    public double? RunLoadW { get; init; }

    /// <summary>Input power for recharging the battery, W. Where absent, 10 % of <c>ratedW</c>.</summary>
    [Range(0d, 1000000d)]
    [Kind(MemberKind.Fact)]
    public double? ChargeW { get; init; }

    /// <summary>Output sockets.</summary>
    [Length(1, 24)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<UpsOutlet>? Outlets { get; init; }

    /// <summary>Ids of the PDUs fed by the UPS.</summary>
    [MaxLength(32)]
    [Kind(MemberKind.Choice)]
    public IReadOnlyList<string>? Feeds { get; init; }
}

/// <summary>Output sockets of a UPS of one type.</summary>
public sealed record UpsOutlet
{
    /// <summary>Socket type.</summary>
    public required ConnectorCode Socket { get; init; }

    /// <summary>Number of sockets.</summary>
    [Range(1, 100)]
    public required int Count { get; init; }
}

/// <summary>An electrical supply that reaches the rack.</summary>
public sealed record Supply
{
    /// <summary>Id given by the caller, unique among supplies.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Voltage at the outlets, V: line to neutral in uk and eu.</summary>
    [Range(1d, 1000d)]
    public required double VoltageV { get; init; }

    /// <summary>Number of phases: 1 or 3. Default 1.</summary>
    [AllowedValues(1, 3)]
    [Kind(MemberKind.Fact)]
    public int? Phases { get; init; }

    /// <summary>Rated current per line, A.</summary>
    [Range(0.1d, 10000d)]
    public required double RatedA { get; init; }

    /// <summary>The circuit breaker.</summary>
    [Kind(MemberKind.Part)]
    public Breaker? Breaker { get; init; }

    /// <summary>Socket at the end of the supply.</summary>
    [Kind(MemberKind.Fact)]
    public ConnectorCode? Socket { get; init; }

    /// <summary>The supply cable.</summary>
    [Kind(MemberKind.Part)]
    public SupplyCable? Cable { get; init; }

    /// <summary>Rated residual current of the RCD, mA.</summary>
    [Range(1d, 10000d)]
    [Kind(MemberKind.Part)]
    public double? RcdMa { get; init; }

    /// <summary>Prospective fault current from line to earth at the origin of the supply cable, A.</summary>
    [Range(0d, 1000000d)]
    [Kind(MemberKind.Fact)]
    public double? FaultCurrentA { get; init; }

    /// <summary>Disconnection time on an earth fault, s.</summary>
    [Range(0d, 100d)]
    [Kind(MemberKind.Fact)]
    public double? DisconnectionTimeS { get; init; }
}

/// <summary>A circuit breaker.</summary>
public sealed record Breaker
{
    /// <summary>Trip curve.</summary>
    [Kind(MemberKind.Fact)]
    public BreakerCurve? Curve { get; init; }

    /// <summary>Rated current, A.</summary>
    [Range(0.1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedA { get; init; }

    /// <summary>Rated breaking capacity, kA.</summary>
    [Range(0.1d, 500d)]
    [Kind(MemberKind.Fact)]
    public double? BreakingKa { get; init; }
}

/// <summary>The cable of a supply.</summary>
public sealed record SupplyCable
{
    /// <summary>Length, m; of a ring final circuit the whole ring, from the breaker round to the breaker.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? LengthM { get; init; }

    /// <summary>Cross-sectional area of a line conductor, mm2.</summary>
    [Range(0.1d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? CrossSectionMm2 { get; init; }

    /// <summary>Whether the cable is a ring final circuit. Default false.</summary>
    [Kind(MemberKind.Part)]
    public bool? Ring { get; init; }

    /// <summary>Ambient temperature of the cable, C. Default the site's maximum.</summary>
    [Range(-20d, 80d)]
    [Kind(MemberKind.Fact)]
    public double? AmbientC { get; init; }

    /// <summary>Number of loaded circuits bunched together, this one included. Default 1.</summary>
    [Range(1, 100)]
    [Kind(MemberKind.Choice)]
    public int? Grouped { get; init; }
}

/// <summary>Properties of a PDU that its part number can give.</summary>
public abstract record PduFacts
{
    /// <summary>Rated current per line, A. May come from the part number.</summary>
    [Range(0.1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedA { get; init; }

    /// <summary>Plug of the PDU's input lead.</summary>
    [Kind(MemberKind.Fact)]
    public ConnectorCode? Plug { get; init; }

    /// <summary>Vertical or horizontal.</summary>
    [Kind(MemberKind.Choice)]
    public PduMounting? Mounting { get; init; }

    /// <summary>Outlet groups. May come from the part number.</summary>
    [Length(1, 24)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<OutletGroup>? Groups { get; init; }

    /// <summary>Whether the outlets are remotely switched.</summary>
    [Kind(MemberKind.Part)]
    public bool? RemoteSwitched { get; init; }

    /// <summary>Length of a vertical PDU, mm.</summary>
    [Range(50d, 5000d)]
    [Kind(MemberKind.Fact)]
    public double? LengthMm { get; init; }

    /// <summary>Maximum ambient temperature of the PDU, C. Default 60 C.</summary>
    [Range(0d, 120d)]
    [Kind(MemberKind.Fact)]
    public double? MaxAmbientC { get; init; }
}

/// <summary>Catalogue data of a PDU.</summary>
public sealed record ProductPdu : PduFacts;

/// <summary>A rack PDU.</summary>
public sealed record Pdu : PduFacts
{
    /// <summary>Id given by the caller, unique among PDUs.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>
    /// Id of the supply that feeds the PDU. Behind a UPS, which takes its power where it is plugged in, it is the side that the PDU counts for when the service
    /// divides the cords of dual-corded items.
    /// </summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Supply { get; init; }

    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Part)]
    public string? PartNumber { get; init; }

    /// <summary>Mounting position of a horizontal PDU.</summary>
    [Kind(MemberKind.Choice)]
    public Position? Position { get; init; }
}

/// <summary>Outlets of a PDU protected by one breaker.</summary>
public sealed record OutletGroup
{
    /// <summary>Id given by the caller, unique in the PDU.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Line, or pair of lines, that feeds the group. Default L1.</summary>
    [Kind(MemberKind.Choice)]
    public Phase? Phase { get; init; }

    /// <summary>Rated current of the group's breaker, A.</summary>
    [Range(0.1d, 10000d)]
    [Kind(MemberKind.Part)]
    public double? BreakerA { get; init; }

    /// <summary>Outlets by socket type.</summary>
    [Length(1, 24)]
    public required IReadOnlyList<OutletSet> Outlets { get; init; }
}

/// <summary>Outlets of one type.</summary>
public sealed record OutletSet
{
    /// <summary>Socket type.</summary>
    public required ConnectorCode Socket { get; init; }

    /// <summary>Number of outlets.</summary>
    [Range(1, 100)]
    public required int Count { get; init; }

    /// <summary>Whether the outlets are remotely switched.</summary>
    [Kind(MemberKind.Part)]
    public bool? Switched { get; init; }
}

/// <summary>A mains cord plugged into an outlet.</summary>
public sealed record Connection
{
    /// <summary>Id of the item at the end of the cord.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Item { get; init; }

    /// <summary>Index of the item's plug, counted from 0. Default 0.</summary>
    [Range(0, 7)]
    [Kind(MemberKind.Choice)]
    [AbsentMeansDefault]
    public int? Plug { get; init; }

    /// <summary>Id of the PDU.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Pdu { get; init; }

    /// <summary>Id of the outlet group.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Group { get; init; }
}
