using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds supplies loaded above their rating or above their design load.</summary>
public sealed class SupplyLoading : Rule
{
    // The example racks have two PDUs, each within its own rating, on one supply of 230 V and 16 A. One PDU carries 1840 W; the load of the other decides.
    private static readonly WordingChoice Defect = new(
        "power.supply-loading",
        "[phase:Phase {line} of supply {supply}|Supply {supply}] " + Loading.Pattern);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = LimitsInForce.SupplyLoading,
        Title = "Supply overloaded",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What =
            "Finds supplies whose current on a phase is above the lower of supply rating and breaker rating, in normal use or with another supply lost. A "
            + "load above the design share is a warning. In North America a load above 80 % of the breaker rating is an error.",
        Why =
            "The breaker of the building trips and the whole rack goes down. With a supply lost, the equipment that should continue on the other supply goes "
            + "down too.",
        Formula =
            "I = sum of P/(V pf) over the cords on a phase; a dual-fed item draws P/n through each of n cords, and all of P through the remaining cords with "
            + "a supply lost",
        Sources = [Sources.CircuitTheory, Sources.LoadingPractice, Sources.Nec210, Sources.RedundancyPractice],
        Limits = [LimitsInForce.DesignSharePercent, LimitsInForce.ContinuousSharePercent],
        Needs =
        [
            "/items/*/power/ratedW", "/items/*/heatW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/items/*/power/redundant", "/supplies/*/voltageV",
            "/supplies/*/phases", "/supplies/*/ratedA", "/supplies/*/breaker/ratedA", "/pdus", "/connections", "/site/region",
        ],
        Notes =
        [
            "Currents are arithmetic sums: power factors differ little between items, and the arithmetic sum is on the safe side.",
            "Every PDU with a plug is assumed to find a socket on its supply: a description has no number of sockets.",
        ],
        SharesWordingsOf = [typeof(MissingLoadingData)],
        Remedies =
        [
            "Plug equipment into another phase or supply.", "Fit a larger supply with larger PDUs.", "Add a supply with a PDU.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        MissingLoadingData.Report(context, context.Survey.Power);
        foreach (var supply in context.Survey.Power.Supplies)
        {
            if (Loading.Gravest(supply.Lines, supply.ContinuousA, supply.DesignA) is { } load)
            {
                Report(context, supply, load.Line, load.Found);
            }
        }
    }

    private static void Report(RuleContext context, SupplyNode supply, int line, Loading found)
    {
        var survey = context.Survey;
        var cords = SupplyRemedies.CordsOn(survey, supply).Where(c => c.Group!.Loads(line) || c.IsThreePhase);
        var named = LoadingText.Name(supply, line);
        context.Report(new FindingDraft
        {
            Message = Defect.With(named.Variant, found.Variant),
            Data = [.. named.Data, .. found.Data],
            Subject = Subjects.Supply(supply.Id),
            Identity = [supply.Id],
            Pointers = [Pointers.Supply[supply.Index]],
            Severity = found.Severity,
            Actual = Quantities.Of(found.CurrentA, "A"),
            Limit = Quantities.Of(found.LimitA, "A"),
            UtilisationPercent = 100 * found.CurrentA / found.LimitA,
            Calculation = Invariant($"{LoadingText.Line(supply, cords, line, found.Lost, found.CurrentA, withCooling: true)} > {found.LimitA:0.###}"),
            Candidates = PowerRemedies.Relieve(survey, supply, null),
        });
    }
}
