using RackCheck.Rules.Layout;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Building;

/// <summary>Closes open front U positions: first those that would cause hot-air recirculation, then others with the panels left.</summary>
internal static class Blanks
{
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
        var survey = RackSurvey.Lazily(description);
        List<Gap> gaps = [.. PanelNeeds.Runs(survey).Select(r => new Gap(r.Bottom, r.HeightU))];

        // The rule finds the gaps that matter, depending on doors, equipment and policy.
        var runs = PanelNeeds.Harmful(survey, Checker.Find(ResolvedRack.Plain(description)).Findings);
        List<Gap> harmful = [.. gaps.Where(g => runs.Any(r => r.Bottom == g.Bottom))];
        Fill(build, harmful);
        Propose(context, build, harmful);

        // Gaps that need further panels are kept open for them.
        Fill(build, [.. gaps.Except(harmful)]);
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
            var sizes = PanelNeeds.Sizes(gap.Left, heights).Take(room).ToArray();
            foreach (var height in sizes)
            {
                wanted[height] = wanted.GetValueOrDefault(height) + 1;
            }

            (open, room) = (open + gap.Left - sizes.Sum(), room - sizes.Length);
        }

        foreach (var (height, count) in wanted)
        {
            foreach (var (product, units) in Packs.Choose(offered[height], count))
            {
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Blanking,
                    product,
                    units,
                    new WordedText(LineWordings.Panels)));
            }
        }

        if (open > 0)
        {
            build.Unmet.Add(new OpenNeed(new(LineWordings.PanelNeed, ("openU", open)), LineWordings.NoPanel));
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
