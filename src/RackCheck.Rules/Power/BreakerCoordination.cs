using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds PDUs and cables whose rating does not match the breaker upstream.</summary>
public sealed class BreakerCoordination : Rule
{
    private static readonly WordingChoice Groups = new(
        "power.breaker-coordination.groups",
        "{pdu} can carry {limitA} A, but outlet [one:group {groups} is|groups {groups} are] protected at {breakerA} A.");

    private static readonly MessageWording Rating = new(
        "power.breaker-coordination.rating",
        "{pdu} is rated for {ratedA} A, above the {breakerA} A breaker of supply {supply}.");

    // A breaker up to this suits every socket.
    private const double LeastSocketA = 16;

    private static readonly MessageWording Socket = new(
        "power.breaker-coordination.socket",
        "The {socket} socket of supply {supply} permits a breaker of {limitA} A; it has one of {breakerA} A.");

    private static readonly MessageWording Cable = new(
        "power.breaker-coordination.cable",
        "The {sectionMm2} mm2 cable of supply {supply} is rated for {limitA} A; the {breakerA} A breaker does not protect it.");

    private static readonly MissingData MissingSocket = new(
        "power.breaker-coordination.missing-socket",
        "The socket of a supply is missing, so it cannot be checked whether it bears the current of the breaker.");

    private static readonly MissingData MissingCableSection = new(
        "power.breaker-coordination.missing-cable-section",
        "The cross-sectional area of a supply cable is missing, so its overload protection cannot be checked.");

