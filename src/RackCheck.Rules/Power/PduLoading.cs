using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds PDUs and outlet groups loaded above their rating or above their design load.</summary>
public sealed class PduLoading : Rule
{
    private static readonly WordingChoice Defect = new(
        "power.pdu-loading",
        "[group:Group {group} of {pdu}|phase:Phase {line} of {pdu}|{pdu}] " + Loading.Pattern);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = LimitsInForce.PduLoading,
        Title = "PDU overloaded",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What =
            "Finds PDUs and outlet groups loaded above their rating, in normal use or with a supply lost. A load above the design share is a warning. In "
            + "North America a load above 80 % of the breaker rating is an error.",
        Why = "The breaker trips and all equipment fed from it goes down, often when the other supply is lost. A PDU without a breaker overheats.",
        Formula =
            "I = sum of P/(V pf) over the cords on a phase; a dual-fed item draws P/n through each of n cords, and all of P through the remaining cords with "
            + "a supply lost",
        Sources = [Sources.CircuitTheory, Sources.LoadingPractice, Sources.Nec210, Sources.RedundancyPractice],
        Limits = [LimitsInForce.DesignSharePercent, LimitsInForce.ContinuousSharePercent],
        Needs =
        [
            "/items/*/power/ratedW", "/items/*/heatW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/items/*/power/redundant", "/supplies/*/voltageV",
            "/pdus/*/ratedA", "/pdus/*/groups/*/breakerA", "/connections", "/site/region",
        ],
        Notes =
        [
            "Where the service assigns the outlets itself, an overload is a defect of the rack and not of one PDU: which PDU is overloaded is a result "
                + "of the assignment.",
        ],
        SharesWordingsOf = [typeof(MissingLoadingData)],
        Remedies =
        [
            "Plug equipment into another group or PDU.", "Add a PDU.", "Fit a larger supply and PDU.", "Add a supply with a PDU.",
            "Move equipment to another rack.",
        ],
        Cautions = [Cautions.Electricity],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        var tree = context.Survey.Power;
        MissingLoadingData.Report(context, tree);
        foreach (var unit in tree.Units)
        {
            var found = Loading.Gravest(unit.Lines, unit.ContinuousA, unit.DesignA);
            if (found is { } unitLoad)
            {
                Report(context, unit, null, unitLoad.Line, unitLoad.Found);
            }

            foreach (var group in unit.Groups)
            {
                // A group that carries the whole phase, with a breaker of at least the PDU's rating, would only repeat the finding of the PDU.
                if (group.BreakerA is not { } breaker
                    || (found is not null && group.Load.WorstA == unit.Lines[group.Line].WorstA && breaker >= unit.RatedA))
                {
                    continue;
                }

                if (Loading.Judge(group.Load, group.ContinuousA!.Value, group.DesignA!.Value) is { } groupLoad)
                {
                    Report(context, unit, group, group.Line, groupLoad);
                }
            }
        }
    }

    private static void Report(RuleContext context, PduNode unit, GroupNode? group, int line, Loading found)
    {
        var survey = context.Survey;
        var cords = survey.Power.Cords.Where(c => c.Group is { } g && (group is null ? ReferenceEquals(g.Unit, unit) && (g.Loads(line) || c.IsThreePhase)
            : ReferenceEquals(g, group)));
        var named = LoadingText.Name(unit, group, line);
        context.Report(new FindingDraft
        {
            Message = Defect.With(named.Variant, found.Variant),
            Data = [.. named.Data, .. found.Data],
            Subject = group is null ? Subjects.Pdu(unit.Id) : Subjects.Group(unit.Id, group.Id),
            Identity = group is null ? [unit.Id] : [unit.Id, group.Id],
            Pointers = [group?.Pointer ?? Pointers.Pdu[unit.Index]],
            Severity = found.Severity,
            Actual = Quantities.Of(found.CurrentA, "A"),
            Limit = Quantities.Of(found.LimitA, "A"),
            UtilisationPercent = 100 * found.CurrentA / found.LimitA,
            Calculation = (group is null
                ? LoadingText.Line(unit.Supply, cords, line, found.Lost, found.CurrentA, withCooling: false)
                : LoadingText.Sum(cords, unit.Supply.Source.VoltageV, found.Lost, found.CurrentA)) + Invariant($" > {found.LimitA:0.###}"),
            Candidates = PowerRemedies.Relieve(survey, unit.Supply, unit, group),
        });
    }
}
