using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Rules.Earthing;

/// <summary>Reports missing data for the rules on leakage.</summary>
internal static class MissingLeakageData
{
    private static readonly MissingData MissingLeakage = new(
        "missing.leakage",
        "The protective conductor current of an item is missing, so the leakage of its outlet and supply is unknown.");

    private static readonly MissingData MissingPdus = new(
        "missing.pdus",
        "The PDUs are missing, so the protective conductor current of each supply is unknown.");

    /// <summary>Reports items on an outlet without a protective conductor current, for the supplies that the rule checks.</summary>
    public static void Report(RuleContext context, Func<SupplyNode, bool> matters)
    {
        foreach (var cord in context.Survey.Power.Cords)
        {
            if (cord is { Group.Unit.Supply: { } supply, LeakageMa: null } && matters(supply))
            {
                context.ReportMissing(Pointers.ItemLeakage[cord.Item.Index], MissingLeakage);
            }
        }
    }

    /// <summary>Reports missing PDUs, which assign the leakage to the supplies.</summary>
    public static void ReportUnits(RuleContext context)
    {
        if (!context.Survey.Power.IsDescribed && context.Survey.Power.Cords.Length > 0)
        {
            context.ReportMissing("/pdus", MissingPdus);
        }
    }
}
