using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>Equipment that the order wants on a UPS and that none feeds, and the UPS that would.</summary>
internal static class UpsShortfall
{
    /// <summary>
    /// The equipment that no UPS feeds in the racks of a basket: what the order wants on one, else all that a UPS is for where none feeds anything for the time
    /// that is asked for. What has no plug needs none.
    /// </summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its racks.</param>
    /// <returns>The ids.</returns>
    public static string[] Of(BasketLines lines, BasketPlan plan)
    {
        var fed = plan.Racks.SelectMany(r => r.Trial.FedByUps).ToHashSet(StringComparer.Ordinal);
        return IsWanted(lines) || fed.Count == 0 ? [.. Wanted(lines).Where(i => !fed.Contains(i.Id)).Select(i => i.Id)] : [];
    }

    /// <summary>The equipment that a UPS is for first and that none feeds, where the order does not say what is to be on one.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its racks.</param>
    /// <returns>The ids; empty where it is unmet by <see cref="Of"/>.</returns>
    public static string[] Beside(BasketLines lines, BasketPlan plan)
    {
        if (!lines.Items.Any(i => i.Ups is not null) || IsWanted(lines) || Of(lines, plan).Length > 0)
        {
            return [];
        }

        var fed = plan.Racks.SelectMany(r => r.Trial.FedByUps).ToHashSet(StringComparer.Ordinal);
        return [.. ForUps(lines).Where(i => !fed.Contains(i.Id)).Select(i => i.Id)];
    }

    /// <summary>Why none feeds it: no UPS, too little power, too short a time, or else what is left of each.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="offered">Products on offer.</param>
    public static WordedText Why(BasketLines lines, IReadOnlyList<Product> offered)
    {
        if (!lines.Items.Any(i => i.Ups is not null))
        {
            return new(LineWordings.NoUpsLeft.With("none"));
        }

        var shortfall = ShortfallOf(lines);
        if (shortfall is null)
        {
            return new(LineWordings.NoUpsLeft.With());
        }

        var why = new WordedText(LineWordings.NoUpsLeft.With(shortfall.Value.Key), shortfall.Value.Figures);
        return shortfall is { Key: "power" } && Larger(lines, offered) is { } larger
            ? why.With(new WordedText(LineWordings.LargerUps, ("name", larger.Name), ("ratedW", larger.Item!.Ups!.RatedW!.Value)))
            : why;
    }

    /// <summary>The larger UPS that takes the place of the only one of the order, where that has too little power, or for too short a time.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="plan">Its racks.</param>
    /// <param name="offered">Products on offer.</param>
    /// <returns>The exchange; null where the order has none or several, it is the customer's own, it suffices, or none on offer does.</returns>
    public static Exchange? Remedy(BasketLines lines, BasketPlan plan, IReadOnlyList<Product> offered) =>
        lines.Items.Where(i => i.Ups is not null).ToArray() is [{ } ups] && lines.LineOfItem(ups.Id) is { } line
        && lines.Request.Lines[line].PartNumber is not null && Of(lines, plan).Length > 0
        && ShortfallOf(lines) is { } shortfall && Larger(lines, offered) is { } larger
            ? new Exchange(
                BasketLines.PointerOf(line), larger, 1, new WordedText(WordingOf(shortfall.Key), shortfall.Figures))
            : null;

    private static MessageWording WordingOf(string shortfall) => shortfall switch
    {
        "power" => LineWordings.SmallUps,
        "va" => LineWordings.SmallUpsVa,
        _ => LineWordings.ShortUps,
    };

    // Whether the order says what is to be on a UPS.
    private static bool IsWanted(BasketLines lines) => lines.Ordered.OnUps.Any(w => w.Value);

    private static IEnumerable<Item> Wanted(BasketLines lines) => IsWanted(lines)
        ? lines.Items.Where(i => lines.Ordered.OnUps.GetValueOrDefault(i.Id) && i.Power is { Plugs: null or { Count: > 0 } })
        : lines.Request.Site?.UpsMinutes is > 0 && lines.Items.Any(i => i.Ups is not null) ? ForUps(lines) : [];

    private static IEnumerable<Item> ForUps(BasketLines lines) =>
        lines.Items.Where(i => UpsFeeds.IsFirst(i) && lines.Ordered.OnUps.GetValueOrDefault(i.Id, true));

    private static double NeededW(BasketLines lines) => Wanted(lines).Sum(i => i.Power?.RatedW ?? 0);

    // What all UPSs together lack, by the choices of the wordings.
    private static (string Key, (string, Scalar)[] Figures)? ShortfallOf(BasketLines lines)
    {
        var ups = lines.Items.Select(i => i.Ups).OfType<Ups>().ToArray();
        var (neededW, ratedW) = (NeededW(lines), ups.Sum(u => u.RatedW ?? double.PositiveInfinity));
        var (neededVa, ratedVa) = (Wanted(lines).Sum(i => UpsFeeds.ApparentVa(i)), ups.Sum(u => u.RatedVa ?? double.PositiveInfinity));
        var minutes = lines.Request.Site?.UpsMinutes;
        return neededW > ratedW ? ("power", [("ratedW", ratedW), ("neededW", neededW)])
            : neededVa > ratedVa ? ("va", [("ratedVa", ratedVa), ("neededVa", Math.Ceiling(neededVa))])
            : minutes is > 0 && neededW > ups.Sum(u => UpsFeeds.LoadFor(u, minutes)) ? ("time", [("minutes", minutes.Value)])
            : null;
    }

    // The smallest that suffices. How long one lasts has to be known where a time is asked for.
    private static Product? Larger(BasketLines lines, IReadOnlyList<Product> offered)
    {
        var (neededW, neededVa, minutes) = (NeededW(lines), Wanted(lines).Sum(i => UpsFeeds.ApparentVa(i)), lines.Request.Site?.UpsMinutes);
        return offered
            .Where(p => p.Item?.Ups is { RatedW: { } ratedW } ups && ratedW >= neededW && (ups.RatedVa ?? double.PositiveInfinity) >= neededVa
                && (minutes is not > 0 || (UpsFeeds.LoadFor(ups, minutes) is >= 0 and < double.PositiveInfinity and var lasting && lasting >= neededW)))
            .OrderBy(p => p.Item!.Ups!.RatedW).ThenBy(p => p.PartNumber, StringComparer.Ordinal).FirstOrDefault();
    }
}
