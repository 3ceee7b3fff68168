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
    private static readonly WordingChoice Supply = new(
        "cooling.inlet-limit",
        "[air-conditioner:The air conditioner holds|underfloor:The underfloor air is at|The room reaches] {supplyC} C, but the inlet limit "
            + "of {item} is {limitC} C[altitude: at an altitude of {altitudeM} m].");

    private static readonly MessageWording Exhaust = new(
        "cooling.inlet-limit.exhaust",
        "{item} has airflow rear to front and takes in exhaust air of {supplyC} C; its inlet limit is {limitC} C.");

    private static readonly MissingData Missing = new(
        "cooling.inlet-limit.missing",
        "The temperature of the underfloor air is missing, so the inlet limits cannot be checked.");

    private static readonly MissingData MissingDirection = new(
        "cooling.inlet-limit.missing-direction",
        "Without the direction of its airflow it is unknown whether an item takes in the exhaust air of the others.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.inlet-limit",
        Title = "Supply air too hot for an item",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What =
            "Finds items whose inlet limit, derated for altitude, is below the temperature of the supply air: room air, underfloor air or the setpoint of "
            + "the air conditioner. An item with airflow rear to front takes in the exhaust air of the others. Each item has its own finding.",
        Why = "Equipment above its inlet limit fails early or switches off. Thin air cools less, so the limit falls with altitude.",
        Formula = "ambientMaxC, supplyC or setpointC <= maxInletC - (altitudeM - 900)/s above 900 m; s 300 m, from 40 C 175 m, from 45 C 125 m; "
            + "rear to front: the exhaust air of the others, T_in + 3600 Q/(rho 1006 V)",
        Sources = [Sources.AshraeTc99, Sources.AshraeFundamentals, Sources.HotAislePractice],
        Needs =
        [
            "/items/*/maxInletC", "/items/*/airflow/direction", "/items/*/airflow/flowM3h", "/site/ambientMaxC", "/site/altitudeM",
            "/cooling/underfloor/supplyC", "/cooling/airConditioner/setpointC",
        ],
        Notes =
        [
            "The slope follows the inlet limit: below 40 C as classes A1 and A2, from 40 C as A3, from 45 C as A4. Above 45 C no class applies: where the "
                + "derating decides, the finding is a warning, and the manufacturer's own slope takes precedence.",
            "The classes end at 3050 m. Above it nothing is claimed.",
            "Exhaust air is that of the items with a known airflow. In a closed cabinet, or with an air conditioner, the air is mixed and this is not asked.",
        ],
        SharesWordingsOf = [typeof(MissingHeatData)],
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
            context.ReportMissing(Pointers.UnderfloorC, Missing);
            return;
        }

        // In a closed cabinet the air is mixed; elsewhere the rear is the hot side.
        var exhaust = heat.AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner ? null : heat.Exhaust;
        if (!Comparison.IsOver(Math.Max(supply, exhaust?.TemperatureC ?? supply), least))
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MaxInletC is not { } own)
            {
                continue;
            }

            var limit = heat.LimitAtSiteC(own);
            if (Comparison.IsOver(supply, limit))
            {
                Report(context, item, own, limit, supply);
            }
            else if (item.Item.Airflow?.Direction == AirflowDirection.RearToFront && exhaust is not null && Comparison.IsOver(exhaust.TemperatureC, limit))
            {
                ReportExhaust(context, item, own, limit, exhaust);
            }
            else if (item.Item.Airflow is { Direction: null } && exhaust is not null && Comparison.IsOver(exhaust.TemperatureC, limit))
            {
                context.ReportMissing($"{item.Pointer}/airflow/direction", MissingDirection);
            }
        }
    }

    private static void ReportExhaust(RuleContext context, MountedItem item, double own, double limit, ExhaustAir exhaust) => context.Report(new FindingDraft
    {
        Message = Exhaust,
        Data = [("supplyC", exhaust.TemperatureC), ("item", item.Id), ("limitC", limit)],
        Severity = SeverityOf(exhaust.TemperatureC, own),
        Subject = context.Survey.Cabinet.Place(item),
        Identity = [item.Id],
        Pointers = [$"{item.Pointer}/airflow/direction", Pointers.ItemMaxInlet[item.Index]],
        Actual = Quantities.Of(exhaust.TemperatureC, "C"),
        Limit = Quantities.Of(limit, "C"),
        Calculation = Invariant($"{exhaust.Calculation(context.Survey.Heat.DensityKgM3)} > {limit:0.###}"),
        Candidates = RoomAirRemedies.CoolExhaust(context.Survey, exhaust.TemperatureC - limit)
            .Concat(PlaceRemedies.TakeOut(context.Survey, item) is { } takeOut ? [takeOut] : []),
    });

    private static Severity? SeverityOf(double supply, double own) =>
        own > InletLimits.GreatestClassC && !Comparison.IsOver(supply, own) ? Severity.Warning : null;

    private static void Report(RuleContext context, MountedItem item, double own, double limit, double supply)
    {
        var heat = context.Survey.Heat;
        var what = heat.AirPath.Mode switch
        {
            CoolingMode.AirConditioner => "air-conditioner",
            CoolingMode.Underfloor => "underfloor",
            _ => "",
        };
        context.Report(new FindingDraft
        {
            Message = Supply.With(what, limit < own ? "altitude" : ""),
            Data = limit < own
                ? [("supplyC", supply), ("item", item.Id), ("limitC", limit), ("altitudeM", heat.AltitudeM)]
                : [("supplyC", supply), ("item", item.Id), ("limitC", limit)],
            Severity = SeverityOf(supply, own),
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
