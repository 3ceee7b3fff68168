using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Remedies;

/// <summary>Remedies that move an item to another position, in this cabinet or in a higher one, or remove it.</summary>
public static class PlaceRemedies
{
    private static readonly WordingChoice Unplaced = new("remedy.unplace", "Remove [pdu:PDU {item}|{item}] from the layout; it needs another place");
    private static readonly WordingChoice MountFree = new(
        "remedy.mount-all", "[higher:Use a {heightU}U cabinet and mount|Mount] [one:{item} at {units:units}|{items} at free U positions, heavy items low]");
    private static readonly MessageWording MountSome = new("remedy.mount-some", "Mount {items} at free U positions");
    private static readonly WordingChoice LeaveOne = new(
        "remedy.spread", "Leave [pdu:PDU {item}|{item}] where it is, mount {moved} of the others at free positions[left:, and find another rack for {left}]");
    private static readonly MessageWording AtTop = new("remedy.mount-at-top", "Use a {heightU}U cabinet and mount {item} in the added space at the top");

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
            yield return Resize(new RemedyBuilder(survey), what, heightU).Unplace(what).Titled(
                new(Unplaced.With(what.Item is null ? "pdu" : null), ("item", what.Id)));
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
        var open = BlankingPanels.IsPanel(what) ? survey.Occupancy : BlankingPanels.GivingWay(survey, what.Face);
        if ((survey.Occupancy.FindPlace(what, needed, what.Bottom ?? 1, survey.Cabinet.HeightU)
            ?? open.FindPlace(what, needed, what.Bottom ?? 1, survey.Cabinet.HeightU)) is not { } bottom)
        {
            return Higher(survey, what, needed, heightU);
        }

        var fit = BlankingPanels.Fit(survey, Resize(new RemedyBuilder(survey), what, heightU).Place(what, bottom), (what, bottom, needed));
        if (bottom == what.Bottom && heightU is null && fit.Displaced.Count > 0)
        {
            // It stays where it is; what stands on it needs the positions of the panels.
            return new RemedyCandidate(
                fit.IsRefitted ? BlankingPanels.Refit : RemedyTitles.ToAnotherRack(fit.Displaced.Select(p => p.Id).Order(StringComparer.Ordinal)), fit.After);
        }

