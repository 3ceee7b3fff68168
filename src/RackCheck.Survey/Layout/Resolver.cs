using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;

namespace RackCheck.Survey.Layout;

/// <summary>Fills in missing values and records each default as an assumption.</summary>
internal sealed class Resolver
{
    private readonly RackDescription description;
    private readonly List<AssumedValue>? assumptions;

    private Resolver(RackDescription description, List<AssumedValue>? assumptions) =>
        (this.description, this.assumptions) = (description, assumptions);

    /// <summary>Resolves a description.</summary>
    /// <param name="description">The description.</param>
    /// <param name="assumptions">Receives the defaults; null if nobody reads them.</param>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is missing; the
    /// validation of the request reports that first.</exception>
    public static (CabinetFacts Cabinet, MountedItem[] Items, MountedItem[] Units) Resolve(RackDescription description, List<AssumedValue>? assumptions)
    {
        var resolver = new Resolver(description, assumptions);
        var cabinet = resolver.ResolveCabinet();
        var items = resolver.ResolveItems(cabinet);
        return (cabinet, items, resolver.ResolveUnits(cabinet));
    }

    private CabinetFacts ResolveCabinet()
    {
        var cabinet = description.Cabinet ?? throw new ArgumentException("A check needs a cabinet.", nameof(description));
        var front = DoorDepth(cabinet.FrontDoor, Pointers.FrontDoor);
        var rear = DoorDepth(cabinet.RearDoor, Pointers.RearDoor);
        return new CabinetFacts
        {
            Source = cabinet,
            HeightU = cabinet.HeightU ?? throw new ArgumentException("A check needs the cabinet's height.", nameof(description)),
            WidthMm = cabinet.WidthMm ?? throw new ArgumentException("A check needs the cabinet's width.", nameof(description)),
            Depth = new CabinetDepth(
                cabinet.DepthMm ?? throw new ArgumentException("A check needs the cabinet's depth.", nameof(description)),
                front,
                rear,
                cabinet.FrontDoor?.Style == DoorStyle.None,
                cabinet.RearDoor?.Style == DoorStyle.None),
            OpeningMm = Opening(cabinet),
            PitchMm = cabinet.Uprights?.PitchMm ?? CabinetSizes.UprightPitchMm,
            TopDown = description.UnitNumbering == UnitNumbering.TopDown,
        };
    }

    private double DoorDepth(Door? door, string pointer)
    {
        if (door?.Style == DoorStyle.None)
        {
            return 0;
        }

        if (door?.DepthMm is { } depth)
        {
            return depth;
        }

        Assume(
            pointer + "/depthMm", CabinetSizes.DoorDepthMm, "mm", door is null ? Bases.UsualDoor : Bases.Practice);
        return CabinetSizes.DoorDepthMm;
    }

    private double Opening(Cabinet cabinet)
    {
        if (cabinet.Uprights?.OpeningMm is { } opening)
        {
            return opening;
        }

        for (var i = 0; i < description.Items.Count; i++)
        {
            if (description.Items[i].Body?.WidthMm is not null)
            {
                Assume(Pointers.Opening, RackGeometry.OpeningMm, "mm", Bases.LeastOpening);
                break;
            }
        }

        return RackGeometry.OpeningMm;
    }

    private MountedItem[] ResolveItems(CabinetFacts cabinet)
    {
        var items = new MountedItem[description.Items.Count];
        for (var i = 0; i < items.Length; i++)
        {
            items[i] = ResolveItem(i, description.Items[i], cabinet);
        }

        foreach (var thing in items)
        {
            // A shelf is mounted on uprights. An item on anything else has no position, and a rule reports it.
            if (thing.Item!.OnShelf is { } shelfId
                && Array.Find(items, s => s.Id == shelfId) is { Category: ItemCategory.Shelf, HeightU: > 0, Item.OnShelf: null } shelf)
            {
                shelf.Bear(thing);
            }
        }

        return items;
    }

