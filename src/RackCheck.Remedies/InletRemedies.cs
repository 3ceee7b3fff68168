using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>Remedies for a PDU plug that does not match its supply: another plug, another socket, both, or a smaller PDU.</summary>
public static class InletRemedies
{
    private static readonly WordingChoice SupplySocket = new("remedy.supply-socket", "Fit supply {supply} with [an:an|a] {socket} socket");
    private static readonly MessageWording SmallerPdu = new("remedy.pdu-smaller", "Use a {ratedA:exact} A PDU for {pdu}");
    private static readonly WordingChoice PduPlug = new(
        "remedy.pdu-plug", "[hard-wire:Hard-wire {pdu}|an:Fit {pdu} with an {plug} plug|Fit {pdu} with a {plug} plug]");
    private static readonly WordingChoice PlugAndSocket = new(
        "remedy.plug-and-socket", "Fit {pdu} with [an:an|a] {plug} plug, and supply {supply} with its socket");
    private static readonly MessageWording PlugsAndSocket = new(
        "remedy.plugs-and-socket", "Fit the PDUs of supply {supply} with {plug} plugs, and the supply with their socket");
    private static readonly WordingChoice HardWire = new("remedy.hard-wire", "Hard-wire [one:{pdu}|the PDUs] to supply {supply}");

    private static readonly ConnectorCode[] Europe =
    [
        ConnectorCode.Iec60309A16P1, ConnectorCode.Iec60309A32P1, ConnectorCode.Iec60309A63P1, ConnectorCode.Hardwired,
    ];
    private static readonly ConnectorCode[] NorthAmerica =
    [
        ConnectorCode.NemaL620, ConnectorCode.NemaL630, ConnectorCode.Iec60309A63P1, ConnectorCode.Hardwired,
    ];
    private static readonly ConnectorCode[] LowNorthAmerica = [ConnectorCode.Nema515, ConnectorCode.Nema520, ConnectorCode.Hardwired];
    private static readonly ConnectorCode[] ThreePhase =
    [
        ConnectorCode.Iec60309A16P3, ConnectorCode.Iec60309A32P3, ConnectorCode.Iec60309A63P3, ConnectorCode.Hardwired,
    ];

    /// <summary>Matches the plug and rating of a PDU with the socket of its supply.</summary>
    /// <param name="lines">Number of lines that its groups use.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Match(RackSurvey survey, PduNode unit, int lines)
    {
        var description = survey.Description;
        var northAmerica = survey.Power.IsNorthAmerica;
        var plug = unit.Source.Plug!.Value;
        var behindUps = unit.FedBy is not null;
        if (!behindUps && unit.Supply.Source.Socket is { } socket && CordFacts.PlugFor(socket) is { } fitting && fitting != plug
            && Carries(fitting, unit, lines, northAmerica))
        {
            yield return Plugged(description, unit, fitting);
        }

        if (!behindUps && Carries(plug, unit, lines, northAmerica))
        {
            var other = PlugFit.SocketFor(plug);
            yield return new RemedyCandidate(
                new(SupplySocket.With(RemedyTitles.Article(Name(other))), ("supply", unit.Supply.Id), ("socket", Name(other))),
                description.EditSupply(unit.Supply.Index, s => s with { Socket = other }));
        }

        if (unit.FedBy is { Source.Outlets: { } outlets })
        {
            foreach (var candidate in ForOutlets(description, unit, outlets, lines, northAmerica))
            {
                yield return candidate;
            }
        }

        var sizes = lines > 1 || PlugFit.IsThreePhase(plug) ? ThreePhase
            : !northAmerica ? Europe
            : unit.Supply.Source.VoltageV >= PlugRemedies.LeastHighVoltageV ? NorthAmerica : LowNorthAmerica;
        var size = sizes.First(c => Carries(c, unit, lines, northAmerica));
        if (behindUps)
        {
            yield return Plugged(description, unit, size);
        }
        else
        {
            yield return Both(description, unit, size);
        }

        var rated = PlugFit.RatedA(plug, northAmerica);
        if (rated < unit.RatedA)
        {
            yield return new RemedyCandidate(
                new(SmallerPdu, ("ratedA", rated), ("pdu", unit.Id)), description.EditUnit(unit.Index, u => u with { RatedA = rated }));
        }

        if (!behindUps && size != ConnectorCode.Hardwired)
        {
            yield return Both(description, unit, ConnectorCode.Hardwired);
        }
    }

    // A plug for an outlet of the UPS; where none carries the PDU, a PDU of the rating of that plug.
    private static IEnumerable<RemedyCandidate> ForOutlets(
        RackDescription description, PduNode unit, IReadOnlyList<UpsOutlet> outlets, int lines, bool northAmerica)
    {
        var plugs = outlets.Where(o => o.Count > 0).Select(o => CordFacts.PlugFor(o.Socket)).OfType<ConnectorCode>().Distinct()
            .Where(p => lines == 1 || PlugFit.IsThreePhase(p)).OrderByDescending(p => PlugFit.RatedA(p, northAmerica));
        foreach (var plug in plugs)
        {
            var plugged = Plugged(description, unit, plug);
            var rated = PlugFit.RatedA(plug, northAmerica);
            yield return rated >= unit.RatedA ? plugged : new RemedyCandidate(
                plugged.Title.Then(new(SmallerPdu, ("ratedA", rated), ("pdu", unit.Id))),
                plugged.After.EditUnit(unit.Index, u => u with { RatedA = rated }));
        }
    }

    private static bool Carries(ConnectorCode plug, PduNode unit, int lines, bool northAmerica) =>
        PlugFit.RatedA(plug, northAmerica) >= unit.RatedA && (lines == 1 || plug == ConnectorCode.Hardwired || PlugFit.IsThreePhase(plug));

    private static RemedyCandidate Plugged(RackDescription description, PduNode unit, ConnectorCode plug) => new(
        plug == ConnectorCode.Hardwired
            ? new(PduPlug.With("hard-wire"), ("pdu", unit.Id))
            : new(PduPlug.With(RemedyTitles.Article(Name(plug))), ("pdu", unit.Id), ("plug", Name(plug))),
        description.EditUnit(unit.Index, u => u with { Plug = plug }));

    // All PDUs of a supply share its socket type.
    private static RemedyCandidate Both(RackDescription description, PduNode unit, ConnectorCode size)
    {
        var after = description.EditSupply(unit.Supply.Index, s => s with { Socket = size });
        foreach (var other in unit.Supply.Units.Where(u => u.FedBy is null))
        {
            after = after.EditUnit(other.Index, u => u with { Plug = size });
        }

        var several = unit.Supply.Units.Count(u => u.FedBy is null) > 1;
        return new RemedyCandidate(
            (several, size == ConnectorCode.Hardwired) switch
            {
                (false, false) => new(
                    PlugAndSocket.With(RemedyTitles.Article(Name(size))), ("pdu", unit.Id), ("plug", Name(size)), ("supply", unit.Supply.Id)),
                (true, false) => new(PlugsAndSocket, ("supply", unit.Supply.Id), ("plug", Name(size))),
                (false, true) => new(HardWire.With("one"), ("pdu", unit.Id), ("supply", unit.Supply.Id)),
                (true, true) => new(HardWire.With(), ("supply", unit.Supply.Id)),
            },
            after);
    }

    private static string Name(ConnectorCode code) => PlugFit.Of(code).Code;
}
