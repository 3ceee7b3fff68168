using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>Remedies for earthing: an earth bar, a larger conductor, industrial plugs, or less leakage current on one earth.</summary>
public static class EarthRemedies
{
    private static readonly WordingChoice SecureConnection = new(
        "remedy.secure-connection",
        "[plug:Connect|Hard-wire] [pdu:PDU {pdu}|supply:supply {supply}|supply {supply} and its PDUs][plug: by plug and socket {connector}]");

    // Default cross-sectional area of a new bar; common practice, no source.
    private const double UsualBarMm2 = 50;

    /// <summary>The cabinet with an earth bar.</summary>
    /// <param name="terminals">Number of terminals.</param>
    /// <returns>The description; other members of the bar are unchanged.</returns>
    public static RackDescription WithBar(RackSurvey survey, int terminals) => survey.Description.EditCabinet(c => c with
    {
        EarthBar = (c.EarthBar ?? new EarthBar { CrossSectionMm2 = Math.Max(UsualBarMm2, survey.Earth.MainMm2 ?? 0) }) with
        {
            Terminals = terminals,
            LengthMm = LengthFor(c.EarthBar, terminals),
        },
    });

    /// <summary>A main conductor that is high-integrity earthing by itself, with an earth bar if there is none.</summary>
    /// <returns>The cross-sectional area, and the description with it.</returns>
    public static (double SectionMm2, RackDescription After) StrongMain(RackSurvey survey)
    {
        var strength = survey.Earth.IsEnclosed ? EarthConductors.LeastProtectedMm2 : EarthConductors.LeastUnprotectedMm2;
        var least = Math.Max(EarthConductors.HighIntegrityMm2, ConductorNeed.Of(survey.Power.Supplies, strength, isMain: true).SectionMm2);
        var section = EarthConductors.NextSectionMm2(least) ?? EarthConductors.SectionsMm2[^1];
        var after = survey.Earth.Bar is null ? WithBar(survey, survey.Earth.TerminalsNeeded + 1) : survey.Description;
        return (section, after.EditEarthing(e => e with { MainConductorMm2 = section }));
    }

    /// <summary>Shorter disconnection times, so that a cross-sectional area is sufficient.</summary>
    /// <param name="supplies">Supplies whose fault current the conductor can carry.</param>
    /// <param name="sectionMm2">The cross-sectional area, mm2.</param>
    /// <param name="description">The description to change.</param>
    /// <returns>The change and its text; null if no breaker is fast enough, or nothing changes.</returns>
    public static (WordedText Title, RackDescription After)? Sooner(
        RackSurvey survey, IReadOnlyList<SupplyNode> supplies, double sectionMm2, RackDescription description)
    {
        WordedText? title = null;
        foreach (var supply in supplies)
        {
            if (ConductorNeed.FaultMm2(supply) is not { } needed || needed <= sectionMm2)
            {
                continue;
            }

            var heat = sectionMm2 * EarthConductors.SeparateCopperK / ConductorNeed.FaultA(supply);
            var seconds = Math.Floor(1000 * heat * heat) / 1000;
            // A shorter time is outside the formula, so it proves nothing.
            if (seconds < EarthConductors.AdiabaticFromS)
            {
                return null;
            }

            var one = new WordedText(RemedyTitles.Disconnection, ("seconds", seconds), ("supply", supply.Id));
            title = title?.Then(one) ?? one;
            description = description.EditSupply(supply.Index, s => s with { DisconnectionTimeS = seconds });
        }

        return title is null ? null : (title, description);
    }

