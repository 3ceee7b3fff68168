using RackCheck.Engineering;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for items whose airflow directions disturb each other, or do not suit the cabinet.</summary>
public static class ConflictRemedies
{
    /// <summary>Neighbours moved apart, or one of them removed.</summary>
    /// <param name="one">The item to move.</param>
    /// <param name="other">The item that stays; if the first cannot move, the other is moved.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> PartNeighbours(RackSurvey survey, MountedItem one, MountedItem other)
    {
        foreach (var (moved, from) in new[] { (one, other), (other, one) })
        {
            if ((FindApart(survey, survey.Occupancy, moved, from)
                ?? FindApart(survey, BlankingPanels.GivingWay(survey, moved.Face), moved, from)) is { } bottom)
            {
                var fit = BlankingPanels.Fit(survey, new RemedyBuilder(survey).Place(moved, bottom), (moved, bottom, moved.HeightU));
                yield return fit.Titled(RemedyTitles.Mount(survey.Cabinet, moved, bottom, moved.HeightU, fit.Displaced));
            }
        }

        if (PlaceRemedies.TakeOut(survey, one) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>A cabinet that is wide enough for equipment with airflow from side to side.</summary>
    /// <param name="widthMm">Minimum width, mm.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> WidenFor(RackSurvey survey, MountedItem item, double widthMm)
    {
        foreach (var wider in Widen(survey, widthMm))
        {
            yield return wider;
        }

        if (PlaceRemedies.TakeOut(survey, item) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>A wider cabinet.</summary>
    /// <param name="widthMm">Width that is enough, mm.</param>
    /// <returns>The next usual width; beyond all of them the width that is enough.</returns>
    public static IEnumerable<RemedyCandidate> Widen(RackSurvey survey, double widthMm)
    {
        var wide = CabinetSizes.WidthsMm.Where(w => w >= widthMm).Cast<double?>().FirstOrDefault() ?? widthMm;
        yield return new RemedyCandidate(RemedyTitles.Wide(wide), survey.Description.EditCabinet(c => c with { WidthMm = wide }));
    }

    // The nearest position that is not next to the other item.
    private static int? FindApart(RackSurvey survey, Occupancy occupied, MountedItem moved, MountedItem from)
    {
        var roof = survey.Cabinet.HeightU;
        for (var distance = 1; distance < roof; distance++)
        {
            foreach (var bottom in new[] { moved.Bottom!.Value - distance, moved.Bottom.Value + distance })
            {
                var top = bottom + moved.HeightU + moved.LoadHeightU - 1;
                if (bottom >= 1 && top <= roof && bottom != from.ClaimTop + 1 && top + 1 != from.Bottom && occupied.CanGo(moved, moved.HeightU, bottom))
                {
                    return bottom;
                }
            }
        }

        return null;
    }
}
