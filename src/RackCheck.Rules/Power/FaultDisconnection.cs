using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds supplies whose breaker does not disconnect an earth fault at once.</summary>
public sealed class FaultDisconnection : Rule
{
    private static readonly MessageWording Defect = new(
        "power.fault-disconnection",
        "An earth fault at the end of supply {supply} draws {faultA} A; the {breakerA} A breaker of curve {curve} certainly trips from "
            + "{tripA} A, and there is no RCD.");

    private static readonly MissingData Missing = new(
        "power.fault-disconnection.missing",
        "This value is missing, so it is unknown whether the breaker disconnects an earth fault.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.fault-disconnection",
        Title = "Breaker does not disconnect an earth fault",
        Severity = Severity.Error,
        Concern = Concern.Site,
        Safety = true,
        What =
            "Finds supplies without an RCD whose earth fault current at the socket is below the current from which the breaker certainly trips. Not applied in "
            + "North America, where breakers have no letter.",
        Why = "After an earth fault, exposed metal stays live until someone touches it or the cable burns.",
        Formula = "U / (U/I0 + 1.2 x 2 x 0.017241 L/S) >= 5, 10 or 20 x In for curve B, C or D",
        Sources = [Sources.Bs7671Disconnection, Sources.DeclaredLoopPractice, Sources.RingLoop],
        Needs =
        [
            "/supplies/*/faultCurrentA", "/supplies/*/cable/lengthM", "/supplies/*/cable/crossSectionMm2", "/supplies/*/cable/ring", "/supplies/*/breaker",
            "/supplies/*/rcdMa", "/supplies/*/voltageV", "/site/region",
        ],
        Notes =
        [
            "Without a fault current the lowest of a public TN-S supply is tried (0.8 ohm). Where the breaker trips even then, the current is not asked for.",
            "A supply of 50 V or less is not checked: at extra-low voltage (IEC 60364-4-41 clause 414) no disconnection is needed against electric shock.",
            "The protective conductor is taken with the area of the line conductors.",
            "A ring final circuit has L/4: to its far point two legs are in parallel, each half of the ring long.",
        ],
        Remedies = ["Fit an RCD.", "Fit a breaker with a faster curve.", "Fit a cable with a larger cross-sectional area."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var supply in context.Survey.Power.Supplies.Where(
            s => s is { IsNorthAmerica: false, Source: { RcdMa: null, VoltageV: > FaultLoops.ExtraLowV } } && s.Units.Count > 0))
        {
            var source = supply.Source;
            var at = Pointers.Supply[supply.Index];
            if (source.Cable is not { CrossSectionMm2: { } section } || supply.LoopLengthM is not { } length)
            {
                context.ReportMissing($"{at}/cable/{(source.Cable?.LengthM is null ? "lengthM" : "crossSectionMm2")}", Missing);
                continue;
            }

            // The slowest curve and the lowest declared current are certain where even they are enough.
            var curve = source.Breaker?.Curve;
            var trip = FaultLoops.CertainTripA(NamedEnumConverter<BreakerCurve>.Name(curve ?? BreakerCurve.D), supply.BreakerA);
            var origin = source.FaultCurrentA ?? (source.VoltageV / FaultLoops.MostDeclaredOhm);
            var current = origin > 0 ? FaultLoops.EndA(source.VoltageV, origin, length, section) : 0;
            if (!Comparison.IsOver(trip, current))
            {
                continue;
            }

            if (curve is null)
            {
                context.ReportMissing($"{at}/breaker/curve", Missing);
            }

            if (source.FaultCurrentA is null)
            {
                context.ReportMissing($"{at}/faultCurrentA", Missing);
            }

            if (curve is { } known && source.FaultCurrentA is { } given)
            {
                Report(context, supply, new Loop(known, given, length, section, current, trip));
            }
        }
    }

    private static void Report(RuleContext context, SupplyNode supply, Loop loop)
    {
        var (at, voltage) = (Pointers.Supply[supply.Index], supply.Source.VoltageV);
        context.Report(new FindingDraft
        {
            Message = Defect,
            Data =
            [
                ("supply", supply.Id), ("faultA", loop.CurrentA), ("breakerA", supply.BreakerA), ("curve", NamedEnumConverter<BreakerCurve>.Name(loop.Curve)),
                ("tripA", loop.TripA),
            ],
            Subject = Subjects.Supply(supply.Id),
            Identity = [supply.Id],
            Pointers = [$"{at}/faultCurrentA", $"{at}/breaker/curve", $"{at}/cable"],
            Actual = Quantities.Of(loop.CurrentA, "A"),
            Limit = Quantities.Of(loop.TripA, "A"),
            UtilisationPercent = loop.CurrentA > 0 ? 100 * loop.TripA / loop.CurrentA : null,
            Calculation = loop.OriginA > 0
                ? Invariant($"{voltage:0.###} / ({voltage:0.###} / {loop.OriginA:0.###} + 1.2 x 2 x ")
                    + Invariant($"{EarthConductors.CopperOhmMm2PerM} x {supply.LoopLength} / ")
                    + Invariant($"{loop.SectionMm2:0.###}) = {loop.CurrentA:0.###} < {loop.TripA / supply.BreakerA:0.###} x ")
                        + Invariant($"{supply.BreakerA:0.###} = {loop.TripA:0.###}")
                : Invariant($"0 < {loop.TripA:0.###}"),
            Candidates = Candidates(context.Survey, supply, loop),
        });
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, SupplyNode supply, Loop loop)
    {
        foreach (var rated in EarthConductors.RcdRatingsMa.Where(r => 100 * supply.LeakageMa <= EarthConductors.RcdSharePercent * r).Take(1))
        {
            yield return new RemedyCandidate(
                new(RemedyTitles.Rcd, ("ratedMa", rated), ("supply", supply.Id)),
                survey.Description.EditSupply(supply.Index, s => s with { RcdMa = rated }), "rcd");
        }

        foreach (var curve in Enum.GetValues<BreakerCurve>().Where(c => c < loop.Curve).OrderDescending())
        {
            if (!Comparison.IsOver(FaultLoops.CertainTripA(NamedEnumConverter<BreakerCurve>.Name(curve), supply.BreakerA), loop.CurrentA))
            {
                yield return new RemedyCandidate(
                    new(RemedyTitles.Curve.With(), ("curve", NamedEnumConverter<BreakerCurve>.Name(curve)), ("supply", supply.Id)),
                    survey.Description.EditSupply(supply.Index, s => s with { Breaker = s.Breaker! with { Curve = curve } }), "curve");
            }
        }

        if (loop.OriginA > 0)
        {
            foreach (var thicker in SupplyRemedies.Thicken(
                survey, supply, mm2 => !Comparison.IsOver(loop.TripA, FaultLoops.EndA(supply.Source.VoltageV, loop.OriginA, loop.LengthM, mm2))))
            {
                yield return thicker;
            }
        }
    }

    /// <summary>The earth fault loop of a supply.</summary>
    private sealed record Loop(BreakerCurve Curve, double OriginA, double LengthM, double SectionMm2, double CurrentA, double TripA);
}
