using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies for a stack on fixed runners that is too high.</summary>
public static class RunnerRemedies
{
    private static readonly WordingChoice FreeUnit = new(
        "remedy.free-unit", "Move {items} up and leave 1 U free [several:at {count} places ]in the stack");
    private static readonly MessageWording SeparateShelf = new("remedy.shelf-for-runners", "Mount {items} on a separate shelf instead of runners");

    /// <summary>
    /// Leaves free U positions in the stack by moving sets up; or, as an alternative, mounts single sets on shelves of their own or in another rack.
    /// </summary>
    /// <param name="run">The stack, from the bottom.</param>
    /// <param name="fits">Whether a stack is permitted.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> For(RackSurvey survey, IReadOnlyList<MountedItem> run, Func<IReadOnlyList<MountedItem>, bool> fits)
    {
        if (Shifts(run, fits) is var shifts && CanShift(survey, run, shifts))
        {
            yield return Shift(survey, run, shifts);
        }

        var tooMany = TooMany(run, fits);
        yield return Shelve(survey, tooMany);
        if (PlaceRemedies.TakeOut(survey, tooMany) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    // The sets with which a part of the stack is too high; the next part begins above each.
    private static List<MountedItem> TooMany(IReadOnlyList<MountedItem> run, Func<IReadOnlyList<MountedItem>, bool> fits)
    {
        var (part, found) = (new List<MountedItem>(), new List<MountedItem>());
        foreach (var set in run)
        {
            part.Add(set);
            if (!fits(part))
            {
                found.Add(set);
                part = [];
            }
        }

        return found;
    }

    // How far each set moves up if 1 U is left free wherever the next set would make its part of the stack too high.
    private static int[] Shifts(IReadOnlyList<MountedItem> run, Func<IReadOnlyList<MountedItem>, bool> fits)
    {
        var shifts = new int[run.Count];
        var part = new List<MountedItem>();
        var gaps = 0;
        for (var i = 0; i < run.Count; i++)
        {
            part.Add(run[i]);
            if (!fits(part))
            {
                gaps++;
                part = [run[i]];
            }

            shifts[i] = gaps;
        }

        return shifts;
    }

    private static bool CanShift(RackSurvey survey, IReadOnlyList<MountedItem> run, int[] shifts)
    {
        var top = run[^1].ClaimTop + shifts[^1];
        if (top > survey.Cabinet.HeightU)
        {
            return false;
        }

        for (var i = 0; i < run.Count; i++)
        {
            if (shifts[i] > 0 && !HasRoom(survey, run, run[i], run[i].Bottom!.Value + shifts[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool HasRoom(RackSurvey survey, IReadOnlyList<MountedItem> run, MountedItem what, int bottom)
    {
        foreach (var other in survey.Occupancy.ByPlace)
        {
            // 1 U stays free between the moved stack and other sets on runners.
            var margin = other.Face == what.Face && other.SupportStyle == SupportStyle.Runners ? 1 : 0;
            var touches = other.Bottom <= bottom + what.HeightU - 1 + what.LoadHeightU + margin && other.ClaimTop >= bottom - margin;
            if (touches && !BlankingPanels.IsPanel(other) && !run.Contains(other)
                && (other.Face == what.Face || survey.Occupancy.Meet(what, other) == Meeting.Yes))
            {
                return false;
            }
        }

        return true;
    }

    private static RemedyCandidate Shift(RackSurvey survey, IReadOnlyList<MountedItem> run, int[] shifts)
    {
        var builder = new RemedyBuilder(survey);
        var moved = new List<MountedItem>();
        for (var i = 0; i < run.Count; i++)
        {
            if (shifts[i] > 0)
            {
                builder.Place(run[i], run[i].Bottom!.Value + shifts[i]);
                moved.Add(run[i]);
            }
        }

        // The stack is on one face: sets that stay where they are keep the panels out of the free positions only.
        var places = run.Select((set, i) => (set, set.Bottom!.Value + shifts[i], set.HeightU));
        return BlankingPanels.Fit(survey, builder, [.. places]).Titled(new(
            FreeUnit.With(shifts[^1] > 1 ? "several" : ""), ("items", Names.Ids(moved.Select(m => m.Id))), ("count", shifts[^1])));
    }

    private static RemedyCandidate Shelve(RackSurvey survey, List<MountedItem> sets)
    {
        var builder = new RemedyBuilder(survey);
        foreach (var set in sets)
        {
            builder.SetSupport(set, new Support { Style = SupportStyle.Shelf, RatedKg = set.Item?.Support?.RatedKg });
        }

        return builder.Titled(new(SeparateShelf, ("items", Names.Ids(sets.Select(s => s.Id)))));
    }
}
