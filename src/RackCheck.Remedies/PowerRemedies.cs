using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>
/// Remedies for too few outlets or too little power: move cords, add a PDU, use larger PDUs, add a supply, or remove equipment.
/// </summary>
public static class PowerRemedies
{
    private static readonly WordingChoice MorePdus = new("remedy.pdu-add", "Add [one:a PDU|{count} PDUs] like {pdu} on supply {supply}");
    private static readonly WordingChoice MoreSupplies = new(
        "remedy.supply-add", "Add [one:a supply like {supply} with a PDU like {pdu}|{count} supplies like {supply}, each with a PDU like {pdu}]");
    private static readonly WordedText Distribute = new("remedy.distribute-cords", "Distribute the cords for balanced loads");
    private static readonly MessageWording PlugInto = new("remedy.plug-into", "Plug {item} into {pdu}, group {group}");

    private const int MostMoves = 3;
    private const int MostAdded = 3;
    private const int MostSupplies = 16;
    private const int MostUnits = 32;

    /// <summary>Reduces the load of a supply, and of one of its PDUs if given.</summary>
    /// <param name="unit">The PDU to relieve; null for the supply itself.</param>
    /// <param name="group">The outlet group to relieve; null for the whole PDU.</param>
    /// <param name="moreA">Current that a line carries besides, as that of a charger, A.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Relieve(RackSurvey survey, SupplyNode supply, PduNode? unit, GroupNode? group = null, double moreA = 0)
    {
        Cord[] cords = [.. survey.Power.Cords.Where(c => c.Group is { } g
            && (group is not null ? ReferenceEquals(g, group) : unit is not null ? ReferenceEquals(g.Unit, unit) : ReferenceEquals(g.Unit.Supply, supply)))];

        // Another PDU does not help a supply that is itself fully loaded.
        var isFull = supply.Lines.Any(l => l.NormalA > supply.DesignA || l.WorstA > supply.ContinuousA);
        return MoveCords(survey, cords)
            .Concat(unit is null || isFull ? [] : AddUnits(survey, unit, cords))
            .Concat(Enlarge(survey, supply, cords))
            .Concat(AddSupplies(survey, supply, unit, cords))
            .Concat(TakeOut(survey, [.. ExcessOf(supply, unit, group, cords, moreA)], cords))
            .Concat(TakeOut(survey, ExcessOfAll(survey.Power), survey.Power.Cords));
    }

    private static LoadExcess[] ExcessOfAll(PowerTree tree)
    {
        double Sum(Func<SupplyNode, double> currentA) => tree.Supplies.Sum(s => s.Source.VoltageV * currentA(s) * s.Lines.Count);
        return
        [
            new LoadExcess(tree.Cords, c => c.VoltAmperes, tree.Cords.Sum(c => c.VoltAmperes) - Sum(s => s.DesignA)),
            new LoadExcess(tree.Cords, Worst, tree.Cords.Sum(Worst) - Sum(s => s.ContinuousA)),
        ];
    }

    // The design share applies in normal use; with a supply lost the rating alone.
    private static IEnumerable<LoadExcess> ExcessOf(SupplyNode supply, PduNode? unit, GroupNode? group, Cord[] cords, double moreA)
    {
        var (design, continuous) = group is not null ? (group.DesignA, group.ContinuousA)
            : unit is not null ? (unit.DesignA, unit.ContinuousA) : (supply.DesignA, (double?)supply.ContinuousA);
        var points = group is not null ? [group.Load] : unit?.Lines ?? supply.Lines;
        for (var line = 0; line < points.Count; line++)
        {
            var (point, on) = (points[line], line);
            Cord[] loading = group is not null ? cords : [.. cords.Where(c => c.IsThreePhase || c.Group!.Loads(on))];
            double Share(Cord cord, SupplyNode? lost) => cord.WattsIn(lost) / cord.PowerFactor / (cord.IsThreePhase ? 3 : 1);
            double Over(double currentA, double? limitA) => (currentA - (limitA ?? double.PositiveInfinity)) * supply.Source.VoltageV;
            yield return new LoadExcess(loading, c => Share(c, null), Over(point.NormalA, design));
            yield return new LoadExcess(loading, c => Share(c, point.WorstWithout), Over(point.WorstA + moreA, continuous));
        }
    }

    /// <summary>Moves one or more cords whose outlets the caller gave.</summary>
    public static IEnumerable<RemedyCandidate> MoveCords(RackSurvey survey, IReadOnlyList<Cord> cords)
    {
        var given = cords.Where(c => c.Connection is not null).OrderByDescending(c => c.Watts).ToArray();
        foreach (var cord in given.Take(MostMoves))
        {
            if (Moved(survey, [cord]) is { } candidate)
            {
                yield return candidate;
            }
        }

        if (given.Length > 1 && Moved(survey, given) is { } all)
        {
            yield return all;
        }
    }

