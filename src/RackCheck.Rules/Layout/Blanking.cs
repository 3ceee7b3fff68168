using System.Numerics;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Layout;

/// <summary>Finds open U positions at the front next to equipment with airflow front to rear.</summary>
public sealed class Blanking : Rule
{
    private static readonly MessageWording Defect = new(
        "layout.blanking",
        "The front is open at {units:units} ({openUnits} U) next to {items}. Hot air recirculates through the gap to equipment with airflow "
            + "front to rear.");

    private static readonly MissingData Missing = new(
        "layout.blanking.missing",
        "Without the door styles, hot-air recirculation through open U positions cannot be checked.");

    private static readonly MissingData MissingAirflowDirection = new(
        "layout.blanking.missing-airflow-direction",
        "U positions next to this item are open. Without its airflow direction, hot-air recirculation cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.blanking",
        Title = "Open U positions next to equipment with airflow front to rear",
        Severity = Severity.Warning,
        What = "Finds open U positions at the front next to equipment with airflow front to rear, in a rack with perforated doors or no doors. "
            + "One finding per gap.",
        Why = "Hot air recirculates through the gap to the air inlets.",
        Formula = "front and rear door perforated or none; a run of open U positions at the front next to an item with airflow front-to-rear",
        Sources = [Sources.BlankingPractice],
        Needs =
        [
            "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels", "/items/*/airflow/direction", "/items/*/position",
            "/items/*/body/heightMm", "/items/*/body/depthMm", "/pdus/*/mounting", "/pdus/*/position", "/cabinet/uprights/spacingMm",
        ],
        Notes =
        [
            "A blanking panel leaves its U positions free: it gives way to equipment, and figures.space counts them as free.",
            "An open frame, without doors and side panels, is not checked: its air passes beside the equipment, whatever closes the front.",
            "Without a door style the rule is not assessed; an absent door counts as 25 mm deep in the depth rules.",
        ],
        Remedies = ["Fit blanking panels."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var open = context.Survey.Occupancy.OpenFront;
        if (open == 0)
        {
            return;
        }

        var (frontToRear, unknown) = FrontToRearUnits(context.Survey);
        if ((frontToRear | unknown) == 0)
        {
            return;
        }

        if (!IsCooledThroughDoors(context))
        {
            return;
        }

        while (open != 0)
        {
            var bottom = BitOperations.TrailingZeroCount(open) + 1;
            var top = bottom + BitOperations.TrailingZeroCount(~(open >> (bottom - 1))) - 1;
            var gap = Occupancy.Mask(bottom, top);
            open &= ~gap;
            var beside = Occupancy.Mask(bottom - 1, top + 1) & ~gap;
            if ((beside & frontToRear) != 0)
            {
                Report(context, bottom, top);
            }
            else if ((beside & unknown) != 0)
            {
                ReportMissing(context, beside);
            }
        }
    }

    // U positions of front-mounted equipment with airflow front to rear, its own or that of its shelf load,
    // and of powered equipment without an airflow direction.
    private static (ulong FrontToRear, ulong Unknown) FrontToRearUnits(RackSurvey survey)
    {
        var (frontToRear, unknown) = (0UL, 0UL);
        foreach (var mounted in survey.Occupancy.ByPlace)
        {
            if (mounted is not { Face: Face.Front, Item: not null })
            {
                continue;
            }

            var own = Occupancy.Mask(mounted.Bottom!.Value, mounted.ClaimTop);
            frontToRear |= IsFrontToRear(mounted) || mounted.Load.Any(IsFrontToRear) ? own : 0;
            unknown |= HeatSurvey.MayNeedAirflow(mounted) || mounted.Load.Any(HeatSurvey.MayNeedAirflow) ? own : 0;
        }

        return (frontToRear, unknown);
    }

    private static bool IsFrontToRear(MountedItem mounted) => mounted.Item!.Airflow?.Direction == AirflowDirection.FrontToRear;

    private static bool IsCooledThroughDoors(RuleContext context)
    {
        var cabinet = context.Survey.Cabinet.Source;
        if (context.Survey.Cabinet.IsOpenFrame)
        {
            // An open frame: the air passes beside the equipment, not through doors.
            return false;
        }

        var front = LetsAirThrough(cabinet.FrontDoor);
        var rear = LetsAirThrough(cabinet.RearDoor);
        if (front == false || rear == false)
        {
            return false;
        }

        if (front is null)
        {
            context.ReportMissing(Pointers.FrontDoor + "/style", Missing);
        }

        if (rear is null)
        {
            context.ReportMissing(Pointers.RearDoor + "/style", Missing);
        }

        return front is not null && rear is not null;
    }

    private static bool? LetsAirThrough(Door? door) => door is null ? null : door.Style is DoorStyle.Perforated or DoorStyle.None;

    private static void ReportMissing(RuleContext context, ulong beside)
    {
        foreach (var mounted in context.Survey.Occupancy.ByPlace)
        {
            if (mounted is not { Face: Face.Front, Item: not null } || (Occupancy.Mask(mounted.Bottom!.Value, mounted.ClaimTop) & beside) == 0)
            {
                continue;
            }

            foreach (var quiet in mounted.Load.Prepend(mounted).Where(HeatSurvey.MayNeedAirflow))
            {
                context.ReportMissing(Pointers.ItemAirflowDirection[quiet.Index], MissingAirflowDirection);
            }
        }
    }

    private static void Report(RuleContext context, int bottom, int top)
    {
        var survey = context.Survey;
        var beside = Beside(survey, bottom, top);
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("units", survey.Cabinet.Units(bottom, top)), ("openUnits", top - bottom + 1), ("items", Names.Ids(beside.Select(m => m.Id)))],
            Subject = Subjects.OpenUnits(survey.Cabinet.Units(bottom, top)),

            // Counted from the bottom whatever the caller's numbering is, so that an acceptance holds in either.
            Identity = ["front", bottom == top ? FormattableString.Invariant($"U{bottom}") : FormattableString.Invariant($"U{bottom}-U{top}")],

            // One item can have a gap above and below. The items at both ends of the gap, or the end of the rack, identify it.
            Pointers =
            [
                .. beside.Select(m => m.Pointer)
                    .Concat(survey.Occupancy.ByPlace.Where(m => m.Face == Face.Front && Bounds(m, bottom, top)).Select(m => m.Pointer))
                    .Concat(Behind(survey, bottom - 1)).Concat(Behind(survey, top + 1))
                    .Append(top == survey.Cabinet.HeightU ? Pointers.CabinetHeightU : bottom == 1 ? "/cabinet" : "/items")
                    .Distinct(),
            ],
            Actual = Quantities.Units(top - bottom + 1),
            Limit = Quantities.Units(0),
            Calculation = FormattableString.Invariant($"from below: {top} - {bottom} + 1 = {top - bottom + 1} > 0"),
            // Where the uprights are too close to the front door for a panel, they have to be moved first.
            Candidates = survey.Depth.CanTake(Occupancy.Plate) && survey.HasRoomFor(BlankingPanels.CountFor(top - bottom + 1))
                ? [Close(survey, bottom, top)]
                : [],
        });
    }

    private static bool Bounds(MountedItem mounted, int bottom, int top) => mounted.ClaimTop == bottom - 1 || mounted.Bottom == top + 1;

    // A rear-mounted item that reaches to the front closes the U position there as well.
    private static IEnumerable<string> Behind(RackSurvey survey, int unit)
    {
        var there = survey.Occupancy.ByPlace.Where(m => m.Bottom <= unit && unit <= m.ClaimTop).ToArray();
        return Array.Exists(there, m => m.Face == Face.Front) ? [] : there.Select(m => m.Pointer);
    }

    // The items with airflow front to rear next to a gap, by id.
    private static MountedItem[] Beside(RackSurvey survey, int bottom, int top) =>
    [
        .. survey.Occupancy.ByPlace
            .Where(m => m is { Face: Face.Front, Item: not null } && Bounds(m, bottom, top))
            .SelectMany(m => m.Load.Prepend(m).Where(IsFrontToRear))
            .OrderBy(m => m.Id, StringComparer.Ordinal),
    ];

    private static RemedyCandidate Close(RackSurvey survey, int bottom, int top)
    {
        var builder = new RemedyBuilder(survey);
        var heights = BlankingPanels.Close(survey, builder, bottom, top);
        return builder.Titled(new(RemedyTitles.Panels.With(heights.Count == 1 ? "one" : null), ("heightsU", Scalar.Of([.. heights.Select(h => (Scalar)h)]))));
    }
}
