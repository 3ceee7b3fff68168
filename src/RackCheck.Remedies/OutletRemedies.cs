using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Remedies for cords without an outlet: PDUs with more outlets, another PDU, another supply, or equipment in another rack.</summary>
public static class OutletRemedies
{
    private static readonly WordingChoice GroupOutlets = new(
        "remedy.group-outlets", "Use {pdu} with [one:one more {socket} outlet|{count} more {socket} outlets] in group {group}");
    private static readonly MessageWording SpreadOutlets = new(
        "remedy.spread-outlets", "Use PDUs with {count} more {socket} outlets, spread over their groups");
    private static readonly WordingChoice NewPdu = new(
        "remedy.pdu-new", "Add a PDU with [one:one {socket} outlet|{count} {socket} outlets] on supply {supply}");
    private static readonly WordingChoice NewSupplyPdu = new(
        "remedy.supply-new",
        "Add [single:a {ratedA:exact} A supply with|{supplies} supplies of {ratedA:exact} A, each with] a PDU of "
        + "[one:one {socket} outlet|{count} {socket} outlets]");

    private const int MostGroups = 3;
    private const int MostSupplies = 16;
    private const int MostUnits = 32;
    private const int MostGroupsOfAUnit = 24;
    private const int MostSets = 24;
    private const int MostOfASet = 100;

    // A supply of its own for these cords, by regional practice.
    private static readonly (double RatedA, double VoltageV, ConnectorCode Single, ConnectorCode Three)[] Europe =
    [
        (16, 230, ConnectorCode.Iec60309A16P1, ConnectorCode.Iec60309A16P3),
        (32, 230, ConnectorCode.Iec60309A32P1, ConnectorCode.Iec60309A32P3),
        (63, 230, ConnectorCode.Iec60309A63P1, ConnectorCode.Iec60309A63P3),
    ];

    private static readonly (double RatedA, double VoltageV, ConnectorCode Single, ConnectorCode Three)[] NorthAmerica =
    [
        (20, 208, ConnectorCode.NemaL620, ConnectorCode.Iec60309A32P3),
        (30, 208, ConnectorCode.NemaL630, ConnectorCode.Iec60309A32P3),
        (60, 208, ConnectorCode.Iec60309A63P1, ConnectorCode.Iec60309A63P3),
    ];

    /// <summary>Finds outlets for cords with one type of plug.</summary>
    /// <param name="cords">The cords, at least one.</param>
    /// <param name="from">Supplies that are permitted; null for any. Added supplies are always permitted.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Provide(RackSurvey survey, IReadOnlyList<Cord> cords, Func<SupplyNode, bool>? from = null)
    {
        var socket = PlugFit.SocketFor(cords[0].Code);
        return PlugFit.Fits(cords[0].Code, socket)
            ? MoreOutlets(survey, cords, from).Concat(LikeUnits(survey, cords, from)).Concat(NewUnits(survey, cords, from))
                .Concat(LikeSupplies(survey, cords)).Concat(NewSupplies(survey, cords))
            : [];
    }

