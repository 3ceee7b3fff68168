using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>What the trade does where a PDU's plug and its supply's socket do not go together: another plug, another socket, both, a smaller unit.</summary>
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

    /// <summary>Brings a unit's plug, its rating and its supply's socket together.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="lines">How many lines its groups hang on.</param>
    /// <returns>Cures, best first.</returns>
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
                $"Have supply {unit.Supply.Id} end in {Names.WithArticle(Name(other))} socket",
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
                Invariant($"Take a PDU of {rated:0.###} A for {unit.Id}"), description.EditUnit(unit.Index, u => u with { RatedA = rated }));
        }

        if (!behindUps && size != ConnectorCode.Hardwired)
        {
            yield return Both(description, unit, ConnectorCode.Hardwired);
        }
    }

    private static bool Carries(ConnectorCode plug, PduNode unit, int lines, bool northAmerica) =>
        PlugFit.RatedA(plug, northAmerica) >= unit.RatedA && (lines == 1 || plug == ConnectorCode.Hardwired || PlugFit.IsThreePhase(plug));

    private static RemedyCandidate Plugged(RackDescription description, PduNode unit, ConnectorCode plug) => new(
        plug == ConnectorCode.Hardwired ? $"Wire {unit.Id} in without a plug" : $"Take {unit.Id} with {Names.WithArticle(Name(plug))} plug",
        description.EditUnit(unit.Index, u => u with { Plug = plug }));

    // All units of a supply share its socket.
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
                (false, false) => $"Take {unit.Id} with {Names.WithArticle(Name(size))} plug, and have supply {unit.Supply.Id} end in the socket for it",
                (true, false) => $"Take the PDUs of supply {unit.Supply.Id} with {Name(size)} plugs, and have it end in the socket for them",
                (false, true) => $"Wire {unit.Id} to supply {unit.Supply.Id} without plug and socket",
                (true, true) => $"Wire the PDUs to supply {unit.Supply.Id} without plug and socket",
            },
            after);
    }

    private static string Name(ConnectorCode code) => PlugFit.Of(code).Code;
}
