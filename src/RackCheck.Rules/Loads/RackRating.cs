using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds equipment that exceeds the rated load of the cabinet, or its planning limit.</summary>
public sealed class RackRating : Rule
{
    private static readonly WordingChoice Defect = new(
        "load.rack-rating",
        "The equipment weighs [at-least:at least ]{equipmentKg} kg; the [planned:planning limit of a cabinet rated for {ratedKg} kg is "
            + "{limitKg} kg|cabinet is rated for {limitKg} kg].");

    private static readonly MissingData Missing = new(
        "load.rack-rating.missing",
        "Without the rated load of the cabinet and the mass of every item, the cabinet load cannot be checked.");

    private static readonly MissingData MissingMasses = new(
        "load.rack-rating.missing-masses",
        "Without the mass of every item, the cabinet load cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = LimitsInForce.RackRating,
        Title = "Equipment too heavy for the cabinet",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What = "Finds equipment whose total mass exceeds the rated load of the cabinet. More than 80 % of the rated load is a warning. Items "
            + "without a mass are reported, and the total mass of the other items is checked. PDUs, cables and rails have no mass in the "
            + "description.",
        Why = "Uprights and frame bend or break, mostly while the rack is moved.",
        Formula = "sum of massKg <= ratedLoadKg",
        Sources = [Sources.RatingPractice],
        Limits = [LimitsInForce.RackPlannedPercent],
        Needs = ["/items/*/massKg", "/cabinet/ratedLoadKg"],
        Notes =
        [
            "Every item except a blanking panel needs a mass. A rack whose mass is unknown is not released.",
        ],
        Remedies = ["Use a cabinet with a higher rated load.", "Move equipment to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var mass = context.Survey.Mass;
        if (context.Survey.Cabinet.Source.RatedLoadKg is not { } rated)
        {
            if (mass.HasEquipment)
            {
                context.ReportMissing(Pointers.RatedLoad, Missing);
                MissingLoadData.ReportMasses(context, Missing);
            }

            return;
        }

        MissingLoadData.ReportMasses(context, MissingMasses);
        var planned = rated * context.Survey.Limits.RackPlannedShare;
        if (Comparison.IsOver(mass.KnownEquipmentKg, planned))
        {
            Report(context, mass, rated, planned);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double rated, double planned)
    {
        var isError = Comparison.IsOver(mass.KnownEquipmentKg, rated);
        var limit = isError ? rated : planned;
        context.Report(new FindingDraft
        {
            Message = Defect.With(mass.IsEquipmentKnown ? "" : "at-least", isError ? "" : "planned"),
            Data = isError
                ? [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", limit)]
                : [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", limit), ("ratedKg", rated)],
            Subject = Subjects.Cabinet,
            Identity = [],
            Pointers = [Pointers.RatedLoad],
            Severity = isError ? Severity.Error : Severity.Warning,
            Actual = Quantities.Of(mass.KnownEquipmentKg, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = limit > 0 ? 100 * mass.KnownEquipmentKg / limit : null,
            Calculation = Invariant($"{LoadText.Sum(context.Survey.Items)} = {mass.KnownEquipmentKg:0.###} > {limit:0.###}"),
            Candidates = LoadRemedies.Carry(context.Survey, rated),
        });
    }
}
