using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds racks that exceed the rating of the lifting equipment, and heavy racks without lifting equipment.</summary>
public sealed class LiftingEquipment : Rule
{
    private const string Lifting = SitePointers.Delivery + "/liftingKg";

    /// <summary>Maximum gross mass without lifting equipment.</summary>
    public static RuleLimit MassKg { get; } = new(
        "massKg", "maximum gross mass without lifting equipment", 50, "kg", 10, 500, Stricter.Lower);

    private static readonly WordingChoice Defect = new(
        "delivery.lifting-equipment",
        "[empty:Cabinet and pallet|Cabinet, equipment and pallet] weigh [at-least:at least ]{grossKg} kg; [none:no lifting "
            + "equipment is specified. The limit without lifting equipment is {limitKg} kg.|the lifting equipment is rated for {limitKg} kg.]");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.lifting-equipment",
        Title = "Lifting equipment missing or overloaded",
        Severity = Severity.Warning,
        Concern = Concern.Site,
        Safety = true,
        What = "Finds racks whose gross mass exceeds the rating of the lifting equipment, or exceeds 50 kg where no lifting equipment is specified.",
        Why = "Overloaded lifting equipment fails and injures people. Lifting such a mass by hand also causes injuries.",
        Formula = "cabinet + equipment (unless delivered empty) + pallet > liftingKg, or > massKg where none is specified",
        Sources = [Sources.ReceiptPractice, Sources.HseL23, Sources.En13698],
        Limits = [MassKg],
        Needs = ["/site/delivery/liftingKg", "/site/delivery/palletKg", "/cabinet/massKg", "/items/*/massKg", "/site/delivery/loaded"],
        SharesWordingsOf = [typeof(GrossMass)],
        Remedies = ["Provide lifting equipment rated for the mass.", "Deliver the cabinet empty and mount the equipment on site."],
        Cautions = [Cautions.Transport],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Route is not { } route)
        {
            return;
        }

        var limit = route.Source.LiftingKg ?? context.Limit(MassKg);
        if (route.KnownKg > limit)
        {
            Report(context, route, limit);
        }
        else
        {
            GrossMass.ReportMissing(context);
        }
    }

    private static void Report(RuleContext context, RouteSurvey route, double limit)
    {
        context.Report(new FindingDraft
        {
            Message = Defect.With(route.IsLoaded ? "" : "empty", route.MassIsKnown ? "" : "at-least", route.Source.LiftingKg is null ? "none" : ""),
            Data = [("grossKg", route.KnownKg), ("limitKg", limit)],
            Subject = Subjects.Delivery,
            Identity = [],
            Pointers = [Lifting, GrossMass.Heaviest(context.Survey)],
            Actual = Quantities.Of(route.KnownKg, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = limit > 0 ? 100 * route.KnownKg / limit : null,
            Calculation = GrossMass.Text(context.Survey, limit),
            Candidates = DeliveryRemedies.Lighter(context.Survey, limit).Prepend(DeliveryRemedies.Lifting(context.Survey)),
        });
    }
}
