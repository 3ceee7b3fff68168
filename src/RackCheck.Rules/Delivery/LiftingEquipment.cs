using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds racks heavier than the lifting equipment is rated for, or heavy with none named.</summary>
public sealed class LiftingEquipment : Rule
{
    private const string Lifting = SitePointers.Delivery + "/liftingKg";

    private static readonly RuleLimit MassKg = new(
        "massKg", "mass on the way past which lifting equipment is to be named", 50, "kg", 10, 500, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.lifting-equipment",
        Title = "No lifting equipment for the mass",
        Severity = Severity.Warning,
        Safety = true,
        What = "Finds racks that weigh more than the lifting equipment is rated for, or over 50 kg where none is named.",
        Why = "Overloaded lifting gear fails with people beside it; without any, people lift by hand what nobody should.",
        Formula = "cabinet + equipment + pallet > liftingKg, or > massKg where none is named",
        Sources = [Sources.ReceiptPractice, Sources.HseL23, Sources.En13698],
        Limits = [MassKg],
        Needs = ["/site/delivery/liftingKg", "/site/delivery/palletKg", "/cabinet/massKg", "/items/*/massKg"],
        Remedies = ["Have lifting equipment for the mass.", "Take equipment out for transport and mount it on site."],
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
            GrossMass.Lack(context);
        }
    }

    private static void Report(RuleContext context, RouteSurvey route, double limit)
    {
        var gross = route.MassIsKnown ? "{grossKg} kg" : "{grossKg} kg at least";
        context.Report(new FindingDraft
        {
            Message = route.Source.LiftingKg is null
                ? $"Cabinet, equipment and pallet weigh {gross}, and no lifting equipment is named; up to {{limitKg}} kg it can be done without."
                : $"Cabinet, equipment and pallet weigh {gross}; the lifting equipment is rated for {{limitKg}} kg.",
            Data = [("grossKg", route.KnownKg), ("limitKg", limit)],
            Subject = "delivery",
            Identity = [],
            Pointers = [Lifting],
            Actual = Quantities.Of(route.KnownKg, "kg"),
            Limit = Quantities.Of(limit, "kg"),
            UtilisationPercent = limit > 0 ? 100 * route.KnownKg / limit : null,
            Calculation = GrossMass.Text(context.Survey, limit),
            Cures = DeliveryCures.Lighter(context.Survey, limit).Prepend(DeliveryCures.Lifting(context.Survey)),
        });
    }
}
