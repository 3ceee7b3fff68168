using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>What a basket has to change to be complete.</summary>
internal sealed record BasketChange
{
    /// <summary>Lines to exchange.</summary>
    public required IReadOnlyList<Exchange> Replaced { get; init; }

    /// <summary>Part numbers of the cabinets that the exchanged lines order now.</summary>
    public required IReadOnlyList<string> Left { get; init; }

    /// <summary>Excess of lines.</summary>
    public required IReadOnlyList<Surplus> Excess { get; init; }

    /// <summary>Parts to add.</summary>
    public required IReadOnlyList<MissingPiece> Added { get; init; }

    /// <summary>The cabinets to add.</summary>
    public required IReadOnlyList<Product> Cabinets { get; init; }

    /// <summary>Whether nothing changes.</summary>
    public bool IsEmpty => Replaced.Count + Excess.Count + Added.Count + Cabinets.Count == 0;

    /// <summary>Whether the racks want something that the basket does not have.</summary>
    public bool Lacks => Replaced.Count + Added.Count + Cabinets.Count > 0;

    /// <summary>The exchange of one line, before anything is added for it.</summary>
    public static BasketChange Of(Exchange exchange) => new() { Replaced = [exchange], Left = [], Excess = [], Added = [], Cabinets = [] };

    /// <summary>The change from a basket to its completed racks.</summary>
    public static BasketChange Of(BasketLines lines, BasketPlan plan)
    {
        // Cabinets of the basket that a rack uses; then one that no rack uses is exchanged for one that is missing.
        var wanted = plan.Racks.Where(r => r.Trial.Offer.Index is null).Select(r => r.Trial.Offer.Product).ToList();
        List<(Product Product, int Line, int Spare)> unused = [];
        foreach (var (product, line, quantity) in lines.Cabinets)
        {
            var used = 0;
            while (used < quantity && wanted.FindIndex(w => w.PartNumber == product.PartNumber) is >= 0 and var at)
            {
                wanted.RemoveAt(at);
                used++;
            }

            if (used < quantity)
            {
                unused.Add((product, line, quantity - used));
            }
        }

        List<Exchange> replaced = [];
        List<string> left = [];
        for (var i = 0; i < unused.Count && wanted.Count > 0; i++)
        {
            var (own, line, spare) = unused[i];
            var alike = wanted.Where(w => w.PartNumber == wanted[0].PartNumber).Take(spare).ToArray();
            foreach (var product in alike)
            {
                wanted.Remove(product);
            }

            replaced.Add(Replace(own, line, alike[0], alike.Length, plan));
            left.Add(own.PartNumber);
            unused[i] = (own, line, spare - alike.Length);
        }

        return new BasketChange
        {
            Replaced = replaced,
            Left = left,
            Excess = lines.HasFurtherCabinets ? [] : ExcessParts.Of(lines, plan, unused.Where(u => u.Spare > 0 && lines.Items.Count > 0)),
            Added = [.. plan.Racks.SelectMany(r => r.Trial.Completed.Added)],
            Cabinets = wanted,
        };
    }

