using System.Collections.Immutable;
using RackCheck.Model;

namespace RackCheck.Survey.Bounds;

/// <summary>
/// Facts of fans. Of curve and maximum static pressure either is enough, so that one question asks for both; where the pressure is given and the curve
/// decides, for the curve alone.
/// </summary>
internal static class FanBounds
{
    private const double WeakestPa = 25;
    private const double StrongestPa = 250;
    private const double SaggingShare = 0.5;

    /// <summary>The facts.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        .. Of("roofFans", "roof fans", c => c.RoofFans, d => d.RoofFans),
        .. Of("fanTrays", "fan trays", c => c.FanTrays, d => d.FanTrays),
    ];

    private static Bound Unknown => new(WeakestPa, StrongestPa);

    private static Fact<FanSet>[] Of(string list, string name, Func<Model.Cooling, IReadOnlyList<FanSet>?> sets, Func<RackDraft, FanSet[]> drafts)
    {
        var ask = $"What is the fan curve, or at least the maximum static pressure, of {{each}} of the {name}?";
        var curve = $"/cooling/{list}/*/curve";
        IReadOnlyList<FanSet> Owners(RackDescription rack) => rack.Cooling is { } cooling ? sets(cooling) ?? [] : [];
        return
        [
            new()
            {
                Key = curve, Ask = ask, AskRest = $"What is the fan curve of {{each}} of the {name}?",
                HasPart = static s => s.MaxPressurePa is not null, Owners = Owners, Drafts = drafts, Unit = "Pa", LowIsAdverse = true, IsNumber = false,
                Range = "between straight lines from the free flow to 0.5 and to 1 times the maximum static pressure; without that, to 25 and to 250 Pa",
                Get = static s => Extent(s)?.Low,
                Set = static (s, v) => s with { MaxPressurePa = v },
                Limits = static (s, _) => s.Count == 0 ? null : s.MaxPressurePa is { } greatest ? new(SaggingShare * greatest, greatest) : Unknown,
                Extent = Extent,
            },
            new()
            {
                Key = $"/cooling/{list}/*/maxPressurePa", Ask = ask, AskedWith = curve, Owners = Owners, Drafts = drafts, Unit = "Pa", LowIsAdverse = true,
                Range = "25 to 250 Pa", Get = static s => s.MaxPressurePa, Set = static (s, v) => s with { MaxPressurePa = v },
                Limits = static (s, _) => s.Count == 0 || s.Curve is { Count: > 0 } ? null : Unknown,
            },
        ];
    }

    // Where the straight lines from the free flow through its points meet the axis: the curve lies between the lowest and the highest.
    private static Bound? Extent(FanSet set)
    {
        if (set.Curve is not { Count: > 0 } points)
        {
            return null;
        }

        var (low, high) = (points.Any(p => p.M3h >= set.FreeFlowM3h) ? double.PositiveInfinity : 0, 0.0);
        foreach (var point in points)
        {
            if (point.M3h < set.FreeFlowM3h)
            {
                var line = point.Pa / (1 - (point.M3h / set.FreeFlowM3h));
                (low, high) = (Math.Min(low, line), Math.Max(high, line));
            }
            else if (point.Pa > 0)
            {
                high = double.PositiveInfinity;
            }
        }

        return new Bound(low, high);
    }
}
