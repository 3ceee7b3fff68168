using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Rules.Loads;

/// <summary>Reports missing masses and positions for the load rules.</summary>
internal static class MissingLoadData
{
    /// <summary>Reports the items without a mass.</summary>
    public static void ReportMasses(RuleContext context, MissingData message)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MassKg is null && MassSurvey.IsToBeWeighed(item))
            {
                context.ReportMissing(Pointers.ItemMass[item.Index], message);
            }
        }
    }

    /// <summary>Reports the missing masses of equipment and cabinet.</summary>
    public static void ReportTotal(RuleContext context, MissingData message)
    {
        ReportMasses(context, message);
        if (context.Survey.Cabinet.Source.MassKg is null)
        {
            context.ReportMissing(Pointers.CabinetMass, message);
        }
    }

    /// <summary>Reports the missing data for the centre of gravity.</summary>
    public static void ReportBalance(RuleContext context, MissingData message)
    {
        ReportTotal(context, message);
        var mass = context.Survey.Mass;
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MassKg is not > 0)
            {
                continue;
            }

            if (mass.Stand.MissingForCentre(item) is { } height)
            {
                context.ReportMissing(height, message);
            }

            if (mass.MissingForDepth(item) is { } depth)
            {
                context.ReportMissing(depth, message);
            }
        }
    }
}
