using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds supplies whose breaker can trip when all that hangs on it switches on at once.</summary>
public sealed class Inrush : Rule
{
    // The example racks: two items on curve B of 16 A, which may trip from 48 A on.
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.inrush",
        Title = "Inrush trips the breaker",
        Severity = Severity.Warning,
        What = "Finds supplies where the inrush of all that comes on at once is over the least current that can trip the breaker at once. Outlets that are switched from afar come on one after the other, all others together.",
        Why = "After a break in the mains the rack stays dark: everything comes on together and takes the breaker out again.",
        Formula = "sum of the inrush on a line <= m In; m = 3 (curve B), 5 (C), 10 (D)",
        Sources = [Sources.Iec60898, Sources.SequencingPractice],
        Needs = ["/items/*/power/inrushA", "/items/*/power/plugs", "/supplies/*/breaker/curve", "/supplies/*/breaker/ratedA", "/pdus/*/remoteSwitched", "/pdus/*/groups/*/outlets/*/switched", "/connections"],
        Remedies = ["Take PDUs whose outlets are switched on one after the other.", "Take a breaker of another curve.", "Add a supply with a PDU.", "Take a larger supply."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var supply in context.Survey.Power.Supplies)
        {
            if (!supply.InrushIsKnown)
            {
                foreach (var cord in SupplyCures.CordsOn(context.Survey, supply).Where(c => c.InrushA is null))
                {
                    context.Lacks(Pointers.ItemInrush[cord.Item.Index], "Without the inrush of an item it cannot be said whether its supply's breaker holds when all comes on at once.");
                }
            }

            if (supply.InrushA <= 0)
            {
                continue;
            }

            if (supply.Source.Breaker?.Curve is not { } curve)
            {
                context.Lacks(Invariant($"/supplies/{supply.Index}/breaker/curve"), "Without the curve of a breaker it cannot be said what inrush it holds.");
                continue;
            }

            var limit = Breakers.LeastTripA(NamedEnumConverter<BreakerCurve>.Name(curve), supply.BreakerA);
            if (Loading.IsOver(supply.InrushA, limit))
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
            Message = named.Text + " takes {inrushA} A when all comes on at once; its breaker, curve {curve} of {breakerA} A, can trip from {limitA} A on.",
            Data = [.. named.Data, ("inrushA", supply.InrushA), ("curve", curve), ("breakerA", supply.BreakerA), ("limitA", limit)],
            Subject = $"supply {supply.Id}",
            Identity = [supply.Id],
            Pointers = [Pointers.Supply[supply.Index], Invariant($"/supplies/{supply.Index}/breaker/curve")],
            Actual = Quantities.Of(supply.InrushA, "A"),
            Limit = Quantities.Of(limit, "A"),
            UtilisationPercent = 100 * supply.InrushA / limit,
            Calculation = Invariant($"{Sum(survey, supply)} > {limit / supply.BreakerA:0.###} x {supply.BreakerA:0.###} = {limit:0.###}"),
            Cures = Cures(survey, supply),
        });
    }

    // The cords that come on together, or the one switched by itself that takes more than all of those. To six digits: a third of an item's inrush times its cords is all of it.
    private static string Sum(RackSurvey survey, SupplyNode supply)
    {
        var terms = SupplyCures.CordsOn(survey, supply)
            .Where(c => !c.Switched && c.InrushA > 0 && (c.Group!.Line == supply.InrushLine || c.IsThreePhase))
            .GroupBy(c => Math.Round(c.InrushA!.Value, 6, MidpointRounding.AwayFromZero)).OrderByDescending(g => g.Key)
            .Select(g => (Sum: g.Sum(c => c.InrushA!.Value), Text: g.Count() == 1 ? Invariant($"{g.Key:0.######}") : Invariant($"{g.Count()} x {g.Key:0.######}"))).ToArray();
        var isAlone = Loading.IsOver(supply.InrushA, terms.Sum(t => t.Sum));
        return isAlone || terms is [{ Text: var single }] && !single.Contains('x', StringComparison.Ordinal)
            ? Invariant($"{supply.InrushA:0.###}")
            : Invariant($"{string.Join(" + ", terms.Select(t => t.Text))} = {supply.InrushA:0.###}");
    }

    private static IEnumerable<Cure> Cures(RackSurvey survey, SupplyNode supply)
    {
        Cord[] cords = [.. SupplyCures.CordsOn(survey, supply)];
        return SupplyCures.Sequence(survey, supply)
            .Concat(SupplyCures.SlowBreaker(survey, supply))
            .Concat(PowerCures.MoveCords(survey, cords))
            .Concat(PowerCures.AddSupplies(survey, supply, null, cords))
            .Concat(PowerCures.Enlarge(survey, supply, cords));
    }
}
