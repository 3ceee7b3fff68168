using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Rules.Earthing;

/// <summary>What the rules on leakage have to say of what is not known.</summary>
internal static class MissingLeakageData
{
    /// <summary>Names the protective conductor currents that are absent though their items hang on an outlet.</summary>
    /// <param name="context">Where to say it.</param>
    /// <param name="matters">Whether what hangs on a supply matters to the rule.</param>
    public static void Report(RuleContext context, Func<SupplyNode, bool> matters)
    {
        foreach (var cord in context.Survey.Power.Cords)
        {
            if (cord is { Group.Unit.Supply: { } supply, LeakageMa: null } && matters(supply))
            {
                context.Lacks(Pointers.ItemLeakage[cord.Item.Index], "Without the protective conductor current of an item it cannot be said what the earth of its outlet and supply carries.");
            }
        }
    }

    /// <summary>Asks for the PDUs, without which no leakage comes together anywhere.</summary>
    /// <param name="context">Where to say it.</param>
    public static void ReportUnits(RuleContext context)
    {
        if (!context.Survey.Power.IsDescribed && context.Survey.Power.Cords.Length > 0)
        {
            context.Lacks("/pdus", "Without the PDUs it cannot be said which supply carries the protective conductor current of which item.");
        }
    }
}
