using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>Remedies for a UPS with too low a rating or too short a run time.</summary>
public static class UpsRemedies
{
    private static readonly MessageWording LargerUps = new("remedy.ups-rating", "Replace {item} by a {ratedVa:exact} VA UPS");
    private static readonly MessageWording LongerRun = new(
        "remedy.ups-battery", "Use {item} with a battery that runs {minutes:exact} minutes at {loadW:exact} W");
    private static readonly MessageWording ToMains = new("remedy.ups-to-supply", "Move {pdu} from {item} to supply {supply}");
    private static readonly MessageWording FromMains = new("remedy.feed-from-supply", "Feed {pdu} from supply {supply} instead of {item}");
    private static readonly MessageWording NewUps = new(
        "remedy.ups-add", "Add a {ratedVa:exact} VA UPS for the PDUs, with a run time of {minutes:exact} minutes at {loadW:exact} W");
    private static readonly WordingChoice RunTime = new("remedy.ups-minutes", "Require [minutes:a run time of {minutes:exact} minutes|no UPS run time]");

    private const int MostTries = 3;
    private const double MostMinutes = 10_000;

    // Usual power factor of a UPS rating, common practice, no source.
    private const double WattsPerVa = 0.9;

    // Ratings on the market, VA.
    private static readonly double[] SizesVa = [750, 1000, 1500, 2200, 3000, 5000, 6000, 8000, 10_000, 15_000, 20_000];

    /// <summary>
    /// The load of a UPS during a mains failure, W: redundant equipment then draws its full power through its cords behind a UPS.
    /// </summary>
    /// <returns>Active power, W.</returns>
    public static double OutageW(RackSurvey survey, UpsNode ups) => CordsOn(survey, ups).Sum(cord => cord.IsRedundant
        ? cord.Watts * cord.Siblings / survey.Power.Cords.Count(c => ReferenceEquals(c.Item, cord.Item) && c.Group?.Unit.FedBy is not null)
        : cord.Watts);

    /// <summary>Larger UPSs, smallest first, with the W to VA ratio of the old one.</summary>
    /// <param name="overloading">
    /// Whether those whose charger overloads a supply, as a last resort; else those that the supplies bear. Where the charger's power is not given, a larger
    /// UPS is taken to have a larger one.
    /// </param>
    /// <returns>Candidates, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Enlarge(RackSurvey survey, UpsNode ups, bool overloading = false)
    {
        var (watts, va) = (ups.Source.RatedW, ups.Source.RatedVa);
        var ratio = watts is > 0 && va is > 0 ? Math.Min(1, watts.Value / va.Value) : WattsPerVa;
        var isFree = ups.Source.ChargeW is not null || OverloadsSupply(survey, ups, Batteries.ChargeShare * (watts ?? 0));
        return SizesVa.Where(s =>
            s >= ups.WorstVa && s * ratio >= ups.WorstW && s > (va ?? 0)
            && overloading == (!isFree && OverloadsSupply(survey, ups, Batteries.ChargeShare * Math.Floor((s * ratio) + 1e-9))))
            .Take(MostTries).Select(size => new RemedyCandidate(
            new(LargerUps, ("item", ups.Item.Id), ("ratedVa", size)),
            survey.Description.EditItem(ups.Item.Index, i => i with
            {
                PartNumber = null,
                Ups = i.Ups! with { RatedVa = size, RatedW = Math.Floor((size * ratio) + 1e-9) },
            }),
            nameof(Enlarge))
        {
            IsLastResort = overloading,
        });
    }

    /// <summary>The cords of a UPS that draw from the mains.</summary>
    public static Cord[] MainsCords(RackSurvey survey, UpsNode ups) =>
        [.. survey.Power.CordsOf(ups.Item).Where(c => c.Group is { Unit.IsBehindUps: false })];

    /// <summary>What the charger of a UPS adds to a line of a supply.</summary>
    /// <param name="cords">The cords of the UPS that draw from the mains.</param>
    /// <param name="supply">The supply of at least one of them.</param>
    /// <param name="chargeW">Power of the charger, W.</param>
    /// <returns>Power, W, and current, A.</returns>
    public static (double Watts, double CurrentA) Charging(Cord[] cords, SupplyNode supply, double chargeW)
    {
        var on = cords.Where(c => ReferenceEquals(c.Group!.Unit.Supply, supply)).ToArray();
        var watts = chargeW * on.Length / cords.Length / (on[0].IsThreePhase ? 3 : 1);
        return (watts, watts / on[0].PowerFactor / supply.Source.VoltageV);
    }

    /// <summary>The line of a supply with the highest current while its UPS recharges: another supply may still be lost.</summary>
    /// <param name="supply">The supply.</param>
    public static LoadPoint WorstLine(SupplyNode supply) => supply.Lines.MaxBy(l => l.WorstA)!;

    // Whether a supply that bears the load does not bear the charger as well.
    private static bool OverloadsSupply(RackSurvey survey, UpsNode ups, double chargeW)
    {
        var cords = MainsCords(survey, ups);
        return cords.Select(c => c.Group!.Unit.Supply).Distinct().Any(s =>
            !Comparison.IsOver(WorstLine(s).WorstA, s.ContinuousA)
            && Comparison.IsOver(WorstLine(s).WorstA + Charging(cords, s, chargeW).CurrentA, s.ContinuousA));
    }

