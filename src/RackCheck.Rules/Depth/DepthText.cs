using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>The calculation of the minimum and maximum setback of an item, with numbers.</summary>
internal static class DepthText
{
    /// <summary>The minimum setback of an item of known depth, as "25 + 40 = 65"; "0" where nothing in front of the uprights needs one.</summary>
    public static string Least(RackSurvey survey, MountedItem item)
    {
        var (cabinet, value) = (survey.Cabinet.Depth, survey.Depth.Interval(item).LeastMm);
        return value == 0 ? "0"
            : item.Face == Face.Front ? Invariant($"{cabinet.FrontDoorMm:0.###} + {item.FrontProjectionMm:0.###} = {value:0.###}")
            : Invariant($"{cabinet.FrontDoorMm:0.###} + {item.BodyDepthMm ?? 0:0.###}")
                + Invariant($" + {item.RearProjectionMm:0.###} - {survey.Cabinet.SpacingMm:0.###} = {value:0.###}");
    }

    /// <summary>The maximum setback of an item of known depth, as "775 - 500 - 25 = 250".</summary>
    public static string Greatest(RackSurvey survey, MountedItem item)
    {
        var (cabinet, value) = (survey.Cabinet.Depth, survey.Depth.Interval(item).GreatestMm);
        return item.Face == Face.Front
            ? Invariant($"{cabinet.RearLimitMm:0.###} - {item.BodyDepthMm ?? 0:0.###} - {item.RearProjectionMm:0.###} = {value:0.###}")
            : Invariant($"{cabinet.RearLimitMm:0.###} - {(cabinet.RearOpen ? 0 : item.FrontProjectionMm):0.###} - {survey.Cabinet.SpacingMm:0.###}")
                + Invariant($" = {value:0.###}");
    }
}
