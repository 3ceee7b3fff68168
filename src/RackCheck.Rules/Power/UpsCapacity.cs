using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds UPSs with an overload or too short a run time, and a required run time without a UPS.</summary>
public sealed class UpsCapacity : Rule
{
    // The example racks have 1000 W on a UPS with a run time of 15 minutes at 1000 W.
    private static readonly MessageWording Load = new("power.ups-capacity.load", "{ups} carries {load} {measure}; its rating is {limit} {measure}.");

    private static readonly WordingChoice Charging = new(
        "power.ups-capacity.charging",
        "While {ups} recharges[lost: with supply {lost} lost], supply {supply} carries {currentA} A; the limit is {limitA} A.");

    private static readonly MessageWording RunTime = new(
        "power.ups-capacity.run-time",
        "{ups} runs for {timeMin} minutes at {loadW} W; the site requires {requiredMin} minutes.");

    private static readonly MessageWording NoUps = new(
        "power.ups-capacity.no-ups", "The site requires {requiredMin} minutes of run time, but the rack has no UPS.");

    private static readonly MissingData Missing = new(
        "power.ups-capacity.missing",
        "A discharge figure (minutes at a load) is missing, so the run time of a UPS is unknown.");

    private static readonly MissingData MissingFeeds = new(
        "power.ups-capacity.missing-feeds",
        "The PDUs fed from a UPS are missing, so its load is unknown.");

    private static readonly MissingData MissingRating = new(
        "power.ups-capacity.missing-rating",
        "The rating of a UPS in W or in VA is missing, so its load cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.ups-capacity",
        Title = "UPS too small",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What =
            "Finds UPSs loaded above their rating in W or VA, in normal use or with a supply lost, and UPSs with a run time below the required one. The run "
            + "time assumes that dual-fed equipment draws its power through the cords on a UPS alone. A required run time "
                + "without a UPS is found as well. A supply "
            + "that is overloaded while the UPS recharges is a warning.",
        Why =
            "An overloaded UPS switches to bypass or off when the mains fails. A UPS with too short a run time cuts the power before the equipment has shut "
            + "down.",
        Formula = "sum of P <= W rating; sum of P/pf <= VA rating; t = t1 (P1/P)^1.15 >= required run time; "
            + "load + losses + chargeW (default 10 % of ratedW) within the supply",
        Sources = [Sources.CircuitTheory, Sources.Peukert, Sources.RedundancyPractice, Sources.UpsPractice],
        Needs =
        [
            "/items/*/ups/ratedW", "/items/*/ups/ratedVa", "/items/*/ups/runMinutes", "/items/*/ups/runLoadW", "/items/*/ups/feeds",
            "/items/*/ups/chargeW", "/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/pdus", "/connections",
            "/site/upsMinutes", "/items/*/heatW",
        ],
        Notes =
        [
            "A UPS draws its load and its own losses (heatW), not its rating. Equipment fed from a UPS does not count as fed once the supply of the UPS "
                + "is lost.",
            "While a UPS recharges its supply is held against its rating as elsewhere: with the other supply of dual-corded equipment lost. A power cut may "
                + "end on one of the supplies first.",
        ],
        SharesWordingsOf = [typeof(MissingLoadingData)],
        Remedies =
        [
            "Fit a larger UPS.", "Fit a larger battery.", "Feed a PDU from the mains instead of the UPS.", "Move equipment to another rack.", "Add a UPS.",
            "Require a shorter run time.",
        ],
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
            context.ReportMissing($"{pointer}/feeds", MissingFeeds);
            return;
        }

