using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>Remedies for the breaker, cable, lines and inrush current of a supply.</summary>
public static class SupplyRemedies
{
    private static readonly MessageWording Cable = new("remedy.cable", "Use a {sectionMm2:exact} mm2 cable for supply {supply}");
    private static readonly MessageWording BreakerRating = new("remedy.breaker-rating", "Use a {ratedA:exact} A breaker for supply {supply}");
    private static readonly MessageWording PduRating = new("remedy.pdu-rating", "Use {pdu} rated for {ratedA:exact} A");
    private static readonly MessageWording OtherFeed = new("remedy.pdu-supply", "Feed {pdu} from supply {supply}");
    private static readonly MessageWording GroupBreakers = new("remedy.group-breakers", "Use {pdu} with a {ratedA:exact} A breaker for each outlet group");
    private static readonly MessageWording MoreGroups = new(
        "remedy.more-groups", "Use {pdu} with {count} outlet groups, each with a {ratedA:exact} A breaker");
    private static readonly MessageWording Sequenced = new("remedy.sequenced-outlets", "Take {pdus} with sequenced outlets");
    private static readonly MessageWording ToLine = new("remedy.group-line", "Move {pdu}, group {group}, to {line}");
    private static readonly MessageWording SwapLines = new("remedy.swap-lines", "Swap the lines of {pdu}, group {group}, and {otherPdu}, group {otherGroup}");
    private static readonly MessageWording SpreadLines = new("remedy.spread-lines", "Spread the outlet groups of supply {supply} over its lines");

    private const int MostTries = 3;
    private const int MostGroups = 24;

    // Cross-sectional areas beyond the cable table that are also on the market, mm2.
    private static readonly double[] ThickMm2 = [25, 35, 50, 70, 95];

    // Breaker ratings on the market, A.
    private static readonly double[] BreakersA = [6, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125];
    // PDU ratings on the market, A: in North America 80 % of the breaker, or the breaker.
    private static readonly double[] PdusA = [10, 13, 16, 20, 32, 63, 125];
    private static readonly double[] NorthAmericanPdusA = [12, 15, 16, 20, 24, 30, 40, 48, 50, 60];
    private static readonly double[] NorthAmericanBreakersA = [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100];

    /// <summary>The cords that load a supply: those on its PDUs, without those behind a UPS, whose own cord counts.</summary>
    /// <returns>The cords, by item id and plug.</returns>
    public static IEnumerable<Cord> CordsOn(RackSurvey survey, SupplyNode supply) =>
        survey.Power.Cords.Where(c => c.Group is { Unit: { IsBehindUps: false } unit } && ReferenceEquals(unit.Supply, supply));

    /// <summary>Cables with a larger cross-sectional area, smallest first.</summary>
    /// <param name="does">Whether an area is sufficient.</param>
    /// <returns>Candidates, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Thicken(RackSurvey survey, SupplyNode supply, Func<double, bool> does) =>
        Cables.All.Select(c => c.CrossSectionMm2).Concat(ThickMm2)
            .Where(s => s > (supply.Source.Cable?.CrossSectionMm2 ?? 0) && does(s)).Take(MostTries)
            .Select(s => WithEarth(survey, supply, s, new RemedyCandidate(
                new(Cable, ("sectionMm2", s), ("supply", supply.Id)),
                survey.Description.EditSupply(supply.Index, x => x with { Cable = (x.Cable ?? new SupplyCable()) with { CrossSectionMm2 = s } }),
                nameof(Thicken))));

    // The main earth conductor follows the line conductors.
    private static RemedyCandidate WithEarth(RackSurvey survey, SupplyNode supply, double lineMm2, RemedyCandidate candidate)
    {
        var least = EarthConductors.LeastByLineMm2(lineMm2);
        if (supply.IsNorthAmerica || survey.Earth.MainMm2 is not { } main || main >= least || EarthConductors.NextSectionMm2(least) is not { } section)
        {
            return candidate;
        }

        return candidate with
        {
            Title = candidate.Title.Then(new(RemedyTitles.MainConductor, ("sectionMm2", section))),
            After = candidate.After.EditEarthing(e => e with { MainConductorMm2 = section }),
        };
    }

