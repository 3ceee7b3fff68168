using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds supplies whose cable drops too much of the voltage.</summary>
public sealed class VoltageDrop : Rule
{
    private static readonly RuleLimit DropErrorPercent = new(
        "dropErrorPercent", "drop along the cable of a supply; past it an error", 5, "%", 0.5, 20, Stricter.Lower);

    private static readonly RuleLimit DropWarningPercent = new(
        "dropWarningPercent", "drop along the cable of a supply; past it a warning", 3, "%", 0.5, 20, Stricter.Lower);

    // The example racks: 10 A through 4 mm2: 3 % of 220 V is 6.6 V, which is 11 mV/A/m x 60 m x 10 A; and 30 m at twice the current.
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.voltage-drop",
        Title = "Cable too long or too thin",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What = "Finds supplies whose cable drops more of the voltage than is allowed, at the rated power of all that hangs on it; a lower share is a warning.",
        Why = "Power supplies draw more current at a low voltage and drop out in the next dip; drives lose torque; the cable runs hot.",
        Formula = "100 (d/2) L (I + I_N) / 1000 / V; d: drop of the section, mV/A/m, by the table, else the row next under it in proportion; I_N: neutral current, that of the line with a single phase",
        Sources = [Sources.Bs7671DropLimit, Sources.Bs7671Drop, Sources.Iec60228],
        Limits = [DropErrorPercent, DropWarningPercent],
        Needs = ["/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/supplies/*/voltageV", "/supplies/*/phases", "/supplies/*/cable/lengthM", "/supplies/*/cable/crossSectionMm2", "/pdus", "/connections"],
        Remedies = ["Take a thicker cable.", "Add a supply with a PDU, which takes its share.", "Take equipment out of the rack."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        MissingLoadingData.Report(context, tree);
        foreach (var supply in tree.Supplies.Where(s => s.Units.Any(u => !u.IsBehindUps)))
        {
            if (supply.Source.Cable is { LengthM: { } length, CrossSectionMm2: { } section })
            {
                Judge(context, supply, length, section);
                continue;
            }

            const string Message = "Without length and section of its cable it cannot be said how much of a supply's voltage is lost on the way.";
            if (supply.Source.Cable?.LengthM is null)
            {
                context.Lacks(Invariant($"/supplies/{supply.Index}/cable/lengthM"), Message);
            }

            if (supply.Source.Cable?.CrossSectionMm2 is null)
            {
                context.Lacks(Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2"), Message);
            }
        }
    }

    private static void Judge(RuleContext context, SupplyNode supply, double length, double section)
    {
        // What is not known may level three lines and so take the neutral's current away: the line's own drop is sure.
        var (line, neutral) = (supply.MostLoaded.NormalA, supply.IsKnown || supply.Phases == 1 ? supply.Neutral.NormalA : 0);
        double Drop(double mm2) => Cables.DropPercent(Cables.DropMvPerAM(mm2), length, line, neutral, supply.Source.VoltageV);
        var (drop, error, warning) = (Drop(section), context.Limit(DropErrorPercent), context.Limit(DropWarningPercent));
        var isError = Loading.IsOver(drop, error);
        if (!isError && !Loading.IsOver(drop, warning))
        {
            return;
        }

        var limit = isError ? error : warning;
        var (milli, voltage) = (Cables.DropMvPerAM(section), supply.Source.VoltageV);
        context.Report(new FindingDraft
        {
            Message = isError
                ? "The cable of supply {supply}, {lengthM} m of {sectionMm2} mm2, loses {dropPercent} % of the voltage; {limitPercent} % is the most that it may."
                : "The cable of supply {supply}, {lengthM} m of {sectionMm2} mm2, loses {dropPercent} % of the voltage, more than the {limitPercent} % that it should be planned for.",
            Data = [("supply", supply.Id), ("lengthM", length), ("sectionMm2", section), ("dropPercent", drop), ("limitPercent", limit)],
            Subject = $"cable of supply {supply.Id}",
            Identity = [supply.Id],
            Pointers = [Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2"), Invariant($"/supplies/{supply.Index}/cable/lengthM")],
            Severity = isError ? Severity.Error : Severity.Warning,
            Actual = Quantities.Of(drop, "%"),
            Limit = Quantities.Of(limit, "%"),
            UtilisationPercent = 100 * drop / limit,
            Calculation = Invariant($"{milli:0.###} / 2 x {length:0.###} x ({line:0.######} + {neutral:0.######}) / 1000 = {drop * voltage / 100:0.####}; 100 x {drop * voltage / 100:0.####} / {voltage:0.###} = {drop:0.###} > {limit:0.###}"),
            Cures = Cures(context.Survey, supply, mm2 => !Loading.IsOver(Drop(mm2), Math.Min(error, warning)), Math.Min(error, warning) / drop),
        });
    }

    private static IEnumerable<Cure> Cures(RackSurvey survey, SupplyNode supply, Func<double, bool> does, double share)
    {
        Cord[] cords = [.. SupplyCures.CordsOn(survey, supply)];
        var most = share * cords.Sum(c => c.VoltAmperes);

        // Where a UPS goes, what hung on it hangs on the supply itself: then that has to go as well.
        return SupplyCures.Thicken(survey, supply, does)
            .Concat(PowerCures.AddSupplies(survey, supply, null, cords))
            .Concat(PowerCures.TakeOut(survey, most, cords))
            .Concat(PowerCures.TakeOut(survey, most, [.. survey.Power.Cords.Where(c => ReferenceEquals(c.Group?.Unit.Supply, supply))]));
    }
}
