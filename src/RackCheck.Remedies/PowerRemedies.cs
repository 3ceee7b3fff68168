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
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Relieve(RackSurvey survey, SupplyNode supply, PduNode? unit, GroupNode? group = null)
    {
        Cord[] cords = [.. survey.Power.Cords.Where(c => c.Group is { } g
            && (group is not null ? ReferenceEquals(g, group) : unit is not null ? ReferenceEquals(g.Unit, unit) : ReferenceEquals(g.Unit.Supply, supply)))];

        // Another PDU does not help a supply that is itself fully loaded.
        var isFull = supply.Lines.Any(l => l.NormalA > supply.DesignA || l.WorstA > supply.ContinuousA);
        var share = unit is null ? survey.Limits.SupplyDesignShare : survey.Limits.PduDesignShare;
        return MoveCords(survey, cords)
            .Concat(unit is null || isFull ? [] : AddUnits(survey, unit, cords))
            .Concat(Enlarge(survey, supply, cords))
            .Concat(AddSupplies(survey, supply, unit, cords))
            .Concat(
                TakeOut(survey, share * supply.Source.VoltageV * (group?.ContinuousA ?? (unit?.ContinuousA ?? supply.ContinuousA) * supply.Lines.Count), cords))
            .Concat(
                TakeOut(
                    survey, survey.Limits.SupplyDesignShare * survey.Power.Supplies.Sum(s => s.Source.VoltageV * s.ContinuousA * s.Lines.Count),
                    survey.Power.Cords));
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
    /// <param name="limitVa">Permitted load, VA.</param>
    /// <param name="cords">The cords of the equipment.</param>
    /// <returns>Candidates, at most three.</returns>
    public static IEnumerable<RemedyCandidate> TakeOut(RackSurvey survey, double limitVa, IReadOnlyList<Cord> cords)
    {
        // A UPS is removed last: its input falls with its load.
        var items = cords.GroupBy(c => c.Item.Id, StringComparer.Ordinal)
            .Select(g => (Id: g.Key, Ups: g.First().Item.Item!.Ups, Va: g.Sum(c => c.WorstVoltAmperes)))
            .Select(i => i with { Va = i.Ups is { Feeds: not null } ? 0 : i.Va })
            .OrderBy(i => i.Ups is not null).ThenByDescending(i => i.Va).ThenBy(i => i.Id, StringComparer.Ordinal).ToArray();
        var load = items.Sum(i => i.Va);
        var least = 0;
        while (least < items.Length && (load > limitVa || least == 0))
        {
            load -= items[least++].Va;
        }

        // With uneven line loads more must be removed than the sum requires; the last step is all of it.
        foreach (var count in new[] { least, (least + items.Length) / 2, items.Length }.Where(c => c > 0).Distinct())
        {
            var ids = items.Take(count).Select(i => i.Id).Order(StringComparer.Ordinal).ToArray();
            yield return new RemedyCandidate(
                RemedyTitles.ToAnotherRack(ids),
                Freed(survey.Description, cords).WithoutItems(ids),
                nameof(TakeOut));
        }
    }

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