    /// <summary>A battery with the required run time.</summary>
    /// <param name="loadW">Its load, W.</param>
    /// <param name="askedMinutes">Required run time, minutes.</param>
    /// <returns>The candidate; none if the discharge data are not sufficient.</returns>
    public static IEnumerable<RemedyCandidate> Battery(RackSurvey survey, UpsNode ups, double loadW, double askedMinutes)
    {
        var at = ups.Source.RunLoadW is > 0 and var given ? given : loadW;
        var minutes = Math.Ceiling(Batteries.RunMinutes(askedMinutes, loadW, at) - 1e-9);
        if (minutes <= MostMinutes)
        {
            yield return new RemedyCandidate(
                new(LongerRun, ("item", ups.Item.Id), ("minutes", minutes), ("loadW", at)),
                survey.Description.EditItem(ups.Item.Index, i => i with { Ups = i.Ups! with { RunMinutes = minutes, RunLoadW = at } }));
        }
    }

    /// <summary>Reduces the load of a UPS: connects a PDU to the mains, else removes equipment.</summary>
    /// <param name="limitVa">Permitted load, VA.</param>
    /// <returns>Candidates, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Relieve(RackSurvey survey, UpsNode ups, double limitVa)
    {
        // The PDU with the least equipment that needs the UPS goes first; the only PDU stays, or nothing would be protected.
        var units = ups.Units.Where(u => u.Lines.Any(l => l.NormalA > 0)).OrderBy(u => u.Lines.Sum(l => l.WorstA)).ThenBy(u => u.Index);
        foreach (var unit in ups.Units.Count > 1 ? units.Take(MostTries) : [])
        {
            yield return new RemedyCandidate(
                new(ToMains, ("pdu", unit.Id), ("item", ups.Item.Id), ("supply", unit.Supply.Id)),
                survey.Description.EditItem(ups.Item.Index, i => i with { Ups = i.Ups! with { Feeds = [.. i.Ups!.Feeds!.Where(f => f != unit.Id)] } }),
                nameof(Relieve));
        }

        foreach (var candidate in PowerRemedies.TakeOut(survey, limitVa, [.. CordsOn(survey, ups)]))
        {
            yield return candidate;
        }

        // Outlets that become free are taken by cords of elsewhere, or by those without one: last, all equipment that fits the outlets of the UPS.
        var sockets = survey.Power.Groups.Where(g => ReferenceEquals(g.Unit.FedBy, ups)).SelectMany(g => g.Source.Outlets).Select(o => o.Socket).ToHashSet();
        if (survey.Power.Cords.Where(c => c.Item.Item!.Ups is null && sockets.Any(s => PlugFit.Fits(c.Code, s))).ToArray() is { Length: > 0 } fitting)
        {
            yield return OutletRemedies.TakeOut(survey, fitting) with { IsLastResort = true };
        }
    }

    /// <summary>One PDU of a UPS fed from its supply instead.</summary>
    /// <returns>Candidates, at most a few; none if the UPS feeds one PDU.</returns>
    public static IEnumerable<RemedyCandidate> MoveOne(RackSurvey survey, UpsNode ups) =>
        (ups.Units.Count > 1 ? ups.Units : []).OrderBy(u => u.Lines.Sum(l => l.WorstA)).ThenBy(u => u.Index).Take(MostTries).Select(unit => new RemedyCandidate(
            new(FromMains, ("pdu", unit.Id), ("supply", unit.Supply.Id), ("item", ups.Item.Id)),
            survey.Description.EditItem(ups.Item.Index, i => i with { Ups = i.Ups! with { Feeds = [.. i.Ups!.Feeds!.Where(f => f != unit.Id)] } }),
            nameof(MoveOne)));

    /// <summary>A UPS for all PDUs, if there is none.</summary>
    /// <param name="askedMinutes">Required run time, minutes.</param>
    /// <returns>The candidate; none if no size is sufficient.</returns>
    public static IEnumerable<RemedyCandidate> Add(RackSurvey survey, double askedMinutes)
    {
        var cords = survey.Power.Cords.Where(c => c.Group is not null).ToArray();
        var (watts, va) = (cords.Sum(c => c.Watts), cords.Sum(c => c.VoltAmperes));
        var size = SizesVa.FirstOrDefault(s => s >= va && s * WattsPerVa >= watts);
        if (size == 0 || watts == 0 || !survey.HasRoomFor(1))
        {
            yield break;
        }

        var ups = new Item
        {
            Id = survey.FreeItemId("ups"),
            Category = ItemCategory.Ups,
            HeightU = 3,
            Ups = new Ups
            {
                RatedVa = size,
                RatedW = size * WattsPerVa,
                RunMinutes = Math.Ceiling(askedMinutes),
                RunLoadW = Math.Ceiling(watts),
                Feeds = [.. survey.Power.Units.Select(u => u.Id)],
            },
        };
        yield return new RemedyCandidate(
            new(NewUps, ("ratedVa", size), ("minutes", Math.Ceiling(askedMinutes)), ("loadW", Math.Ceiling(watts))),
            survey.Description with { Items = [.. survey.Description.Items, ups] });
    }

    /// <summary>A shorter required run time.</summary>
    /// <param name="minutes">The achievable run time.</param>
    public static RemedyCandidate AskFor(RackSurvey survey, double minutes)
    {
        var whole = Math.Floor(minutes + 1e-9);
        return new RemedyCandidate(
            whole > 0 ? new(RunTime.With("minutes"), ("minutes", whole)) : new(RunTime.With()),
            survey.Description with { Site = survey.Description.Site! with { UpsMinutes = whole > 0 ? whole : null } });
    }

    private static IEnumerable<Cord> CordsOn(RackSurvey survey, UpsNode ups) => survey.Power.Cords.Where(c => ReferenceEquals(c.Group?.Unit.FedBy, ups));
}
