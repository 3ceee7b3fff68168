using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>Remedies for a wrong or undersized plug: another plug, a larger plug, or a second cord.</summary>
public static class PlugRemedies
{
    private static readonly WordingChoice ItemPlug = new("remedy.item-plug", "Fit {item} with [an:an|a] {plug} plug");
    private static readonly MessageWording ItemPlugs = new("remedy.item-plugs", "Fit {item} with {plug} plugs");
    private static readonly WordingChoice SocketPlug = new("remedy.socket-plug", "Fit {items} with the plug for [an:an|a] {socket} socket, {plug}");
    private static readonly MessageWording InletCord = new("remedy.inlet-cord", "Fit {items} with cords from C15 to C14, plug C14");
    private static readonly MessageWording ShareLoad = new("remedy.share-load", "Share the load of {item} among {cords} cords");
    private static readonly MessageWording GroupSockets = new("remedy.group-sockets", "Use {pdu} with more {socket} outlets in group {group}");
    private static readonly MessageWording PduSockets = new("remedy.pdu-sockets", "Use PDUs with more {socket} outlets");

    /// <summary>North America: from this voltage up L6 for 208 and 240 V; below it 5-15 and 5-20 for 120 V.</summary>
    public const double LeastHighVoltageV = 200;

    private const int MostPlugs = 8;

    private static readonly ConnectorCode[] Europe = [ConnectorCode.C20, ConnectorCode.Iec60309A16P1, ConnectorCode.Iec60309A32P1, ConnectorCode.Iec60309A63P1];
    private static readonly ConnectorCode[] HighNorthAmerica = [ConnectorCode.C20, ConnectorCode.NemaL620, ConnectorCode.NemaL630];
    private static readonly ConnectorCode[] LowNorthAmerica = [ConnectorCode.C20, ConnectorCode.Nema520];
    private static readonly ConnectorCode[] ThreePhase = [ConnectorCode.Iec60309A16P3, ConnectorCode.Iec60309A32P3, ConnectorCode.Iec60309A63P3];

    /// <summary>Fits an item with a plug that matches a free outlet of the given group and carries its current.</summary>
    public static IEnumerable<RemedyCandidate> ForFreeOutlets(RackSurvey survey, Cord cord)
    {
        var group = cord.Group!;
        foreach (var socket in group.Source.Outlets.Select(o => o.Socket).Distinct())
        {
            var used = survey.Power.Cords.Count(c => ReferenceEquals(c.Group, group) && c.Socket == socket);
            if (used < group.Source.Outlets.Where(o => o.Socket == socket).Sum(o => o.Count)
                && CordFacts.PlugFor(socket) is { } plug && plug != ConnectorCode.Hardwired && PlugFit.IsThreePhase(plug) == cord.IsThreePhase
                && cord.WorstA() <= Math.Min(PlugFit.RatedA(plug, survey.Power.IsNorthAmerica), PlugFit.RatedA(socket, survey.Power.IsNorthAmerica)))
            {
                yield return new RemedyCandidate(
                    new(ItemPlug.With(RemedyTitles.Article(Name(plug))), ("item", cord.Item.Id), ("plug", Name(plug))),
                    survey.Description.EditItem(cord.Item.Index, i => WithPlug(i, cord.Plug, plug)), nameof(ForFreeOutlets));
            }
        }
    }

    /// <summary>
    /// The cord that usually comes with a C16 inlet: C15 to C14. The plug of the description is the cord's end at the outlet, not the inlet of the equipment.
    /// </summary>
    /// <param name="cords">Cords with one type of plug, at least one.</param>
    /// <returns>Candidates; none for another plug.</returns>
    public static IEnumerable<RemedyCandidate> UsualCord(RackSurvey survey, IReadOnlyList<Cord> cords)
    {
        if (cords[0].Code != ConnectorCode.C16)
        {
            return [];
        }

        var changed = survey.Description;
        foreach (var cord in cords)
        {
            changed = changed.EditItem(cord.Item.Index, i => WithPlug(i, cord.Plug, ConnectorCode.C14));
        }

        var ids = cords.Select(c => c.Item.Id).ToHashSet(StringComparer.Ordinal);
        return OutletRemedies.WithOutlets(
            new(InletCord, ("items", Names.Ids(ids))), changed, c => c.Code == ConnectorCode.C14 && ids.Contains(c.Item.Id),
            nameof(UsualCord));
    }