    private MountedItem ResolveItem(int index, Item item, CabinetFacts cabinet)
    {
        var isPlate = item.Category == ItemCategory.BlankingPanel;
        var heightU = item.HeightU ?? throw new ArgumentException("A check needs the height of every item.", nameof(item));
        var hangs = heightU > 0 && item.Position is not null && item.OnShelf is null;
        if (item is { Position: not null, OnShelf: not null })
        {
            assumptions?.Add(AssumedValue.Worded(Pointers.ItemPosition[index], AssumedTexts.NotUsed, Bases.OnShelfPosition));
        }

        return new MountedItem
        {
            Index = index,
            Id = item.Id,
            Item = item,
            Category = item.Category ?? ItemCategory.Other,
            HeightU = heightU,
            Bottom = hangs ? cabinet.Renumber(item.Position!.U) : null,
            Face = item.Position?.Face ?? Face.Front,
            FrontProjectionMm = item.FrontProjectionMm ?? (isPlate ? 0 : AssumeFrontProjection(index, item)),
            BodyDepthMm = item.Body?.DepthMm ?? (isPlate ? 0 : null),
            RearProjectionMm = item.RearProjectionMm ?? (isPlate ? 0 : AssumeRearProjection(index, item)),
            SupportThicknessMm = SupportThickness(index, item),
        };
    }

    private double AssumeFrontProjection(int index, Item item)
    {
        if (item.OnShelf is not null)
        {
            Assume(Pointers.ItemFrontProjection[index], 0, "mm", Bases.OnShelfFront);
            return 0;
        }

        Assume(Pointers.ItemFrontProjection[index], Allowances.FrontProjectionMm, "mm", Bases.Handles);
        return Allowances.FrontProjectionMm;
    }

    private double AssumeRearProjection(int index, Item item)
    {
        var cabled = item.Power?.Plugs is { Count: > 0 } || item.Cables is { Count: > 0 };

        var room = cabled ? Allowances.RearProjectionCabledMm : Allowances.RearProjectionBareMm;
        Assume(Pointers.ItemRearProjection[index], room, "mm", cabled ? Bases.RearCables : Bases.NoCables);
        return room;
    }

    private double SupportThickness(int index, Item item)
    {
        var support = item.Support;
        if (support?.ThicknessMm is { } thickness)
        {
            return thickness;
        }

        switch (support?.Style)
        {
            case SupportStyle.Runners:
                Assume(Pointers.ItemSupportThickness[index], Allowances.RunnerThicknessMm, "mm", Bases.Practice);
                return Allowances.RunnerThicknessMm;
            case SupportStyle.Slides when item.Category == ItemCategory.KeyboardDrawer:
                Assume(Pointers.ItemSupportThickness[index], 0, "mm", Bases.DrawerSlides);
                return 0;
            case SupportStyle.Slides:
                Assume(Pointers.ItemSupportThickness[index], Allowances.SlideThicknessMm, "mm", Bases.Practice);
                return Allowances.SlideThicknessMm;
            case SupportStyle.Shelf when item.Category != ItemCategory.Shelf:
                Assume(Pointers.ItemSupportThickness[index], Allowances.ShelfThicknessMm, "mm", Bases.Practice);
                return Allowances.ShelfThicknessMm;
            default:
                return 0;
        }
    }

    private MountedItem[] ResolveUnits(CabinetFacts cabinet)
    {
        if (description.Pdus is not { Count: > 0 } units)
        {
            return [];
        }

        var mounted = new List<MountedItem>();
        for (var i = 0; i < units.Count; i++)
        {
            if (units[i] is not { Mounting: PduMounting.Horizontal, Position: { } position })
            {
                continue;
            }

            Assume(
                Pointers.Pdu[i],
                Allowances.HorizontalUnitDepthMm,
                "mm",
                Bases.HorizontalPdu);
            mounted.Add(new MountedItem
            {
                Index = i,
                Id = units[i].Id,
                HeightU = Allowances.HorizontalUnitHeightU,
                Bottom = cabinet.Renumber(position.U),
                Face = position.Face ?? Face.Front,
                FrontProjectionMm = Allowances.FrontProjectionMm,
                BodyDepthMm = Allowances.HorizontalUnitDepthMm,
                RearProjectionMm = Allowances.RearProjectionCabledMm,
            });
        }

        return [.. mounted];
    }

    private void Assume(string pointer, Scalar value, string? unit, WordedText basis) =>
        assumptions?.Add(new AssumedValue { Pointer = pointer, Value = value, Unit = unit, Basis = basis });
}
