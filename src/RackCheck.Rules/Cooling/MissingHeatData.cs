using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Rules.Cooling;

/// <summary>What the rules on cooling lack alike.</summary>
internal static class MissingHeatData
{
    /// <summary>Says which items do not tell their heat.</summary>
    /// <param name="context">Where it is said.</param>
    /// <param name="message">What that means for the rule.</param>
    public static void ReportHeat(RuleContext context, string message)
    {
        foreach (var item in context.Survey.Heat.Unknown)
        {
            context.Lacks(Pointers.ItemHeat[item.Index], message);
        }
    }

    /// <summary>Says which doors are not described, where the way of the air hangs on them.</summary>
    /// <param name="context">Where it is said.</param>
    /// <param name="message">What that means for the rule.</param>
    /// <returns>Whether the way is not known for want of them.</returns>
    public static bool ReportDoors(RuleContext context, string message)
    {
        if (context.Survey.Heat.Way.Path != AirPath.Unknown)
        {
            return false;
        }

        var cabinet = context.Survey.Cabinet.Source;
        if (cabinet.FrontDoor is null)
        {
            context.Lacks(Pointers.FrontDoor + "/style", message);
        }

        if (cabinet.RearDoor is null)
        {
            context.Lacks(Pointers.RearDoor + "/style", message);
        }

        return true;
    }

    /// <summary>Asks for the direction of an item that moves air without saying which way.</summary>
    /// <param name="context">The context.</param>
    /// <param name="item">The item.</param>
    public static void ReportDirection(RuleContext context, Mounted item)
    {
        if (item.Item!.Airflow is { FlowM3h: > 0, Direction: null })
        {
            context.Lacks(Pointers.ItemAirflowDirection[item.Index], "It moves air; without the direction it cannot be said whether that has a way, and whether it meets another's.");
        }
    }

    /// <summary>Asks for the inlet limits of items that give off heat and name none.</summary>
    /// <param name="context">The context.</param>
    public static void ReportInletLimits(RuleContext context)
    {
        if (!context.Survey.Heat.HasHeat)
        {
            return;
        }

        foreach (var item in context.Survey.Items)
        {
            if (item.Item!.MaxInletC is null && HeatSurvey.HeatOf(item) is null or > 0)
            {
                context.Lacks(Pointers.ItemMaxInlet[item.Index], "Without the highest temperature that an item may take in it cannot be said whether its air is cool enough.");
            }
        }
    }
}
