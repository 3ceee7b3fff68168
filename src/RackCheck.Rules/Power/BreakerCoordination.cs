using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds PDUs and cables whose rating does not match the breaker upstream.</summary>
public sealed class BreakerCoordination : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.breaker-coordination",
        Title = "Breaker, cable and PDU ratings do not match",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What =
            "Finds PDUs rated above the breaker of their supply, PDUs rated below that breaker whose outlet groups have no breakers of their own, and cables "
            + "with a current-carrying capacity below the breaker rating. In North America a PDU rated at 80 % of its breaker matches it.",
        Why =
            "A breaker protects only cables and PDUs that are rated for at least its own current. Anything smaller overheats before the breaker trips. A PDU "
            + "with a higher rating invites a load that the breaker cannot carry.",
        Formula = "PDU rating <= In <= cable capacity; In of the supply, or of each outlet group, <= PDU rating (North America: / 0.8)",
        Sources = [Sources.Iec60364Overload, Sources.Bs7671Capacity, Sources.Nec210],
        Needs =
        [
            "/supplies/*/ratedA", "/supplies/*/breaker/ratedA", "/supplies/*/phases", "/supplies/*/cable/crossSectionMm2", "/pdus/*/ratedA",
            "/pdus/*/groups/*/breakerA", "/items/*/ups/feeds", "/site/region",
        ],
        Remedies =
        [
            "Fit a breaker of the PDU's rating.", "Fit a PDU of the breaker's rating.", "Fit a PDU with a breaker for each outlet group.",
            "Fit a cable with a larger cross-sectional area.", "Fit a smaller breaker.",
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
                JudgeCable(context, supply);
            }
        }
    }

    private static void JudgeUnit(RuleContext context, PduNode unit)
    {
        var breaker = unit.Supply.BreakerA;
        if (Comparison.IsOver(unit.RatedA, breaker))
        {
            ReportTooLarge(context, unit);
            return;
        }

        // North American PDUs are rated for their permitted load, which is 80 % of the matching breaker.
        var carries = unit.Supply.IsNorthAmerica ? unit.RatedA * 100 / Breakers.ContinuousSharePercent : unit.RatedA;
        var open = unit.Groups.Where(g => Comparison.IsOver(Math.Min(g.BreakerA ?? breaker, breaker), carries)).ToArray();
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
            Message = "{pdu} is rated for {ratedA} A, above the {breakerA} A breaker of supply {supply}.",
            Data = [("pdu", unit.Id), ("ratedA", unit.RatedA), ("supply", supply.Id), ("breakerA", supply.BreakerA)],
            Subject = $"PDU {unit.Id}",
            Identity = [unit.Id],
            Pointers = [Invariant($"/pdus/{unit.Index}/ratedA"), BreakerPointer(supply)],
            Actual = Quantities.Of(unit.RatedA, "A"),
            Limit = Quantities.Of(supply.BreakerA, "A"),
            UtilisationPercent = 100 * unit.RatedA / supply.BreakerA,
            Calculation = Invariant($"{unit.RatedA:0.###} > {supply.BreakerA:0.###}"),
            Candidates = TooLargeCandidates(survey, unit),
        });
    }

    private static IEnumerable<RemedyCandidate> TooLargeCandidates(RackSurvey survey, PduNode unit)
    {
        if (unit.RatedA <= unit.Supply.Source.RatedA)
        {
            yield return SupplyRemedies.Fuse(survey, unit.Supply, unit.RatedA);
        }

        yield return SupplyRemedies.Resize(survey, unit, unit.Supply.BreakerA);
        Cord[] cords = [.. survey.Power.Cords.Where(c => c.Group is { } g && ReferenceEquals(g.Unit.Supply, unit.Supply))];
        foreach (var candidate in PowerRemedies.Enlarge(survey, unit.Supply, cords).Concat(SupplyRemedies.Downsize(survey, unit.Supply, unit.Supply.BreakerA)))
        {
            yield return candidate;
        }
    }

    private static void ReportOpen(RuleContext context, PduNode unit, double carries, GroupNode[] open)
    {
        var (survey, supply) = (context.Survey, unit.Supply);
        var before = open.Max(g => Math.Min(g.BreakerA ?? supply.BreakerA, supply.BreakerA));
        context.Report(new FindingDraft
        {
            Message = "{pdu} can carry {limitA} A, but outlet " + (open.Length == 1 ? "group {groups} is"
                : "groups {groups} are") + " protected at {breakerA} A.",
            Data =
            [
                ("pdu", unit.Id), ("limitA", carries),
                ("groups", Names.List([.. open.Select(g => g.Id).Order(StringComparer.Ordinal)])), ("breakerA", before),
            ],
            Subject = $"PDU {unit.Id}",
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
        yield return SupplyRemedies.FuseGroups(survey, unit, open, sold);
        yield return SupplyRemedies.FuseGroups(survey, unit, open, Quantities.Round(carries));
        yield return SupplyRemedies.Resize(survey, unit, supply.BreakerA * unit.RatedA / carries);
        yield return SupplyRemedies.Fuse(survey, supply, sold);
        foreach (var candidate in SupplyRemedies.Downsize(survey, supply, sold))
        {
            yield return candidate;
        }
    }

    private static void JudgeCable(RuleContext context, SupplyNode supply)
    {
        var pointer = Invariant($"/supplies/{supply.Index}/cable/crossSectionMm2");
        if (supply.Source.Cable?.CrossSectionMm2 is not { } section)
        {
            context.ReportMissing(pointer, "The cross-sectional area of a supply cable is missing, so its overload protection cannot be checked.");
            return;
        }

        var capacity = Cables.CapacityA(section, supply.Phases);
        if (!Comparison.IsOver(supply.BreakerA, capacity))
        {
            return;
        }

        if (section > Cables.All[^1].CrossSectionMm2)
        {
            context.ReportMissing(
                pointer, "The cable table does not cover this cross-sectional area, so the overload protection of the cable cannot be checked.");
            return;
        }

        var survey = context.Survey;
        context.Report(new FindingDraft
        {
            Message = "The {sectionMm2} mm2 cable of supply {supply} is rated for {limitA} A; the {breakerA} A breaker does not protect it.",
            Data = [("supply", supply.Id), ("sectionMm2", section), ("limitA", capacity), ("breakerA", supply.BreakerA)],
            Subject = $"cable of supply {supply.Id}",
            Identity = ["cable", supply.Id],
            Pointers = [pointer, BreakerPointer(supply)],
            Actual = Quantities.Of(supply.BreakerA, "A"),
            Limit = Quantities.Of(capacity, "A"),
            UtilisationPercent = 100 * supply.BreakerA / capacity,
            Calculation = Invariant($"{supply.BreakerA:0.###} > {capacity:0.###}"),
            Candidates = CableCandidates(survey, supply, capacity),
        });
    }

    private static IEnumerable<RemedyCandidate> CableCandidates(RackSurvey survey, SupplyNode supply, double capacity)
    {
        var sold = SupplyRemedies.BreakerUpTo(supply, capacity);
        return SupplyRemedies.Thicken(survey, supply, s => Cables.CapacityA(s, supply.Phases) >= supply.BreakerA)
            .Append(SupplyRemedies.Fuse(survey, supply, sold))
            .Concat(SupplyRemedies.Downsize(survey, supply, sold));
    }

    // With no breaker given, its rating defaults to the rating of the supply.
    private static string BreakerPointer(SupplyNode supply) =>
        supply.Source.Breaker?.RatedA is null ? Invariant($"/supplies/{supply.Index}/ratedA") : Invariant($"/supplies/{supply.Index}/breaker/ratedA");
}