    private static readonly MissingData MissingCableTable = new(
        "power.breaker-coordination.missing-cable-table",
        "The cable table does not cover this cross-sectional area, so the overload protection of the cable cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.breaker-coordination",
        Title = "Breaker, cable and PDU ratings do not match",
        Severity = Severity.Error,
        MilderSeverity = Severity.Advice,
        Concern = Concern.Site,
        Safety = true,
        What =
            "Finds cables with a current-carrying capacity below the breaker rating, with their ambient temperature and bunching, sockets rated below their "
            + "breaker, and PDUs rated below the breaker upstream whose outlet groups have no breakers of their own. A PDU "
            + "rated above its breaker is safe: that is advice. In North America a PDU rated at 80 % of its breaker matches it.",
        Why =
            "A breaker protects only cables and PDUs that are rated for at least its own current. Anything smaller overheats before the breaker trips. A PDU "
            + "with a higher rating invites a load that the breaker cannot carry.",
        Formula =
            "In <= cable capacity x Ca x Cg; In <= socket rating; In of the supply, of the plug fuse or of each outlet group <= PDU rating (North "
                + "America: / 0.8); advice: PDU rating "
            + "<= In",
        Sources = [Sources.Iec60364Overload, Sources.Bs7671Capacity, Sources.Bs7671Factors, Sources.Bs7671Ring, Sources.Nec210, Sources.Nec210Receptacles],
        Needs =
        [
            "/supplies/*/ratedA", "/supplies/*/breaker/ratedA", "/supplies/*/socket", "/supplies/*/phases", "/supplies/*/cable/crossSectionMm2",
            "/pdus/*/ratedA", "/pdus/*/groups/*/breakerA", "/pdus/*/plug", "/items/*/ups/feeds", "/site/region", "/site/ambientMaxC",
            "/supplies/*/cable/ambientC", "/supplies/*/cable/grouped", "/supplies/*/cable/ring",
        ],
        Notes =
        [
            "The capacity is that of 70 C thermoplastic copper cable clipped direct (reference method C). The ambient "
                + "temperature of the cable defaults to that "
                + "of the site, and to 30 C without one.",
            "A ring final circuit of 2.5 mm2 may be protected at 32 A. The 13 A fuse of a BS 1363 plug protects the PDU behind it.",
            "A BS 1363 socket may have a 32 A breaker, as every plug has a fuse; in North America a 15 A socket may be on a 20 A circuit. IEC 60320 sockets "
                + "of a supply follow their limit behind a breaker.",
        ],
        Remedies =
        [
            "Fit a PDU with a breaker for each outlet group.", "Fit a PDU of the breaker's rating.", "Fit a cable with a larger cross-sectional area.",
            "Fit a smaller breaker.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var supply in context.Survey.Power.Supplies)
        {
            // Downstream of a UPS, the UPS limits the current.
            foreach (var unit in supply.Units.Where(u => u.FedBy is null))
            {
                JudgeUnit(context, unit);
            }

            if (supply.Units.Any(u => !u.IsBehindUps))
            {
                JudgeSocket(context, supply);
                JudgeCable(context, supply);
            }
        }
    }

    private static void JudgeUnit(RuleContext context, PduNode unit)
    {
        var breaker = unit.UpstreamA;
        if (Comparison.IsOver(unit.RatedA, breaker))
        {
            // Behind a plug fuse the PDU is protected by it, whatever its rating.
            if (breaker == unit.Supply.BreakerA)
            {
                ReportTooLarge(context, unit);
            }

            return;
        }

        // North American PDUs are rated for their permitted load, which is 80 % of the matching breaker.
        var carries = unit.Supply.IsNorthAmerica ? unit.RatedA * 100 / Breakers.ContinuousSharePercent : unit.RatedA;
        var open = unit.Groups.Where(g => Comparison.IsOver(unit.ProtectionA(g), carries)).ToArray();
        if (open.Length > 0)
        {
            ReportOpen(context, unit, carries, open);
        }
    }

    private static void ReportTooLarge(RuleContext context, PduNode unit)
    {
        var (survey, supply) = (context.Survey, unit.Supply);
        context.Report(new FindingDraft
        {
            Message = Rating,
            Data = [("pdu", unit.Id), ("ratedA", unit.RatedA), ("supply", supply.Id), ("breakerA", supply.BreakerA)],
            Subject = Subjects.Pdu(unit.Id),
            Identity = [unit.Id],
            Pointers = [Invariant($"/pdus/{unit.Index}/ratedA"), BreakerPointer(supply)],
            Actual = Quantities.Of(unit.RatedA, "A"),
            Limit = Quantities.Of(supply.BreakerA, "A"),
            UtilisationPercent = 100 * unit.RatedA / supply.BreakerA,
            Severity = Severity.Advice,
            Calculation = Invariant($"{unit.RatedA:0.###} > {supply.BreakerA:0.###}"),
            Candidates = SupplyRemedies.Resize(survey, unit, supply.BreakerA),
        });
    }

    private static void ReportOpen(RuleContext context, PduNode unit, double carries, GroupNode[] open)
    {
        var (survey, supply) = (context.Survey, unit.Supply);
        var before = open.Max(unit.ProtectionA);
        context.Report(new FindingDraft
        {
            Message = Groups.With(open.Length == 1 ? "one" : ""),
            Data =
            [
                ("pdu", unit.Id), ("limitA", carries),
                ("groups", Names.Ids(open.Select(g => g.Id))), ("breakerA", before),
            ],
            Subject = Subjects.Pdu(unit.Id),
            Identity = [unit.Id],
            Pointers = [Invariant($"/pdus/{unit.Index}"), .. open.Select(g => $"{g.Pointer}/breakerA"), BreakerPointer(supply)],
            Actual = Quantities.Of(before, "A"),
            Limit = Quantities.Of(carries, "A"),
            UtilisationPercent = 100 * before / carries,
            Calculation = supply.IsNorthAmerica
                ? Invariant($"{before:0.###} > {unit.RatedA:0.###} / 0.8 = {carries:0.###}")
                : Invariant($"{before:0.###} > {carries:0.###}"),
            Candidates = OpenCandidates(survey, unit, carries, open),
        });
    }

    private static IEnumerable<RemedyCandidate> OpenCandidates(RackSurvey survey, PduNode unit, double carries, GroupNode[] open)
    {
        var supply = unit.Supply;
        var sold = SupplyRemedies.BreakerUpTo(supply, carries);
        var candidates = sold is { } rated ? [SupplyRemedies.FuseGroups(survey, unit, open, rated)] : Enumerable.Empty<RemedyCandidate>();
        candidates = candidates.Concat(SupplyRemedies.Strengthen(survey, unit, supply.BreakerA * unit.RatedA / carries));
        return sold is { } lower
            ? candidates.Append(SupplyRemedies.Fuse(survey, supply, lower)).Concat(SupplyRemedies.Downsize(survey, supply, lower))
            : candidates;
    }

    private static void JudgeSocket(RuleContext context, SupplyNode supply)
    {
        if (supply.Source.Socket is null && Comparison.IsOver(supply.BreakerA, LeastSocketA))
        {
            context.ReportMissing($"{Pointers.Supply[supply.Index]}/socket", MissingSocket);
        }

        if (supply.Source.Socket is not { } socket
            || Connectors.MostBreakerA(NamedEnumConverter<ConnectorCode>.Name(socket), supply.IsNorthAmerica) is not { } limit
            || !Comparison.IsOver(supply.BreakerA, limit))
        {
            return;
        }

        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = Socket,
            Data =
            [
                ("supply", supply.Id), ("socket", NamedEnumConverter<ConnectorCode>.Name(socket)), ("limitA", limit), ("breakerA", supply.BreakerA),
            ],
            Subject = Subjects.SocketOf(supply.Id),
            Identity = ["socket", supply.Id],
            Pointers = [$"{Pointers.Supply[supply.Index]}/socket", BreakerPointer(supply)],
            Actual = Quantities.Of(supply.BreakerA, "A"),
            Limit = Quantities.Of(limit, "A"),
            UtilisationPercent = 100 * supply.BreakerA / limit,
            Calculation = Invariant($"{supply.BreakerA:0.###} > {limit:0.###}"),
            Candidates = SupplyRemedies.BreakerUpTo(supply, limit) is { } sold
                ? SupplyRemedies.Downsize(survey, supply, sold).Prepend(SupplyRemedies.Fuse(survey, supply, sold))
                : [],
        });
    }

    private static void JudgeCable(RuleContext context, SupplyNode supply)
    {
        var pointer = Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2");
        if (supply.Source.Cable?.CrossSectionMm2 is not { } section)
        {
            context.ReportMissing(pointer, MissingCableSection);
            return;
        }

        var cable = supply.Source.Cable;
        if (cable is { Ring: true, CrossSectionMm2: >= Cables.RingMm2 } && !Comparison.IsOver(supply.BreakerA, Cables.MostRingA))
        {
            return;
        }

        var ambient = cable.AmbientC ?? context.Survey.Description.Site?.AmbientMaxC ?? Cables.ReferenceAmbientC;
        var (inHeat, inBunch) = (Cables.AmbientFactor(ambient), Cables.GroupFactor(cable.Grouped ?? 1));
        double Capacity(double mm2) => Cables.CapacityA(mm2, supply.Phases) * inHeat * inBunch;
        var capacity = Capacity(section);
        if (!Comparison.IsOver(supply.BreakerA, capacity))
        {
            return;
        }

        if (section > Cables.All[^1].CrossSectionMm2)
        {
            context.ReportMissing(pointer, MissingCableTable);
            return;
        }

        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = Cable,
            Data = [("supply", supply.Id), ("sectionMm2", section), ("limitA", capacity), ("breakerA", supply.BreakerA)],
            Subject = Subjects.CableOf(supply.Id),
            Identity = ["cable", supply.Id],
            Pointers = [pointer, BreakerPointer(supply)],
            Actual = Quantities.Of(supply.BreakerA, "A"),
            Limit = Quantities.Of(capacity, "A"),
            UtilisationPercent = 100 * supply.BreakerA / capacity,
            Calculation = Invariant($"{supply.BreakerA:0.###} > {Cables.CapacityA(section, supply.Phases):0.###} x ")
                + Invariant($"{inHeat:0.####} x {inBunch:0.##} = {capacity:0.###}"),
            Candidates = CableCandidates(survey, supply, capacity, Capacity),
        });
    }

    private static IEnumerable<RemedyCandidate> CableCandidates(RackSurvey survey, SupplyNode supply, double capacity, Func<double, double> capacityOf)
    {
        var thicker = SupplyRemedies.Thicken(survey, supply, s => capacityOf(s) >= supply.BreakerA);
        return SupplyRemedies.BreakerUpTo(supply, capacity) is { } sold
            ? thicker.Append(SupplyRemedies.Fuse(survey, supply, sold)).Concat(SupplyRemedies.Downsize(survey, supply, sold))
            : thicker;
    }

    private static string BreakerPointer(SupplyNode supply) =>
        supply.Source.Breaker?.RatedA is null ? Invariant($"/supplies/{supply.Index}/ratedA") : Invariant($"/supplies/{supply.Index}/breaker/ratedA");
}
