using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey.Layout;

/// <summary>Something that takes room in the rack, an item or a horizontal PDU, with all defaults filled in.</summary>
public sealed class MountedItem
{
    /// <summary>Index in its list of the request.</summary>
    public required int Index { get; init; }

    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>What a fingerprint knows it by. An item and a PDU may bear the same id, and no id holds a control character.</summary>
    public string Key => Item is null ? '\u001e' + Id : Id;

    /// <summary>The item; null for a PDU.</summary>
    public Item? Item { get; init; }

    /// <summary>What a sentence calls it: an item and a PDU can bear the same id.</summary>
    public string Name => Item is null ? $"PDU {Id}" : Id;

    /// <summary>Its kind.</summary>
    public ItemCategory Category { get; init; }

    /// <summary>Units that it takes; 0 for a thing on a shelf.</summary>
    public required int HeightU { get; init; }

    /// <summary>Lowest unit that it takes, counted from below, where it is placed. Can lie outside the rack.</summary>
    public int? Bottom { get; init; }

    /// <summary>The uprights that it hangs on; for a thing on a shelf those of the shelf, for one not placed yet the front.</summary>
    public Face Face { get => face; init => face = value; }

    /// <summary>The shelf that it stands on.</summary>
    public MountedItem? Shelf { get; internal set; }

    /// <summary>What stands on it, where it is a shelf.</summary>
    public IReadOnlyList<MountedItem> Load => load ?? (IReadOnlyList<MountedItem>)[];

    /// <summary>Whole units above its own that what stands on it reaches into.</summary>
    public int LoadHeightU { get => loadHeightU; init => loadHeightU = value; }

    /// <summary>What stands out before its plane, mm.</summary>
    public double FrontProjectionMm { get; init; }

    /// <summary>Depth of its body, mm; null where not known.</summary>
    public double? BodyDepthMm { get; init; }

    /// <summary>Connectors and cable bends behind its body, mm.</summary>
    public double RearProjectionMm { get; init; }

    /// <summary>Thickness of its runner or slide, mm.</summary>
    public double SupportThicknessMm { get; init; }

    private List<MountedItem>? load;
    private Face face;
    private int loadHeightU;

    /// <summary>Where it stands in the request.</summary>
    public string Pointer => Item is null ? Pointers.Pdu[Index] : Pointers.Item[Index];

    /// <summary>Where its position stands in the request.</summary>
    public string PositionPointer => Item is null ? Pointers.PduPosition[Index] : Pointers.ItemPosition[Index];

    /// <summary>Highest unit that it takes, counted from below, where it is placed.</summary>
    public int Top => Bottom!.Value + HeightU - 1;

    /// <summary>Highest unit that it or its load reaches into.</summary>
    public int ClaimTop => Top + LoadHeightU;

    /// <summary>Whether it hangs on uprights at a known unit.</summary>
    public bool IsPlaced => Bottom is not null;

    /// <summary>What carries it.</summary>
    public SupportStyle? SupportStyle => Item?.Support?.Style;

    /// <summary>Whether it hangs on slides or runners, which reach from the front to the rear uprights.</summary>
    public bool HasRails => SupportStyle is Model.SupportStyle.Slides or Model.SupportStyle.Runners;

    /// <summary>Distances of the uprights that its rails fit, mm; unbounded on a side that the description does not give.</summary>
    public SetbackInterval RailRange => new(Item?.Support?.MinSpacingMm ?? 0, Item?.Support?.MaxSpacingMm ?? double.PositiveInfinity);

    /// <summary>Depths for the formulae; null where the body's is not known.</summary>
    public ItemDepth? Depth => BodyDepthMm is { } body ? new ItemDepth(FrontProjectionMm, body, RearProjectionMm) : null;

    /// <summary>Height of a thing on a shelf, mm: its body's, else its panel's; null where neither is known.</summary>
    public double? StandingHeightMm => Item?.Body?.HeightMm ?? (HeightU > 0 ? RackGeometry.ApertureMm(HeightU) : null);

    internal void Bear(MountedItem thing)
    {
        (load ??= []).Add(thing);
        thing.Shelf = this;
        thing.face = face;
        if (thing.StandingHeightMm is { } height)
        {
            loadHeightU = Math.Max(loadHeightU, RackGeometry.UnitsForHeight(height));
        }
    }
}
