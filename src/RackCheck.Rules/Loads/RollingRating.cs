using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds loaded racks on castors that are heavier than may roll.</summary>
public sealed class RollingRating : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.rolling-rating",
        Title = "Equipment too heavy to be rolled",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds cabinets on castors whose equipment is heavier than the cabinet may carry while it is moved.",
        Why = "A castor breaks or sinks in on the way, and the rack falls on who pushes it.",
        Formula = "sum of massKg <= rollingLoadKg, where the base is castors",
        Sources = [Sources.RatingPractice],
        Needs = ["/items/*/massKg", "/cabinet/rollingLoadKg", "/cabinet/base/style"],
        Remedies = ["Take castors rated for it.", "Stand it on levelling feet, and fit the equipment where it stands.", "Take equipment out of the rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var (cabinet, mass) = (context.Survey.Cabinet.Source, context.Survey.Mass);
        var style = cabinet.Base?.Style;
        if (cabinet.RollingLoadKg is not { } rated)
        {
            if (style == BaseStyle.Castors && mass.HasEquipment)
            {
                context.Lacks(Pointers.RollingLoad, "It stands on castors; without its rolling load it cannot be said whether it may be moved with its equipment in.");
            }

            return;
        }

        if (style is null && context.Survey.Items.Length > 0)
        {
            context.Lacks(Pointers.BaseStyle, "A rolling load is given; without the style of the base it cannot be said whether it rolls.");
        }

        if (style != BaseStyle.Castors)
        {
            return;
        }

        MissingLoadData.ReportMasses(context, "Without the mass of every item it cannot be said whether the rack may be moved on its castors.");
        if (MassSurvey.Exceeds(mass.KnownEquipmentKg, rated))
        {
            Report(context, mass, rated);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double rated) => context.Report(new FindingDraft
    {
        Message = mass.IsEquipmentKnown
            ? "The equipment weighs {equipmentKg} kg; on its castors the cabinet may be moved with {limitKg} kg."
            : "The equipment weighs at least {equipmentKg} kg; on its castors the cabinet may be moved with {limitKg} kg.",
        Data = [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", rated)],
        Subject = "castors",
        Identity = [],
        Pointers = [Pointers.RollingLoad, Pointers.BaseStyle],
        Actual = Quantities.Of(mass.KnownEquipmentKg, "kg"),
        Limit = Quantities.Of(rated, "kg"),
        UtilisationPercent = rated > 0 ? 100 * mass.KnownEquipmentKg / rated : null,
        Calculation = Invariant($"{LoadText.Sum(context.Survey.Items)} = {mass.KnownEquipmentKg:0.###} > {rated:0.###}"),
        Cures = LoadCures.Roll(context.Survey, rated),
    });
}
