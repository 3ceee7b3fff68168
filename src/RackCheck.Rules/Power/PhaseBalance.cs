using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds three-phase supplies with unbalanced phases or an overloaded neutral.</summary>
public sealed class PhaseBalance : Rule
{
    /// <summary>Permitted excess of the most loaded phase over the mean of the three.</summary>
    public static RuleLimit UnbalancePercent { get; } = new(
        "unbalancePercent", "permitted excess of the most loaded phase over the mean of the three", 20, "%", 1, 200, Stricter.Lower);

    /// <summary>Load of the worst phase, as a share of the supply rating, below which the balance is not checked.</summary>
    public static RuleLimit LeastSharePercent { get; } = new(
        "leastSharePercent", "load of the worst phase, as a share of the supply rating, below which the balance is not checked", 10, "%", 0, 100,
        Stricter.Lower);

    // The example racks have phases of 16 A. With the switch on L3 they carry 8, 6 and 6 A: 8 A is 20 % above the mean of 6.667 A. With the switch on L1 they
    // carry 8.4, 6 and 5.6 A.
    private static readonly WordingChoice Neutral = new(
        "power.phase-balance.neutral",
        "The neutral of supply {supply} " + Loading.LimitPattern);

    private static readonly MessageWording Phase = new(
        "power.phase-balance.phase",
        "Phase {line} of supply {supply} carries {worstA} A, {overPercent} % above the {meanA} A mean of the three phases; the limit is "
            + "{limitPercent} %.");

