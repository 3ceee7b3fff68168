using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Remedies;

/// <summary>Cures for rear uprights that stand in the rear door.</summary>
public static class RearUprightRemedies
{
    /// <summary>Sets them nearer to the front ones, or takes a deeper cabinet.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="setbackMm">Setback of the front uprights, mm.</param>
    /// <param name="spacingMm">Distance of the uprights, mm.</param>
    /// <returns>Remedies, best first.</returns>
    public static List<Remedy> For(RackSurvey survey, double setbackMm, double spacingMm)
    {
        var remedies = new List<Remedy>();
        if (SpacingRemedies.Move(survey, new SetbackInterval(1, survey.Cabinet.Depth.RearLimitMm - setbackMm)) is { } move)
        {
            remedies.Add(move);
        }

        if (CabinetSizes.DepthAtLeast(setbackMm + spacingMm + survey.Cabinet.Depth.RearDoorMm) is { } depth)
        {
            remedies.Add(new PatchBuilder(survey).Set(Pointers.CabinetDepth, depth).Titled(Invariant($"Take a cabinet {depth:0.###} mm deep")));
        }

        return remedies;
    }
}
