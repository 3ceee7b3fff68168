using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds split air conditioners that have no outside wall for their outer unit.</summary>
public sealed class CoolerSplit : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.cooler-split",
        Title = "Split air conditioner without an outside wall",
        Severity = Severity.Error,
        What = "Finds split air conditioners where no outside wall is there that pipes can go through.",
        Why = "The outer unit gives the heat off outside; without a way for its pipes it cannot be fitted.",
        Formula = "style split needs outsideWall",
        Sources = [Sources.CoolingPractice],
        Needs = ["/cooling/airConditioner/style", "/site/outsideWall"],
        Remedies = ["Take an air conditioner for the cabinet's wall or roof."],
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
            context.Lacks(Pointers.CoolerStyle, "Without the style of the air conditioner it cannot be said whether it needs an outside wall.");
        }
        else if (cooler.Style == AirConditionerStyle.Split && wall is null)
        {
            context.Lacks(Pointers.OutsideWall, "A split air conditioner needs an outside wall for its pipes; it is not said whether there is one.");
        }
        else if (cooler.Style == AirConditionerStyle.Split && wall == false)
        {
            context.Report(new FindingDraft
            {
                Message = "The air conditioner is in two parts, but there is no outside wall for its outer unit and pipes.",
                Data = [],
                Subject = "air conditioner",
                Identity = ["split"],
                Pointers = [Pointers.CoolerStyle, Pointers.OutsideWall],
                Cures = CoolingCures.Restyle(context.Survey),
            });
        }
    }
}