    /// <summary>A breaker of another rating.</summary>
    /// <param name="ratedA">The rating, A.</param>
    public static RemedyCandidate Fuse(RackSurvey survey, SupplyNode supply, double ratedA) => new(
        new(BreakerRating, ("ratedA", ratedA), ("supply", supply.Id)), Fused(survey.Description, supply, ratedA));

    /// <summary>Another supply for one of several PDUs of a supply, the last PDU first.</summary>
    /// <param name="only">The supply of all of them.</param>
    /// <returns>Candidates; none where it has one PDU, or no other supply has its socket, phases and voltage.</returns>
    public static IEnumerable<RemedyCandidate> FeedFromAnother(RackSurvey survey, SupplyNode only)
    {
        PduNode[] units = [.. only.Units.Where(u => !u.IsBehindUps).OrderByDescending(u => u.Index)];
        return units.SkipLast(1).SelectMany(unit => survey.Power.Supplies.Where(s => Suits(s, unit)).Select(supply => new RemedyCandidate(
            new(OtherFeed, ("pdu", unit.Id), ("supply", supply.Id)), survey.Description.EditUnit(unit.Index, u => u with { Supply = supply.Id }),
            nameof(FeedFromAnother))));

        bool Suits(SupplyNode supply, PduNode unit) => !ReferenceEquals(supply, only) && supply.Phases == only.Phases
            && supply.Source.VoltageV == only.Source.VoltageV
            && (supply.Source.Socket is not { } socket || unit.Source.Plug is not { } plug || PlugFit.Fits(plug, socket));
    }

    /// <summary>The largest PDU on the market up to a rating.</summary>
    /// <param name="atMostA">The rating, A.</param>
    /// <returns>The candidate; none below the smallest PDU.</returns>
    public static IEnumerable<RemedyCandidate> Resize(RackSurvey survey, PduNode unit, double atMostA)
    {
        var sizes = unit.Supply.IsNorthAmerica ? NorthAmericanPdusA : PdusA;
        return sizes.Where(s => !Comparison.IsOver(s, atMostA)).TakeLast(1).Select(s => new RemedyCandidate(
            new(PduRating, ("pdu", unit.Id), ("ratedA", s)), survey.Description.EditUnit(unit.Index, u => u with { RatedA = s })));
    }

    /// <summary>The smallest PDU on the market of at least a rating.</summary>
    /// <param name="atLeastA">The rating, A.</param>
    /// <returns>The candidate; none above the largest PDU.</returns>
    public static IEnumerable<RemedyCandidate> Strengthen(RackSurvey survey, PduNode unit, double atLeastA) =>
        (unit.Supply.IsNorthAmerica ? NorthAmericanPdusA : PdusA).Where(s => !Comparison.IsOver(atLeastA, s)).Take(1).Select(s => new RemedyCandidate(
            new(PduRating, ("pdu", unit.Id), ("ratedA", s)), survey.Description.EditUnit(unit.Index, u => u with { RatedA = s })));

    /// <summary>Breakers of another rating for outlet groups of a PDU.</summary>
    /// <param name="ratedA">The rating, A.</param>
    public static RemedyCandidate FuseGroups(RackSurvey survey, PduNode unit, IEnumerable<GroupNode> groups, double ratedA) => new(
        new(GroupBreakers, ("pdu", unit.Id), ("ratedA", ratedA)),
        groups.Aggregate(survey.Description, (after, group) => after.EditGroup(unit.Index, group.Index, g => g with { BreakerA = ratedA })),
        nameof(FuseGroups));

