using RackCheck.Rules.Layout;
using System.Numerics;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Baskets;

/// <summary>Closes open front units: first those through which equipment would breathe its own hot air, then others with the panels that are left.</summary>
internal static class Blanks
{
    private static readonly string Rule = RuleChecks.IdOf<Blanking>();

    private static readonly RackChecker Checker = RuleChecks.Only<Blanking>();

    /// <summary>Closes gaps with the panels that there are, and notes what lacks.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="bay">The rack, with everything else in its place.</param>
    public static void Close(BasketContext context, Bay bay)
    {
        // The cords are of no concern here, and finding outlets for them is what takes time.
        var described = bay.Describe();
        var description = described with
        {
            Items = [.. described.Items.Select(i => i with { Power = i.Power is null ? null : new ItemPower(), Ups = null })],
            Pdus = [.. described.Pdus!.Where(u => u.Position is not null)],
            Acceptances = null,
        };
        var survey = new RackSurvey(description);
        List<Gap> gaps = [.. GapsOf(survey.Occupancy.OpenFront)];

        // The rule says which of the gaps matter, by doors, equipment and policy.
        var found = Checker.Check(description).Findings.Select(f => f.MessageData["units"].Text).ToHashSet(StringComparer.Ordinal);
        List<Gap> harmful = [.. gaps.Where(g => found.Contains(survey.Cabinet.UnitsText(g.Bottom, g.Bottom + g.Left - 1)))];
        Fill(bay, harmful);
        Propose(context, bay, harmful);

        // What still lacks is kept free for the panels that are to come.
        Fill(bay, [.. gaps.Except(harmful)]);
    }

    private static IEnumerable<Gap> GapsOf(ulong open)
    {
        while (open != 0)
        {
            var bottom = BitOperations.TrailingZeroCount(open) + 1;
            var height = BitOperations.TrailingZeroCount(~(open >> (bottom - 1)));
            open &= ~Occupancy.Mask(bottom, bottom + height - 1);
            yield return new Gap(bottom, height);
        }
    }

    // Large panels first, each where it leaves least.
    private static void Fill(Bay bay, List<Gap> gaps)
    {
        foreach (var entry in bay.Stock.LeftOf(ProductKind.BlankingPanel).Where(e => e.Product.Item?.HeightU > 0).OrderByDescending(e => e.Product.Item!.HeightU))
        {
            var height = entry.Product.Item!.HeightU!.Value;
            while (entry.Left > 0 && bay.Items.Count < BayMaker.MostItems && gaps.Where(g => g.Left >= height).OrderBy(g => g.Left).ThenBy(g => g.Bottom).FirstOrDefault() is { } gap)
            {
                var panel = ProductParts.ItemOf(entry.Product, bay.IdFor(entry.Product));
                bay.Items.Add(new BayItem
                {
                    Item = panel with { Category = ItemCategory.BlankingPanel, Position = new Position { U = gap.Take(height), Face = Face.Front } },
                    Piece = entry.Take(),
                });
            }
        }
    }

    private static void Propose(BasketContext context, Bay bay, List<Gap> gaps)
    {
        ILookup<int, Product> offered = context.Offered(ProductKind.BlankingPanel).Where(p => p.Item?.HeightU > 0).ToLookup(p => p.Item!.HeightU!.Value);
        var heights = offered.Select(o => o.Key).OrderDescending().ToArray();
        var wanted = new SortedDictionary<int, int>();
        var (open, room) = (0, BayMaker.MostItems - bay.Items.Count);
        foreach (var gap in gaps)
        {
            for (var left = gap.Left; left > 0;)
            {
                if (Array.Find(heights, h => h <= left) is not (> 0 and var height) || room == 0)
                {
                    open += left;
                    break;
                }

                wanted[height] = wanted.GetValueOrDefault(height) + 1;
                left -= height;
                room--;
            }
        }

        foreach (var (height, count) in wanted)
        {
            foreach (var (product, units) in Packs.Choose(offered[height], count))
            {
                bay.Lacks.Add(new Lack(Stage.Blanking, product, units, "Equipment that breathes from front to rear would take its own hot air back through open units beside it; panels close them."));
            }
        }

        if (open > 0)
        {
            bay.Unmet.Add(new UnmetNeed
            {
                What = FormattableString.Invariant($"Blanking panels for {open} U"),
                Reason = "Equipment beside these units breathes from front to rear; no panel on offer is low enough, or the rack has as many items as it may.",
            });
        }
    }

    /// <summary>A run of open units.</summary>
    private sealed class Gap(int bottom, int height)
    {
        public int Bottom { get; private set; } = bottom;

        public int Left { get; private set; } = height;

        public int Take(int units)
        {
            var at = Bottom;
            (Bottom, Left) = (Bottom + units, Left - units);
            return at;
        }
    }
}