        return fit.Titled(RemedyTitles.Mount(survey.Cabinet, what, bottom, needed, fit.Displaced));
    }

    /// <summary>
    /// Places items that have no position all together, heavy ones low: in this cabinet, else in the next higher one that has room, else as many as there is
    /// room for, and the rest in another rack.
    /// </summary>
    /// <param name="items">Items without a position.</param>
    /// <returns>Candidates, best first.</returns>
    public static IEnumerable<RemedyCandidate> MountAll(RackSurvey survey, IReadOnlyCollection<MountedItem> items)
    {
        var order = items.OrderByDescending(MassSurvey.LoadedKg).ThenByDescending(i => i.HeightU + i.LoadHeightU)
            .ThenBy(i => i.Id, StringComparer.Ordinal).ToArray();
        string[] ids = [.. order.Select(i => i.Id).Order(StringComparer.Ordinal)];
        var now = survey.Cabinet.HeightU;
        foreach (var (roof, panelsStay) in CabinetSizes.HeightsU.Where(u => u > now).Select(u => (u, true)).Prepend((now, false)).Prepend((now, true)))
        {
            var (places, left) = Fill(survey, order, roof, panelsStay);
            if (left.Count > 0)
            {
                continue;
            }

            var isHigher = roof > now;
            var builder = At(survey, isHigher ? new RemedyBuilder(survey).Raise(roof) : new RemedyBuilder(survey), places, roof);
            yield return (panelsStay ? new PanelFit(builder.After, [], false) : Fitted(survey, builder, places)).Titled(
                new(
                    MountFree.With(isHigher ? "higher" : null, ids.Length == 1 ? "one" : null),
                    [
                        .. isHigher ? [("heightU", roof)] : ((string, Scalar)[])[],
                        .. ids.Length == 1
                            ? [("item", ids[0]), ("units", survey.Cabinet.Units(places[0].Bottom, places[0].Bottom + places[0].Item.HeightU - 1))]
                            : ((string, Scalar)[])[("items", Names.Ids(ids))],
                    ]));
            yield break;
        }

        var (some, rest) = Fill(survey, order, now, panelsStay: true);
        if (some.Count > 0 && TakeOut(survey, [.. rest]) is { } takeOut)
        {
            var placed = At(survey, new RemedyBuilder(survey), some, now).After;
            yield return new RemedyCandidate(
                new WordedText(MountSome, ("items", Names.Ids(some.Select(p => p.Item.Id)))).Then(takeOut.Title),
                placed.WithoutItems(rest.Select(i => i.Id)));
        }
    }

    private static RemedyBuilder At(RackSurvey survey, RemedyBuilder builder, List<(MountedItem Item, int Bottom)> places, int roof) =>
        places.Aggregate(builder, (b, p) => b.Place(p.Item, p.Bottom, roof));

    private static PanelFit Fitted(RackSurvey survey, RemedyBuilder builder, List<(MountedItem Item, int Bottom)> places) =>
        BlankingPanels.Fit(survey, builder, [.. places.Where(p => p.Item.Face == Face.Front).Select(p => (p.Item, p.Bottom, p.Item.HeightU))]);

    // The lowest free position for each item in turn; on both faces, if the depths allow it.
    private static (List<(MountedItem Item, int Bottom)> Places, List<MountedItem> Left) Fill(
        RackSurvey survey, MountedItem[] order, int roof, bool panelsStay)
    {
        var occupied = panelsStay ? survey.Occupancy : BlankingPanels.GivingWay(survey, Face.Front);
        var (places, left) = (new List<(MountedItem Item, int Bottom)>(), new List<MountedItem>());
        foreach (var item in order)
        {
            var height = item.HeightU + item.LoadHeightU;
            var bottom = Enumerable.Range(1, Math.Max(0, roof - height + 1)).FirstOrDefault(
                u => occupied.CanGo(item, item.HeightU, u) && places.TrueForAll(p => IsApart(survey, item, u, p)));
            if (bottom > 0)
            {
                places.Add((item, bottom));
            }
            else
            {
                left.Add(item);
            }
        }

        return (places, left);
    }

    // Two sets on runners keep 1 U free between them, as everywhere.
    private static bool IsApart(RackSurvey survey, MountedItem item, int bottom, (MountedItem Item, int Bottom) other)
    {
        var gap = item.SupportStyle == SupportStyle.Runners && other.Item.SupportStyle == SupportStyle.Runners ? 1 : 0;
        return bottom + item.HeightU + item.LoadHeightU + gap <= other.Bottom
            || other.Bottom + other.Item.HeightU + other.Item.LoadHeightU + gap <= bottom
            || (item.Face != other.Item.Face && survey.Occupancy.Meet(item, other.Item) == Meeting.No);
    }

    /// <summary>
    /// Leaves the largest of several colliding items in place and mounts the others at free positions, largest first; the rest leaves the layout.
    /// </summary>
    /// <param name="heap">Items with the same U position.</param>
    public static RemedyCandidate Spread(RackSurvey survey, IReadOnlyCollection<MountedItem> heap)
    {
        return Spread(survey, heap, panelsStay: true) ?? Spread(survey, heap, panelsStay: false)!;
    }

    private static RemedyCandidate? Spread(RackSurvey survey, IReadOnlyCollection<MountedItem> heap, bool panelsStay)
    {
        var taken = survey.Occupancy.ByPlace.Where(m => !heap.Contains(m) && (panelsStay || !BlankingPanels.IsPanel(m)))
            .Aggregate(0UL, static (bits, m) => bits | Occupancy.Mask(m.Bottom!.Value, m.ClaimTop));
        var order = heap.OrderByDescending(m => m.HeightU + m.LoadHeightU).ThenBy(m => m.Key, StringComparer.Ordinal).ToList();
        taken |= Occupancy.Mask(order[0].Bottom!.Value, order[0].ClaimTop);
        var builder = new RemedyBuilder(survey);
        var (left, places) = (0, new List<(MountedItem Item, int Bottom)> { (order[0], order[0].Bottom!.Value) });
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
                if (panelsStay && Array.Exists(survey.Items, BlankingPanels.IsPanel))
                {
                    return null;
                }

                builder.Unplace(item);
                left++;
                continue;
            }

            taken |= Occupancy.Mask(bottom, bottom + height - 1);
            builder.Place(item, bottom);
            places.Add((item, bottom));
        }

        var moved = heap.Count - 1 - left;
        return (panelsStay ? new PanelFit(builder.After, [], false) : Fitted(survey, builder, places)).Titled(new(
            LeaveOne.With(order[0].Item is null ? "pdu" : null, left == 0 ? null : "left"), ("item", order[0].Id), ("moved", moved), ("left", left)));
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
            RemedyTitles.ToAnotherRack(all.Select(i => i.Id).Order(StringComparer.Ordinal)), survey.Description.WithoutItems(all.Select(i => i.Id)));
    }

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
        if (CabinetSizes.HeightAtLeast(most + gap + needed + what.LoadHeightU) is not { } roof
            || survey.Occupancy.FindPlace(what, needed, survey.Cabinet.HeightU + 1, roof) is not { } bottom)
        {
            return null;
        }

        var builder = new RemedyBuilder(survey).Raise(roof, what);
        return Resize(builder, what, heightU)
            .Place(what, bottom, roof)
            .Titled(new(AtTop, ("heightU", roof), ("item", what.Id)));
    }

    private static RemedyBuilder Resize(RemedyBuilder builder, MountedItem what, int? heightU) =>
        heightU is { } units ? builder.SetItem(what, i => i with { HeightU = units }) : builder;
}
