using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>Finds PDUs and outlet groups that carry more than they are rated for, or more than is planned for.</summary>
public sealed class PduLoading : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = LimitsInForce.PduLoading,
        Title = "PDU overloaded",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Safety = true,
        What = "Finds PDUs and their outlet groups whose current is over their rating, in normal use or with a supply lost; over the design share is a warning, and in North America over 80 % of the breaker an error.",
        Why = "The breaker trips and takes all that hangs on it down, often when the other supply is lost; a unit without a breaker overheats.",
        Formula = "I = sum of P/(V pf) over the cords on a line; redundant items draw P/n through each of n cords, and all of it through those left when a supply is lost",
        Sources = [Sources.CircuitTheory, Sources.LoadingPractice, Sources.Nec210, Sources.RedundancyPractice],
        Limits = [LimitsInForce.DesignSharePercent, LimitsInForce.ContinuousSharePercent],
        Needs = ["/items/*/power/ratedW", "/items/*/power/powerFactor", "/items/*/power/plugs", "/items/*/power/redundant", "/supplies/*/voltageV", "/pdus/*/ratedA", "/pdus/*/groups/*/breakerA", "/connections", "/site/region"],
        Remedies = ["Plug equipment into another group or unit.", "Add a PDU.", "Take a larger supply and PDU.", "Add a supply with a PDU.", "Take equipment out of the rack."],
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
                // A group that is all of its line, behind no lesser breaker than the unit's rating, says nothing that the unit has not said.
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
        var cords = survey.Power.Cords.Where(c => c.Group is { } g && (group is null ? ReferenceEquals(g.Unit, unit) && (g.Line == line || c.IsThreePhase) : ReferenceEquals(g, group)));
        var named = LoadingText.Name(unit, group, line);
        context.Report(new FindingDraft
        {
            Message = found.Message(named.Text),
            Data = [.. named.Data, .. found.Data],
            Subject = group is null ? $"PDU {unit.Id}" : $"PDU {unit.Id}, group {group.Id}",
            Identity = group is null ? [unit.Id] : [unit.Id, group.Id],
            Root = LoadingText.Root(found.Severity, cords),
            Pointers = [group?.Pointer ?? Pointers.Pdu[unit.Index]],
            Severity = found.Severity,
            Actual = Quantities.Of(found.CurrentA, "A"),
            Limit = Quantities.Of(found.LimitA, "A"),
            UtilisationPercent = 100 * found.CurrentA / found.LimitA,
            Calculation = Invariant($"{LoadingText.Sum(cords, unit.Supply.Source.VoltageV, found.Lost, found.CurrentA)} > {found.LimitA:0.###}"),
            Cures = PowerCures.Relieve(survey, unit.Supply, unit, group),
        });
    }
}
