using RackCheck.Engineering;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Building;

/// <summary>Lengths of cords and leads between two places of a rack.</summary>
internal static class LeadRoutes
{
    // Slack for bends at both ends; common practice, no source.
    private const double SlackMm = 300;

    /// <summary>Length of a lead, m: from the back of an item to the side of the rack, up or down, and across to the other end.</summary>
    /// <param name="survey">The rack.</param>
    /// <param name="from">The item.</param>
    /// <param name="to">What the lead ends at; null for a vertical PDU, which has an outlet beside every item.</param>
    /// <returns>The length, m; 0 where the route is not known.</returns>
    public static double LengthM(RackSurvey survey, MountedItem from, MountedItem? to)
    {
        if (EarthRoute.Of(survey.Cabinet, from) is not { } route)
        {
            return 0;
        }

        var across = route.SideMm + (route.BackMm ?? 0) + (route.PullMm ?? 0) + SlackMm;
        if (to is not null && Middle(to) is { } end && Middle(from) is { } start)
        {
            across += route.SideMm + (RackGeometry.UnitMm * Math.Abs(end - start));
        }

        return Math.Ceiling(across) / 1000;
    }

    private static double? Middle(MountedItem what)
    {
        var carrier = what.Shelf ?? what;
        return carrier.Bottom is { } bottom ? bottom + (carrier.HeightU / 2.0) : null;
    }
}