    /// <summary>Industrial plugs and sockets, or hard wiring, between a supply and its PDUs.</summary>
    /// <param name="unit">The PDU, if it is fed from a UPS and the socket of the supply is not concerned; else null.</param>
    /// <param name="description">The description to change.</param>
    /// <returns>Changes and their texts, best first.</returns>
    public static IEnumerable<(WordedText Title, RackDescription After)> Secured(
        RackSurvey survey, SupplyNode supply, PduNode? unit, RackDescription description)
    {
        PduNode[] units = unit is not null ? [unit] : [.. supply.Units.Where(u => !u.IsBehindUps)];
        var ratedA = Math.Max(unit is null ? supply.Source.RatedA : 0, units.Length == 0 ? 0 : units.Max(u => u.RatedA));
        var isThreePhase = unit?.IsThreePhase ?? supply.Phases == 3;
        var what = unit is not null ? "pdu" : units.Length == 0 ? "supply" : null;
        (string, Scalar) owner = unit is not null ? ("pdu", unit.Id) : ("supply", supply.Id);
        if (SecuredFor(supply, ratedA, isThreePhase, unit is null) is { } code)
        {
            yield return (new(SecureConnection.With("plug", what), owner, ("connector", NamedEnumConverter<ConnectorCode>.Name(code))), With(code));
        }

        yield return (new(SecureConnection.With(what), owner), With(ConnectorCode.Hardwired));

        RackDescription With(ConnectorCode connector)
        {
            var after = unit is null ? description.EditSupply(supply.Index, s => s with { Socket = connector }) : description;
            return units.Aggregate(after, (d, u) => d.EditUnit(u.Index, s => s with { Plug = connector }));
        }
    }

    /// <summary>Equipment removed, highest leakage current first, until the rest is within a limit; last all equipment with leakage current.</summary>
    /// <param name="cords">The cords fed from the supply or PDU.</param>
    /// <param name="limitMa">The limit, mA.</param>
    public static IEnumerable<RemedyCandidate> TakeOutLeaking(RackSurvey survey, IEnumerable<Cord> cords, double limitMa)
    {
        var items = cords.GroupBy(c => c.Item.Id, StringComparer.Ordinal)
            .Select(g => (Id: g.Key, Ma: g.Sum(c => c.LeakageMa ?? 0))).Where(i => i.Ma > 0)
            .OrderByDescending(i => i.Ma).ThenBy(i => i.Id, StringComparer.Ordinal).ToArray();
        var left = items.Sum(i => i.Ma);
        var enough = false;
        for (var count = 1; count <= items.Length; count++)
        {
            left -= items[count - 1].Ma;
            if ((!enough && !Comparison.IsOver(left, limitMa)) || count == items.Length)
            {
                enough = true;
                var ids = items.Take(count).Select(i => i.Id).Order(StringComparer.Ordinal).ToArray();
                yield return new RemedyCandidate(RemedyTitles.ToAnotherRack(ids), survey.Description.WithoutItems(ids), nameof(TakeOutLeaking));
            }
        }
    }

    // The voltage between the terminals is unchanged.
    private static double? LengthFor(EarthBar? bar, int terminals) => bar is { LengthMm: { } length, Terminals: { } old and > 0 } && terminals > old
        ? Math.Min(5000, Math.Ceiling(length * terminals / old))
        : bar?.LengthMm;

    private static ConnectorCode? SecuredFor(SupplyNode supply, double ratedA, bool isThreePhase, bool withSocket)
    {
        if (withSocket && supply.Source.Socket is { } socket && socket != ConnectorCode.Hardwired && PlugFit.Of(socket).Secured
            && PlugFit.RatedA(socket, supply.IsNorthAmerica) >= ratedA && PlugFit.IsThreePhase(socket) == isThreePhase)
        {
            return socket;
        }

        // North American locking connectors are for two lines, 208 or 240 V.
        if (supply.IsNorthAmerica && supply.Source.VoltageV >= 200 && !isThreePhase && ratedA <= 30)
        {
            return ratedA <= 20 ? ConnectorCode.NemaL620 : ConnectorCode.NemaL630;
        }

        return ratedA switch
        {
            <= 16 => isThreePhase ? ConnectorCode.Iec60309A16P3 : ConnectorCode.Iec60309A16P1,
            <= 32 => isThreePhase ? ConnectorCode.Iec60309A32P3 : ConnectorCode.Iec60309A32P1,
            <= 63 => isThreePhase ? ConnectorCode.Iec60309A63P3 : ConnectorCode.Iec60309A63P1,
            _ => null,
        };
    }
}
