using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds neighbours that breathe opposite ways, and side breathers without room at their sides.</summary>
public sealed class AirflowConflict : Rule
{
    private static readonly RuleLimit WidthMm = new(
        "widthMm", "width of a cabinet from which equipment can breathe from side to side in it", 800, "mm", 450, 1200, Stricter.Higher);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.airflow-conflict",
        Title = "Equipment breathes against its neighbour or its side panel",
        Severity = Severity.Warning,
        What = "Finds items next to each other on the same face of which one breathes from front to rear and the other from rear to front, and items that breathe from side to side in a cabinet with side panels that is narrower than 800 mm.",
        Why = "Each takes in what the other blows out, or its own air comes back round the body, hotter each time.",
        Formula = "adjacent units, directions front-to-rear and rear-to-front; direction side and width < widthMm",
        Sources = [Sources.BreathingPractice],
        Limits = [WidthMm],
        Needs = ["/items/*/airflow/direction", "/items/*/position", "/cabinet/widthMm", "/cabinet/sidePanels"],
        Remedies = ["Mount one of them elsewhere.", "Take a cabinet 800 mm wide.", "Take the equipment out of the rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        var width = context.Limit(WidthMm);
        var isNarrow = Quantities.Round(survey.Cabinet.WidthMm) < Quantities.Round(width) && !survey.Heat.Way.AreSidesOpen;
        Mounted? reversed = null;
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
                if (upper.Face == lower.Face && upper.Bottom == lower.ClaimTop + 1 && DirectionOf(lower) is { } one && DirectionOf(upper) is { } other && one != other)
                {
                    ReportPair(context, lower, upper);
                }
            }
        }
    }

    private static AirflowDirection? DirectionOf(Mounted what) =>
        what.Item?.Airflow?.Direction is { } direction and (AirflowDirection.FrontToRear or AirflowDirection.RearToFront) ? direction : null;

    private static void ReportPair(RuleContext context, Mounted lower, Mounted upper)
    {
        var survey = context.Survey;
        var isLowerReversed = DirectionOf(lower) == AirflowDirection.RearToFront;
        var (forward, backward) = isLowerReversed ? (upper, lower) : (lower, upper);
        context.Report(new FindingDraft
        {
            Message = "{forward} takes in air at the front and {backward} beside it at the rear: each takes in what the other blows out.",
            Data = [("forward", forward.Id), ("backward", backward.Id)],
            Subject = survey.Cabinet.Place(backward),
            Identity = ["pair", forward.Id, backward.Id],
            Pointers = [backward.Pointer, forward.Pointer],
            Cures = CoolingCures.PartNeighbours(survey, backward, forward),
        });
    }

    private static void ReportSide(RuleContext context, Mounted item, double width)
    {
        var survey = context.Survey;
        var actual = survey.Cabinet.WidthMm;
        context.Report(new FindingDraft
        {
            Message = "{item} takes in air at its side; in a cabinet {widthMm} mm wide there is no room for that, in one of {limitMm} mm there is.",
            Data = [("item", item.Id), ("widthMm", actual), ("limitMm", width)],
            Subject = survey.Cabinet.Place(item),
            Identity = ["side", item.Id],
            Pointers = [Pointers.ItemAirflowDirection[item.Index], Pointers.CabinetWidth],
            Actual = Quantities.Millimetres(actual),
            Limit = Quantities.Millimetres(width),
            Calculation = Invariant($"{actual:0.###} < {width:0.###}"),
            Cures = CoolingCures.WidenFor(survey, item, width),
        });
    }
}