    /// <summary>Outlet groups of a PDU divided into groups with breakers, as many as its rating holds, each with its share of the outlets.</summary>
    /// <param name="ratedA">Rating of the breakers, A.</param>
    /// <returns>The candidate; none where a PDU cannot have so many groups, or its rating holds one breaker.</returns>
    public static IEnumerable<RemedyCandidate> DivideGroups(RackSurvey survey, PduNode unit, IReadOnlyCollection<GroupNode> groups, double ratedA)
    {
        var parts = (int)Math.Min(MostGroups, unit.RatedA / unit.Groups.Count / ratedA * unit.Lines.Count);
        if (parts < 2)
        {
            yield break;
        }

        var divided = new List<OutletGroup>();
        foreach (var group in unit.Groups)
        {
            if (!groups.Contains(group))
            {
                divided.Add(group.Source);
                continue;
            }

            for (var part = 0; part < parts; part++)
            {
                OutletSet[] own = [.. group.Source.Outlets.Select(o => o with { Count = (o.Count + parts - 1 - part) / parts }).Where(o => o.Count > 0)];
                var taken = unit.Groups.Select(g => g.Id).Concat(divided.Select(g => g.Id));
                if (own.Length > 0)
                {
                    divided.Add(group.Source with { Id = part == 0 ? group.Id : Names.FreeId(group.Id, taken), BreakerA = ratedA, Outlets = own });
                }
            }
        }

        if (divided.Count <= MostGroups)
        {
            yield return new RemedyCandidate(
                new(MoreGroups, ("pdu", unit.Id), ("count", divided.Count), ("ratedA", ratedA)),
                survey.Description.WithoutConnections(c => c.Pdu == unit.Id && groups.Any(g => g.Id == c.Group))
                    .EditUnit(unit.Index, u => u with { Groups = divided }),
                nameof(FuseGroups));
        }
    }

    /// <summary>A breaker and PDUs of a lower rating, and removal of equipment that they cannot carry.</summary>
    /// <param name="ratedA">The rating, A.</param>
    /// <returns>Candidates, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Downsize(RackSurvey survey, SupplyNode supply, double ratedA)
    {
        var after = Fused(survey.Description, supply, ratedA);
        foreach (var unit in supply.Units.Where(u => u.FedBy is null && u.RatedA != ratedA))
        {
            after = after.EditUnit(unit.Index, u => u with { RatedA = ratedA });
        }

        var title = new WordedText(RemedyTitles.SuppliedRating, ("supply", supply.Id), ("ratedA", ratedA));
        yield return new RemedyCandidate(title, after, nameof(Downsize));

        var smaller = RackSurvey.Lazily(after);
        var node = smaller.Power.Supplies[supply.Index];
        foreach (var candidate in PowerRemedies.TakeOut(
            smaller, survey.Limits.SupplyDesignShare * node.Source.VoltageV * node.ContinuousA * node.Lines.Count,
            [.. smaller.Power.Cords.Where(c => c.Group is { } g && ReferenceEquals(g.Unit.Supply, node))]))
        {
            yield return new RemedyCandidate(title.Then(candidate.Title), candidate.After, nameof(Downsize));
        }
    }

    /// <summary>The largest breaker on the market up to a current.</summary>
    /// <param name="supply">The supply, whose region decides what is on the market.</param>
    /// <param name="currentA">The current, A.</param>
    /// <returns>Its rating, A; null if there is none.</returns>
    public static double? BreakerUpTo(SupplyNode supply, double currentA) =>
        (supply.IsNorthAmerica ? NorthAmericanBreakersA : BreakersA).LastOrDefault(b => !Comparison.IsOver(b, currentA)) is > 0 and var rated ? rated : null;

    /// <summary>Breakers with slower curves, fastest first.</summary>
    public static IEnumerable<RemedyCandidate> SlowBreaker(RackSurvey survey, SupplyNode supply) =>
        Enum.GetValues<BreakerCurve>().Where(c => c > supply.Source.Breaker?.Curve).Select(c => new RemedyCandidate(
            new(RemedyTitles.Curve.With("checked"), ("curve", NamedEnumConverter<BreakerCurve>.Name(c)), ("supply", supply.Id)),
            survey.Description.EditSupply(supply.Index, s => s with { Breaker = s.Breaker! with { Curve = c } }),
            nameof(SlowBreaker)));

    /// <summary>PDUs with sequenced outlets: one PDU, then as many as needed. Outlets that are given as not switched stay so.</summary>
    public static IEnumerable<RemedyCandidate> Sequence(RackSurvey survey, SupplyNode supply)
    {
        var units = CordsOn(survey, supply).Where(c => !c.Switched && c.Group!.Unit.Source.RemoteSwitched != true)
            .GroupBy(c => c.Group!.Unit).OrderByDescending(g => g.Sum(c => c.InrushA ?? 0)).Select(g => g.Key).ToArray();
        var after = survey.Description;
        for (var count = 1; count <= units.Length; count++)
        {
            after = after.EditUnit(units[count - 1].Index, u => u with { RemoteSwitched = true });
            if (count <= MostTries || count == units.Length)
            {
                var ids = units.Take(count).Select(u => u.Id).Order(StringComparer.Ordinal);
                yield return new RemedyCandidate(new(Sequenced, ("pdus", Names.Ids(ids))), after, nameof(Sequence));
            }
        }
    }

