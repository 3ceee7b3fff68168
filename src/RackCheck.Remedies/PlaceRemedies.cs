using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

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
    public static IEnumerable<RemedyCandidate> Move(RackSurvey survey, MountedItem what, int? heightU = null)
    {
        if (Mount(survey, what, heightU) is { } mount)
        {
            yield return mount;
        }
        else if (what.IsPlaced)
        {
            // No place is to be had: then at least the rest of the rack stands, and the item is on the list of what has none.
            yield return Resize(new RemedyBuilder(survey), what, heightU).Unplace(what).Titled($"Take {what.Name} out of the layout; it needs another place");
        }

        if (TakeOut(survey, what) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>Moves something to the nearest free place, else takes a higher cabinet; null where neither can be had.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="what">What is to be moved.</param>
    /// <param name="heightU">Units that it needs, where that changes; with it goes the change of its height.</param>
    /// <returns>The remedy.</returns>
    public static RemedyCandidate? Mount(RackSurvey survey, MountedItem what, int? heightU = null)
    {
        var needed = heightU ?? what.HeightU;
        return survey.Occupancy.FindPlace(what, needed, what.Bottom ?? 1, survey.Cabinet.HeightU) is { } bottom
            ? Resize(new RemedyBuilder(survey), what, heightU)
                .Place(what, bottom)
                .Titled($"Mount {what.Id} at {survey.Cabinet.UnitsText(bottom, bottom + needed - 1)}, {CabinetFacts.FaceText(what.Face)}")
            : Higher(survey, what, needed, heightU);
    }

    /// <summary>
    /// Leaves the largest of a heap where it is and mounts the others at free places, the largest first; those that find none are taken out of the layout.
    /// </summary>
    /// <param name="survey">The facts.</param>
    /// <param name="heap">Items that claim the same place.</param>
    /// <returns>The remedy.</returns>
    public static RemedyCandidate Spread(RackSurvey survey, IReadOnlyCollection<MountedItem> heap)
    {
        var taken = survey.Occupancy.ByPlace.Where(m => !heap.Contains(m))
            .Aggregate(0UL, static (bits, m) => bits | Occupancy.Mask(m.Bottom!.Value, m.ClaimTop));
        var order = heap.OrderByDescending(m => m.HeightU + m.LoadHeightU).ThenBy(m => m.Key, StringComparer.Ordinal).ToList();
        taken |= Occupancy.Mask(order[0].Bottom!.Value, order[0].ClaimTop);
        var builder = new RemedyBuilder(survey);
        var left = 0;
        foreach (var item in order.Skip(1))
        {
            var height = item.HeightU + item.LoadHeightU;
            var bottom = 1;
            while (bottom + height - 1 <= survey.Cabinet.HeightU && (taken & Occupancy.Mask(bottom, bottom + height - 1)) != 0)
            {
                bottom++;
            }

            if (bottom + height - 1 > survey.Cabinet.HeightU)
            {
                builder.Unplace(item);
                left++;
                continue;
            }

            taken |= Occupancy.Mask(bottom, bottom + height - 1);
            builder.Place(item, bottom);
        }

        var moved = heap.Count - 1 - left;
        return builder.Titled(FormattableString.Invariant(
            $"Leave {order[0].Name} where it is, mount {moved} of the others at free places{(left == 0 ? "" : $", and find another rack for {left}")}"));
    }

    /// <summary>Takes items out of this rack, with what is to stand on them; null for a PDU, which outlets hang on.</summary>
    /// <param name="survey">The facts.</param>
    /// <param name="items">What is taken out.</param>
    /// <returns>The remedy.</returns>
    public static RemedyCandidate? TakeOut(RackSurvey survey, params IReadOnlyList<MountedItem> items)
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

        return new RemedyCandidate(
            Names.ToAnotherRack([.. all.Select(i => i.Id).Order(StringComparer.Ordinal)]), survey.Description.WithoutItems(all.Select(i => i.Id)));
    }

    /// <summary>A higher cabinet, as far as the contract and the trade know one.</summary>
    /// <param name="neededU">Units needed.</param>
    /// <returns>Units, or null where none is high enough.</returns>
    public static int? HigherCabinetU(int neededU) =>
        CabinetSizes.HeightAtLeast(neededU) ?? (neededU <= MostU ? neededU : null);

    private static RemedyCandidate? Higher(RackSurvey survey, MountedItem what, int needed, int? heightU)
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

        var builder = new RemedyBuilder(survey).Raise(roof, what);
        return Resize(builder, what, heightU)
            .Place(what, bottom, roof)
            .Titled($"Take a cabinet of {roof} units and mount {what.Id} in the new room at the top");
    }

    private static RemedyBuilder Resize(RemedyBuilder builder, MountedItem what, int? heightU) =>
        heightU is { } units ? builder.SetItem(what, i => i with { HeightU = units }) : builder;
}
