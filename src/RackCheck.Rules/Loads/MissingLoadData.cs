using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Rules.Loads;

/// <summary>What the rules on loads have to say of masses and places that are not known.</summary>
internal static class MissingLoadData
{
    /// <summary>Names the items whose mass is absent.</summary>
    /// <param name="context">Where to say it.</param>
    /// <param name="message">What that means.</param>
    public static void ReportMasses(RuleContext context, string message)
    {
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MassKg is null && MassSurvey.IsToBeWeighed(item))
            {
                context.Lacks(Pointers.ItemMass[item.Index], message);
            }
        }
    }

    /// <summary>Names what is absent of the mass of equipment and cabinet.</summary>
    /// <param name="context">Where to say it.</param>
    /// <param name="message">What that means.</param>
    public static void ReportTotal(RuleContext context, string message)
    {
        ReportMasses(context, message);
        if (context.Survey.Cabinet.Source.MassKg is null)
        {
            context.Lacks(Pointers.CabinetMass, message);
        }
    }

    /// <summary>Names what is absent for the centre of gravity.</summary>
    /// <param name="context">Where to say it.</param>
    /// <param name="message">What that means.</param>
    public static void ReportBalance(RuleContext context, string message)
    {
        ReportTotal(context, message);
        var mass = context.Survey.Mass;
        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MassKg is not > 0)
            {
                continue;
            }

            if (mass.Stand.LackingForCentre(item) is { } height)
            {
                context.Lacks(height, message);
            }

            if (mass.LackingForDepth(item) is { } depth)
            {
                context.Lacks(depth, message);
            }
        }
    }
}
