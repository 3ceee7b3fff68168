using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Depth;

/// <summary>The arithmetic of the setbacks that serve an item, with its numbers put in.</summary>
internal static class DepthText
{
    /// <summary>The least setback that serves an item, as "25 + 40 = 65".</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="item">An item whose depth is known.</param>
    /// <returns>The text; "0" where nothing before the uprights asks for any.</returns>
    public static string Least(RackSurvey survey, Mounted item)
    {
        var (cabinet, value) = (survey.Cabinet.Depth, survey.Depth.Interval(item).LeastMm);
        return value == 0 ? "0"
            : item.Face == Face.Front ? Invariant($"{cabinet.FrontDoorMm:0.###} + {item.FrontProjectionMm:0.###} = {value:0.###}")
            : Invariant($"{cabinet.FrontDoorMm:0.###} + {item.BodyDepthMm ?? 0:0.###} + {item.RearProjectionMm:0.###} - {survey.Cabinet.SpacingMm:0.###} = {value:0.###}");
    }

    /// <summary>The greatest setback that serves an item, as "775 - 500 - 25 = 250".</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="item">An item whose depth is known.</param>
    /// <returns>The text.</returns>
    public static string Greatest(RackSurvey survey, Mounted item)
    {
        var (cabinet, value) = (survey.Cabinet.Depth, survey.Depth.Interval(item).GreatestMm);
        return item.Face == Face.Front
            ? Invariant($"{cabinet.RearLimitMm:0.###} - {item.BodyDepthMm ?? 0:0.###} - {item.RearProjectionMm:0.###} = {value:0.###}")
            : Invariant($"{cabinet.RearLimitMm:0.###} - {(cabinet.RearOpen ? 0 : item.FrontProjectionMm):0.###} - {survey.Cabinet.SpacingMm:0.###} = {value:0.###}");
    }
}
