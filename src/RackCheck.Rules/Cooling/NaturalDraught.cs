using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>The airflow of a vented roof without fans, for <see cref="Airflow"/>.</summary>
internal static class NaturalDraught
{
    private static readonly MessageWording Defect = new(
        "cooling.airflow.draught",
        "Natural draught through the vented roof moves about {draughtM3h} m3/h; {heatW} W at a rise of {riseK} K needs {neededM3h} m3/h.");

    /// <summary>Compares the estimated draught with the heat load. An estimate is a warning, never an error.</summary>
    public static void Check(RuleContext context, MissingData message)
    {
        var survey = context.Survey;
        var heat = survey.Heat;
        if (heat.KnownW <= 0 || SmallerOpeningM2(context, message) is not { } exactM2)
        {
            return;
        }

        var areaM2 = Math.Round(exactM2, 5, MidpointRounding.AwayFromZero);
        var rise = heat.AllowedRiseK!.Value;
        var heightM = Quantities.Round(Math.Max(0, CabinetHeights.Of(survey.Cabinet.Source).OverallMm - heat.HeatCentreMm()) / 1000);
        var insideC = heat.AmbientC + rise;
        var draught = Quantities.Round(Openings.DraughtM3h(areaM2, heightM, rise, insideC));
        if (!Comparison.IsOver(heat.RoofNeedM3h, draught))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("draughtM3h", draught), ("heatW", heat.KnownW), ("riseK", rise), ("neededM3h", heat.RoofNeedM3h)],
            Severity = Severity.Warning,
            Subject = Subjects.AirThroughTheRack,
            Identity = ["draught"],
            Pointers = ["/cabinet/roof"],
            Actual = Quantities.Of(draught, "m3/h"),
            Limit = Quantities.Of(heat.RoofNeedM3h, "m3/h"),
            UtilisationPercent = draught > 0 ? 100 * heat.RoofNeedM3h / draught : null,
            Calculation =
                Invariant($"3600 x {Openings.DischargeCoefficient} x {areaM2:0.#####} x ")
                + Invariant($"sqrt(2 x {Gravity.MPerS2} x {heightM:0.###} x {rise:0.###} / ({insideC:0.###} + {Air.ZeroC})) = {draught:0.###}; ")
                + Invariant($"3600 x {heat.KnownW:0.###} / ({heat.HotDensityKgM3:0.####} x {Air.HeatCapacity:0} x {rise:0.###}) = ")
                + Invariant($"{heat.RoofNeedM3h:0.###} > {draught:0.###}"),
            Candidates = CoolingRemedies.Improve(survey),
        });
    }

    private static double? SmallerOpeningM2(RuleContext context, MissingData message)
    {
        var cabinet = context.Survey.Cabinet.Source;
        var intakeM2 = (context.Survey.Description.Cooling?.IntakeAreaCm2 ?? 0) / 1e4;
        if (cabinet.Roof!.OpenAreaCm2 is not { } roofCm2)
        {
            context.ReportMissing(Pointers.RoofOpenArea, message);
            return null;
        }

        var doorM2 = 0.0;
        if (AirPath.LetsAirThrough(cabinet.FrontDoor) == true)
        {
            var area = cabinet.FrontDoor!.PerforatedAreaM2 ?? AirPath.PerforatedAreaM2(cabinet);
            if (cabinet.FrontDoor is { Style: DoorStyle.Perforated, OpenAreaPercent: null })
            {
                context.ReportMissing(Pointers.FrontDoor + "/openAreaPercent", message);
                return null;
            }

            doorM2 = area * (cabinet.FrontDoor.OpenAreaPercent ?? 100) / 100;
        }

        return Math.Min(roofCm2 / 1e4, doorM2 + intakeM2);
    }
}