    /// <summary>Uses PDUs with more outlets, in one group or spread over the groups with such sockets.</summary>
    /// <param name="cords">The cords that need outlets, all with one type of plug, at least one.</param>
    /// <param name="from">Supplies that are permitted; null for any.</param>
    public static IEnumerable<RemedyCandidate> MoreOutlets(RackSurvey survey, IReadOnlyList<Cord> cords, Func<SupplyNode, bool>? from = null)
    {
        var socket = PlugFit.SocketFor(cords[0].Code);
        var groups = survey.Power.Groups
            .Where(g =>
                (from is null || from(g.Unit.Supply)) && cords.All(c => Suits(c, g)) && CanHave(g, socket, survey.Power.IsNorthAmerica)
                    && HasRoom(g.Unit.Supply, cords))
            .OrderBy(g => cords.Any(c => ReferenceEquals(c.Group, g)) ? 0 : 1)
            .ThenBy(g => HasSocket(g, cords[0].Code) ? 0 : 1)
            .ThenBy(g => g.Load.WorstA / (g.BreakerA ?? g.Unit.RatedA))
            .ThenBy(g => g.FlatIndex)
            .ToArray();
        foreach (var group in groups.Take(MostGroups))
        {
            if (HasRoom(group, cords) && AddOutlets(Freed(survey.Description, cords, group), group, socket, cords.Count) is { } after)
            {
                yield return new RemedyCandidate(
                    new(
                        GroupOutlets.With(One(cords.Count)), ("pdu", group.Unit.Id), ("count", cords.Count), ("socket", Name(socket)), ("group", group.Id)),
                    after, nameof(MoreOutlets));
            }
        }

        if (cords.Count > 1 && groups.Length > 1 && Spread(survey, cords, groups, socket) is { } spread)
        {
            yield return new RemedyCandidate(
                new(SpreadOutlets, ("count", cords.Count), ("socket", Name(socket))), spread, nameof(MoreOutlets));
        }
    }

