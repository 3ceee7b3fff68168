using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds cords with a current above the rating of their plug or outlet.</summary>
public sealed class OutletRating : Rule
{
    private static readonly WordingChoice Defect = new(
        "power.outlet-rating",
        "{item} draws {currentA} A through its {plug} plug[each-phase: on each phase][socket: in a {socket} outlet]"
            + "[lost: with a supply lost]; the rating is {ratedA} A.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.outlet-rating",
        Title = "Plug or outlet overloaded",
        Severity = Severity.Error,
        Safety = true,
        What = "Finds items whose current through a cord is above the rating of its plug or of its outlet, in normal use or with a supply lost.",
        Why = "An overloaded contact overheats, and the breaker of the group is often too large to trip.",
        Formula = "I = P/(n V pf) through each of n cords, a third of it on each of three phases; I <= the lower rating of plug and socket",
        Sources = [Sources.CircuitTheory, Sources.Iec60320, Sources.Bs1363, Sources.Cee7, Sources.NemaWd6, Sources.Iec60309, Sources.RedundancyPractice],
        Needs =
        [
            "/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/items/*/power/redundant", "/supplies/*/voltageV",
            "/pdus/*/groups/*/outlets", "/connections", "/site/region",
        ],
        SharesWordingsOf = [typeof(MissingLoadingData)],
        Remedies = ["Fit a larger plug and an outlet for it.", "Share the load among more cords.", "Move the item to another rack."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        MissingLoadingData.Report(context, tree);
        foreach (var cords in tree.Cords.GroupBy(c => c.Item))
        {
            Cord? worst = null;
            foreach (var cord in cords)
            {
                worst = worst is null || Share(cord, tree.IsNorthAmerica) > Share(worst, tree.IsNorthAmerica) ? cord : worst;
            }

            if (worst is not null && IsOver(worst, tree.IsNorthAmerica))
            {
                Report(context, worst);
            }
        }
    }

    // Rounded as in the report: a finding never compares 10 A with 10 A.
    private static bool IsOver(Cord cord, bool northAmerica) => Comparison.IsOver(cord.WorstA() ?? 0, cord.RatedA(northAmerica));

    private static double Share(Cord cord, bool northAmerica) => (cord.WorstA() ?? 0) / cord.RatedA(northAmerica);

    private static void Report(RuleContext context, Cord cord)
    {
        var survey = context.Survey;
        var unit = cord.Group!.Unit;
        var rated = cord.RatedA(survey.Power.IsNorthAmerica);
        var worst = cord.WorstA()!.Value;
        var lost = Comparison.IsOver(cord.WorstWatts, cord.Watts);
        var lines = cord.IsThreePhase ? unit.Lines.Count : 1;
        var over = lines == 1 ? "" : Invariant($" / {lines}");
        context.Report(new FindingDraft
        {
            Message = Defect.With(lines == 1 ? "" : "each-phase", lost ? "lost" : "", cord.Socket is null ? "" : "socket"),
            Data =
            [
                ("item", cord.Item.Id), ("currentA", worst), ("plug", PlugFit.Of(cord.Code).Code), ("ratedA", rated),
                .. cord.Socket is { } socket ? [("socket", (Scalar)PlugFit.Of(socket).Code)] : Array.Empty<(string, Scalar)>(),
            ],
            Subject = survey.Cabinet.Place(cord.Item),
            Identity = [cord.Item.Id],
            Pointers = [Invariant($"{Pointers.ItemPlugs[cord.Item.Index]}/{cord.Plug}"), cord.Group.Pointer],
            Actual = Quantities.Of(worst, "A"),
            Limit = Quantities.Of(rated, "A"),
            UtilisationPercent = 100 * worst / rated,
            Calculation =
                Invariant($"{cord.WorstWatts:0.###}{over} / ({unit.Supply.Source.VoltageV:0.###} x {cord.PowerFactor:0.###}) = {worst:0.###} > ")
                + Invariant($"{rated:0.###}")
                + (lost ? ", with a supply lost" : ""),
            Candidates = PlugRemedies.Larger(survey, cord).Concat(PlugRemedies.MoreCords(survey, cord)).Append(OutletRemedies.TakeOut(survey, [cord])),
        });
    }
}
