using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>Finds equipment that is heavier than the cabinet may carry, or than is planned for.</summary>
public sealed class RackRating : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = LimitsInForce.RackRating,
        Title = "Equipment too heavy for the cabinet",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What = "Finds equipment that is heavier together than the cabinet's rated load; over 80 % of it is a warning. Items without a mass are named, and what the others weigh is judged; PDUs, cables and rails have no mass in the description.",
        Why = "Uprights and frame bend or give way, mostly while the rack is moved.",
        Formula = "sum of massKg <= ratedLoadKg",
        Sources = [Sources.RatingPractice],
        Limits = [LimitsInForce.RackPlannedPercent],
        Needs = ["/items/*/massKg", "/cabinet/ratedLoadKg"],
        Remedies = ["Take a cabinet with a higher rated load.", "Take equipment out of the rack."],
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
                const string Message = "Without the cabinet's rated load and the mass of every item it cannot be said whether it carries the equipment.";
                context.Lacks(Pointers.RatedLoad, Message);
                MissingLoadData.ReportMasses(context, Message);
            }

            return;
        }

        MissingLoadData.ReportMasses(context, "Without the mass of every item it cannot be said whether the cabinet carries them all.");
        var planned = rated * context.Survey.Limits.RackPlannedShare;
        if (MassSurvey.Exceeds(mass.KnownEquipmentKg, planned))
        {
            Report(context, mass, rated, planned);
        }
    }

    private static void Report(RuleContext context, MassSurvey mass, double rated, double planned)
    {
        var isError = MassSurvey.Exceeds(mass.KnownEquipmentKg, rated);
        var limit = isError ? rated : planned;
        var weighs = mass.IsEquipmentKnown ? "The equipment weighs {equipmentKg} kg" : "The equipment weighs at least {equipmentKg} kg";
        context.Report(new FindingDraft
        {
            Message = weighs + (isError ? "; the cabinet is rated for {limitKg} kg." : ", more than the {limitKg} kg that should be planned for in a cabinet rated for {ratedKg} kg."),
            Data = isError ? [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", limit)] : [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", limit), ("ratedKg", rated)],
            Subject = "cabinet",
            Identity = [],
            Pointers = [Pointers.RatedLoad],
            Severity = isError ? Severity.Error : Severity.Warning,
            Actual = Quantities.Of(mass.KnownEquipmentKg, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = limit > 0 ? 100 * mass.KnownEquipmentKg / limit : null,
            Calculation = Invariant($"{LoadText.Sum(context.Survey.Items)} = {mass.KnownEquipmentKg:0.###} > {limit:0.###}"),
            Cures = LoadCures.Carry(context.Survey, rated),
        });
    }
}
