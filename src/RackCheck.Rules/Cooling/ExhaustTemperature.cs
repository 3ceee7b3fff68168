using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds exhaust air that is too hot for the PDUs and cords in it.</summary>
public sealed class ExhaustTemperature : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.exhaust-temperature",
        Title = "Exhaust air too hot for a PDU",
        Severity = Severity.Warning,
        What =
            "Finds PDUs behind the equipment whose maximum ambient temperature is below that of the exhaust air: the inlet temperature plus the rise of the "
            + "mixed air. Each PDU has its own finding.",
        Why = "Breakers trip early, outlets and cords age, and insulation softens.",
        Formula = "T_in + 3600 Q/(rho 1006 V) <= maxAmbientC, default 60 C; Q and V of the items with a known airflow that do not blow to the front",
        Sources = [Sources.AshraeFundamentals, Sources.HotAislePractice],
        Needs =
        [
            "/pdus/*/maxAmbientC", "/pdus/*/mounting", "/pdus/*/position", "/items/*/heatW", "/items/*/power/ratedW", "/items/*/airflow/flowM3h",
            "/items/*/airflow/direction", "/site/ambientMaxC", "/site/altitudeM", "/cooling/underfloor/supplyC", "/cooling/airConditioner/setpointC",
        ],
        Notes =
        [
            "The rise is that of the heat over the airflow, not the permitted riseK. Items without a stated airflow are left out of both.",
            "A horizontal PDU on the front uprights is not in the exhaust air.",
        ],
        Remedies = ["Lower the temperature at the inlets.", "Use PDUs with a higher maximum ambient temperature.", "Move equipment to another rack."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var pdus = context.Survey.Description.Pdus;
        if (pdus is null || context.Survey.Heat.Exhaust is not { } exhaust)
        {
            return;
        }

        for (var i = 0; i < pdus.Count; i++)
        {
            var limit = pdus[i].MaxAmbientC ?? ExhaustAir.UsualPduC;
            if (ExhaustAir.Reaches(pdus[i]) && Comparison.IsOver(exhaust.TemperatureC, limit))
            {
                Report(context, exhaust, i, limit);
            }
        }
    }

    private static void Report(RuleContext context, ExhaustAir exhaust, int index, double limit)
    {
        var survey = context.Survey;
        var pdu = survey.Description.Pdus![index];
        context.Report(new FindingDraft
        {
            Message = "The exhaust air behind the equipment reaches {exhaustC} C; PDU {pdu} bears {limitC} C.",
            Data = [("exhaustC", exhaust.TemperatureC), ("pdu", pdu.Id), ("limitC", limit)],
            Subject = $"PDU {pdu.Id}",
            Identity = [pdu.Id],
            Pointers = [Pointers.Pdu[index], "/items"],
            Actual = Quantities.Of(exhaust.TemperatureC, "C"),
            Limit = Quantities.Of(limit, "C"),
            UtilisationPercent = limit > 0 ? 100 * exhaust.TemperatureC / limit : null,
            Calculation =
                Invariant($"3600 x {exhaust.HeatW:0.###} / ({survey.Heat.DensityKgM3:0.####} x {Air.HeatCapacity:0} x {exhaust.FlowM3h:0.###}) = ")
                + Invariant($"{exhaust.RiseK:0.###}; {exhaust.InletC:0.###} + {exhaust.RiseK:0.###} = {exhaust.TemperatureC:0.###} > {limit:0.###}"),
            Candidates = RoomAirRemedies.CoolExhaust(survey, exhaust.TemperatureC - limit),
        });
    }
}
