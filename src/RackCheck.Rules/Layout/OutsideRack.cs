using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds what is mounted below unit 1 or above the top unit.</summary>
public sealed class OutsideRack : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.outside-rack",
        Title = "Mounted outside the rack",
        Severity = Severity.Error,
        What = "Finds items and horizontal PDUs below unit 1 or above the top unit.",
        Why = "There are no uprights to fix it to.",
        Formula = "lowest unit >= 1 and lowest unit + height - 1 <= units of the cabinet, counted from below; with top-down numbering unit u is unit U + 1 - u from below",
        Sources = [Sources.Geometry],
        Needs = ["/cabinet/heightU", "/unitNumbering", "/items/*/heightU", "/items/*/position", "/pdus/*/position"],
        Remedies = ["Mount it at the nearest free place.", "Take a higher cabinet.", "Take it out of this rack."],
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
                Message = "{item} takes {units}, but the rack has units 1 to {unitsTotal}.",
                Data = [("item", mounted.Id), ("units", survey.Cabinet.UnitsText(bottom, mounted.Top)), ("unitsTotal", roof)],
                Subject = survey.Cabinet.Place(mounted),
                Identity = [mounted.Key],
                Pointers = [mounted.PositionPointer],
                Actual = Quantities.Units(above ? mounted.Top : bottom),
                Limit = Quantities.Units(above ? roof : 1),
                Calculation = above
                    ? Invariant($"from below: {bottom} + {mounted.HeightU} - 1 = {mounted.Top} > {roof}")
                    : Invariant($"from below: {bottom} < 1"),
                Cures = PlaceCures.Move(survey, mounted),
            });
        }
    }
}
