using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds supplies whose breaker can trip when all connected equipment switches on at once.</summary>
public sealed class Inrush : Rule
{
    // The example racks have two items on a 16 A breaker of curve B, which may trip from sqrt(2) x 48 = 67.9 A.
    private static readonly WordingChoice Defect = new(
        "power.inrush",
        "[phase:Phase {line} of supply {supply}|Supply {supply}] draws {inrushA} A of inrush current; its {breakerA} A breaker of curve "
            + "{curve} can trip from {limitA} A.");

    private static readonly MissingData MissingCurve = new(
        "power.inrush.missing-curve",
        "The trip curve of a breaker is missing, so its inrush limit is unknown.");

    private static readonly MissingData MissingInrush = new(
        "power.inrush.missing-inrush",
        "The inrush current of an item is missing, so the breaker of its supply cannot be checked at switch-on.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.inrush",
        Title = "Inrush trips the breaker",
        Severity = Severity.Warning,
        MilderSeverity = Severity.Advice,
        What =
            "Finds supplies where the inrush current of all equipment that starts together is above the peak of the lowest instantaneous trip current of the "
            + "breaker: a warning where the pulses last 5 ms or more, else advice. Remotely switched outlets start in sequence; "
                + "all other outlets start together.",
        Why = "After a power cut all equipment starts together and trips the breaker again, so the rack stays off.",
        Formula = "sum of the inrush currents on a phase <= sqrt(2) m In; m = 3 (curve B), 5 (C), 10 (D)",
        Sources = [Sources.Iec60898, Sources.SequencingPractice],
        Needs =
        [
            "/items/*/power/inrushA", "/items/*/power/inrushMs", "/items/*/power/plugs", "/supplies/*/breaker/curve", "/supplies/*/breaker/ratedA",
            "/pdus/*/remoteSwitched", "/pdus/*/groups/*/outlets/*/switched", "/connections", "/items/*/power/ratedW",
        ],
        Notes =
        [
            "A trip current is an r.m.s. value and an inrush current a peak, so they compare by sqrt(2). A pulse of less than 5 ms or of unknown width seldom "
                + "trips a breaker: common practice, no source.",
            "Sequenced outlets (remotely switched) count their inrush one at a time. All other outlets count together.",
            "In North America breakers have no curve letter: without one the inrush is not checked.",
        ],
        Remedies = ["Fit PDUs with sequenced outlets.", "Fit a breaker with a slower curve.", "Add a supply with a PDU.", "Fit a larger supply."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var supply in context.Survey.Power.Supplies)
        {
            // In North America breakers have no curve letter, so there is nothing to compare with or to ask for.
            if (supply.IsNorthAmerica && supply.Source.Breaker?.Curve is null)
            {
                continue;
            }

            if (!supply.InrushIsKnown)
            {
                foreach (var cord in SupplyRemedies.CordsOn(context.Survey, supply).Where(c => c.InrushA is null))
                {
                    context.ReportMissing(Pointers.ItemInrush[cord.Item.Index], MissingInrush);
                }
            }

            if (supply.InrushA <= 0)
            {
                continue;
            }

            if (supply.Source.Breaker?.Curve is not { } curve)
            {
                context.ReportMissing(Invariant($"/supplies/{supply.Index}/breaker/curve"), MissingCurve);
                continue;
            }

            var limit = Math.Sqrt(2) * Breakers.LeastTripA(NamedEnumConverter<BreakerCurve>.Name(curve), supply.BreakerA);
            if (Comparison.IsOver(supply.InrushA, limit))
            {
                Report(context, supply, NamedEnumConverter<BreakerCurve>.Name(curve), limit);
            }
        }
    }

    private static void Report(RuleContext context, SupplyNode supply, string curve, double limit)
    {
        var survey = context.Survey;
        var named = LoadingText.Name(supply, supply.InrushLine);
        context.Report(new FindingDraft
        {
            Message = Defect.With(named.Variant),
            Data = [.. named.Data, ("inrushA", supply.InrushA), ("curve", curve), ("breakerA", supply.BreakerA), ("limitA", limit)],
            Subject = Subjects.Supply(supply.Id),
            Identity = [supply.Id],
            Pointers = [Pointers.Supply[supply.Index], Invariant($"/supplies/{supply.Index}/breaker/curve")],
            Actual = Quantities.Of(supply.InrushA, "A"),
            Limit = Quantities.Of(limit, "A"),
            UtilisationPercent = 100 * supply.InrushA / limit,
            Severity = IsLong(survey, supply, limit) ? Severity.Warning : Severity.Advice,
            Calculation =
                Invariant($"{Sum(survey, supply)} > sqrt(2) x {limit / Math.Sqrt(2) / supply.BreakerA:0.###} x {supply.BreakerA:0.###} = {limit:0.###}"),
            Candidates = Candidates(survey, supply),
        });
    }

    // A breaker trips on the r.m.s. current: a pulse counts for certain from half a half-wave on.
    private static bool IsLong(RackSurvey survey, SupplyNode supply, double limit)
    {
        var cords = SupplyRemedies.CordsOn(survey, supply)
            .Where(c => c.Item.Item!.Power!.InrushMs >= Breakers.LongPulseMs && (c.Group!.Loads(supply.InrushLine) || c.IsThreePhase)).ToArray();
        return cords.Length > 0
            && Comparison.IsOver(
                Math.Max(cords.Where(c => !c.Switched).Sum(c => c.InrushA ?? 0), cords.Max(c => c.InrushA ?? 0)), limit);
    }

    // The cords that start together, or one sequenced cord with a higher inrush current than their sum. Six digits: the shares of an item's cords must add up
    // to the inrush current of the item.
    private static string Sum(RackSurvey survey, SupplyNode supply)
    {
        var terms = SupplyRemedies.CordsOn(survey, supply)
            .Where(c => !c.Switched && c.InrushA > 0 && (c.Group!.Loads(supply.InrushLine) || c.IsThreePhase))
            .GroupBy(c => Math.Round(c.InrushA!.Value, 6, MidpointRounding.AwayFromZero)).OrderByDescending(g => g.Key)
            .Select(g => (Sum: g.Sum(c => c.InrushA!.Value), Text: g.Count() == 1 ? Invariant($"{g.Key:0.######}")
                : Invariant($"{g.Count()} x {g.Key:0.######}"))).ToArray();
        var isAlone = Comparison.IsOver(supply.InrushA, terms.Sum(t => t.Sum));
        return isAlone || terms is [{ Text: var single }] && !single.Contains('x', StringComparison.Ordinal)
            ? Invariant($"{supply.InrushA:0.###}")
            : Invariant($"{string.Join(" + ", terms.Select(t => t.Text))} = {supply.InrushA:0.###}");
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, SupplyNode supply)
    {
        Cord[] cords = [.. SupplyRemedies.CordsOn(survey, supply)];
        return SupplyRemedies.Sequence(survey, supply)
            .Concat(SupplyRemedies.SlowBreaker(survey, supply))
            .Concat(PowerRemedies.MoveCords(survey, cords))
            .Concat(PowerRemedies.AddSupplies(survey, supply, null, cords))
            .Concat(PowerRemedies.Enlarge(survey, supply, cords));
    }
}
