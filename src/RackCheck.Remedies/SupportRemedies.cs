using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that change the support of an item.</summary>
public static class SupportRemedies
{
    /// <summary>Mounts an item on fixed runners, or on its own shelf if the runners would stack on those of its neighbours.</summary>
    public static RemedyCandidate Fixed(RackSurvey survey, MountedItem item)
    {
        var style = HasRunnersBeside(survey, item) ? SupportStyle.Shelf : SupportStyle.Runners;
        var support = new Support { Style = style, RatedKg = item.Item?.Support?.RatedKg };
        return new RemedyBuilder(survey)
            .SetSupport(item, support)
            .Titled(style == SupportStyle.Runners
                ? $"Mount {item.Id} on a pair of fixed runners"
                : $"Mount {item.Id} on a separate shelf");
    }

    private static bool HasRunnersBeside(RackSurvey survey, MountedItem item) =>
        item.IsPlaced && survey.Occupancy.ByPlace.Any(other =>
            !ReferenceEquals(other, item) && other.Face == item.Face && other.SupportStyle == SupportStyle.Runners
            && other.Bottom <= item.Top + 1 && other.Top >= item.Bottom - 1);
}
