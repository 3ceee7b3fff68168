using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds supplies with too high a voltage drop along their cable.</summary>
public sealed class VoltageDrop : Rule
{
    /// <summary>Voltage drop along the cable of a supply; above it an error.</summary>
    public static RuleLimit DropErrorPercent { get; } = new(
        "dropErrorPercent", "voltage drop along the cable of a supply; above it an error", 5, "%", 0.5, 20, Stricter.Lower);

    /// <summary>Voltage drop along the cable of a supply; above it a warning.</summary>
    public static RuleLimit DropWarningPercent { get; } = new(
        "dropWarningPercent", "voltage drop along the cable of a supply; above it a warning", 3, "%", 0.5, 20, Stricter.Lower);

    // The example racks have 20 A through 30 m of 4 mm2: 11 mV/A/m x 30 m x 20 A = 6.6 V, which is 3 % of 220 V.
    private static readonly WordingChoice Defect = new(
        "power.voltage-drop",
        "The cable of supply {supply} ({lengthM} m of {sectionMm2} mm2) has a voltage drop of {dropPercent} %[lost: with supply {lost} "
            + "lost]; the [design:design ]limit is {limitPercent} %.");

    private static readonly MissingData Missing = new(
        "power.voltage-drop.missing",
        "The length or cross-sectional area of a supply cable is missing, so its voltage drop is unknown.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.voltage-drop",
        Title = "Voltage drop too high",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Concern = Concern.Site,
        What =
            "Finds supplies with a voltage drop along their cable above the limit, at the rated power of all connected equipment, in normal use or with a "
            + "supply lost. A second, lower limit gives a warning.",
        Why = "Power supply units draw more current at low voltage and fail at the next voltage dip, motors lose torque, and the cable overheats.",
        Formula =
            "100 d L I / 1000 / V; d: voltage drop of the cross-sectional area, mV/A/m, from the table or in proportion from the next smaller size; I: line "
            + "current on a single phase, (I_line + I_N)/2 on three phases, half the phasor difference of two lines from line to line",
        Sources = [Sources.Bs7671DropLimit, Sources.Bs7671Drop, Sources.Iec60228, Sources.RingLoop],
        Limits = [DropErrorPercent, DropWarningPercent],
        Needs =
        [
            "/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/supplies/*/voltageV", "/supplies/*/phases",
            "/supplies/*/cable/lengthM", "/supplies/*/cable/crossSectionMm2", "/supplies/*/cable/ring", "/pdus", "/connections",
        ],
        Notes =
        [
            "The drop is from line to neutral: half of the table value on the line and half on the neutral, each with its own current. With one phase "
                + "this is the table value; with three equal phases it is 0.866 of it.",
            "A ring final circuit has L/4: to its far point two legs are in parallel, each half of the ring long.",
        ],
        SharesWordingsOf = [typeof(MissingLoadingData)],
        Remedies = ["Fit a cable with a larger cross-sectional area.", "Share the load with a second supply and PDU.", "Move equipment to another rack."],
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
            if (supply.Source.Cable is { LengthM: not null, CrossSectionMm2: { } section })
            {
                Judge(context, supply, section);
                continue;
            }

            if (supply.Source.Cable?.LengthM is null)
            {
                context.ReportMissing(Invariant($"/supplies/{supply.Index}/cable/lengthM"), Missing);
            }

            if (supply.Source.Cable?.CrossSectionMm2 is null)
            {
                context.ReportMissing(Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2"), Missing);
            }
        }
    }

    private static void Judge(RuleContext context, SupplyNode supply, double section)
    {
        var (loop, length) = (supply.Loop.WorstA, supply.LoopLengthM!.Value);
        double Drop(double mm2) => Cables.DropPercent(Cables.DropMvPerAM(mm2), length, loop, supply.Source.VoltageV);
        var (drop, error, warning) = (Drop(section), context.Limit(DropErrorPercent), context.Limit(DropWarningPercent));
        var isError = Comparison.IsOver(drop, error);
        if (!isError && !Comparison.IsOver(drop, warning))
        {
            return;
        }

        var limit = isError ? error : warning;
        var (milli, voltage) = (Cables.DropMvPerAM(section), supply.Source.VoltageV);
        context.Report(new FindingDraft
        {
            Message = Defect.With(supply.Loop.WorstWithout is null ? "" : "lost", isError ? "" : "design"),
            Data =
            [
                ("supply", supply.Id), ("lengthM", supply.Source.Cable!.LengthM!.Value),
                ("sectionMm2", section), ("dropPercent", drop), ("limitPercent", limit),
                .. supply.Loop.WorstWithout is { } lost ? [("lost", (Scalar)lost.Id)] : Array.Empty<(string, Scalar)>(),
            ],
            Subject = Subjects.CableOf(supply.Id),
            Identity = [supply.Id],
            Pointers = [Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2"), Invariant($"/supplies/{supply.Index}/cable/lengthM")],
            Severity = isError ? Severity.Error : Severity.Warning,
            Actual = Quantities.Of(drop, "%"),
            Limit = Quantities.Of(limit, "%"),
            UtilisationPercent = 100 * drop / limit,
            Calculation =
                Invariant($"{milli:0.###} x {supply.LoopLength} x {loop:0.######} / 1000 = {drop * voltage / 100:0.####}; ")
                + Invariant($"100 x {drop * voltage / 100:0.####} / {voltage:0.###} = {drop:0.###} > {limit:0.###}"),
            Candidates = Candidates(context.Survey, supply, mm2 => !Comparison.IsOver(Drop(mm2), Math.Min(error, warning)), Math.Min(error, warning) / drop),
        });
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, SupplyNode supply, Func<double, bool> does, double share)
    {
        Cord[] cords = [.. SupplyRemedies.CordsOn(survey, supply)];
        double Va(Cord cord) => cord.WattsIn(supply.Loop.WorstWithout) / cord.PowerFactor;
        var excess = (1 - share) * cords.Sum(Va);
        Cord[] all = [.. survey.Power.Cords.Where(c => ReferenceEquals(c.Group?.Unit.Supply, supply))];

        // With a UPS removed, its equipment is fed from the supply itself, so that equipment has to move too. The last to move is what takes the outlets that
        // become free, or falls to this supply when another is lost.
        return SupplyRemedies.Thicken(survey, supply, does)
            .Concat(PowerRemedies.AddSupplies(survey, supply, null, cords))
            .Concat(PowerRemedies.TakeOut(survey, [new(cords, Va, excess)], cords))
            .Concat(PowerRemedies.TakeOut(survey, [new(all, Va, excess)], all))
            .Concat(PowerRemedies.TakeOut(survey, share * survey.Power.Cords.Sum(c => c.WorstVoltAmperes), survey.Power.Cords));
    }
}
