using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Remedies;

/// <summary>Cures that change the distance between front and rear uprights.</summary>
public static class SpacingRemedies
{
    /// <summary>
    /// The spacing in a range that is nearest to the one given, by whole steps of the holes; null where moving the rear uprights
    /// there would break something else.
    /// </summary>
    /// <param name="survey">The facts.</param>
    /// <param name="range">Spacings wanted, mm.</param>
    /// <returns>The remedy.</returns>
    public static RemedyCandidate? Move(RackSurvey survey, SetbackInterval range)
    {
        if (survey.Cabinet.SpacingMm is not { } now
            || range.OnPitch(now, survey.Cabinet.PitchMm) is not { } spacing
            || spacing < 1
            || !CanStand(survey, spacing))
        {
            return null;
        }

        return new RemedyBuilder(survey)
            .SetUprights(u => u with { SpacingMm = spacing })
            .Titled(Invariant($"Set the rear uprights {spacing:0.###} mm behind the front ones"));
    }

    // What hangs on the rear uprights would move with them; and the other rails must fit too.
    private static bool CanStand(RackSurvey survey, double spacing) =>
        !Comparison.IsOver((survey.Cabinet.SetbackMm ?? survey.Depth.All.LeastMm) + spacing, survey.Cabinet.Depth.RearLimitMm)
        && !survey.Items.Any(item => item.Face == Face.Rear || (item.HasRails && !item.RailRange.Holds(spacing)))
        && !survey.Units.Any(unit => unit.Face == Face.Rear);
}
