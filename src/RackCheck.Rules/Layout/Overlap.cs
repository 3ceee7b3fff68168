using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds pairs of items that occupy the same space.</summary>
public sealed class Overlap : Rule
{
    /// <summary>Maximum number of pairs at one U position that are reported one by one. Above it, one finding covers the U position.</summary>
    private const int MostPairsAtOneU = 20;

    /// <summary>Maximum number of items that one message names.</summary>

    private static readonly WordingChoice Heap = new(
        "layout.overlap.heap",
        "{count} items occupy {units:units}: [mixed:{items} and PDU {pdus}|pdus:PDUs {pdus}|{items}].");

    private static readonly WordingChoice SameFace = new(
        "layout.overlap.same-face",
        "[pdu:PDU ]{item} and [other-pdu:PDU ]{other} both occupy {units:units} on the {face} uprights.");

    private static readonly WordingChoice OppositeFaces = new(
        "layout.overlap.opposite-faces",
        "[pdu:PDU ]{item} and [other-pdu:PDU ]{other} are mounted on opposite faces at {units:units}. Together they need a depth of "
            + "{reachMm} mm; the available depth is {roomMm} mm.");

    private static readonly MissingData MissingDepth = new(
        "layout.overlap.missing-depth",
        "{item} and {other} are mounted on opposite faces at the same U positions. Without this value, the depth between them cannot be checked.");

    private static readonly MissingData MissingMounting = new(
        "layout.overlap.missing-mounting",
        "Without the mounting of the PDU, its U position cannot be checked.");

