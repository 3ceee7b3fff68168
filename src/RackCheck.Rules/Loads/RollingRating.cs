using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds racks on castors whose equipment exceeds the dynamic load rating.</summary>
public sealed class RollingRating : Rule
{
    private static readonly MessageWording Known = new(
        "load.rolling-rating.known",
        "The equipment weighs {equipmentKg} kg; the dynamic load rating of the cabinet on castors is {limitKg} kg.");

    private static readonly MessageWording AtLeast = new(
        "load.rolling-rating.at-least",
        "The equipment weighs at least {equipmentKg} kg; the dynamic load rating of the cabinet on castors is {limitKg} kg.");

    private static readonly MissingData MissingBaseStyle = new(
        "load.rolling-rating.missing-base-style",
        "A dynamic load rating is specified. Without the base style, it cannot be checked.");

    private static readonly MissingData MissingMasses = new(
        "load.rolling-rating.missing-masses",
        "Without the mass of every item, the dynamic load cannot be checked.");

    private static readonly MissingData MissingRollingLoad = new(
        "load.rolling-rating.missing-rolling-load",
        "The cabinet has castors. Without its dynamic load rating, moving it with equipment cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "load.rolling-rating",
        Title = "Dynamic load rating exceeded",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds cabinets on castors whose equipment exceeds the dynamic load rating.",
        Why = "A castor breaks or sinks into the floor, and the rack tips onto a person.",
        Formula = "sum of massKg <= rollingLoadKg, where the base is castors",
        Sources = [Sources.RatingPractice],
        Needs = ["/items/*/massKg", "/cabinet/rollingLoadKg", "/cabinet/base/style"],
        Remedies = ["Use castors with a higher rating.", "Use levelling feet and mount the equipment on site.", "Move equipment to another rack."],
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
                context.ReportMissing(Pointers.RollingLoad, MissingRollingLoad);
            }

            return;
        }

        if (style is null && context.Survey.Items.Length > 0)
        {
            context.ReportMissing(Pointers.BaseStyle, MissingBaseStyle);
        }

        if (style != BaseStyle.Castors)
        {
            return;
        }

        MissingLoadData.ReportMasses(context, MissingMasses);
        if (Comparison.IsOver(mass.KnownEquipmentKg, rated))
        {
            Report(context, mass, rated);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double rated) => context.Report(new FindingDraft
    {
        Message = mass.IsEquipmentKnown ? Known : AtLeast,
        Data = [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", rated)],
        Subject = Subjects.Castors,
        Identity = [],
        Pointers = [Pointers.RollingLoad, Pointers.BaseStyle],
        Actual = Quantities.Of(mass.KnownEquipmentKg, "kg"),
        Limit = Quantities.Of(rated, "kg"),
        UtilisationPercent = rated > 0 ? 100 * mass.KnownEquipmentKg / rated : null,
        Calculation = Invariant($"{LoadText.Sum(context.Survey.Items)} = {mass.KnownEquipmentKg:0.###} > {rated:0.###}"),
        Candidates = LoadRemedies.Roll(context.Survey, rated),
    });
}