    /// <summary>Removes the items of cords from the rack.</summary>
    public static RemedyCandidate TakeOut(RackSurvey survey, IEnumerable<Cord> cords)
    {
        string[] ids = [.. cords.Select(c => c.Item.Id).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return new RemedyCandidate(RemedyTitles.ToAnotherRack(ids), survey.Description.WithoutItems(ids), nameof(TakeOut));
    }

    /// <summary>A first change, followed by outlets for the cords that then have none.</summary>
    /// <param name="title">Title of the change.</param>
    /// <param name="changed">The description after the change.</param>
    /// <param name="which">The cords concerned, all with one type of plug.</param>
    /// <param name="kind">Kind of the candidates.</param>
    /// <returns>The change alone if every cord finds an outlet, else the change with more outlets.</returns>
    public static IEnumerable<RemedyCandidate> WithOutlets(WordedText title, RackDescription changed, Func<Cord, bool> which, string kind)
    {
        var after = RackSurvey.Lazily(changed);
        Cord[] left = [.. after.Power.Cords.Where(c => c.Group is null && which(c))];
        return left.Length == 0
            ? [new RemedyCandidate(title, changed, kind)]
            : Provide(after, left).Take(MostGroups + 2).Select(candidate => Joined(title, candidate, kind));
    }

    /// <summary>Number of free outlets that fit a plug and suit an item.</summary>
    public static int FreeOutlets(RackSurvey survey, Cord cord, ConnectorCode plug) => survey.Power.Groups
        .Where(g => Suits(cord, g))
        .Sum(g => g.Source.Outlets.Where(o => PlugFit.Fits(plug, o.Socket)).Sum(o => o.Count)
            - survey.Power.Cords.Count(c => ReferenceEquals(c.Group, g) && c.Socket is { } socket && PlugFit.Fits(plug, socket)));

    /// <summary>Adds outlets for a plug to the groups of cords.</summary>
    /// <param name="description">The description to change; its PDUs are those of the survey.</param>
    /// <param name="count">Number of outlets for each.</param>
    /// <returns>The description; null if a PDU cannot have them.</returns>
    public static RackDescription? InPlace(RackDescription description, RackSurvey survey, IEnumerable<Cord> cords, ConnectorCode plug, int count)
    {
        var socket = PlugFit.SocketFor(plug);
        RackDescription? after = description;
        foreach (var group in cords.Select(c => c.Group))
        {
            after = after is not null && group is not null && CanHave(group, socket, survey.Power.IsNorthAmerica)
                ? AddOutlets(after, group, socket, count)
                : null;
        }

        return after;
    }

    /// <summary>One change followed by another.</summary>
    public static RemedyCandidate Joined(WordedText title, RemedyCandidate then, string? kind) => then with { Title = title.Then(then.Title), Kind = kind };

    /// <summary>Removes the connections of cords; a connection to the group in which a cord stays is kept.</summary>
    public static RackDescription Freed(RackDescription description, IReadOnlyList<Cord> cords, GroupNode? stays = null) =>
        description.WithoutConnections(connection => cords.Any(c => c.Item.Id == connection.Item && c.Plug == (connection.Plug ?? 0)
            && (stays is null || !ReferenceEquals(c.Group, stays))));

    private static string Name(ConnectorCode code) => PlugFit.Of(code).Code;

    private static string? One(int count) => count == 1 ? "one" : null;

    private static bool Suits(Cord cord, GroupNode group) =>
        cord.Suits(group.Unit.Supply) && (cord.Item.Item!.Ups is null || group.Unit.FedBy is null);

    private static bool HasSocket(GroupNode group, ConnectorCode plug) => group.Source.Outlets.Any(o => PlugFit.Fits(plug, o.Socket));

    // No PDU is made with an outlet rated above the PDU; existing outlets are accepted.
    private static bool CanHave(GroupNode group, ConnectorCode socket, bool northAmerica) =>
        group.Source.Outlets.Any(o => o.Socket == socket) || socket == ConnectorCode.Hardwired || PlugFit.RatedA(socket, northAmerica) <= group.Unit.RatedA;

    // An existing overload does not block a remedy, so this check refuses remedies that add to one.
    private static bool HasRoom(SupplyNode supply, IReadOnlyList<Cord> cords) =>
        !Comparison.IsOver(
            supply.Lines.Sum(l => l.NormalA)
                + (cords.Where(c => !ReferenceEquals(c.Group?.Unit.Supply, supply)).Sum(c => c.VoltAmperes) / supply.Source.VoltageV),
            supply.ContinuousA * supply.Lines.Count);

    private static bool HasRoom(GroupNode group, IReadOnlyList<Cord> cords)
    {
        var unit = group.Unit;
        var more = cords.Where(c => !ReferenceEquals(c.Group?.Unit, unit))
            .Sum(c => c.VoltAmperes / (c.IsThreePhase ? unit.Lines.Count : 1)) / unit.Supply.Source.VoltageV;
        return !Comparison.IsOver(unit.Lines[group.Line].NormalA + more, unit.ContinuousA);
    }

    private static RackDescription? AddOutlets(RackDescription description, GroupNode group, ConnectorCode socket, int count)
    {
        var sets = description.Pdus![group.Unit.Index].Groups![group.Index].Outlets.ToList();
        var at = sets.FindIndex(s => s.Socket == socket && s.Count + count <= MostOfASet);
        if (at >= 0)
        {
            sets[at] = sets[at] with { Count = sets[at].Count + count };
        }
        else
        {
            sets.AddRange(Sets(socket, count));
        }

        return sets.Count <= MostSets ? description.EditGroup(group.Unit.Index, group.Index, g => g with { Outlets = sets }) : null;
    }

    private static RackDescription? Spread(RackSurvey survey, IReadOnlyList<Cord> cords, GroupNode[] groups, ConnectorCode socket)
    {
        RackDescription? after = Freed(survey.Description, cords);
        GroupNode[] those = [.. groups.Where(g => HasSocket(g, cords[0].Code))];
        those = those.Length > 1 ? those : groups;
        for (var i = 0; i < those.Length && after is not null; i++)
        {
            var count = (cords.Count + those.Length - 1 - i) / those.Length;
            after = count > 0 ? AddOutlets(after, those[i], socket, count) : after;
        }

        return after;
    }

    private static IEnumerable<RemedyCandidate> LikeUnits(RackSurvey survey, IReadOnlyList<Cord> cords, Func<SupplyNode, bool>? from) =>
        UnitsWithSockets(survey, cords).Where(u => (from is null || from(u.Supply)) && HasRoom(u.Supply, cords)).Take(2)
            .SelectMany(u => PowerRemedies.AddUnits(survey, u, cords));

    private static IEnumerable<RemedyCandidate> LikeSupplies(RackSurvey survey, IReadOnlyList<Cord> cords) =>
        UnitsWithSockets(survey, cords).Take(1).SelectMany(u => PowerRemedies.AddSupplies(survey, u.Supply, u, cords));

    private static IEnumerable<PduNode> UnitsWithSockets(RackSurvey survey, IReadOnlyList<Cord> cords) => survey.Power.Units
        .Where(u => u.FedBy is null && cords.All(c => c.Suits(u.Supply)) && u.Groups.Any(g => HasSocket(g, cords[0].Code)))
        .DistinctBy(u => u.Supply);

    // On a supply without a PDU with such sockets.
    private static IEnumerable<RemedyCandidate> NewUnits(RackSurvey survey, IReadOnlyList<Cord> cords, Func<SupplyNode, bool>? from)
    {
        var socket = PlugFit.SocketFor(cords[0].Code);
        var supplies = survey.Power.Supplies.Where(s => (from is null || from(s)) && HasRoom(s, cords) && cords.All(c => c.Suits(s)) && IsOfItsSize(s, socket)
            && !s.Units.Any(u => u.FedBy is null && u.Groups.Any(g => HasSocket(g, cords[0].Code))));
        foreach (var supply in supplies.Take(survey.Power.Units.Length < MostUnits ? MostGroups : 0))
        {
            var plug = supply.Source.Socket is { } end ? CordFacts.PlugFor(end) : null;
            var after = Freed(survey.Description, cords);
            after = after.Add(NewUnit(after, supply.Source, supply.Phases, plug, socket, cords.Count));
            yield return new RemedyCandidate(
                new(NewPdu.With(One(cords.Count)), ("count", cords.Count), ("socket", Name(socket)), ("supply", supply.Id)), after, nameof(NewUnits));
        }
    }

    // An industrial outlet belongs on a supply of its rating: 32 A are never drawn from one of 16 A.
    private static bool IsOfItsSize(SupplyNode supply, ConnectorCode socket) =>
        !PlugFit.IsIec60309(socket) || PlugFit.RatedA(socket, supply.IsNorthAmerica) <= supply.RatedA;

    private static IEnumerable<RemedyCandidate> NewSupplies(RackSurvey survey, IReadOnlyList<Cord> cords)
    {
        var socket = PlugFit.SocketFor(cords[0].Code);
        var three = cords[0].IsThreePhase;
        foreach (var size in survey.Power.IsNorthAmerica ? NorthAmerica : Europe)
        {
            if (PlugFit.RatedA(socket, survey.Power.IsNorthAmerica) > size.RatedA && socket != ConnectorCode.Hardwired)
            {
                continue;
            }

            var voltage = VoltageOf(cords) ?? (survey.Description.Supplies is [var first, ..] ? first.VoltageV : size.VoltageV);
            var connector = three ? size.Three : survey.Power.IsNorthAmerica && voltage < PlugRemedies.LeastHighVoltageV ? Low(size.RatedA) : size.Single;
            var after = Freed(survey.Description, cords);
            for (var count = 1; count <= 2 && survey.Power.Supplies.Length + count <= MostSupplies && survey.Power.Units.Length + count <= MostUnits; count++)
            {
                // With two supplies each has the same number of outlets; the service decides which cords are kept apart.
                after = after.Add(NewSupply(after, size.RatedA, voltage, three ? 3 : 1, connector));
                after = after.Add(NewUnit(after, after.Supplies![^1], three ? 3 : 1, connector, socket, cords.Count));
                yield return new RemedyCandidate(
                    new(
                        NewSupplyPdu.With(count == 1 ? "single" : null, One(cords.Count)), ("supplies", count), ("ratedA", size.RatedA),
                        ("count", cords.Count), ("socket", Name(socket))),
                    after, nameof(NewSupplies));
            }
        }
    }

    // The voltage of most of the items; the first cord is not representative.
    private static double? VoltageOf(IReadOnlyList<Cord> cords) => cords.Select(c => c.Item.Item!.Power!.VoltageV).Where(v => v is not null)
        .GroupBy(v => v).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).FirstOrDefault()?.Key;

