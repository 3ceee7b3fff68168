using System.Globalization;
using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey.Layout;

/// <summary>The cabinet with all defaults filled in.</summary>
public sealed class CabinetFacts
{
    private CabinetHeights? heights;

    /// <summary>The cabinet of the request.</summary>
    public required Cabinet Source { get; init; }

    /// <summary>
    /// Whether it is an open frame, without doors and side panels. A door or side panels that the description does not mention count as fitted.
    /// </summary>
    public bool IsOpenFrame => Source is { FrontDoor.Style: DoorStyle.None, RearDoor.Style: DoorStyle.None, SidePanels: false };

    /// <summary>Height of the mounting space, U.</summary>
    public required int HeightU { get; init; }

    /// <summary>Overall width, mm.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Depth and doors.</summary>
    public required CabinetDepth Depth { get; init; }

    /// <summary>Clear opening between the uprights, mm.</summary>
    public required double OpeningMm { get; init; }

    /// <summary>Hole pitch along which the uprights are moved, mm.</summary>
    public required double PitchMm { get; init; }

    /// <summary>Whether the caller counts U positions from the top.</summary>
    public required bool TopDown { get; init; }

    /// <summary>Heights above the floor.</summary>
    public CabinetHeights Heights => heights ??= CabinetHeights.Of(Source);

    /// <summary>Front plane to rear plane, mm, if given.</summary>
    public double? SpacingMm => Source.Uprights?.SpacingMm;

    /// <summary>Setback of the front plane, mm, if given.</summary>
    public double? SetbackMm => Source.Uprights?.FrontSetbackMm;

    /// <summary>Converts a U position between the caller's numbering and numbering from the bottom, in either direction.</summary>
    /// <param name="unit">A U position.</param>
    /// <returns>The same position in the other numbering.</returns>
    public int Renumber(int unit) => TopDown ? UnitNumbers.Turned(unit, HeightU) : unit;

    /// <summary>U positions positions in the caller's numbering, as text.</summary>
    /// <param name="bottom">Lowest U position, counted from the bottom.</param>
    /// <param name="top">Highest U position, counted from the bottom.</param>
    /// <returns>Text "U4" or "U10-U13".</returns>
    public string UnitsText(int bottom, int top)
    {
        var (from, to) = Ends(bottom, top);
        return bottom == top
            ? string.Create(CultureInfo.InvariantCulture, $"U{from}")
            : string.Create(CultureInfo.InvariantCulture, $"U{from}{(from < 0 ? " to " : "-")}U{to}");
    }

    /// <summary>U positions in the caller's numbering, as data.</summary>
    /// <param name="bottom">Lowest U position, counted from the bottom.</param>
    /// <param name="top">Highest U position, counted from the bottom.</param>
    /// <returns>The first and the last U position.</returns>
    public Scalar Units(int bottom, int top)
    {
        var (from, to) = Ends(bottom, top);
        return Scalar.Range(from, to);
    }

    private (int From, int To) Ends(int bottom, int top) => TopDown ? (Renumber(top), Renumber(bottom)) : (bottom, top);

    /// <summary>Wordings of the position of a mounted item.</summary>
    public static WordingChoice ItemPlace { get; } = new("subject.item", "{item}" + PlacePattern);

    /// <summary>What follows the name of an item: its shelf, or its U positions and face.</summary>
    public const string PlacePattern = "[shelf:, on {shelf}|placed:, {units:units}, {face}|, not placed]";

    /// <summary>The position of a mounted item.</summary>
    /// <returns>A text such as "pc-1, U10-U13, front".</returns>
    public WordedText Place(MountedItem what) => Place(ItemPlace, what, ("item", what.Id));

    /// <summary>A text that ends with the position of a mounted item or has it in it.</summary>
    /// <param name="wordings">Wordings with <see cref="PlacePattern"/>.</param>
    /// <param name="what">The item.</param>
    /// <param name="data">The other values of the text.</param>
    public WordedText Place(WordingChoice wordings, MountedItem what, params ReadOnlySpan<(string Name, Scalar Value)> data) =>
        what.Shelf is { } shelf ? new(wordings.With("shelf"), [.. data, ("shelf", shelf.Id)])
        : what.IsPlaced ? new(wordings.With("placed"), [.. data, ("units", Units(what.Bottom!.Value, what.Top)), ("face", FaceText(what.Face))])
        : new(wordings.With(), [.. data]);

    /// <summary>A face, as text.</summary>
    /// <returns>"front" or "rear".</returns>
    public static string FaceText(Face face) => face == Face.Front ? "front" : "rear";
}
