using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds items that are offered hotter air than they may take in, before the rack heats it.</summary>
public sealed class InletLimit : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.inlet-limit",
        Title = "Room too hot for an item",
        Severity = Severity.Error,
        What = "Finds items whose inlet limit, less what the altitude takes of it, is under the temperature of the air that the rack gets: the room's, the floor's or what the air conditioner holds. One finding an item.",
        Why = "Equipment takes in air hotter than it is made for; thin air cools less, so limits fall with the altitude.",
        Formula = "ambientMaxC, supplyC or setpointC <= maxInletC - (altitudeM - 900)/300 above 900 m",
        Sources = [Sources.AshraeTc99],
        Needs = ["/items/*/maxInletC", "/site/ambientMaxC", "/site/altitudeM", "/cooling/underfloor/supplyC", "/cooling/airConditioner/setpointC"],
        Remedies = ["Keep the room, the floor's air or the setpoint cooler.", "Take an air conditioner.", "Take the equipment out of the rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        MissingHeatData.ReportInletLimits(context);
        if (heat.LeastInletC is not { } least)
        {
            return;
        }

        if (heat.SupplyC is not { } supply)
        {
            context.Lacks(Pointers.UnderfloorC, "Without the temperature of the air from the floor it cannot be said whether it is cool enough.");
            return;
        }

        if (supply <= least)
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MaxInletC is { } own && Quantities.Round(supply) > heat.LimitAtSiteC(own))
            {
                Report(context, item, own, heat.LimitAtSiteC(own), supply);
            }
        }
    }

    private static void Report(RuleContext context, Mounted item, double own, double limit, double supply)
    {
        var heat = context.Survey.Heat;
        var what = heat.Way.Path switch
        {
            AirPath.AirConditioner => "The air conditioner holds",
            AirPath.Underfloor => "The air from the floor has",
            _ => "The room reaches",
        };
        context.Report(new FindingDraft
        {
            Message = limit < own
                ? what + " {supplyC} C, but {item} may take in {limitC} C at most at {altitudeM} m above the sea."
                : what + " {supplyC} C, but {item} may take in {limitC} C at most.",
            Data = limit < own
                ? [("supplyC", supply), ("item", item.Id), ("limitC", limit), ("altitudeM", heat.AltitudeM)]
                : [("supplyC", supply), ("item", item.Id), ("limitC", limit)],
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = heat.SupplyPointer is { } place ? [Pointers.ItemMaxInlet[item.Index], place] : [Pointers.ItemMaxInlet[item.Index]],
            Actual = Quantities.Of(supply, "C"),
            Limit = Quantities.Of(limit, "C"),
            Calculation = limit < own
                ? Invariant($"{own:0.###} - ({heat.AltitudeM:0.###} - {InletLimits.DeratingFromM:0}) / {InletLimits.MetresPerK:0} = {limit:0.###} < {supply:0.###}")
                : Invariant($"{supply:0.###} > {limit:0.###}"),
            Cures = CoolingCures.CoolInlet(context.Survey, item, limit),
        });
    }
}
