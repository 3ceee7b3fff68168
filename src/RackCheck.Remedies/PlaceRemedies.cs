using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that move an item to another position, in this cabinet or in a higher one, or remove it.</summary>
public static class PlaceRemedies
{
    /// <summary>Maximum height of the mounting space in the contract, U.</summary>
    public const int MostU = 60;

    /// <summary>Moves an item to the nearest free position; else uses a higher cabinet; else removes it from the rack.</summary>
    /// <param name="what">The item to move.</param>
    /// <param name="heightU">Its new height in U, if that changes; the change is part of the remedy.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> Move(RackSurvey survey, MountedItem what, int? heightU = null)
    {
        if (Mount(survey, what, heightU) is { } mount)
        {
            yield return mount;
        }
        else if (what.IsPlaced)
        {
            // No position is available: the rest of the rack stays valid, and the item is reported as not placed.
            yield return Resize(new RemedyBuilder(survey), what, heightU).Unplace(what).Titled($"Remove {what.Name} from the layout; it needs another place");
        }

        if (TakeOut(survey, what) is { } takeOut)
        {
            yield return takeOut;
        }
    }

    /// <summary>Moves an item to the nearest free position, else uses a higher cabinet; null if neither is possible.</summary>
    /// <param name="what">The item to move.</param>
    /// <param name="heightU">Its new height in U, if that changes; the change is part of the remedy.</param>
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
    /// Leaves the largest of several colliding items in place and mounts the others at free positions, largest first; the rest leaves the layout.
    /// </summary>
    /// <param name="heap">Items with the same U position.</param>
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
            $"Leave {order[0].Name} where it is, mount {moved} of the others at free positions{(left == 0 ? "" : $", and find another rack for {left}")}"));
    }

    /// <summary>Removes items from this rack, with the items on them; null for a PDU, because it has outlets.</summary>
    /// <param name="items">The items to remove.</param>
    public static RemedyCandidate? TakeOut(RackSurvey survey, params IReadOnlyList<MountedItem> items)
    {
        if (items.Any(item => item.Item is null))
        {
            return null;
        }

        // By the id of the shelf, even if it is not a shelf: no description may refer to a missing item.
        var all = items.ToList();
        for (var i = 0; i < all.Count; i++)
        {
            all.AddRange(survey.Items.Where(thing => thing.Item!.OnShelf == all[i].Id && !all.Contains(thing)));
        }

        return new RemedyCandidate(
            Names.ToAnotherRack([.. all.Select(i => i.Id).Order(StringComparer.Ordinal)]), survey.Description.WithoutItems(all.Select(i => i.Id)));
    }

    /// <summary>A higher cabinet, within the contract and the usual heights.</summary>
    /// <param name="neededU">Required height, U.</param>
    /// <returns>Height, U; null if none is high enough.</returns>
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

        // One more U for a set on runners, which keeps 1 U free below it.
        var gap = what.SupportStyle == SupportStyle.Runners ? 1 : 0;
        if (HigherCabinetU(most + gap + needed + what.LoadHeightU) is not { } roof
            || survey.Occupancy.FindPlace(what, needed, survey.Cabinet.HeightU + 1, roof) is not { } bottom)
        {
            return null;
        }

        var builder = new RemedyBuilder(survey).Raise(roof, what);
        return Resize(builder, what, heightU)
            .Place(what, bottom, roof)
            .Titled($"Use a {roof}U cabinet and mount {what.Id} in the added space at the top");
    }

    private static RemedyBuilder Resize(RemedyBuilder builder, MountedItem what, int? heightU) =>
        heightU is { } units ? builder.SetItem(what, i => i with { HeightU = units }) : builder;
}
