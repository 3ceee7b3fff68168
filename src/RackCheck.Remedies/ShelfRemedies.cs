using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that put items on a shelf.</summary>
public static class ShelfRemedies
{
    private static readonly MessageWording OnOldShelf = new("remedy.on-shelf", "Put {items} on the shelf {shelf}");
    private static readonly MessageWording NewShelf = new("remedy.new-shelf", "Add a shelf at {units:units} and put {items} on it");

    /// <summary>Space above a new shelf for an item of unknown height, U.</summary>
    private const int RoomForUnknownU = 4;

    /// <summary>Usable width of a shelf, mm: the opening less its flanges.</summary>
    public static double UsableWidthMm(RackSurvey survey) => survey.Cabinet.OpeningMm - Allowances.ShelfWidthLossMm;

    /// <summary>Puts items on a shelf with enough space, else on a new one; null if neither is possible.</summary>
    public static RemedyCandidate? Stand(RackSurvey survey, params IReadOnlyList<MountedItem> things) =>
        FindShelf(survey, things) is { } shelf
            ? OnShelf(new RemedyBuilder(survey), things, shelf.Id).Titled(new(OnOldShelf, ("items", Ids(things)), ("shelf", shelf.Id)))
            : OnNewShelf(survey, things);

    private static MountedItem? FindShelf(RackSurvey survey, IReadOnlyList<MountedItem> things)
    {
        foreach (var shelf in survey.Occupancy.ByPlace)
        {
            if (shelf.Category == ItemCategory.Shelf && shelf.Face == things[0].Face && HasRoom(survey, shelf, things))
            {
                return shelf;
            }
        }

        return null;
    }

    private static bool HasRoom(RackSurvey survey, MountedItem shelf, IReadOnlyList<MountedItem> things)
    {
        var room = RackGeometry.ApertureMm(survey.Occupancy.FreeAbove(shelf));
        var width = 0.0;
        foreach (var thing in shelf.Load.Concat(things))
        {
            width += thing.Item!.Body?.WidthMm ?? double.PositiveInfinity;
            if (!(thing.BodyDepthMm <= shelf.BodyDepthMm) || !(thing.StandingHeightMm <= room))
            {
                return false;
            }
        }

        return width <= UsableWidthMm(survey);
    }

    private static RemedyCandidate? OnNewShelf(RackSurvey survey, IReadOnlyList<MountedItem> things)
    {
        if (things.Sum(t => t.Item!.Body?.WidthMm ?? 0) > UsableWidthMm(survey) || !survey.HasRoomFor(1))
        {
            return null;
        }

        var face = things[0].Face;
        var depth = things.Max(t => t.BodyDepthMm);
        var id = survey.FreeItemId("shelf-for-" + Cut(things[0].Id));
        var probe = new MountedItem
        {
            Index = -1,
            Id = id,
            HeightU = 1,
            Face = face,
            BodyDepthMm = depth,
            RearProjectionMm = things.Max(t => t.RearProjectionMm),
            LoadHeightU = things.Max(t => t.StandingHeightMm is { } height ? RackGeometry.UnitsForHeight(height) : RoomForUnknownU),
        };
        // The shelf is a plate as deep as the items on it: it adds no depth in front or behind.
        var plate = new MountedItem { Index = -1, Id = id, HeightU = 1, Face = face, BodyDepthMm = depth };
        if ((survey.Occupancy.FindPlace(probe, probe.HeightU, 1, survey.Cabinet.HeightU)
                ?? BlankingPanels.GivingWay(survey, face).FindPlace(probe, probe.HeightU, 1, survey.Cabinet.HeightU)) is not { } bottom
            || !survey.Depth.CanTake(plate))
        {
            return null;
        }

        var shelf = new Item
        {
            Id = id,
            Category = ItemCategory.Shelf,
            HeightU = probe.HeightU,
            Position = new Position { U = survey.Cabinet.Renumber(bottom), Face = face },
            Body = new Body { DepthMm = depth },
            FrontProjectionMm = 0,
            RearProjectionMm = 0,
        };
        return BlankingPanels.Fit(survey, OnShelf(new RemedyBuilder(survey).AddItem(shelf), things, id), (probe, bottom, probe.HeightU))
            .Titled(new(NewShelf, ("units", survey.Cabinet.Units(bottom, bottom)), ("items", Ids(things))));
    }

    // Short enough for an id with a prefix and a suffix, without splitting a character.
    private static string Cut(string id)
    {
        const int Most = 48;
        return id.Length <= Most ? id : id[..(char.IsHighSurrogate(id[Most - 1]) ? Most - 1 : Most)];
    }

    private static RemedyBuilder OnShelf(RemedyBuilder builder, IReadOnlyList<MountedItem> things, string shelfId)
    {
        foreach (var thing in things)
        {
            builder.SetItem(thing, i => i with { OnShelf = shelfId });
        }

        return builder;
    }

    private static Scalar Ids(IReadOnlyList<MountedItem> things) => Names.Ids(things.Select(t => t.Id));
}
