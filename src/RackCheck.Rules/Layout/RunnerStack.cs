using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Rules.Layout;

/// <summary>Finds runs of items on chassis runners whose cumulative height error is too large.</summary>
public sealed class RunnerStack : Rule
{
    /// <summary>Maximum items on runners in a run with an unknown body height; more are a warning.</summary>
    public static RuleLimit RunWarning { get; } = new(
        "runWarning", "maximum items on runners in a run with an unknown body height; more are a warning", 2, "sets", 1, 20, Stricter.Lower);

    /// <summary>Maximum items on runners in a run with an unknown body height; more are an error.</summary>
    public static RuleLimit RunError { get; } = new(
        "runError", "maximum items on runners in a run with an unknown body height; more are an error", 3, "sets", 1, 20, Stricter.Lower);

    private static readonly MessageWording Alone = new(
        "layout.runner-stack.alone",
        "{item} with its runners is {stackMm} mm high, with no free U position above it; its U positions allow {roomMm} mm.");

    private static readonly MessageWording Stack = new(
        "layout.runner-stack.height",
        "The {sets} items on runners from {first} to {item} are {stackMm} mm high in total; their U positions allow {roomMm} mm.");

    private static readonly MessageWording Count = new(
        "layout.runner-stack.count",
        "{sets} items on runners from {first} to {last} are stacked without a free U position; the maximum is {limit}. From {item} on, the "
            + "cumulative height error is too large.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "layout.runner-stack",
        Title = "Cumulative height error of stacked runners",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What = "Finds items on chassis runners stacked without a free U position between them, where body heights and runner thicknesses add "
            + "up to more than the U positions allow.",
        Why = "Each runner raises its item by the runner thickness. After a few items, the front panels no longer line up with the holes.",
        Formula = "heights known: sum of (body height + runner thickness) <= U occupied x 44.45, for any adjacent items of the run; a height "
            + "not known: number of items in the run <= runWarning, an error above runError",
        Sources = [Sources.SupportPractice, Sources.Iec60297],
        Limits = [RunWarning, RunError],
        Needs =
        [
            "/items/*/support/style", "/items/*/support/thicknessMm", "/items/*/body/heightMm", "/items/*/position", "/pdus/*/mounting", "/pdus/*/position",
        ],
        Notes =
        [
            "The cumulative height error is calculated from every set of a run upwards, not only from the lowest: each set is fixed to its own holes, "
                + "so a low set under a stack gives it no clearance.",
        ],
        Remedies =
        [
            "Move the items above up and leave a free U position in the run.", "Mount the first item that does not fit on a shelf of its own.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        CheckFace(context, Face.Front);
        CheckFace(context, Face.Rear);
    }

    private static void CheckFace(RuleContext context, Face face)
    {
        // Other equipment at the same U positions is reported by another rule and does not break the run.
        var runs = new List<List<MountedItem>>();
        foreach (var set in context.Survey.Occupancy.ByPlace)
        {
            if (set.Face == face && set.SupportStyle == SupportStyle.Runners)
            {
                var run = runs.Find(r => r[^1].Top + 1 == set.Bottom);
                if (run is null)
                {
                    runs.Add(run = []);
                }

                run.Add(set);
            }
        }

        foreach (var run in runs)
        {
            CheckRun(context, run);
        }
    }

    private static void CheckRun(RuleContext context, List<MountedItem> run)
    {
        if (FirstTooHigh(run) is var (first, culprit))
        {
            ReportHeights(context, run, first, culprit);
        }
        else if (!HeightsKnown(run) && run.Count > MostSets(context))
        {
            ReportCount(context, run);
        }
    }

    private static bool HeightsKnown(IReadOnlyList<MountedItem> run) => run.All(m => m.Item!.Body?.HeightMm is not null);

    private static double MostSets(RuleContext context) => Math.Min(context.Limit(RunWarning), context.Limit(RunError));

    // The first item that does not fit, and the lowest item below it from which the stack is too high. The topmost item alone may
    // reach into the free U position above it. A low body leaves no space to the items above it: each is fixed to its own holes.
    private static (int First, int Culprit)? FirstTooHigh(IReadOnlyList<MountedItem> run)
    {
        for (var culprit = 0; culprit < run.Count; culprit++)
        {
            var (tooHigh, excess) = (-1, 0.0);
            for (var i = culprit; i >= 0 && run[i].Item!.Body?.HeightMm is { } height; i--)
            {
                excess += height + run[i].SupportThicknessMm - RackGeometry.ApertureMm(run[i].HeightU);
                var isTopAlone = i == culprit && culprit == run.Count - 1;
                tooHigh = !isTopAlone && Comparison.IsOver(excess, 0) ? i : tooHigh;
            }

            if (tooHigh >= 0)
            {
                return (tooHigh, culprit);
            }
        }

        return null;
    }

    private static void ReportHeights(RuleContext context, List<MountedItem> run, int first, int culprit)
    {
        var part = run.GetRange(first, culprit - first + 1);
        var stack = part.Sum(m => m.Item!.Body!.HeightMm!.Value + m.SupportThicknessMm);
        var room = part.Sum(m => RackGeometry.ApertureMm(m.HeightU));
        var terms = string.Join(" + ", part.Select(m => Invariant($"({m.Item!.Body!.HeightMm:0.###} + {m.SupportThicknessMm:0.###})")));
        context.Report(Draft(
            context,
            run,
            culprit,
            Severity.Error,
            first == culprit
                ? Alone
                : Stack,
            [("sets", part.Count), ("first", run[first].Id), ("item", run[culprit].Id), ("stackMm", stack), ("roomMm", room)],
            Quantities.Millimetres(stack),
            Quantities.Millimetres(room),
            Invariant($"{terms} = {stack:0.###} > {room:0.###}")));
    }

    private static void ReportCount(RuleContext context, List<MountedItem> run)
    {
        var error = context.Limit(RunError);
        var severity = run.Count > error ? Severity.Error : Severity.Warning;
        var limit = severity == Severity.Error ? error : context.Limit(RunWarning);
        var culprit = (int)MostSets(context);
        context.Report(Draft(
            context,
            run,
            culprit,
            severity,
            Count,
            [("sets", run.Count), ("first", run[0].Id), ("last", run[^1].Id), ("limit", limit), ("item", run[culprit].Id)],
            Quantities.Of(run.Count, "sets"),
            Quantities.Of(limit, "sets"),
            Invariant($"{run.Count} > {limit:0.###}")));
    }

    private static FindingDraft Draft(
        RuleContext context,
        List<MountedItem> run,
        int culprit,
        Severity severity,
        MessageWording message,
        IReadOnlyList<(string Name, Scalar Value)> data,
        Quantity actual,
        Quantity limit,
        string calculation)
    {
        var most = MostSets(context);
        return new FindingDraft
        {
            Severity = severity,
            Message = message,
            Data = data,
            Subject = Subjects.Run(run[culprit].Id, context.Survey.Cabinet.Units(run[0].Bottom!.Value, run[^1].Top), run[0].Face),
            Identity = [.. run.Select(m => m.Id).Order(StringComparer.Ordinal)],
            Pointers = [run[culprit].Pointer, .. run.Where((_, i) => i != culprit).Select(m => m.Pointer)],
            Actual = actual,
            Limit = limit,
            UtilisationPercent = 100 * actual.Value / limit.Value,
            Calculation = calculation,
            Candidates = RunnerRemedies.For(
                context.Survey, run, part => FirstTooHigh(part) is null && (HeightsKnown(part) || part.Count <= most)),
        };
    }
}
