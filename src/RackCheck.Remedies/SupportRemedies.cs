using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that change the support of an item.</summary>
public static class SupportRemedies
{
    private static readonly MessageWording FixedRunners = new("remedy.fixed-runners", "Mount {item} on a pair of fixed runners");
    private static readonly MessageWording OwnShelf = new("remedy.own-shelf", "Mount {item} on a separate shelf");

    /// <summary>
    /// Mounts an item on fixed runners, or on its own shelf if the runners would stack on those of its neighbours. Nothing for an item that is used in the
    /// extended position or carries others: it would no longer pull out. An item on slides gets no shelf, which would end its service from the front.
    /// </summary>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Fixed(RackSurvey survey, MountedItem item)
    {
        if (MustPullOut(item))
        {
            yield break;
        }

        var support = new Support { RatedKg = item.Item?.Support?.RatedKg };
        if (!HasRunnersBeside(survey, item))
        {
            yield return new RemedyBuilder(survey).SetSupport(item, support with { Style = SupportStyle.Runners })
                .Titled(new(FixedRunners, ("item", item.Id)));
        }

        if (item.SupportStyle != SupportStyle.Slides)
        {
            yield return new RemedyBuilder(survey).SetSupport(item, support with { Style = SupportStyle.Shelf })
                .Titled(new(OwnShelf, ("item", item.Id)));
        }
    }

    /// <summary>Whether an item works only if it pulls out: a console drawer, a tray with items on it, or equipment used in the extended position.</summary>
    public static bool MustPullOut(MountedItem item) =>
        item.SupportStyle == SupportStyle.Slides
        && (item.Category is ItemCategory.KeyboardDrawer or ItemCategory.Shelf || item.Item!.Support!.UsedExtended == true);

    private static bool HasRunnersBeside(RackSurvey survey, MountedItem item) =>
        item.IsPlaced && survey.Occupancy.ByPlace.Any(other =>
            !ReferenceEquals(other, item) && other.Face == item.Face && other.SupportStyle == SupportStyle.Runners
            && other.Bottom <= item.Top + 1 && other.Top >= item.Bottom - 1);
}
