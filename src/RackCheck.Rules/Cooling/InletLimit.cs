using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds items with supply air above their inlet limit.</summary>
public sealed class InletLimit : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.inlet-limit",
        Title = "Supply air too hot for an item",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What =
            "Finds items whose inlet limit, derated for altitude, is below the temperature of the supply air: room air, underfloor air or the setpoint of "
            + "the air conditioner. Each item has its own finding.",
        Why = "Equipment above its inlet limit fails early or switches off. Thin air cools less, so the limit falls with altitude.",
        Formula = "ambientMaxC, supplyC or setpointC <= maxInletC - (altitudeM - 900)/s above 900 m; s 300 m, from 40 C 175 m, from 45 C 125 m",
        Sources = [Sources.AshraeTc99],
        Needs = ["/items/*/maxInletC", "/site/ambientMaxC", "/site/altitudeM", "/cooling/underfloor/supplyC", "/cooling/airConditioner/setpointC"],
        Notes =
        [
            "The slope follows the inlet limit: below 40 C as classes A1 and A2, from 40 C as A3, from 45 C as A4. Above 45 C no class applies: where the "
                + "derating decides, the finding is a warning, and the manufacturer's own slope takes precedence.",
            "The classes end at 3050 m. Above it nothing is claimed.",
        ],
        Remedies = ["Lower the temperature of the room, the underfloor air or the setpoint.", "Fit an air conditioner.", "Move the equipment to another rack."],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var heat = context.Survey.Heat;
        MissingHeatData.ReportInletLimits(context);
        if (!heat.IsAltitudeCovered)
        {
            MissingHeatData.ReportAltitude(context);
            return;
        }

        if (heat.LeastInletC is not { } least)
        {
            return;
        }

        if (heat.SupplyC is not { } supply)
        {
            context.ReportMissing(Pointers.UnderfloorC, "The temperature of the underfloor air is missing, so the inlet limits cannot be checked.");
            return;
        }

        if (!Comparison.IsOver(supply, least))
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MaxInletC is { } own && Comparison.IsOver(supply, heat.LimitAtSiteC(own)))
            {
                Report(context, item, own, heat.LimitAtSiteC(own), supply);
            }
        }
    }

    private static void Report(RuleContext context, MountedItem item, double own, double limit, double supply)
    {
        var heat = context.Survey.Heat;
        var what = heat.AirPath.Mode switch
        {
            CoolingMode.AirConditioner => "The air conditioner holds",
            CoolingMode.Underfloor => "The underfloor air is at",
            _ => "The room reaches",
        };
        context.Report(new FindingDraft
        {
            Message = limit < own
                ? what + " {supplyC} C, but the inlet limit of {item} is {limitC} C at an altitude of {altitudeM} m."
                : what + " {supplyC} C, but the inlet limit of {item} is {limitC} C.",
            Data = limit < own
                ? [("supplyC", supply), ("item", item.Id), ("limitC", limit), ("altitudeM", heat.AltitudeM)]
                : [("supplyC", supply), ("item", item.Id), ("limitC", limit)],
            Severity = own > InletLimits.GreatestClassC && !Comparison.IsOver(supply, own) ? Severity.Warning : null,
            Subject = context.Survey.Cabinet.Place(item),
            Identity = [item.Id],
            Pointers = heat.SupplyPointer is { } place ? [Pointers.ItemMaxInlet[item.Index], place] : [Pointers.ItemMaxInlet[item.Index]],
            Actual = Quantities.Of(supply, "C"),
            Limit = Quantities.Of(limit, "C"),
            Calculation = limit < own
                ? Invariant($"{own:0.###} - ({heat.AltitudeM:0.###} - {InletLimits.DeratingFromM:0}) / {InletLimits.MetresPerKOf(own):0} = ")
                    + Invariant($"{limit:0.###} < {supply:0.###}")
                : Invariant($"{supply:0.###} > {limit:0.###}"),
            Candidates = RoomAirRemedies.CoolInlet(context.Survey, item, limit),
        });
    }
}