    private static readonly MissingData MissingLine = new(
        "power.phase-balance.missing-line",
        "The line of an outlet group on a three-phase supply is missing, so its balance cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.phase-balance",
        Title = "Phases unbalanced",
        Severity = Severity.Warning,
        What =
            "Finds three-phase supplies whose most loaded phase exceeds the mean of the three by more than the limit, and supplies whose neutral current is "
            + "above their rating, in normal use or with another supply lost. Supplies below a minimum load are not checked.",
        Why = "One phase is fully loaded while two have capacity left, the neutral carries the difference, and the voltage of the loaded phase drops.",
        Formula =
            "100 (max(I1, I2, I3) / ((I1 + I2 + I3) / 3) - 1) <= limit; neutral: phasor sum of the three phases, 120 degrees apart, each lagging by its own "
            + "power factor (triplen harmonics are not included)",
        Sources = [Sources.CircuitTheory, Sources.BalancePractice],
        Limits = [UnbalancePercent, LeastSharePercent],
        Needs =
        [
            "/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/supplies/*/phases", "/supplies/*/voltageV", "/supplies/*/ratedA",
            "/pdus/*/groups/*/phase", "/connections",
        ],
        Notes =
        [
            "Where the line of a loaded outlet group is missing, the balance waits for it; the load of PDU and supply is judged with the group on L1.",
            "The neutral current is a phasor sum; an arithmetic sum would have no meaning for it.",
        ],
        SharesWordingsOf = [typeof(MissingLoadingData)],
        Remedies = ["Plug equipment into another phase.", "Connect an outlet group to another phase, or swap two groups.", "Add a supply with a PDU."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        if (!Array.Exists(tree.Supplies, s => s.Phases == 3))
        {
            return;
        }

        MissingLoadingData.Report(context, tree, g => g.Unit.Supply.Phases == 3 || g.Unit.IsBehindUps);
        foreach (var supply in tree.Supplies)
        {
            // An unknown load can balance the phases as well as unbalance them, so no finding is certain.
            if (supply.Phases == 3 && supply.IsKnown && !ReportLines(context, supply))
            {
                JudgeLines(context, supply);
                JudgeNeutral(context, supply);
            }
        }
    }

    // Whether a loaded group is on L1 by default alone: equipment with several lines has its groups spread, so that no imbalance is certain.
    private static bool ReportLines(RuleContext context, SupplyNode supply)
    {
        var unknown = SupplyRemedies.CordsOn(context.Survey, supply)
            .Where(c => !c.IsThreePhase && c.Group!.Source.Phase is null && c.Group.Load.NormalA > 0).Select(c => c.Group!).Distinct().ToArray();
        foreach (var group in unknown)
        {
            context.ReportMissing($"{group.Pointer}/phase", MissingLine);
        }

        return unknown.Length > 0;
    }

    private static void JudgeLines(RuleContext context, SupplyNode supply)
    {
        var worst = supply.MostLoaded.NormalA;
        if (worst <= 0 || worst < context.Limit(LeastSharePercent) / 100 * supply.RatedA)
        {
            return;
        }

        double[] lines = [.. supply.Lines.Select(l => l.NormalA)];
        var mean = lines.Sum() / 3;
        var over = 100 * ((worst / mean) - 1);
        var limit = context.Limit(UnbalancePercent);
        if (!Comparison.IsOver(over, limit))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Phase,
            Data =
            [
                ("supply", supply.Id), ("worstA", worst), ("line", LoadingText.LineName(Array.IndexOf(lines, worst))),
                ("overPercent", over), ("meanA", mean), ("limitPercent", limit),
            ],
            Subject = Subjects.Supply(supply.Id),
            Identity = ["lines", supply.Id],
            Pointers = [Pointers.Supply[supply.Index]],
            Actual = Quantities.Of(over, "%"),
            Limit = Quantities.Of(limit, "%"),
            Calculation =
                Invariant($"({lines[0]:0.######} + {lines[1]:0.######} + {lines[2]:0.######}) / 3 = {mean:0.######}; ")
                + Invariant($"100 x ({worst:0.######} / {mean:0.######} - 1) = {over:0.###} > {limit:0.###}"),
            Candidates = Candidates(context.Survey, supply),
        });
    }

    private static void JudgeNeutral(RuleContext context, SupplyNode supply)
    {
        // Only the rating counts: a neutral has no design share.
        if (Loading.Judge(supply.Neutral, supply.RatedA, supply.RatedA) is not { } found)
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Neutral.With(found.Variant),
            Data = [("supply", supply.Id), .. found.Data],
            Subject = Subjects.NeutralOf(supply.Id),
            Identity = ["neutral", supply.Id],
            Pointers = [Pointers.Supply[supply.Index], $"{Pointers.Supply[supply.Index]}/ratedA"],
            Actual = Quantities.Of(found.CurrentA, "A"),
            Limit = Quantities.Of(found.LimitA, "A"),
            UtilisationPercent = 100 * found.CurrentA / found.LimitA,
            Calculation = Invariant($"{NeutralText(context.Survey, supply, found)} > {found.LimitA:0.###}"),
            Candidates = Candidates(context.Survey, supply),
        });
    }

    // Phasor sum in terms of the active and reactive current of each phase.
    private static string NeutralText(RackSurvey survey, SupplyNode supply, Loading found)
    {
        Span<double> p = stackalloc double[3];
        Span<double> q = stackalloc double[3];
        foreach (var cord in SupplyRemedies.CordsOn(survey, supply))
        {
            var active = cord.WattsIn(found.Lost) / supply.Source.VoltageV / (cord.IsThreePhase ? 3 : 1);
            var reactive = active * Math.Sqrt((1 / (cord.PowerFactor * cord.PowerFactor)) - 1);
            for (var line = 0; line < 3; line++)
            {
                p[line] += cord.IsThreePhase || cord.Group!.Line == line ? active : 0;
                q[line] += cord.IsThreePhase || cord.Group!.Line == line ? reactive : 0;
            }
        }

        return Invariant($"sqrt(({p[0]:0.######} - ({p[1]:0.######} + {p[2]:0.######}) / 2 + 0.8660254 x ({q[2]:0.######} - {q[1]:0.######}))^2 + ")
            + Invariant($"({q[0]:0.######} - ({q[1]:0.######} + {q[2]:0.######}) / 2 + 0.8660254 x ({p[1]:0.######} - {p[2]:0.######}))^2) = ")
            + Invariant($"{found.CurrentA:0.###}");
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, SupplyNode supply)
    {
        Cord[] cords = [.. SupplyRemedies.CordsOn(survey, supply)];
        return PowerRemedies.MoveCords(survey, Array.FindAll(cords, c => ReferenceEquals(supply.Lines[c.Group!.Line], supply.MostLoaded)))
            .Concat(PowerRemedies.MoveCords(survey, cords))
            .Concat(SupplyRemedies.Rephase(survey, supply))
            .Append(SupplyRemedies.Spread(survey, supply))
            .Concat(PowerRemedies.AddSupplies(survey, supply, null, cords));
    }
}