    private static readonly MissingData MissingPduPosition = new(
        "layout.overlap.missing-pdu-position",
        "A horizontal PDU occupies a U position, which is not specified.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.overlap",
        Title = "Two items in the same space",
        Severity = Severity.Error,
        What = "Finds pairs of items or horizontal PDUs that occupy the same space. On one face, one shared U position is a conflict. On "
            + "opposite faces, items at the same U positions must not meet between the mounting planes. One finding per pair; more than 20 "
            + "pairs at one U position are one finding.",
        Why = "Only one of the two can be mounted.",
        Formula = "same face: a shared U position; opposite faces: (b + r) of one item + (b + r) of the other > upright spacing. Spacing not "
            + "specified: its maximum is the depth between the doors. One depth not specified: the other item alone may exceed the spacing",
        Sources = [Sources.Geometry],
        Needs =
        [
            "/items/*/position", "/items/*/heightU", "/items/*/body/depthMm", "/items/*/rearProjectionMm", "/pdus/*/mounting", "/pdus/*/position",
            "/cabinet/uprights/spacingMm",
        ],
        Notes =
        [
            "Equipment on opposite faces is compared with the upright spacing. Without a spacing it is compared with the depth between the doors, the "
                + "largest that the spacing can be: a clash found so is certain.",
            "A body of unknown depth counts as no depth in the search for clashes: what is found is certain, and the rest is listed as not assessed.",
            "More than 20 pairs at one U position are one finding.",
        ],
        Remedies =
        [
            "Mount one of the items at the nearest free U position; of many items, all but one.",
            "Use a taller cabinet.",
            "Move it to another rack; a blanking panel is removed first.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        ReportUnplacedUnits(context);
        var places = context.Survey.Occupancy.ByPlace;
        SortedList<int, List<(MountedItem One, MountedItem Other)>>? pairs = null;
        for (var i = 0; i < places.Length; i++)
        {
            // Sorted by the lowest U position: the first item that starts above the top of this one ends the search.
            for (var j = i + 1; j < places.Length && places[j].Bottom <= places[i].Top; j++)
            {
                if (Clash(context, places[i], places[j]))
                {
                    // The second item of the pair starts at the same U position or higher. Its lowest U position is the lowest shared one.
                    var from = places[j].Bottom!.Value;
                    pairs ??= [];
                    if (!pairs.TryGetValue(from, out var here))
                    {
                        pairs[from] = here = [];
                    }

                    here.Add((places[i], places[j]));
                }
            }
        }

        foreach (var (from, here) in pairs ?? [])
        {
            if (here.Count > MostPairsAtOneU)
            {
                ReportHeap(context, from, here);
                continue;
            }

            foreach (var (one, other) in here)
            {
                Report(context, one, other);
            }
        }
    }

    private static void ReportUnplacedUnits(RuleContext context)
    {
        var units = context.Survey.Description.Pdus;
        for (var i = 0; i < units?.Count; i++)
        {
            if (units[i].Mounting is null)
            {
                context.ReportMissing(Invariant($"/pdus/{i}/mounting"), MissingMounting);
            }
            else if (units[i] is { Mounting: PduMounting.Horizontal, Position: null })
            {
                context.ReportMissing(Pointers.PduPosition[i], MissingPduPosition);
            }
        }
    }

    private static bool Clash(RuleContext context, MountedItem one, MountedItem other)
    {
        var meeting = one.Face == other.Face ? Meeting.Yes : context.Survey.Occupancy.Meet(one, other);
        if (meeting == Meeting.Unknown)
        {
            ReportMissingDepth(context, one, other);
        }

        return meeting == Meeting.Yes;
    }

    private static void ReportHeap(RuleContext context, int from, List<(MountedItem One, MountedItem Other)> pairs)
    {
        var survey = context.Survey;
        MountedItem[] heap = [.. pairs.SelectMany(p => (MountedItem[])[p.One, p.Other]).Distinct().OrderBy(m => m.Key, StringComparer.Ordinal)];
        string[] items = [.. heap.Where(m => m.Item is not null).Select(m => m.Id)];
        string[] pdus = [.. heap.Where(m => m.Item is null).Select(m => m.Id)];
        context.Report(new FindingDraft
        {
            Message = Heap.With(pdus.Length == 0 ? "" : items.Length == 0 ? "pdus" : "mixed"),
            Data = 
            [
                ("count", heap.Length), ("units", survey.Cabinet.Units(from, from)), ("items", Names.Ids(items)), ("pdus", Names.Ids(pdus)),
            ],
            Subject = Subjects.Heap(heap.Length, survey.Cabinet.Units(from, from)),
            // The U position is the defect: with one item less in it, it is still the same.
            Identity = [Invariant($"from below {from}")],
            Pointers = [.. heap.Select(m => m.PositionPointer)],
            Actual = Quantities.Of(heap.Length, "items"),
            Limit = Quantities.Of(1, "items"),
            Calculation = Invariant($"{heap.Length} items > 1"),
            Candidates = [PlaceRemedies.Spread(survey, heap)],
        });
    }

    private static void Report(RuleContext context, MountedItem one, MountedItem other)
    {
        var survey = context.Survey;
        var (bottom, top) = (Math.Max(one.Bottom!.Value, other.Bottom!.Value), Math.Min(one.Top, other.Top));
        var sameFace = one.Face == other.Face;
        var (mover, stays) = IsEasierToMove(one, other) ? (one, other) : (other, one);
        var reach = Occupancy.ReachMm(one) + Occupancy.ReachMm(other);
        var room = survey.Occupancy.RoomBetween(one, other);
        context.Report(new FindingDraft
        {
            Message = (sameFace ? SameFace : OppositeFaces).With(mover.Item is null ? "pdu" : "", stays.Item is null ? "other-pdu" : ""),
            Data = sameFace
                ? [("item", mover.Id), ("other", stays.Id), ("units", survey.Cabinet.Units(bottom, top)), ("face", CabinetFacts.FaceText(one.Face))]
                : [("item", mover.Id), ("other", stays.Id), ("units", survey.Cabinet.Units(bottom, top)), ("reachMm", reach), ("roomMm", room)],
            Subject = Subjects.Overlap(mover.Id, stays.Id, survey.Cabinet.Units(bottom, top), sameFace ? one.Face : null),
            Identity = [.. new[] { one.Key, other.Key }.Order(StringComparer.Ordinal)],
            Pointers = [mover.PositionPointer, stays.PositionPointer],
            Actual = sameFace ? Quantities.Units(top - bottom + 1) : Quantities.Millimetres(reach),
            Limit = sameFace ? Quantities.Units(0) : Quantities.Millimetres(room),
            Calculation = sameFace
                ? Invariant($"from below: {top} - {bottom} + 1 = {top - bottom + 1} > 0")
                : Invariant($"{Occupancy.ReachMm(one):0.###} + {Occupancy.ReachMm(other):0.###} = {reach:0.###} > {room:0.###}"),
            Candidates = CandidatesFor(survey, mover),
        });
    }

    private static IEnumerable<RemedyCandidate> CandidatesFor(RackSurvey survey, MountedItem mover) =>
        mover.Category == ItemCategory.BlankingPanel && PlaceRemedies.TakeOut(survey, mover) is { } takeOut ? [takeOut] : PlaceRemedies.Move(survey, mover);

    private static void ReportMissingDepth(RuleContext context, MountedItem one, MountedItem other)
    {
        (string, Scalar)[] both = [("item", one.Id), ("other", other.Id)];
        if (one.Depth is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[one.Index], MissingDepth, both);
        }

        if (other.Depth is null)
        {
            context.ReportMissing(Pointers.ItemBodyDepth[other.Index], MissingDepth, both);
        }

        if (context.Survey.Cabinet.SpacingMm is null)
        {
            context.ReportMissing(Pointers.Spacing, MissingDepth, both);
        }
    }

    // Moved first: a blanking panel, then the item of lower U height, then the lighter item. Between equals, the id decides.
    private static bool IsEasierToMove(MountedItem one, MountedItem other)
    {
        var order = (other.Category == ItemCategory.BlankingPanel).CompareTo(one.Category == ItemCategory.BlankingPanel);
        order = order != 0 ? order : one.HeightU.CompareTo(other.HeightU);
        order = order != 0 ? order : (one.Item?.MassKg ?? 0).CompareTo(other.Item?.MassKg ?? 0);
        order = order != 0 ? order : string.CompareOrdinal(other.Id, one.Id);
        return order < 0;
    }
}
