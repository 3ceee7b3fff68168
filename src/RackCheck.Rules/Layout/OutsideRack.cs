using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds equipment mounted below U1 or above the top U position.</summary>
public sealed class OutsideRack : Rule
{
    private static readonly MessageWording Defect = new("layout.outside-rack", "{item} occupies {units:units}, which is outside the {unitsTotal}U cabinet.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.outside-rack",
        Title = "Mounted outside the rack",
        Severity = Severity.Error,
        What = "Finds items and horizontal PDUs mounted below U1 or above the top U position.",
        Why = "The uprights end there, so it cannot be fixed.",
        Formula = "u >= 1 and u + n - 1 <= U, with u the lowest U position counted from the bottom, n the height of the item and U the height "
            + "of the cabinet; with top-down numbering, u is U + 1 - the given number",
        Sources = [Sources.Geometry],
        Needs = ["/cabinet/heightU", "/unitNumbering", "/items/*/heightU", "/items/*/position", "/pdus/*/position"],
        Notes =
        [
            "With top-down numbering position.u is the lowest U position by place, which has the largest number.",
        ],
        Remedies = ["Mount it at the nearest free U position.", "Use a taller cabinet.", "Move it to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var survey = context.Survey;
        foreach (var mounted in survey.Occupancy.ByPlace)
        {
            var bottom = mounted.Bottom!.Value;
            var roof = survey.Cabinet.HeightU;
            if (bottom >= 1 && mounted.Top <= roof)
            {
                continue;
            }

            var above = mounted.Top > roof;
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [("item", mounted.Id), ("units", survey.Cabinet.Units(bottom, mounted.Top)), ("unitsTotal", roof)],
                Subject = survey.Cabinet.Place(mounted),
                Identity = [mounted.Key],
                Pointers = [mounted.PositionPointer],
                Actual = Quantities.Units(above ? mounted.Top : bottom),
                Limit = Quantities.Units(above ? roof : 1),
                Calculation = above
                    ? Invariant($"from below: {bottom} + {mounted.HeightU} - 1 = {mounted.Top} > {roof}")
                    : Invariant($"from below: {bottom} < 1"),
                Candidates = PlaceRemedies.Move(survey, mounted),
            });
        }
    }
}
