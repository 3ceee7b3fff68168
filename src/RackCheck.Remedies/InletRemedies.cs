using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Remedies for a PDU plug that does not match its supply: another plug, another socket, both, or a smaller PDU.</summary>
public static class InletRemedies
{
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
                $"Fit supply {unit.Supply.Id} with {Names.WithArticle(Name(other))} socket",
                description.EditSupply(unit.Supply.Index, s => s with { Socket = other }));
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
                Invariant($"Use a {rated:0.###} A PDU for {unit.Id}"), description.EditUnit(unit.Index, u => u with { RatedA = rated }));
        }

        if (!behindUps && size != ConnectorCode.Hardwired)
        {
            yield return Both(description, unit, ConnectorCode.Hardwired);
        }
    }

    private static bool Carries(ConnectorCode plug, PduNode unit, int lines, bool northAmerica) =>
        PlugFit.RatedA(plug, northAmerica) >= unit.RatedA && (lines == 1 || plug == ConnectorCode.Hardwired || PlugFit.IsThreePhase(plug));

    private static RemedyCandidate Plugged(RackDescription description, PduNode unit, ConnectorCode plug) => new(
        plug == ConnectorCode.Hardwired ? $"Hard-wire {unit.Id}" : $"Fit {unit.Id} with {Names.WithArticle(Name(plug))} plug",
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
                (false, false) => $"Fit {unit.Id} with {Names.WithArticle(Name(size))} plug, and supply {unit.Supply.Id} with its socket",
                (true, false) => $"Fit the PDUs of supply {unit.Supply.Id} with {Name(size)} plugs, and the supply with their socket",
                (false, true) => $"Hard-wire {unit.Id} to supply {unit.Supply.Id}",
                (true, true) => $"Hard-wire the PDUs to supply {unit.Supply.Id}",
            },
            after);
    }

    private static string Name(ConnectorCode code) => PlugFit.Of(code).Code;
}
