using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds neighbours with opposite airflow directions, and items with side airflow in narrow cabinets.</summary>
public sealed class AirflowConflict : Rule
{
    /// <summary>Minimum cabinet width for equipment with side airflow.</summary>
    public static RuleLimit WidthMm { get; } = new(
        "widthMm", "minimum cabinet width for equipment with side airflow", 800, "mm", 450, 1200, Stricter.Higher);

    private static readonly MessageWording Opposed = new(
        "cooling.airflow-conflict.opposed",
        "{forward} has airflow front to rear and the adjacent {backward} rear to front: each draws in the exhaust air of the other.");

    private static readonly MessageWording Side = new(
        "cooling.airflow-conflict.side",
        "{item} has side airflow, but the cabinet is {widthMm} mm wide; side airflow needs {limitMm} mm.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.airflow-conflict",
        Title = "Airflow directions in conflict",
        Severity = Severity.Warning,
        What =
            "Finds adjacent items on the same face with airflow front to rear in one and rear to front in the other, and items with side airflow in a "
            + "cabinet with side panels that is narrower than 800 mm.",
        Why = "Each item draws in the exhaust air of the other, or its own exhaust air recirculates around the body.",
        Formula = "adjacent U positions, directions front-to-rear and rear-to-front; direction side and width < widthMm",
        Sources = [Sources.AirflowPractice],
        Limits = [WidthMm],
        Needs = ["/items/*/airflow/direction", "/items/*/position", "/cabinet/widthMm", "/cabinet/sidePanels", "/pdus/*/mounting", "/pdus/*/position"],
        SharesWordingsOf = [typeof(MissingHeatData)],
        Remedies = ["Move one of them to another U position.", "Use a cabinet 800 mm wide.", "Move the equipment to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        var width = context.Limit(WidthMm);
        var isNarrow = Quantities.Round(survey.Cabinet.WidthMm) < Quantities.Round(width) && !survey.Heat.AirPath.AreSidesOpen;
        MountedItem? reversed = null;
        foreach (var item in survey.Items)
        {
            var direction = item.Item!.Airflow?.Direction;
            MissingHeatData.ReportDirection(context, item);
            reversed = direction == AirflowDirection.RearToFront ? item : reversed;
            if (direction == AirflowDirection.Side && isNarrow)
            {
                ReportSide(context, item, width);
            }
        }

        if (reversed is not null)
        {
            JudgeNeighbours(context);
        }
    }

    private static void JudgeNeighbours(RuleContext context)
    {
        var placed = context.Survey.Occupancy.ByPlace;
        foreach (var lower in placed)
        {
            foreach (var upper in placed)
            {
                if (upper.Face == lower.Face && upper.Bottom == lower.ClaimTop + 1 && DirectionOf(lower) is { } one && DirectionOf(upper) is { } other
                    && one != other)
                {
                    ReportPair(context, lower, upper);
                }
            }
        }
    }

    private static AirflowDirection? DirectionOf(MountedItem what) =>
        what.Item?.Airflow?.Direction is { } direction and (AirflowDirection.FrontToRear or AirflowDirection.RearToFront) ? direction : null;

    private static void ReportPair(RuleContext context, MountedItem lower, MountedItem upper)
    {
        var survey = context.Survey;
        var isLowerReversed = DirectionOf(lower) == AirflowDirection.RearToFront;
        var (forward, backward) = isLowerReversed ? (upper, lower) : (lower, upper);
        context.Report(new FindingDraft
        {
            Message = Opposed,
            Data = [("forward", forward.Id), ("backward", backward.Id)],
            Subject = survey.Cabinet.Place(backward),
            Identity = ["pair", forward.Id, backward.Id],
            Pointers = [backward.Pointer, forward.Pointer],
            Candidates = ConflictRemedies.PartNeighbours(survey, backward, forward),
        });
    }

    private static void ReportSide(RuleContext context, MountedItem item, double width)
    {
        var survey = context.Survey;
        var actual = survey.Cabinet.WidthMm;
        context.Report(new FindingDraft
        {
            Message = Side,
            Data = [("item", item.Id), ("widthMm", actual), ("limitMm", width)],
            Subject = survey.Cabinet.Place(item),
            Identity = ["side", item.Id],
            Pointers = [Pointers.ItemAirflowDirection[item.Index], Pointers.CabinetWidth],
            Actual = Quantities.Millimetres(actual),
            Limit = Quantities.Millimetres(width),
            Calculation = Invariant($"{actual:0.###} < {width:0.###}"),
            Candidates = ConflictRemedies.WidenFor(survey, item, width),
        });
    }
}
