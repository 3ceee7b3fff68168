using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Rules.Loads;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds racks delivered with equipment that exceeds the transport load rating of the cabinet.</summary>
public sealed class TransportRating : Rule
{
    /// <summary>Equipment as a share of the static rating above which the transport rating is asked for.</summary>
    public static RuleLimit AskPercent { get; } = new(
        "askPercent", "equipment as a share of the static load rating above which the transport rating is asked for", 50, "%", 0, 50, Stricter.Lower);

    private static readonly WordingChoice Defect = new(
        "delivery.transport-rating",
        "The equipment weighs [at-least:at least ]{equipmentKg} kg; in transport the cabinet is rated for {limitKg} kg.[unspecified: Whether "
            + "it is delivered with the equipment mounted is not specified.]");

    private static readonly MissingData MissingMasses = new(
        "delivery.transport-rating.missing-masses",
        "Without the mass of every item, the load in transport cannot be checked.");

    private static readonly MissingData MissingTransportLoad = new(
        "delivery.transport-rating.missing-transport-load",
        "The rack is delivered with its equipment. Without the transport load rating of the cabinet, it cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.transport-rating",
        Title = "Equipment too heavy for transport in the cabinet",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What = "Finds equipment that exceeds the transport load rating of the cabinet, whatever its base, where the rack is delivered with its equipment "
            + "mounted. Where nobody says how it is delivered, this is a warning.",
        Why = "Shocks on the lorry and at thresholds multiply the load. Uprights and frame bend, and equipment breaks loose.",
        Formula = "sum of massKg <= transportLoadKg; the rating is asked for where a delivery is described and sum of massKg > askPercent of ratedLoadKg",
        Sources = [Sources.TransportPractice, Sources.RatingPractice],
        Limits = [AskPercent],
        Needs = ["/items/*/massKg", "/cabinet/transportLoadKg", "/cabinet/ratedLoadKg", "/site/delivery/loaded"],
        Notes = ["Without a rating, up to half of the static rating is taken to be safe to transport."],
        Remedies =
        [
            "Deliver the cabinet empty and mount the equipment on site.", "Use a cabinet with a higher transport load rating.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Transport],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var (mass, cabinet, delivery) = (context.Survey.Mass, context.Survey.Cabinet.Source, context.Survey.Description.Site?.Delivery);
        if (delivery?.Loaded == false || !mass.HasEquipment)
        {
            return;
        }

        if (cabinet.TransportLoadKg is { } limit)
        {
            MissingLoadData.ReportMasses(context, MissingMasses);
            if (Comparison.IsOver(mass.KnownEquipmentKg, limit))
            {
                Report(context, limit, delivery?.Loaded == true);
            }
        }
        else if (delivery is not null && Comparison.IsOver(mass.KnownEquipmentKg, context.Limit(AskPercent) / 100 * (cabinet.RatedLoadKg ?? 0)))
        {
            context.ReportMissing(Pointers.TransportLoad, MissingTransportLoad);
        }
    }

    private static void Report(RuleContext context, double limit, bool isLoaded)
    {
        var mass = context.Survey.Mass;
        context.Report(new FindingDraft
        {
            Severity = isLoaded ? Severity.Error : Severity.Warning,
            Message = Defect.With(mass.IsEquipmentKnown ? "" : "at-least", isLoaded ? "" : "unspecified"),
            Data = [("equipmentKg", mass.KnownEquipmentKg), ("limitKg", limit)],
            Subject = Subjects.Delivery,
            Identity = [],
            Pointers = [Pointers.TransportLoad, SitePointers.Loaded],
            Actual = Quantities.Of(mass.KnownEquipmentKg, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = 100 * mass.KnownEquipmentKg / limit,
            Calculation = Invariant($"{LoadText.Sum(context.Survey.Items)} = {mass.KnownEquipmentKg:0.###} > {limit:0.###}"),
            Candidates = LoadRemedies.Transport(context.Survey, limit),
        });
    }
}