    /// <summary>Corrects plugs that were given as sockets.</summary>
    /// <param name="cords">Cords with one such code, at least one.</param>
    /// <returns>Candidates; none if the code is not a socket.</returns>
    public static IEnumerable<RemedyCandidate> Counterpart(RackSurvey survey, IReadOnlyList<Cord> cords)
    {
        if (CordFacts.PlugFor(cords[0].Code) is not { } plug || PlugFit.Fits(cords[0].Code, PlugFit.SocketFor(cords[0].Code)))
        {
            return [];
        }

        var changed = survey.Description;
        foreach (var cord in cords)
        {
            changed = changed.EditItem(cord.Item.Index, i => WithPlug(i, cord.Plug, plug));
        }

        var ids = cords.Select(c => c.Item.Id).Distinct(StringComparer.Ordinal).ToArray();
        return OutletRemedies.WithOutlets(
            new(
                SocketPlug.With(RemedyTitles.Article(Name(cords[0].Code))), ("items", Names.Ids(ids)), ("socket", Name(cords[0].Code)), ("plug", Name(plug))),
            changed, c => c.Code == plug,
            nameof(Counterpart));
    }

    /// <summary>Replaces the plugs of one type on an item by larger ones, with outlets for them.</summary>
    /// <param name="cord">An overloaded cord.</param>
    /// <returns>Candidates, the next larger plug first.</returns>
    public static IEnumerable<RemedyCandidate> Larger(RackSurvey survey, Cord cord)
    {
        var northAmerica = survey.Power.IsNorthAmerica;
        var voltage = cord.Group!.Unit.Supply.Source.VoltageV;
        var plugs = cord.IsThreePhase ? ThreePhase : !northAmerica ? Europe : voltage >= LeastHighVoltageV ? HighNorthAmerica : LowNorthAmerica;
        foreach (var plug in plugs)
        {
            if (Comparison.IsOver(cord.WorstA() ?? 0, PlugFit.RatedA(plug, northAmerica)))
            {
                continue;
            }

            // Free outlets come from the existing survey: this code runs for every finding, whether or not its remedies are tried.
            var alike = survey.Power.CordsOf(cord.Item).Where(c => c.Code == cord.Code).ToArray();
            var changed = survey.Description;
            foreach (var one in alike)
            {
                changed = changed.EditItem(cord.Item.Index, i => WithPlug(i, one.Plug, plug));
            }

            var title = new WordedText(
                alike.Length == 1 ? ItemPlug.With(RemedyTitles.Article(Name(plug))) : ItemPlugs, ("item", cord.Item.Id), ("plug", Name(plug)));
            if (OutletRemedies.FreeOutlets(survey, cord, plug) >= alike.Length)
            {
                yield return new RemedyCandidate(title, OutletRemedies.Freed(changed, alike), nameof(Larger));
            }

            if (OutletRemedies.InPlace(changed, survey, alike, plug, 1) is { } added)
            {
                yield return new RemedyCandidate(WithSockets(title, alike, plug), added, nameof(Larger));
            }
        }
    }

    /// <summary>Shares the load of an item that is not redundant among more cords.</summary>
    /// <param name="cord">An overloaded cord.</param>
    /// <returns>Candidates; none if more cords are needed than the contract permits.</returns>
    public static IEnumerable<RemedyCandidate> MoreCords(RackSurvey survey, Cord cord)
    {
        var needed = (int)Math.Min(100, Math.Ceiling(cord.Siblings * cord.WorstA()!.Value / (cord.RatedA(survey.Power.IsNorthAmerica) + Comparison.Tolerance)));
        if (cord.IsRedundant || needed > MostPlugs)
        {
            yield break;
        }

        var more = needed - cord.Siblings;
        var title = new WordedText(ShareLoad, ("item", cord.Item.Id), ("cords", needed));
        var changed = survey.Description.EditItem(cord.Item.Index, i => WithMore(i, cord.Code, more));
        if (OutletRemedies.FreeOutlets(survey, cord, cord.Code) >= more)
        {
            yield return new RemedyCandidate(title, changed, nameof(MoreCords));
        }

        if (OutletRemedies.InPlace(changed, survey, [cord], cord.Code, more) is { } added)
        {
            yield return new RemedyCandidate(WithSockets(title, [cord], cord.Code), added, nameof(MoreCords));
        }
    }

    private static WordedText WithSockets(WordedText title, Cord[] cords, ConnectorCode plug)
    {
        var socket = Name(PlugFit.SocketFor(plug));
        return title.Then(cords.Length == 1
            ? new(GroupSockets, ("pdu", cords[0].Group!.Unit.Id), ("socket", socket), ("group", cords[0].Group!.Id))
            : new(PduSockets, ("socket", socket)));
    }

    /// <summary>An item with cords appended.</summary>
    public static Item WithMore(Item item, ConnectorCode plug, int count) =>
        item with { Power = item.Power! with { Plugs = [.. item.Power.Plugs!, .. Enumerable.Repeat(plug, count)] } };

    private static Item WithPlug(Item item, int index, ConnectorCode plug)
    {
        ConnectorCode[] plugs = [.. item.Power!.Plugs!];
        plugs[index] = plug;
        return item with { Power = item.Power with { Plugs = plugs } };
    }

    private static string Name(ConnectorCode code) => PlugFit.Of(code).Code;
}