    /// <summary>Adds identical PDUs on the same supply.</summary>
    /// <param name="cords">Cords that can then move.</param>
    public static IEnumerable<RemedyCandidate> AddUnits(RackSurvey survey, PduNode unit, IReadOnlyList<Cord> cords)
    {
        var after = Freed(survey.Description, cords);
        for (var count = 1; count <= MostAdded && survey.Power.Units.Length + count <= MostUnits; count++)
        {
            after = AddUnit(after, unit.Source, unit.Supply.Id);
            yield return new RemedyCandidate(
                new(MorePdus.With(count == 1 ? "one" : null), ("count", count), ("pdu", unit.Id), ("supply", unit.Supply.Id)), after, nameof(AddUnits));
        }
    }

    /// <summary>Adds identical supplies, each with a PDU.</summary>
    /// <param name="unit">The PDU to copy; null for the first of the supply.</param>
    /// <param name="cords">Cords that can then move.</param>
    public static IEnumerable<RemedyCandidate> AddSupplies(RackSurvey survey, SupplyNode supply, PduNode? unit, IReadOnlyList<Cord> cords)
    {
        if ((unit ?? (supply.Units.Count > 0 ? supply.Units[0] : null)) is not { } like)
        {
            yield break;
        }

        var after = Freed(survey.Description, cords);
        for (var count = 1; count <= MostAdded && survey.Power.Supplies.Length + count <= MostSupplies
            && survey.Power.Units.Length + count <= MostUnits; count++)
        {
            var id = Names.FreeId(supply.Id, after.Supplies!.Select(s => s.Id));
            after = AddUnit(after.Add(supply.Source with { Id = id }), like.Source, id);
            yield return new RemedyCandidate(
                new(MoreSupplies.With(count == 1 ? "one" : null), ("count", count), ("supply", supply.Id), ("pdu", like.Id)),
                after,
                nameof(AddSupplies));
        }
    }

    /// <summary>Removes equipment, largest first, until the rest is within the limit; the last step is all equipment on these cords.</summary>
    /// <param name="limitVa">Permitted load, VA, with the worst supply lost.</param>
    /// <param name="cords">The cords of the equipment.</param>
    /// <returns>Candidates, a few.</returns>
    public static IEnumerable<RemedyCandidate> TakeOut(RackSurvey survey, double limitVa, IReadOnlyList<Cord> cords) =>
        TakeOut(survey, [new LoadExcess(cords, Worst, LoadsOf(cords, Worst).Values.Sum() - limitVa)], cords);

    /// <summary>
    /// Removes equipment, from the load with the highest excess first and there the largest, until no load is too high; the last step is all equipment.
    /// </summary>
    /// <param name="excesses">The loads that may be too high.</param>
    /// <param name="cords">The cords of the equipment.</param>
    /// <returns>Candidates, a few.</returns>
    public static IEnumerable<RemedyCandidate> TakeOut(RackSurvey survey, IReadOnlyList<LoadExcess> excesses, IReadOnlyList<Cord> cords)
    {
        var order = new List<string>();
        var loads = excesses.Select(e => LoadsOf(e.Cords, e.Va)).ToArray();
        double[] left = [.. excesses.Select(e => e.ExcessVa)];
        while (Enumerable.Range(0, loads.Length).Where(i => left[i] > 0 && loads[i].Count > 0).ToArray() is { Length: > 0 } over)
        {
            var largest = LargestFirst(loads[over.MaxBy(i => left[i])], cords).First();
            order.Add(largest);
            for (var i = 0; i < loads.Length; i++)
            {
                left[i] -= loads[i].Remove(largest, out var load) ? load : 0;
            }
        }

        var least = Math.Max(1, order.Count);
        order.AddRange(LargestFirst(LoadsOf(cords, Worst), cords).Except(order));

        // With uneven line loads more must be removed than the sum requires; the last step is all of it.
        int[] counts = [least, least + 1, (least + order.Count) / 2, order.Count];
        foreach (var count in counts.Where(c => c <= order.Count).Distinct())
        {
            var ids = order.Take(count).Order(StringComparer.Ordinal).ToArray();
            yield return new RemedyCandidate(
                RemedyTitles.ToAnotherRack(ids),
                Freed(survey.Description, cords).WithoutItems(ids),
                nameof(TakeOut));
        }
    }

    private static double Worst(Cord cord) => cord.WorstVoltAmperes;

    private static IEnumerable<string> LargestFirst(Dictionary<string, double> loads, IReadOnlyList<Cord> cords)
    {
        var ups = cords.Where(c => c.Item.Item!.Ups is not null).Select(c => c.Item.Id).ToHashSet(StringComparer.Ordinal);
        return loads.OrderBy(l => ups.Contains(l.Key)).ThenByDescending(l => l.Value).ThenBy(l => l.Key, StringComparer.Ordinal).Select(l => l.Key);
    }