    /// <summary>Other lines for outlet groups of a three-phase supply: the group that balances best, then exchanges of two groups.</summary>
    /// <returns>Candidates, at most a few.</returns>
    public static IEnumerable<RemedyCandidate> Rephase(RackSurvey survey, SupplyNode supply)
    {
        var most = IndexOf(supply, (x, y) => x > y);
        var least = IndexOf(supply, (x, y) => x < y);
        var half = (supply.Lines[most].NormalA - supply.Lines[least].NormalA) / 2;
        var groups = survey.Power.Groups.Where(g => ReferenceEquals(g.Unit.Supply, supply) && !g.Unit.IsBehindUps).ToArray();
        var loaded = groups.Where(g => g.Line == most && g.Load.NormalA > 0).OrderBy(g => Math.Abs(g.Load.NormalA - half)).ToArray();
        foreach (var group in loaded.Take(MostTries))
        {
            yield return new RemedyCandidate(
                new(ToLine, ("pdu", group.Unit.Id), ("group", group.Id), ("line", NamedEnumConverter<Phase>.Name(PhaseOf(supply, least)))),
                OnLine(survey.Description, group, least), nameof(Rephase));
        }

        var swaps = from one in loaded
                    from other in groups.Where(g => g.Line == least)
                    orderby Math.Abs(one.Load.NormalA - other.Load.NormalA - half)
                    select (One: one, Other: other);
        foreach (var (one, other) in swaps.Take(MostTries))
        {
            yield return new RemedyCandidate(
                new(SwapLines, ("pdu", one.Unit.Id), ("group", one.Id), ("otherPdu", other.Unit.Id), ("otherGroup", other.Id)),
                OnLine(OnLine(survey.Description, one, least), other, most),
                nameof(Rephase));
        }
    }

    /// <summary>All outlet groups of a supply spread over its three lines again, largest first, each on the line with the lowest load.</summary>
    public static RemedyCandidate Spread(RackSurvey survey, SupplyNode supply)
    {
        var (load, count) = (new double[3], new int[3]);
        var after = survey.Description;
        var groups = survey.Power.Groups.Where(g => ReferenceEquals(g.Unit.Supply, supply) && !g.Unit.IsBehindUps);
        foreach (var group in groups.OrderByDescending(g => g.Load.NormalA).ThenBy(g => g.Unit.Id, StringComparer.Ordinal)
            .ThenBy(g => g.Id, StringComparer.Ordinal))
        {
            var line = Enumerable.Range(0, 3).OrderBy(l => load[l]).ThenBy(l => count[l]).First();
            load[line] += group.Load.NormalA;
            count[line]++;
            after = OnLine(after, group, line);
        }

        return new RemedyCandidate(new(SpreadLines, ("supply", supply.Id)), after, nameof(Rephase));
    }

    private static Phase PhaseOf(SupplyNode supply, int line) => (supply.IsLineToLine ? Phase.L1L2 : Phase.L1) + line;

    private static RackDescription Fused(RackDescription description, SupplyNode supply, double ratedA) =>
        description.EditSupply(supply.Index, s => s with { Breaker = (s.Breaker ?? new Breaker()) with { RatedA = ratedA } });

    private static RackDescription OnLine(RackDescription description, GroupNode group, int line) =>
        description.EditGroup(group.Unit.Index, group.Index, g => g with { Phase = PhaseOf(group.Unit.Supply, line) });

    private static int IndexOf(SupplyNode supply, Func<double, double, bool> beats)
    {
        var best = 0;
        for (var line = 1; line < supply.Lines.Count; line++)
        {
            best = beats(supply.Lines[line].NormalA, supply.Lines[best].NormalA) ? line : best;
        }

        return best;
    }
}
