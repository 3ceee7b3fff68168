using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>Equipment that the order wants on a UPS and that none feeds, and the UPS that would.</summary>
internal static class UpsShortfall
{
    /// <summary>The equipment that no UPS feeds in the racks of a basket. What has no plug needs none.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its racks.</param>
    /// <returns>The ids.</returns>
    public static string[] Of(BasketLines lines, BasketPlan plan)
    {
        var passive = lines.Items.Where(i => i.Power is null or { Plugs.Count: 0 }).Select(i => i.Id).ToHashSet(StringComparer.Ordinal);
        var wanted = lines.Ordered.OnUps.Where(w => w.Value && !passive.Contains(w.Key)).Select(w => w.Key).ToHashSet(StringComparer.Ordinal);
        if (wanted.Count == 0)
        {
            return [];
        }

        foreach (var trial in plan.Racks.Select(r => r.Trial))
        {
            wanted.ExceptWith(trial.FedByUps);
        }

        return [.. wanted];
    }

    /// <summary>Why none feeds it: no UPS, too little power, too short a time, or else too few outlets.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="offered">Products on offer.</param>
    public static WordedText Why(BasketLines lines, IReadOnlyList<Product> offered)
    {
        if (!lines.Items.Any(i => i.Ups is not null))
        {
            return new(LineWordings.NoUpsLeft.With("none"));
        }

        var (neededW, ratedW) = (NeededW(lines), RatedW(lines));
        if (neededW > ratedW)
        {
            var why = new WordedText(LineWordings.NoUpsLeft.With("power"), ("ratedW", ratedW), ("neededW", neededW));
            return Larger(neededW, offered) is { } larger
                ? why.With(new WordedText(LineWordings.LargerUps, ("name", larger.Name), ("ratedW", larger.Item!.Ups!.RatedW!.Value)))
                : why;
        }

        return lines.Request.Site?.UpsMinutes is > 0 and var minutes && neededW > lines.Items.Sum(i => i.Ups is { } ups ? UpsFeeds.LoadFor(ups, minutes) : 0)
            ? new(LineWordings.NoUpsLeft.With("time"), ("minutes", minutes))
            : new(LineWordings.NoUpsLeft.With());
    }

    /// <summary>The larger UPS that takes the place of the only one of the order, where that has too little power for what is to be on it.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its racks.</param>
    /// <param name="offered">Products on offer.</param>
    /// <returns>The exchange; null where the order has none or several, it is the customer's own, it suffices, or none on offer does.</returns>
    public static Exchange? Remedy(BasketLines lines, BasketPlan plan, IReadOnlyList<Product> offered)
    {
        if (lines.Items.Where(i => i.Ups is not null).ToArray() is not [{ } ups] || lines.LineOfItem(ups.Id) is not { } line
            || lines.Request.Lines[line].PartNumber is null || Of(lines, plan).Length == 0)
        {
            return null;
        }

        var (neededW, ratedW) = (NeededW(lines), RatedW(lines));
        return neededW > ratedW && Larger(neededW, offered) is { } larger
            ? new Exchange(
                BasketLines.PointerOf(line), larger, 1, new WordedText(LineWordings.SmallUps, ("ratedW", ratedW), ("neededW", neededW)))
            : null;
    }

    private static double NeededW(BasketLines lines) => lines.Items.Where(i => lines.Ordered.OnUps.GetValueOrDefault(i.Id)).Sum(i => i.Power?.RatedW ?? 0);

    private static double RatedW(BasketLines lines) => lines.Items.Sum(i => i.Ups?.RatedW ?? 0);

    // The smallest that suffices.
    private static Product? Larger(double neededW, IReadOnlyList<Product> offered) =>
        offered.Where(p => p.Item?.Ups?.RatedW >= neededW).OrderBy(p => p.Item!.Ups!.RatedW).ThenBy(p => p.PartNumber, StringComparer.Ordinal).FirstOrDefault();
}
