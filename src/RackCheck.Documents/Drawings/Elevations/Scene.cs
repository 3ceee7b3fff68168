using System.Globalization;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>What all views of one rack share: numbers of findings, letters of feeds, and what has been drawn.</summary>
internal sealed class Scene
{
    private static readonly Stroke[] Cords =
        [Stroke.CordA, Stroke.CordB, Stroke.CordC, Stroke.CordD, Stroke.CordE, Stroke.CordF, Stroke.CordG, Stroke.CordH];

    private readonly Dictionary<string, int> itemIndex;

    public Scene(DrawnRack rack, RackSurvey survey, int mostMarked)
    {
        (Rack, Survey) = (rack, survey);
        Letters = LettersOf(survey.Power.Supplies);
        Loads = [.. survey.Items.Where(i => i.Shelf is { } shelf && IsInside(shelf))];
        itemIndex = survey.Items.ToDictionary(i => i.Pointer, i => i.Index, StringComparer.Ordinal);
        Findings = [.. rack.Report.Findings.Take(mostMarked).Select((f, i) => new PlacedFinding(i + 1, f, ItemOf(f), PduOf(f)))];
    }

    public DrawnRack Rack { get; }

    public RackSurvey Survey { get; }

    public CabinetFacts Cabinet => Survey.Cabinet;

    public CabinetHeights Heights => Cabinet.Heights;

    /// <summary>The findings that are marked, with their numbers.</summary>
    public IReadOnlyList<PlacedFinding> Findings { get; }

    /// <summary>Letter of each supply.</summary>
    public IReadOnlyList<string> Letters { get; }

    /// <summary>Items on shelves that are in the mounting space.</summary>
    public IReadOnlyList<MountedItem> Loads { get; }

    /// <summary>Items and PDUs whose name is written in a view.</summary>
    public HashSet<MountedItem> Named { get; } = [];

    /// <summary>Vertical PDUs that are drawn.</summary>
    public HashSet<PduNode> DrawnPdus { get; } = [];

    /// <summary>Whether an item is wholly in the mounting space.</summary>
    public bool IsInside(MountedItem item) => item.IsPlaced && item.Bottom >= 1 && item.Top <= Cabinet.HeightU;

    /// <summary>How cords of a supply are drawn.</summary>
    public static Stroke CordOf(SupplyNode supply) => Cords[supply.Index % Cords.Length];

    /// <summary>How cords to a PDU are drawn: those of a UPS keep their load on without the supply.</summary>
    public static Stroke CordOf(PduNode pdu) => pdu.FedBy is null ? CordOf(pdu.Supply) : Stroke.CordUps;

    /// <summary>Letter of what feeds a PDU: of its supply, or "UPS".</summary>
    public string LetterOf(PduNode pdu) => pdu.FedBy is { } ups ? LetterOf(ups) : Letters[pdu.Supply.Index];

    /// <summary>What stands for a UPS: "UPS", with its number where there are several that feed PDUs.</summary>
    public string LetterOf(UpsNode ups)
    {
        var feeding = Array.FindAll(Survey.Power.Ups, u => u.Units.Count > 0);
        return feeding.Length > 1 ? Invariant($"UPS{Array.IndexOf(feeding, ups) + 1}") : "UPS";
    }

    /// <summary>Cords that are drawn in the rear view.</summary>
    public int DrawnCords { get; set; }

    /// <summary>Name and place of an item, for who points at it.</summary>
    public string Tell(MountedItem item)
    {
        var mass = item.Item?.MassKg is { } kilograms ? Invariant($", {kilograms:0.##} kg") : "";
        var words = item.Item?.Description is { } description ? $": {description}" : "";
        return item.Item is null ? $"PDU {Cabinet.Place(item).Text}" : $"{Cabinet.Place(item).Text}{words}, {HeightText(item)}{mass}";
    }

    /// <summary>Height of an item as text.</summary>
    public static string HeightText(MountedItem item) => item.HeightU > 0 ? Invariant($"{item.HeightU}U")
        : item.StandingHeightMm is { } high ? Invariant($"{high:0.#} mm high")
        : "height not given";

    /// <summary>Data of an item for programs.</summary>
    public static IReadOnlyList<(string Name, string Value)> Data(MountedItem item, string view)
    {
        var data = new List<(string Name, string Value)> { (item.Item is null ? "data-pdu" : "data-item", item.Id), ("data-view", view) };
        if (item.Shelf is { } shelf)
        {
            data.Add(("data-on-shelf", shelf.Id));
        }

        data.Add(("data-height-u", item.HeightU.ToString(CultureInfo.InvariantCulture)));
        data.Add(("data-face", CabinetFacts.FaceText(item.Face)));
        return data;
    }

    /// <summary>Data of an item for programs, with its position as given.</summary>
    public IReadOnlyList<(string Name, string Value)> DataWithPlace(MountedItem item, string view)
    {
        var position = item.Item is null ? Survey.Description.Pdus![item.Index].Position : item.Item.Position;
        return position is null || item.Shelf is not null ? Data(item, view)
            : [.. Data(item, view), ("data-u", position.U.ToString(CultureInfo.InvariantCulture))];
    }

    private MountedItem? ItemOf(Finding finding)
    {
        foreach (var pointer in finding.Pointers)
        {
            var parts = pointer.Split('/', 4);
            if (parts is ["", "items", var index, ..] && itemIndex.TryGetValue("/items/" + index, out var found))
            {
                return Survey.Items[found];
            }

            if (parts is ["", "pdus", var number, ..] && PduAt(number) is { } unit && Array.Find(Survey.Units, u => u.Index == unit.Index) is { } mounted)
            {
                return mounted;
            }
        }

        return null;
    }

    private PduNode? PduOf(Finding finding)
    {
        foreach (var pointer in finding.Pointers)
        {
            if (pointer.Split('/', 4) is ["", "pdus", var number, ..])
            {
                return PduAt(number);
            }
        }

        return null;
    }

    private PduNode? PduAt(string number) =>
        int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? Array.Find(Survey.Power.Units, u => u.Index == index) : null;

    // The ids themselves where each is a letter, else letters in order.
    private static IReadOnlyList<string> LettersOf(SupplyNode[] supplies)
    {
        if (supplies.Length > 0 && Array.TrueForAll(supplies, s => s.Id is [>= 'A' and <= 'Z']))
        {
            return [.. supplies.Select(s => s.Id)];
        }

        return [.. supplies.Select(s => ((char)('A' + s.Index)).ToString())];
    }
}

/// <summary>A finding with its number and its place.</summary>
/// <param name="Number">Its number on the sheet.</param>
/// <param name="Finding">The finding.</param>
/// <param name="Item">The item or horizontal PDU that it is about.</param>
/// <param name="Pdu">The PDU that it is about.</param>
internal sealed record PlacedFinding(int Number, Finding Finding, MountedItem? Item, PduNode? Pdu)
{
    /// <summary>The view in which it is marked, of those that are drawn.</summary>
    public ElevationView ViewOf(IReadOnlyList<ElevationView> drawn)
    {
        var wanted = Item is null && Pdu is null ? drawn[0]
            : Pdu is not null && Item is null ? ElevationView.Rear
            : Finding.Rule.StartsWith("depth.", StringComparison.Ordinal) ? ElevationView.Side
            : Item!.Face == Face.Rear || Finding.Rule.StartsWith("power.", StringComparison.Ordinal) ? ElevationView.Rear
            : ElevationView.Front;
        return drawn.Contains(wanted) ? wanted : drawn[0];
    }
}