    /// <summary>The change with the fixings of this and of earlier passes in the packs that suit all of them together.</summary>
    /// <param name="ordered">The basket as ordered.</param>
    /// <param name="now">The basket that changes.</param>
    /// <param name="plan">Its completed racks.</param>
    /// <param name="offered">Products on offer.</param>
    public BasketChange Repacked(BasketLines ordered, BasketLines now, BasketPlan plan, IReadOnlyList<Product> offered)
    {
        var change = this;
        foreach (var fixing in Added.Where(p => p.Product.Kind == ProductKind.Fixings).Select(p => p.Product.Fixing!.Value).Distinct().Order())
        {
            var needed = plan.Racks.Select(r => r.Trial.Completed.RackBuild).Where(b => FixingSets.FixingOf(now.Request, b) == fixing).Sum(FixingSets.NeededBy);
            if (PiecesOf(now, UnitsOf(now, fixing)) >= needed)
            {
                // What one rack leaves of a pack serves another.
                change = change with { Added = [.. change.Added.Where(p => p.Product.Fixing != fixing)] };
                continue;
            }

            var there = UnitsOf(ordered, fixing);
            var earlier = UnitsOf(now, fixing).ToDictionary(u => u.Key, u => u.Value - there.GetValueOrDefault(u.Key));
            if (earlier.Values.Any(u => u < 0) || earlier.Values.All(u => u == 0) || change.Excess.Any(e => earlier.ContainsKey(e.PartNumber)))
            {
                continue;
            }

            var reason = Added.First(p => p.Product.Fixing == fixing);
            var packs = Packs.Choose(offered.Where(p => p.Kind == ProductKind.Fixings && p.Fixing == fixing), needed - PiecesOf(ordered, there));
            var units = packs.ToDictionary(p => p.Product.PartNumber, p => p.Units, StringComparer.Ordinal);
            change = change with
            {
                Added =
                [
                    .. change.Added.Where(p => p.Product.Fixing != fixing),
                    .. packs.Select(p => reason with { Product = p.Product, OrderUnits = p.Units - earlier.GetValueOrDefault(p.Product.PartNumber) })
                        .Where(p => p.OrderUnits > 0),
                ],
                Excess =
                [
                    .. change.Excess,
                    .. earlier.Select(e => (Number: e.Key, Spare: e.Value - units.GetValueOrDefault(e.Key))).Where(e => e.Spare > 0).Select(e => new Surplus(
                        BasketLines.PointerOf(now.Request.Lines.Index().Last(l => l.Item.PartNumber == e.Number).Index), e.Number, (int)e.Spare,
                        ExcessWordings.EnoughFixings)),
                ],
            };
        }

        return change;
    }

    private static Dictionary<string, long> UnitsOf(BasketLines lines, Fixing fixing) =>
        lines.Ordered.Parts.Where(p => p.Product.Kind == ProductKind.Fixings && p.Product.Fixing == fixing)
            .ToDictionary(p => p.Product.PartNumber, p => p.OrderUnits, StringComparer.Ordinal);

    private static long PiecesOf(BasketLines lines, Dictionary<string, long> units) => units.Sum(u => u.Value * Stock.PiecesOf(lines.Products[u.Key]));

    /// <summary>The changed basket.</summary>
    public BasketRequest Apply(BasketRequest basket)
    {
        var spare = Excess.ToDictionary(e => e.Line, e => e.Quantity, StringComparer.Ordinal);
        List<BasketLine> lines = [];
        foreach (var (index, line) in basket.Lines.Index())
        {
            var pointer = BasketLines.PointerOf(index);
            var left = line.Quantity - spare.GetValueOrDefault(pointer);
            if (Replaced.FirstOrDefault(r => r.Line == pointer) is { } exchange)
            {
                lines.Add(new BasketLine { PartNumber = exchange.Product.PartNumber, Quantity = exchange.Quantity, Options = line.Options });
                left -= exchange.Quantity;
            }

            if (left > 0)
            {
                lines.Add(line with { Quantity = left });
            }
        }

        foreach (var more in Added.GroupBy(p => p.Product.PartNumber, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Add(lines, more.Key, (int)Math.Min(more.Sum(p => p.OrderUnits), int.MaxValue));
        }

        foreach (var cabinet in Cabinets)
        {
            Add(lines, cabinet.PartNumber, 1);
        }

        return basket with { Lines = lines };
    }

    // On the line that orders the part already, else on a new one.
    private static void Add(List<BasketLine> lines, string partNumber, int quantity)
    {
        var at = lines.FindIndex(l => l.PartNumber == partNumber && l.Options is null);
        if (at >= 0)
        {
            lines[at] = lines[at] with { Quantity = lines[at].Quantity + quantity };
        }
        else
        {
            lines.Add(new BasketLine { PartNumber = partNumber, Quantity = quantity });
        }
    }

    private static Exchange Replace(Product own, int line, Product chosen, int quantity, BasketPlan plan)
    {
        WordedText[] errors = plan.InOwn is { } tried ? [.. tried.Errors.Take(2).Select(RuleSet.Default.TextOf)] : [];
        var why = errors.Length == 0
            ? new WordedText(LineWordings.NoPosition, ("cabinet", own.Name))
            : errors.Aggregate((one, other) => one.With(other)).QuotedIn(LineWordings.CannotTake, ("cabinet", own.Name));
        return new Exchange(BasketLines.PointerOf(line), chosen, quantity, why);
    }
}
