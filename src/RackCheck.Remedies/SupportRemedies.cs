using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Cures that carry an item in another way.</summary>
public static class SupportRemedies
{
    /// <summary>Carries an item on fixed runners, or on a shelf of its own where runners would stack on its neighbours'.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="item">The item.</param>
    /// <returns>The remedy.</returns>
    public static RemedyCandidate Fixed(RackSurvey survey, MountedItem item)
    {
        var style = HasRunnersBeside(survey, item) ? SupportStyle.Shelf : SupportStyle.Runners;
        var support = new Support { Style = style, RatedKg = item.Item?.Support?.RatedKg };
        return new RemedyBuilder(survey)
            .SetSupport(item, support)
            .Titled(style == SupportStyle.Runners
                ? $"Carry {item.Id} on a pair of fixed runners"
                : $"Carry {item.Id} on a shelf of its own");
    }

    private static bool HasRunnersBeside(RackSurvey survey, MountedItem item) =>
        item.IsPlaced && survey.Occupancy.ByPlace.Any(other =>
            !ReferenceEquals(other, item) && other.Face == item.Face && other.SupportStyle == SupportStyle.Runners
            && other.Bottom <= item.Top + 1 && other.Top >= item.Bottom - 1);
}
