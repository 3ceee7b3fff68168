using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds split air conditioners without an outside wall for the outdoor unit.</summary>
public sealed class CoolerSplit : Rule
{
    private static readonly MessageWording Defect = new(
        "cooling.cooler-split",
        "The air conditioner is a split unit, but there is no outside wall for its outdoor unit and pipes.");

    private static readonly MissingData MissingCoolerStyle = new(
        "cooling.cooler-split.missing-cooler-style",
        "The style of the air conditioner is missing, so the need for an outside wall is unknown.");

    private static readonly MissingData MissingOutsideWall = new(
        "cooling.cooler-split.missing-outside-wall",
        "A split air conditioner needs an outside wall for its pipes, but the outside wall of the site is not given.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.cooler-split",
        Title = "Split air conditioner without an outside wall",
        Severity = Severity.Error,
        What = "Finds split air conditioners at sites without an outside wall for the refrigerant pipes.",
        Why = "The outdoor unit rejects the heat outside. Without a route for its pipes it cannot be installed.",
        Formula = "style split needs outsideWall",
        Sources = [Sources.CoolingPractice],
        Needs = ["/cooling/airConditioner/style", "/site/outsideWall"],
        Remedies = ["Fit an air conditioner on the cabinet wall or roof."],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var description = context.Survey.Description;
        if (description.Cooling?.AirConditioner is not { } cooler)
        {
            return;
        }

        var wall = description.Site?.OutsideWall;
        if (cooler.Style is null && wall != true)
        {
            context.ReportMissing(Pointers.CoolerStyle, MissingCoolerStyle);
        }
        else if (cooler.Style == AirConditionerStyle.Split && wall is null)
        {
            context.ReportMissing(Pointers.OutsideWall, MissingOutsideWall);
        }
        else if (cooler.Style == AirConditionerStyle.Split && wall == false)
        {
            context.Report(new FindingDraft
            {
                Message = Defect,
                Data = [],
                Subject = Subjects.AirConditioner,
                Identity = ["split"],
                Pointers = [Pointers.CoolerStyle, Pointers.OutsideWall],
                Candidates = CoolingRemedies.Restyle(context.Survey),
            });
        }
    }
}
