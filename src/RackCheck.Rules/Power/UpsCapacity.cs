using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds uninterruptible power supplies that carry too much or run too short, and run time asked for where there is none.</summary>
public sealed class UpsCapacity : Rule
{
    // The example racks: 1000 W on a UPS that runs 15 minutes with 1000 W.
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.ups-capacity",
        Title = "UPS too small",
        Severity = Severity.Error,
        What = "Finds UPSs whose load is over their rating in W or VA, in normal use or with a supply lost, and those that run shorter than is asked for; redundant equipment then hangs on its cords behind a UPS alone. Run time asked for without any UPS is found as well.",
        Why = "An overloaded UPS switches to bypass or off when the mains fails, which is when it is needed; one that runs too short cuts the test off before the drives have stopped.",
        Formula = "sum of P <= W rating; sum of P/pf <= VA rating; t = t1 (P1/P)^1.15 >= t asked for",
        Sources = [Sources.CircuitTheory, Sources.Peukert, Sources.RedundancyPractice],
        Needs = ["/items/*/ups/ratedW", "/items/*/ups/ratedVa", "/items/*/ups/runMinutes", "/items/*/ups/runLoadW", "/items/*/ups/feeds", "/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/pdus", "/connections", "/site/upsMinutes"],
        Remedies = ["Take a larger UPS.", "Take a larger battery.", "Take a PDU off the UPS.", "Take equipment out of the rack.", "Add a UPS.", "Ask for less run time."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        var asked = context.Survey.Description.Site?.UpsMinutes is > 0 and var minutes ? minutes : (double?)null;
        if (tree.Ups.Length == 0)
        {
            if (asked is { } wanted && context.Survey.Description.Items.Any(i => i.Power is { RatedW: not 0 } or { Plugs.Count: > 0 }))
            {
                ReportNone(context, wanted);
            }

            return;
        }

        MissingLoadingData.Report(context, tree, g => g.Unit.FedBy is not null);
        foreach (var ups in tree.Ups)
        {
            Judge(context, ups, asked);
        }
    }

    private static void Judge(RuleContext context, UpsNode ups, double? asked)
    {
        var pointer = Invariant($"/items/{ups.Item.Index}/ups");
        if (ups.Source.Feeds is null)
        {
            context.Lacks($"{pointer}/feeds", "Without the PDUs that a UPS feeds it cannot be said what it carries.");
            return;
        }

        JudgeRating(context, ups, "w", ups.WorstW, ups.Source.RatedW, "W", $"{pointer}/ratedW");
        JudgeRating(context, ups, "va", ups.WorstVa, ups.Source.RatedVa, "VA", $"{pointer}/ratedVa");
        if (asked is { } wanted && UpsCures.OutageW(context.Survey, ups) is > 0 and var load)
        {
            JudgeTime(context, ups, load, wanted, pointer);
        }
    }

    private static void JudgeRating(RuleContext context, UpsNode ups, string kind, double load, double? rating, string unit, string pointer)
    {
        if (rating is not { } limit)
        {
            if (ups.Units.Count > 0)
            {
                context.Lacks(pointer, "Without its ratings in W and in VA it cannot be said whether a UPS carries what hangs on it.");
            }

            return;
        }

        if (!Loading.IsOver(load, limit))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = "{ups} has to carry {load} {measure}; it is rated for {limit} {measure}.",
            Data = [("ups", ups.Item.Id), ("load", load), ("limit", limit), ("measure", unit)],
            Subject = context.Survey.Cabinet.Place(ups.Item),
            Identity = [kind, ups.Item.Id],
            Pointers = [pointer],
            Actual = Quantities.Of(load, unit),
            Limit = Quantities.Of(limit, unit),
            UtilisationPercent = limit > 0 ? 100 * load / limit : null,
            Calculation = Invariant($"{load:0.###} > {limit:0.###}"),
            Cures = UpsCures.Enlarge(context.Survey, ups)
                .Concat(UpsCures.Relieve(context.Survey, ups, Math.Min(ups.Source.RatedW ?? limit, ups.Source.RatedVa ?? limit))),
        });
    }

    private static void JudgeTime(RuleContext context, UpsNode ups, double load, double asked, string pointer)
    {
        const string Message = "Without a discharge figure, minutes at a load, it cannot be said how long a UPS runs.";
        if (ups.Source.RunMinutes is not { } minutes || ups.Source.RunLoadW is not { } at)
        {
            if (ups.Source.RunMinutes is null)
            {
                context.Lacks($"{pointer}/runMinutes", Message);
            }

            if (ups.Source.RunLoadW is null)
            {
                context.Lacks($"{pointer}/runLoadW", Message);
            }

            return;
        }

        var time = Batteries.RunMinutes(minutes, at, load);
        if (!Loading.IsOver(asked, time))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = "{ups} runs {timeMin} minutes with {loadW} W; {askedMin} minutes are asked for.",
            Data = [("ups", ups.Item.Id), ("timeMin", time), ("loadW", load), ("askedMin", asked)],
            Subject = context.Survey.Cabinet.Place(ups.Item),
            Identity = ["time", ups.Item.Id],
            Pointers = [$"{pointer}/runMinutes", $"{pointer}/runLoadW", "/site/upsMinutes"],
            Actual = Quantities.Of(time, "min"),
            Limit = Quantities.Of(asked, "min"),
            Calculation = Invariant($"{minutes:0.###} x ({at:0.###} / {load:0.###})^{Batteries.PeukertExponent} = {time:0.###} < {asked:0.###}"),
            Cures = UpsCures.Battery(context.Survey, ups, load, asked)
                .Concat(UpsCures.Relieve(context.Survey, ups, Batteries.LoadFor(minutes, at, asked)))
                .Append(UpsCures.AskFor(context.Survey, time)),
        });
    }

    private static void ReportNone(RuleContext context, double asked) => context.Report(new FindingDraft
    {
        Message = "{askedMin} minutes of run time are asked for, but the rack has no UPS.",
        Data = [("askedMin", asked)],
        Subject = "UPS",
        Identity = ["time"],
        Pointers = ["/site/upsMinutes"],
        Actual = Quantities.Of(0, "min"),
        Limit = Quantities.Of(asked, "min"),
        Calculation = Invariant($"0 < {asked:0.###}"),
        Cures = UpsCures.Add(context.Survey, asked).Append(UpsCures.AskFor(context.Survey, 0)),
    });
}
