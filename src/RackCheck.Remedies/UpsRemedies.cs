using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>What the trade does about a UPS that is too small or runs too short.</summary>
public static class UpsRemedies
{
    private const int MostTries = 3;
    private const double MostMinutes = 10_000;

    // Usual power factor of a UPS's rating, common practice, no source.
    private const double WattsPerVa = 0.9;

    // Ratings that are sold, VA.
    private static readonly double[] SizesVa = [750, 1000, 1500, 2200, 3000, 5000, 6000, 8000, 10_000, 15_000, 20_000];

    /// <summary>
    /// What a UPS carries while the mains is out, W: redundant equipment draws through its cords behind a UPS alone, and through those all of its power.
    /// </summary>
    /// <param name="survey">The facts.</param>
    /// <param name="ups">The UPS.</param>
    /// <returns>Active power, W.</returns>
    public static double OutageW(RackSurvey survey, UpsNode ups) => CordsOn(survey, ups).Sum(cord => cord.IsRedundant
        ? cord.Watts * cord.Siblings / survey.Power.Cords.Count(c => ReferenceEquals(c.Item, cord.Item) && c.Group?.Unit.FedBy is not null)
        : cord.Watts);

    /// <summary>Larger ones, in growing measure, with W to VA as the old one has them.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="ups">The UPS.</param>
    /// <returns>Cures, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Enlarge(RackSurvey survey, UpsNode ups)
    {
        var (watts, va) = (ups.Source.RatedW, ups.Source.RatedVa);
        var ratio = watts is > 0 && va is > 0 ? Math.Min(1, watts.Value / va.Value) : WattsPerVa;
        return SizesVa.Where(s => s >= ups.WorstVa && s * ratio >= ups.WorstW && s > (va ?? 0)).Take(MostTries).Select(size => new RemedyCandidate(
            Invariant($"Take a UPS of {size:0} VA in place of {ups.Item.Id}"),
            survey.Description.EditItem(ups.Item.Index, i => i with
            {
                PartNumber = null,
                Ups = i.Ups! with { RatedVa = size, RatedW = Math.Floor((size * ratio) + 1e-9) },
            }),
            nameof(Enlarge)));
    }

    /// <summary>A battery that runs as long as is asked for.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="ups">The UPS.</param>
    /// <param name="loadW">What it carries, W.</param>
    /// <param name="askedMinutes">Run time asked for.</param>
    /// <returns>The cure; none where the discharge figure tells nothing.</returns>
    public static IEnumerable<RemedyCandidate> Battery(RackSurvey survey, UpsNode ups, double loadW, double askedMinutes)
    {
        var at = ups.Source.RunLoadW is > 0 and var given ? given : loadW;
        var minutes = Math.Ceiling(Batteries.RunMinutes(askedMinutes, loadW, at) - 1e-9);
        if (minutes <= MostMinutes)
        {
            yield return new RemedyCandidate(
                Invariant($"Take {ups.Item.Id} with a battery that runs {minutes:0} minutes at {at:0.###} W"),
                survey.Description.EditItem(ups.Item.Index, i => i with { Ups = i.Ups! with { RunMinutes = minutes, RunLoadW = at } }));
        }
    }

    /// <summary>Takes load off a UPS: a PDU that goes to the mains, else equipment out of the rack.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="ups">The UPS.</param>
    /// <param name="limitVa">What is to be left at most, VA.</param>
    /// <returns>Cures, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Relieve(RackSurvey survey, UpsNode ups, double limitVa)
    {
        // The unit that takes the least protection away goes first; the only one stays, or nothing would be left to protect.
        var units = ups.Units.Where(u => u.Lines.Any(l => l.NormalA > 0)).OrderBy(u => u.Lines.Sum(l => l.WorstA)).ThenBy(u => u.Index);
        foreach (var unit in ups.Units.Count > 1 ? units.Take(MostTries) : [])
        {
            yield return new RemedyCandidate(
                $"Take {unit.Id} off {ups.Item.Id}: plug it into supply {unit.Supply.Id}",
                survey.Description.EditItem(ups.Item.Index, i => i with { Ups = i.Ups! with { Feeds = [.. i.Ups!.Feeds!.Where(f => f != unit.Id)] } }),
                nameof(Relieve));
        }

        foreach (var candidate in PowerRemedies.TakeOut(survey, limitVa, [.. CordsOn(survey, ups)]))
        {
            yield return candidate;
        }
    }

    /// <summary>A UPS for all PDUs, in place of none.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="askedMinutes">Run time asked for.</param>
    /// <returns>The cure; none where no size would do.</returns>
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
            Invariant($"Add a UPS of {size:0} VA that runs {Math.Ceiling(askedMinutes):0} minutes at {Math.Ceiling(watts):0} W, before the PDUs"),
            survey.Description with { Items = [.. survey.Description.Items, ups] });
    }

    /// <summary>Less run time asked for.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="minutes">What can be had.</param>
    /// <returns>The cure.</returns>
    public static RemedyCandidate AskFor(RackSurvey survey, double minutes)
    {
        var whole = Math.Floor(minutes + 1e-9);
        return new RemedyCandidate(
            whole > 0 ? Invariant($"Ask for {whole:0} minutes of run time") : "Ask for no run time on a UPS",
            survey.Description with { Site = survey.Description.Site! with { UpsMinutes = whole > 0 ? whole : null } });
    }

    private static IEnumerable<Cord> CordsOn(RackSurvey survey, UpsNode ups) => survey.Power.Cords.Where(c => ReferenceEquals(c.Group?.Unit.FedBy, ups));
}
