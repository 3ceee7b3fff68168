using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey.Layout;

/// <summary>An item or a horizontal PDU that takes up rack space, with all defaults filled in.</summary>
public sealed class MountedItem
{
    /// <summary>Index in its list of the request.</summary>
    public required int Index { get; init; }

    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Key for fingerprints. An item and a PDU can have the same id, and no id contains a control character.</summary>
    public string Key => Item is null ? '\u001e' + Id : Id;

    /// <summary>The item; null for a PDU.</summary>
    public Item? Item { get; init; }

    /// <summary>Name in a sentence; an item and a PDU can have the same id.</summary>
    public string Name => Item is null ? $"PDU {Id}" : Id;

    /// <summary>Its kind.</summary>
    public ItemCategory Category { get; init; }

    /// <summary>Height, U; 0 for an item on a shelf.</summary>
    public required int HeightU { get; init; }

    /// <summary>Lowest U position, counted from the bottom, if it is placed. It can be outside the rack.</summary>
    public int? Bottom { get; init; }

    /// <summary>The uprights that carry it: for an item on a shelf those of the shelf, for an item not yet placed the front.</summary>
    public Face Face { get => face; init => face = value; }

    /// <summary>The shelf that it stands on.</summary>
    public MountedItem? Shelf { get; internal set; }

    /// <summary>The items on it, if it is a shelf.</summary>
    public IReadOnlyList<MountedItem> Load => load ?? (IReadOnlyList<MountedItem>)[];

    /// <summary>Height of the load above the shelf, rounded up to whole U.</summary>
    public int LoadHeightU { get => loadHeightU; init => loadHeightU = value; }

    /// <summary>Projection in front of its plane, mm.</summary>
    public double FrontProjectionMm { get; init; }

    /// <summary>Depth of its body, mm; null if unknown.</summary>
    public double? BodyDepthMm { get; init; }

    /// <summary>Connectors and cable bends behind its body, mm.</summary>
    public double RearProjectionMm { get; init; }

    /// <summary>Thickness of its runner, slide or shelf, mm.</summary>
    public double SupportThicknessMm { get; init; }

    private List<MountedItem>? load;
    private Face face;
    private int loadHeightU;

    /// <summary>JSON Pointer in the request.</summary>
    public string Pointer => Item is null ? Pointers.Pdu[Index] : Pointers.Item[Index];

    /// <summary>JSON Pointer of its position.</summary>
    public string PositionPointer => Item is null ? Pointers.PduPosition[Index] : Pointers.ItemPosition[Index];

    /// <summary>Highest U position, counted from the bottom, if it is placed.</summary>
    public int Top => Bottom!.Value + HeightU - 1;

    /// <summary>Highest U position of the item or its load.</summary>
    public int ClaimTop => Top + LoadHeightU;

    /// <summary>Whether it is mounted on uprights at a known U position.</summary>
    public bool IsPlaced => Bottom is not null;

    /// <summary>Support style.</summary>
    public SupportStyle? SupportStyle => Item?.Support?.Style;

    /// <summary>Whether it is mounted on slides or runners, which reach from the front to the rear uprights.</summary>
    public bool HasRails => SupportStyle is Model.SupportStyle.Slides or Model.SupportStyle.Runners;

    /// <summary>Upright spacings that suit its rails, mm; unbounded on a side that is not given.</summary>
    public SetbackInterval RailRange => new(Item?.Support?.MinSpacingMm ?? 0, Item?.Support?.MaxSpacingMm ?? double.PositiveInfinity);

    /// <summary>Depths for the formulae; null if the depth of the body is unknown.</summary>
    public ItemDepth? Depth => BodyDepthMm is { } body ? new ItemDepth(FrontProjectionMm, body, RearProjectionMm) : null;

    /// <summary>Height of an item on a shelf, mm: of its body, else of its panel; null if both are missing.</summary>
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