    /// <summary>Supply ratings and their connectors, by regional practice.</summary>
    /// <param name="voltageV">Voltage of the supply, V.</param>
    /// <param name="threePhase">Whether it has three phases.</param>
    /// <returns>Rating in A and connector, smallest first.</returns>
    public static IEnumerable<(double RatedA, ConnectorCode Connector)> SupplySizes(RackSurvey survey, double voltageV, bool threePhase)
    {
        var northAmerica = survey.Power.IsNorthAmerica;
        return (northAmerica ? NorthAmerica : Europe).Select(s => (
            s.RatedA, threePhase ? s.Three : northAmerica && voltageV < PlugRemedies.LeastHighVoltageV ? Low(s.RatedA) : s.Single));
    }

    // L6 is for 208 and 240 V. L5-30, for 120 V, came later: a client that was made before it does not know it, so an answer has it only where the caller
    // sent it.
    private static ConnectorCode Low(double ratedA) => ratedA <= 20 ? ConnectorCode.Nema520 : ConnectorCode.Hardwired;

    private static Supply NewSupply(RackDescription description, double ratedA, double voltageV, int phases, ConnectorCode connector) => new()
    {
        Id = Names.FreeId("supply", (description.Supplies ?? []).Select(s => s.Id)),
        VoltageV = voltageV,
        Phases = phases,
        RatedA = ratedA,
        Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = ratedA },
        Socket = connector,
    };

    // Groups behind breakers of the usual size for outlets, as many as the rating of the PDU holds, and at least one on each line.
    private static Pdu NewUnit(RackDescription description, Supply supply, int phases, ConnectorCode? plug, ConnectorCode socket, int count)
    {
        var breaker = description.Site?.Region == Region.Na ? 20.0 : 16.0;
        var large = PlugFit.Of(socket).RatedA > breaker;
        var lines = PlugFit.IsThreePhase(socket) ? 1 : phases;
        var perLine = large ? 1 : (int)Math.Clamp(supply.RatedA / breaker, 1, MostGroupsOfAUnit / lines);
        var groups = new List<OutletGroup>();
        for (var i = 0; i < lines * perLine && i < count; i++)
        {
            groups.Add(new OutletGroup
            {
                Id = Invariant($"g{i + 1}"),
                Phase = phases == 3 ? (Phase)(i % lines) : null,
                BreakerA = large ? supply.RatedA : Math.Min(breaker, supply.RatedA),
                Outlets = [.. Sets(socket, (count + (lines * perLine) - 1) / (lines * perLine))],
            });
        }

        return new Pdu
        {
            Id = Names.FreeId("strip", (description.Pdus ?? []).Select(u => u.Id)),
            Supply = supply.Id,
            RatedA = supply.RatedA,
            Plug = plug,
            Mounting = PduMounting.Vertical,
            Groups = groups,
        };
    }

    /// <summary>The outlet groups of a new PDU: none with appliance outlets is protected above what they may have.</summary>
    /// <param name="groups">The groups of a similar PDU.</param>
    /// <param name="northAmerica">Whether North American ratings apply.</param>
    /// <param name="upstreamA">Breaker upstream of the PDU, A.</param>
    /// <returns>The groups, with breakers of their own where needed.</returns>
    public static IReadOnlyList<OutletGroup> Protected(IReadOnlyList<OutletGroup> groups, bool northAmerica, double upstreamA)
    {
        var most = northAmerica ? Connectors.MostOutletProtectionNorthAmericaA : Connectors.MostOutletProtectionA;
        return
        [
            .. groups.Select(g => Math.Min(g.BreakerA ?? double.PositiveInfinity, upstreamA) > most && g.Outlets.Any(o => PlugFit.IsIec60320(o.Socket))
                ? g with { BreakerA = most }
                : g),
        ];
    }

    private static IEnumerable<OutletSet> Sets(ConnectorCode socket, int count)
    {
        for (; count > MostOfASet; count -= MostOfASet)
        {
            yield return new OutletSet { Socket = socket, Count = MostOfASet };
        }

        yield return new OutletSet { Socket = socket, Count = count };
    }
}
