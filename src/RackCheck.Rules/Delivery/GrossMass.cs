using RackCheck.Model;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>What rules on the way in say of the mass of cabinet, equipment and pallet.</summary>
internal static class GrossMass
{
    /// <summary>Asks for masses that are not given.</summary>
    /// <param name="context">The context.</param>
    internal static void Lack(RuleContext context)
    {
        foreach (var pointer in context.Survey.Route!.MissingMasses())
        {
            context.Lacks(pointer, "Without this it cannot be said what the rack weighs on its way.");
        }
    }

    /// <summary>The gross mass as a sum, with what it passes.</summary>
    /// <param name="survey">The facts, with a way in.</param>
    /// <param name="limitKg">What it passes, kg.</param>
    /// <returns>The text.</returns>
    internal static string Text(RackSurvey survey, double limitKg)
    {
        var route = survey.Route!;
        var cabinet = survey.Cabinet.Source.MassKg ?? 0;
        return Invariant($"{cabinet:0.###} + {Quantities.Round(route.KnownKg - cabinet - route.PalletKg):0.###} + {route.PalletKg:0.###} = {route.KnownKg:0.###} > {limitKg:0.###}");
    }
}
