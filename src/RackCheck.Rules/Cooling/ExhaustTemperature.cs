using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds exhaust air that is too hot for the PDUs and mains cords in it.</summary>
public sealed class ExhaustTemperature : Rule
{
    private static readonly WordingChoice Cords = new(
        "cooling.exhaust-temperature.cords",
        "[closed:The air in the closed cabinet|The exhaust air behind the equipment] reaches {exhaustC} C; the cords of {items:all} are rated for "
            + "{limitC} C.");

    private static readonly WordingChoice Units = new(
        "cooling.exhaust-temperature.pdu",
        "[closed:The air in the closed cabinet|The exhaust air behind the equipment] reaches {exhaustC} C; PDU {pdu} is rated for {limitC} C.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.exhaust-temperature",
        Title = "Exhaust air too hot for PDUs or cords",
        Severity = Severity.Warning,
        What =
            "Finds PDUs and mains cords behind the equipment whose maximum temperature is below that of the exhaust air: the inlet temperature plus the rise "
            + "of the mixed air. Each PDU has its own finding, and the cords of each temperature class have one.",
        Why = "Breakers trip early, outlets and cords age, and insulation softens.",
        Formula = "T_in + 3600 Q/(rho 1006 V) <= maxAmbientC, default 60 C; cords: 70 C, with a C16 plug 120 C; Q and V of the items with a known "
            + "airflow that do not blow to the front",
        Sources = [Sources.AshraeFundamentals, Sources.HotAislePractice, Sources.Iec60320],
        Needs =
        [
            "/pdus/*/maxAmbientC", "/pdus/*/mounting", "/pdus/*/position", "/items/*/heatW", "/items/*/power/ratedW", "/items/*/power/plugs",
            "/items/*/airflow/flowM3h", "/items/*/airflow/direction", "/items/*/maxInletC", "/site/ambientMaxC",
            "/site/altitudeM", "/cooling/underfloor/supplyC", "/cooling/airConditioner/setpointC", "/cabinet/heightMm",
        ],
        Notes =
        [
            "The rise is that of the heat over the airflow, not the permitted riseK. Items without a stated airflow are left out of both.",
            "In a closed cabinet without fans it is the air inside, at the top: ambientMaxC + 1.44 Q/(3.4 A), as in cooling.sealed-rise.",
            "Where that air is over the inlet limit of an item, only cooling.sealed-rise reports: its remedies cool PDUs and cords too.",
            "A horizontal PDU on the front uprights is not in the exhaust air.",
            "Cords with C13 and C19 connectors are for cold conditions, up to 70 C; with C15 connectors for hot conditions, up to 120 C. Cords with other "
                + "plugs count as cold.",
        ],
        Remedies =
        [
            "Lower the temperature at the inlets.", "Use PDUs with a higher maximum ambient temperature.", "Use cords for hot conditions.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Heat.Exhaust is not { } exhaust || IsTooWarmInside(context.Survey))
        {
            return;
        }

        var pdus = context.Survey.Description.Pdus ?? [];
        for (var i = 0; i < pdus.Count; i++)
        {
            var limit = pdus[i].MaxAmbientC ?? ExhaustAir.UsualPduC;
            if (ExhaustAir.Reaches(pdus[i]) && Comparison.IsOver(exhaust.TemperatureC, limit))
            {
                Report(context, exhaust, i, limit);
            }
        }

        if (Comparison.IsOver(exhaust.TemperatureC, Connectors.ColdCordC))
        {
            CheckCords(context, exhaust, Connectors.ColdCordC);
            CheckCords(context, exhaust, Connectors.HotCordC);
        }
    }

    // Air in a closed cabinet that is over the inlet limit of an item is the defect of cooling.sealed-rise, and its remedies cool PDUs and cords too; whoever
    // switches that rule off gets the warnings of this one.
    private static bool IsTooWarmInside(RackSurvey survey)
    {
        var heat = survey.Heat;
        if (heat.AirPath.Mode != CoolingMode.Closed || SealedRise.IsOff(survey))
        {
            return false;
        }

        var rise = heat.ClosedRiseK(heat.UsualTransferWM2K);
        return Array.Exists(survey.Items, i => i.Item!.MaxInletC is { } own
            && Comparison.IsOver(heat.AmbientC + (heat.RiseFactor(i) * rise), heat.LimitAtSiteC(own)));
    }

    private static void CheckCords(RuleContext context, ExhaustAir exhaust, double limit)
    {
        MountedItem[] items = [.. context.Survey.Items.Where(i => i.Item!.Power?.Plugs?.Any(p => CordLimit(p) == limit) == true)];
        if (items.Length == 0 || !Comparison.IsOver(exhaust.TemperatureC, limit))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Cords.With(Place(exhaust)),
            Data =
            [
                ("exhaustC", exhaust.TemperatureC), ("items", Names.Ids(items.Select(i => i.Id))), ("limitC", limit),
            ],
            Subject = Subjects.MainsCords,
            Identity = ["cords", Invariant($"{limit:0}")],
            Pointers = [.. items.OrderBy(i => i.Id, StringComparer.Ordinal).Select(i => $"{i.Pointer}/power/plugs")],
            Actual = Quantities.Of(exhaust.TemperatureC, "C"),
            Limit = Quantities.Of(limit, "C"),
            UtilisationPercent = 100 * exhaust.TemperatureC / limit,
            Calculation = Invariant($"{exhaust.Calculation(context.Survey.Heat.DensityKgM3)} > {limit:0.###}"),
            Candidates = RoomAirRemedies.CoolExhaust(context.Survey, exhaust.TemperatureC - limit),
        });
    }

    private static string Place(ExhaustAir exhaust) => exhaust.FlowM3h == 0 ? "closed" : "";

    private static double? CordLimit(ConnectorCode plug) => Connectors.CordLimitC(NamedEnumConverter<ConnectorCode>.Name(plug));

    private static void Report(RuleContext context, ExhaustAir exhaust, int index, double limit)
    {
        var survey = context.Survey;
        var pdu = survey.Description.Pdus![index];
        context.Report(new FindingDraft
        {
            Message = Units.With(Place(exhaust)),
            Data = [("exhaustC", exhaust.TemperatureC), ("pdu", pdu.Id), ("limitC", limit)],
            Subject = Subjects.Pdu(pdu.Id),
            Identity = [pdu.Id],
            Pointers = [Pointers.Pdu[index], "/items"],
            Actual = Quantities.Of(exhaust.TemperatureC, "C"),
            Limit = Quantities.Of(limit, "C"),
            UtilisationPercent = limit > 0 ? 100 * exhaust.TemperatureC / limit : null,
            Calculation = Invariant($"{exhaust.Calculation(survey.Heat.DensityKgM3)} > {limit:0.###}"),
            Candidates = RoomAirRemedies.CoolExhaust(survey, exhaust.TemperatureC - limit),
        });
    }
}
