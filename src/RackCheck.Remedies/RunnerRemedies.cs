using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Cures for a run of sets on fixed runners that is too long.</summary>
public static class RunnerRemedies
{
    /// <summary>Leaves free units in the run where the sets above can move up; and, as the other way, carries single sets on shelves of their own.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="run">The run, from below.</param>
    /// <param name="fits">Whether a run may stand.</param>
    /// <returns>Remedies, best first.</returns>
    public static IEnumerable<RemedyCandidate> For(RackSurvey survey, IReadOnlyList<MountedItem> run, Func<IReadOnlyList<MountedItem>, bool> fits)
    {
        if (Shifts(run, fits) is var shifts && CanShift(survey, run, shifts))
        {
            yield return Shift(survey, run, shifts);
        }

        yield return Shelve(survey, run, fits);
    }

    // How many units each set moves up when a free unit goes in wherever the next set would make its part of the run too long.
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
            // One free unit stays between the moved run and other sets on runners.
            var margin = other.Face == what.Face && other.SupportStyle == SupportStyle.Runners ? 1 : 0;
            var touches = other.Bottom <= bottom + what.HeightU - 1 + what.LoadHeightU + margin && other.ClaimTop >= bottom - margin;
            if (touches && !run.Contains(other) && (other.Face == what.Face || survey.Occupancy.Meet(what, other) == Meeting.Yes))
            {
                return false;
            }
        }

        return true;
    }

    private static RemedyCandidate Shift(RackSurvey survey, IReadOnlyList<MountedItem> run, int[] shifts)
    {
        var builder = new RemedyBuilder(survey);
        var moved = new List<string>();
        for (var i = 0; i < run.Count; i++)
        {
            if (shifts[i] > 0)
            {
                builder.Place(run[i], run[i].Bottom!.Value + shifts[i]);
                moved.Add(run[i].Id);
            }
        }

        return builder.Titled($"Move {Names.List(moved)} up so that a free unit lies in the run");
    }

    private static RemedyCandidate Shelve(RackSurvey survey, IReadOnlyList<MountedItem> run, Func<IReadOnlyList<MountedItem>, bool> fits)
    {
        var builder = new RemedyBuilder(survey);
        var part = new List<MountedItem>();
        var shelved = new List<string>();
        foreach (var set in run)
        {
            part.Add(set);
            if (!fits(part))
            {
                builder.SetSupport(set, new Support { Style = SupportStyle.Shelf, RatedKg = set.Item?.Support?.RatedKg });
                shelved.Add(set.Id);
                part = [];
            }
        }

        return builder.Titled($"Carry {Names.List(shelved)} on a shelf of its own instead of runners");
    }
}
