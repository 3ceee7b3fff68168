using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Survey;

namespace RackCheck.Rules.Remedies;

/// <summary>Cures that find something another place, in this cabinet or in a higher one, or take it out.</summary>
public static class PlaceRemedies
{
    /// <summary>Highest mounting space that the contract knows, units.</summary>
    public const int MostU = 60;

    /// <summary>Moves something to the nearest free place; else takes a higher cabinet; else takes it out of the rack.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="what">What is to be moved.</param>
    /// <param name="heightU">Units that it needs, where that changes; with it goes the change of its height.</param>
    /// <returns>Remedies, best first.</returns>
    public static List<Remedy> Move(RackSurvey survey, Mounted what, int? heightU = null)
    {
        var remedies = new List<Remedy>();
        if (Mount(survey, what, heightU) is { } mount)
        {
            remedies.Add(mount);
        }
        else if (what.IsPlaced)
        {
            // No place is to be had: then at least the rest of the rack stands, and the item is on the list of what has none.
            remedies.Add(Resize(new PatchBuilder(survey), what, heightU).Unplace(what).Titled($"Take {what.Name} out of the layout; it needs another place"));
        }

        if (TakeOut(survey, what) is { } takeOut)
        {
            remedies.Add(takeOut);
        }

        return remedies;
    }

    /// <summary>Moves something to the nearest free place, else takes a higher cabinet; null where neither can be had.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="what">What is to be moved.</param>
    /// <param name="heightU">Units that it needs, where that changes; with it goes the change of its height.</param>
    /// <returns>The remedy.</returns>
    public static Remedy? Mount(RackSurvey survey, Mounted what, int? heightU = null)
    {
        var needed = heightU ?? what.HeightU;
        return survey.Occupancy.FindPlace(what, needed, what.Bottom ?? 1, survey.Cabinet.HeightU) is { } bottom
            ? Resize(new PatchBuilder(survey), what, heightU)
                .Place(what, bottom)
                .Titled($"Mount {what.Id} at {survey.Cabinet.UnitsText(bottom, bottom + needed - 1)}, {CabinetFacts.FaceText(what.Face)}")
            : Higher(survey, what, needed, heightU);
    }

    /// <summary>Takes items out of this rack, with what is to stand on them; null for a distribution unit, which outlets hang on, and for a UPS that feeds one.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="items">What is taken out.</param>
    /// <returns>The remedy.</returns>
    public static Remedy? TakeOut(RackSurvey survey, params IReadOnlyList<Mounted> items)
    {
        if (items.Any(item => item.Item is null))
        {
            return null;
        }

        // By the name of the shelf, whether that is one or not: no description may name what is not there.
        var all = items.ToList();
        for (var i = 0; i < all.Count; i++)
        {
            all.AddRange(survey.Items.Where(thing => thing.Item!.OnShelf == all[i].Id && !all.Contains(thing)));
        }

        if (all.Exists(item => item.Item is { Ups.Feeds.Count: > 0 }))
        {
            return null;
        }

        var names = string.Join(" and ", all.Select(i => i.Id).Order(StringComparer.Ordinal));
        return new PatchBuilder(survey).TakeOut(all).Titled($"Take {names} out of this rack, for another one");
    }

    /// <summary>A higher cabinet, as far as the contract and the trade know one.</summary>
    /// <param name="neededU">Units needed.</param>
    /// <returns>Units, or null where none is high enough.</returns>
    public static int? HigherCabinetU(int neededU) =>
        CabinetSizes.HeightAtLeast(neededU) ?? (neededU <= MostU ? neededU : null);

    private static Remedy? Higher(RackSurvey survey, Mounted what, int needed, int? heightU)
    {
        var most = survey.Cabinet.HeightU;
        foreach (var other in survey.Occupancy.ByPlace)
        {
            if (!ReferenceEquals(other, what))
            {
                most = Math.Max(most, other.ClaimTop);
            }
        }

        // One unit more for a set on runners, which keeps a free unit below.
        var gap = what.SupportStyle == SupportStyle.Runners ? 1 : 0;
        if (HigherCabinetU(most + gap + needed + what.LoadHeightU) is not { } roof
            || survey.Occupancy.FindPlace(what, needed, survey.Cabinet.HeightU + 1, roof) is not { } bottom)
        {
            return null;
        }

        var patch = new PatchBuilder(survey).Raise(roof, what);
        return Resize(patch, what, heightU)
            .Place(what, bottom, roof)
            .Titled($"Take a cabinet of {roof} units and mount {what.Id} in the new room at the top");
    }

    private static PatchBuilder Resize(PatchBuilder patch, Mounted what, int? heightU) =>
        heightU is { } units ? patch.Set($"{what.Pointer}/heightU", units) : patch;
}
