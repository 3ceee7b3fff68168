using RackCheck.Rules.Layout;
using System.Numerics;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Building;

/// <summary>Closes open front U positions: first those that would cause hot-air recirculation, then others with the panels left.</summary>
internal static class Blanks
{
    private static readonly string Rule = RuleChecks.IdOf<Blanking>();

    private static readonly RackChecker Checker = RuleChecks.Only<Blanking>();

    /// <summary>Closes gaps with the panels of the basket and reports missing panels. All other items have positions.</summary>
    public static void Close(BasketContext context, RackBuild build)
    {
        // Cords do not matter here, and assigning outlets takes time.
        var described = build.Describe();
        var description = described with
        {
            Items = [.. described.Items.Select(i => i with { Power = i.Power is null ? null : new ItemPower(), Ups = null })],
            Pdus = [.. described.Pdus!.Where(u => u.Position is not null)],
            Acceptances = null,
        };
        var survey = new RackSurvey(description);
        List<Gap> gaps = [.. GapsOf(survey.Occupancy.OpenFront)];

        // The rule finds the gaps that matter, depending on doors, equipment and policy.
        var found = Checker.Recheck(ResolvedRack.Plain(description)).Findings.Select(f => f.MessageData["units"].ToString()).ToHashSet(StringComparer.Ordinal);
        List<Gap> harmful = [.. gaps.Where(g => found.Contains(survey.Cabinet.Units(g.Bottom, g.Bottom + g.Left - 1).ToString()))];
        Fill(build, harmful);
        Propose(context, build, harmful);

        // Gaps that need further panels are kept open for them.
        Fill(build, [.. gaps.Except(harmful)]);
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

    // Largest panels first, each into the smallest gap that takes it.
    private static void Fill(RackBuild build, List<Gap> gaps)
    {
        var panels = build.Stock.LeftOf(ProductKind.BlankingPanel).Where(e => e.Product.Item?.HeightU > 0).OrderByDescending(e => e.Product.Item!.HeightU);
        foreach (var entry in panels)
        {
            var height = entry.Product.Item!.HeightU!.Value;
            while (entry.Left > 0
                && build.Items.Count < RackAssembler.MostItems
                && gaps.Where(g => g.Left >= height).OrderBy(g => g.Left).ThenBy(g => g.Bottom).FirstOrDefault() is { } gap)
            {
                var panel = ProductParts.ItemOf(entry.Product, build.IdFor(entry.Product));
                build.Items.Add(new BuildItem
                {
                    Item = panel with { Category = ItemCategory.BlankingPanel, Position = new Position { U = gap.Take(height), Face = Face.Front } },
                    Piece = entry.Take(),
                });
            }
        }
    }

    private static void Propose(BasketContext context, RackBuild build, List<Gap> gaps)
    {
        ILookup<int, Product> offered = context.Offered(ProductKind.BlankingPanel).Where(p => p.Item?.HeightU > 0).ToLookup(p => p.Item!.HeightU!.Value);
        var heights = offered.Select(o => o.Key).OrderDescending().ToArray();
        var wanted = new SortedDictionary<int, int>();
        var (open, room) = (0, RackAssembler.MostItems - build.Items.Count);
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
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Blanking,
                    product,
                    units,
                    new LineText(LineWordings.Panels)));
            }
        }

        if (open > 0)
        {
            build.Unmet.Add(new UnmetNeed
            {
                What = FormattableString.Invariant($"Blanking panels for {open} U"),
                Reason = "Equipment beside these U positions has airflow front to rear; "
                    + "no panel on offer is low enough, or the rack has the maximum number of items.",
            });
        }
    }

    /// <summary>A run of open U positions.</summary>
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