        JudgeRating(context, ups, "w", ups.WorstW, ups.Source.RatedW, "W", $"{pointer}/ratedW");
        JudgeRating(context, ups, "va", ups.WorstVa, ups.Source.RatedVa, "VA", $"{pointer}/ratedVa");
        JudgeRecharge(context, ups, pointer);
        if (asked is { } wanted && UpsRemedies.OutageW(context.Survey, ups) is > 0 and var load)
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
                context.ReportMissing(pointer, MissingRating);
            }

            return;
        }

        if (!Comparison.IsOver(load, limit))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = Load,
            Data = [("ups", ups.Item.Id), ("load", load), ("limit", limit), ("measure", unit)],
            Subject = context.Survey.Cabinet.Place(ups.Item),
            Identity = [kind, ups.Item.Id],
            Pointers = [pointer],
            Actual = Quantities.Of(load, unit),
            Limit = Quantities.Of(limit, unit),
            UtilisationPercent = limit > 0 ? 100 * load / limit : null,
            Calculation = Invariant($"{load:0.###} > {limit:0.###}"),
            Candidates = UpsRemedies.Enlarge(context.Survey, ups)
                .Concat(UpsRemedies.Relieve(context.Survey, ups, Math.Min(ups.Source.RatedW ?? limit, ups.Source.RatedVa ?? limit)))
                .Concat(UpsRemedies.Enlarge(context.Survey, ups, overloading: true)),
        });
    }

    // The charger draws its power through the cords of the UPS, in addition to load and losses.
    private static void JudgeRecharge(RuleContext context, UpsNode ups, string pointer)
    {
        var cords = UpsRemedies.MainsCords(context.Survey, ups);
        if ((ups.Source.ChargeW ?? (Batteries.ChargeShare * ups.Source.RatedW)) is not { } charge || cords.Length == 0)
        {
            return;
        }

        foreach (var supply in cords.Select(c => c.Group!.Unit.Supply).Distinct())
        {
            var powerFactor = cords.First(c => ReferenceEquals(c.Group!.Unit.Supply, supply)).PowerFactor;
            var line = UpsRemedies.WorstLine(supply);
            var load = line.WorstA;
            var (watts, more) = UpsRemedies.Charging(cords, supply, charge);
            if (Comparison.IsOver(load, supply.ContinuousA) || !Comparison.IsOver(load + more, supply.ContinuousA))
            {
                continue;
            }

            context.Report(new FindingDraft
            {
                Message = Charging.With(line.WorstWithout is null ? "" : "lost"),
                Data =
                [
                    ("ups", ups.Item.Id), ("supply", supply.Id), ("currentA", load + more), ("limitA", supply.ContinuousA),
                    .. line.WorstWithout is { } lost ? [("lost", (Scalar)lost.Id)] : Array.Empty<(string, Scalar)>(),
                ],
                Subject = context.Survey.Cabinet.Place(ups.Item),
                Identity = ["recharge", ups.Item.Id, supply.Id],
                Pointers = [$"{pointer}/chargeW", Pointers.Supply[supply.Index]],
                Severity = Severity.Warning,
                Actual = Quantities.Of(load + more, "A"),
                Limit = Quantities.Of(supply.ContinuousA, "A"),
                UtilisationPercent = 100 * (load + more) / supply.ContinuousA,
                Calculation =
                    Invariant($"{load:0.######} + {watts:0.######} / {powerFactor:0.###} / {supply.Source.VoltageV:0.###} = {load + more:0.###} > ")
                    + Invariant($"{supply.ContinuousA:0.###}"),
                Candidates = PowerRemedies.Relieve(context.Survey, supply, null, moreA: more),
            });
        }
    }

    private static void JudgeTime(RuleContext context, UpsNode ups, double load, double asked, string pointer)
    {
        if (ups.Source.RunMinutes is not { } minutes || ups.Source.RunLoadW is not { } at)
        {
            if (ups.Source.RunMinutes is null)
            {
                context.ReportMissing($"{pointer}/runMinutes", Missing);
            }

            if (ups.Source.RunLoadW is null)
            {
                context.ReportMissing($"{pointer}/runLoadW", Missing);
            }

            return;
        }

        var time = Batteries.RunMinutes(minutes, at, load);
        if (!Comparison.IsOver(asked, time))
        {
            return;
        }

        context.Report(new FindingDraft
        {
            Message = RunTime,
            Data = [("ups", ups.Item.Id), ("timeMin", time), ("loadW", load), ("requiredMin", asked)],
            Subject = context.Survey.Cabinet.Place(ups.Item),
            Identity = ["time", ups.Item.Id],
            Pointers = [$"{pointer}/runMinutes", $"{pointer}/runLoadW", "/site/upsMinutes"],
            Actual = Quantities.Of(time, "min"),
            Limit = Quantities.Of(asked, "min"),
            Calculation = Invariant($"{minutes:0.###} x ({at:0.###} / {load:0.###})^{Batteries.PeukertExponent} = {time:0.###} < {asked:0.###}"),
            Candidates = UpsRemedies.Battery(context.Survey, ups, load, asked)
                .Concat(UpsRemedies.Relieve(context.Survey, ups, Batteries.LoadFor(minutes, at, asked)))
                .Append(UpsRemedies.AskFor(context.Survey, time)),
        });
    }

    private static void ReportNone(RuleContext context, double asked) => context.Report(new FindingDraft
    {
        Message = NoUps,
        Data = [("requiredMin", asked)],
        Subject = Subjects.Ups,
        Identity = ["time"],
        Pointers = ["/site/upsMinutes"],
        Actual = Quantities.Of(0, "min"),
        Limit = Quantities.Of(asked, "min"),
        Calculation = Invariant($"0 < {asked:0.###}"),
        Candidates = UpsRemedies.Add(context.Survey, asked).Append(UpsRemedies.AskFor(context.Survey, 0)),
    });
}
