using RackCheck.Rules.Survey;

namespace RackCheck.Rules.Cooling;

/// <summary>What the rules on cooling lack alike.</summary>
internal static class HeatLacks
{
    /// <summary>Says which items do not tell their heat.</summary>
    /// <param name="context">Where it is said.</param>
    /// <param name="message">What that means for the rule.</param>
    public static void SayHeat(RuleContext context, string message)
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
    public static bool SayDoors(RuleContext context, string message)
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
}
