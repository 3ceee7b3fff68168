using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds IEC 60320 outlets with too high an overload protection.</summary>
public sealed class OutletProtection : Rule
{
    private static readonly WordingChoice Defect = new(
        "power.outlet-protection",
        "The appliance outlets of {pdu} ([one:group|groups] {groups}) are protected at {protectionA} A; the limit is {limitA} A.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "power.outlet-protection",
        Title = "Outlets protected above their rating",
        Severity = Severity.Error,
        Safety = true,
        What =
            "Finds IEC 60320 outlets behind a breaker above 16 A (20 A in North America) without a breaker of their own group. "
                + "The fuse of a BS 1363 plug counts.",
        Why = "A C13 or C19 outlet, its connector and its cord overheat long before a larger breaker trips.",
        Formula = "lowest breaker or fuse upstream of the outlets <= 16 A (North America: 20 A)",
        Sources = [Sources.Iec62368Outlets, Sources.Bs7671Ring],
        Needs = ["/pdus/*/groups/*/breakerA", "/pdus/*/groups/*/outlets", "/pdus/*/plug", "/supplies/*/breaker/ratedA", "/supplies/*/ratedA", "/site/region"],
        Notes = ["Behind a UPS the lower of the breakers and of what the UPS supplies counts; without the rating of the UPS its outlets are not judged."],
        Remedies = ["Fit a PDU with a breaker for each outlet group.", "Fit a PDU with more outlet groups, each with a breaker."],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        foreach (var unit in context.Survey.Power.Units)
        {
            var limit = unit.Supply.IsNorthAmerica ? Connectors.MostOutletProtectionNorthAmericaA : Connectors.MostOutletProtectionA;
            var open = unit.Groups.Where(g => g.Source.Outlets.Any(o => PlugFit.IsIec60320(o.Socket)) && Comparison.IsOver(ProtectionA(unit, g), limit))
                .ToArray();
            if (open.Length > 0)
            {
                Report(context, unit, open, limit);
            }
        }
    }

    // A UPS limits the current to little more than its rating.
    private static double ProtectionA(PduNode unit, GroupNode group) => unit.FedBy is not { Source: var ups } ? unit.ProtectionA(group)
        : Math.Min(unit.ProtectionA(group), (ups.RatedVa ?? ups.RatedW ?? 0) / unit.Supply.Source.VoltageV);

    private static void Report(RuleContext context, PduNode unit, GroupNode[] open, double limit)
    {
        var protection = open.Max(g => ProtectionA(unit, g));
        context.Report(new FindingDraft
        {
            Message = Defect.With(open.Length == 1 ? "one" : ""),
            Data = [("pdu", unit.Id), ("groups", Names.Ids(open.Select(g => g.Id))), ("protectionA", protection), ("limitA", limit)],
            Subject = Subjects.Pdu(unit.Id),
            Identity = [unit.Id],
            Pointers = [Pointers.Pdu[unit.Index], .. open.Select(g => $"{g.Pointer}/breakerA")],
            Actual = Quantities.Of(protection, "A"),
            Limit = Quantities.Of(limit, "A"),
            UtilisationPercent = 100 * protection / limit,
            Calculation = Invariant($"{protection:0.###} > {limit:0.###}"),
            Candidates = SupplyRemedies.DivideGroups(context.Survey, unit, open, limit)
                .Prepend(SupplyRemedies.FuseGroups(context.Survey, unit, open, limit)),
        });
    }
}
