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
        var needed = heightU ?? what.HeightU;
        var wanted = what.Bottom ?? 1;
        var roof = survey.Cabinet.HeightU;
        if (survey.Occupancy.FindPlace(what, needed, wanted, roof) is { } bottom)
        {
            remedies.Add(Resize(new PatchBuilder(survey), what, heightU)
                .Place(what, bottom)
                .Titled($"Mount {what.Id} at {survey.Cabinet.UnitsText(bottom, bottom + needed - 1)}, {CabinetFacts.FaceText(what.Face)}"));
        }
        else if (Higher(survey, what, needed, heightU) is { } higher)
        {
            remedies.Add(higher);
        }

        if (TakeOut(survey, what) is { } takeOut)
        {
            remedies.Add(takeOut);
        }

        return remedies;
    }

    /// <summary>Takes something out of this rack; null for a distribution unit, or a shelf with things on it.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="items">What is taken out.</param>
    /// <returns>The remedy.</returns>
    public static Remedy? TakeOut(RackSurvey survey, params IReadOnlyList<Mounted> items)
    {
        foreach (var item in items)
        {
            if (item.Item is null || item.Load.Any(thing => !items.Contains(thing)))
            {
                return null;
            }
        }

        var names = string.Join(" and ", items.Select(i => i.Id).Order(StringComparer.Ordinal));
        return new PatchBuilder(survey).TakeOut(items).Titled($"Take {names} out of this rack, for another one");
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
