using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Remedies;

/// <summary>Remedies that change the spacing between front and rear uprights.</summary>
public static class SpacingRemedies
{
    private static readonly MessageWording RearUprights = new("remedy.rear-uprights", "Set the rear uprights {spacingMm:exact} mm behind the front ones");

    /// <summary>
    /// The spacing in a range that is nearest to the given one, in whole steps of the hole pitch; null if moving the rear uprights
    /// there would cause another defect.
    /// </summary>
    /// <param name="range">Permitted spacings, mm.</param>
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
            .Titled(new(RearUprights, ("spacingMm", spacing)));
    }

    // Items on the rear uprights would move with them, and the other rails must still fit.
    private static bool CanStand(RackSurvey survey, double spacing) =>
        !Comparison.IsOver((survey.Cabinet.SetbackMm ?? survey.Depth.All.LeastMm) + spacing, survey.Cabinet.Depth.RearLimitMm)
        && !survey.Items.Any(item => item.Face == Face.Rear || (item.HasRails && !item.RailRange.Holds(spacing)))
        && !survey.Units.Any(unit => unit.Face == Face.Rear);
}