    // A UPS is removed last: its input falls with its load.
    private static Dictionary<string, double> LoadsOf(IEnumerable<Cord> cords, Func<Cord, double> va) =>
        cords.GroupBy(c => c.Item.Id, StringComparer.Ordinal).ToDictionary(
            g => g.Key, g => g.First().Item.Item!.Ups is { Feeds: not null } ? 0 : g.Sum(va), StringComparer.Ordinal);

    /// <summary>A larger supply with larger PDUs, plugs, sockets and cable.</summary>
    /// <param name="cords">Cords fed from it, which can then move.</param>
    /// <returns>Candidates, smallest change first.</returns>
    public static IEnumerable<RemedyCandidate> Enlarge(RackSurvey survey, SupplyNode supply, IReadOnlyList<Cord> cords)
    {
        foreach (var (rated, connector) in OutletRemedies.SupplySizes(survey, supply.Source.VoltageV, supply.Phases == 3))
        {
            if (rated <= supply.Source.RatedA)
            {
                continue;
            }

            var after = Freed(survey.Description, cords).EditSupply(supply.Index, s => Larger(s, rated, connector));
            foreach (var unit in supply.Units)
            {
                after = after.EditUnit(unit.Index, u => Larger(u, supply, rated, connector));
            }

            yield return new RemedyCandidate(
                new(RemedyTitles.SuppliedRating, ("supply", supply.Id), ("ratedA", rated)), after, nameof(Enlarge));
        }
    }

    private static Supply Larger(Supply supply, double ratedA, ConnectorCode connector) => supply with
    {
        RatedA = ratedA,
        Breaker = supply.Breaker is { } breaker ? breaker with { RatedA = ratedA } : null,
        Socket = supply.Socket is null ? null : connector,
        Cable = supply.Cable is { CrossSectionMm2: { } section } cable
            && Cables.All.FirstOrDefault(c => c.CapacityOnA(supply.Phases ?? 1) >= ratedA) is { } thicker
            ? cable with { CrossSectionMm2 = Math.Max(section, thicker.CrossSectionMm2) }
            : supply.Cable,
    };

    // The groups are repeated as often as the new rating is a multiple of the old one, each behind its own breaker.
    private static Pdu Larger(Pdu unit, SupplyNode supply, double ratedA, ConnectorCode connector)
    {
        var times = Math.Max(1, (int)(ratedA / Math.Max(unit.RatedA!.Value, 1)));
        var groups = unit.Groups!.Select(g => g with { BreakerA = g.BreakerA ?? Math.Min(unit.RatedA!.Value, supply.Source.RatedA) }).ToList();
        for (var i = 1; i < times && groups.Count + unit.Groups!.Count <= 24; i++)
        {
            foreach (var group in unit.Groups!)
            {
                groups.Add(group with
                {
                    Id = Names.FreeId(group.Id, groups.Select(g => g.Id)),
                    BreakerA = group.BreakerA ?? Math.Min(unit.RatedA!.Value, supply.Source.RatedA),
                });
            }
        }

        return unit with
        {
            RatedA = ratedA, Plug = unit.Plug is null ? null : connector, Groups = OutletRemedies.Protected(groups, supply.IsNorthAmerica, ratedA),
        };
    }

    private static RackDescription AddUnit(RackDescription description, Pdu like, string supply) => description.Add(like with
    {
        Id = Names.FreeId(like.Id, description.Pdus!.Select(u => u.Id)),
        Supply = supply,
        Mounting = PduMounting.Vertical,
        Position = null,
        Groups = OutletRemedies.Protected(like.Groups!, description.Site?.Region == Region.Na, like.RatedA!.Value),
    });

    private static RackDescription Freed(RackDescription description, IReadOnlyList<Cord> cords) =>
        description.WithoutConnections(connection => cords.Any(c => c.Item.Id == connection.Item && c.Plug == (connection.Plug ?? 0)));

    // The outlet that the service would choose, written as a given connection.
    private static RemedyCandidate? Moved(RackSurvey survey, Cord[] cords)
    {
        var places = RackSurvey.Lazily(Freed(survey.Description, cords)).Power.Cords;
        var connections = survey.Description.Connections!.ToArray();
        foreach (var cord in cords)
        {
            if (Array.Find(places, c => c.Item.Id == cord.Item.Id && c.Plug == cord.Plug) is not { Group: { } group })
            {
                return null;
            }

            connections[cord.Connection!.Value] = connections[cord.Connection.Value] with { Pdu = group.Unit.Id, Group = group.Id };
        }

        var to = cords.Length == 1 ? connections[cords[0].Connection!.Value] : null;
        return new RemedyCandidate(
            to is null ? Distribute : new(PlugInto, ("item", to.Item), ("pdu", to.Pdu), ("group", to.Group)),
            survey.Description with { Connections = connections },
            nameof(MoveCords));
    }
}
