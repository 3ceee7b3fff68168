using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;

namespace RackCheck.Planning.Baskets;

/// <summary>A basket and the basket that it is completed to.</summary>
internal sealed record CompletedOrder
{
    /// <summary>The lines of the basket.</summary>
    public required BasketLines Lines { get; init; }

    /// <summary>Its completed racks.</summary>
    public required BasketPlan Plan { get; init; }

    /// <summary>The completed basket.</summary>
    public required BasketRequest Basket { get; init; }

    /// <summary>The racks of the completed basket, as planned from it.</summary>
    public required BasketPlan Final { get; init; }

    /// <summary>Pieces of the completed basket that are mounted in a rack.</summary>
    public required long Mounted { get; init; }

    /// <summary>Whether the work was spent before a pass found nothing to change in the completed basket.</summary>
    public required bool IsCut { get; init; }

    /// <summary>Lines to exchange.</summary>
    public required IReadOnlyList<Exchange> Replaced { get; init; }

    /// <summary>Excess of lines.</summary>
    public required IReadOnlyList<Surplus> Excess { get; init; }

    /// <summary>Whether the completed basket is the one that was ordered: parts that one pass added, another left out.</summary>
    public bool IsUnchanged => Added.Count == 0 && Replaced.Count == 0 && Excess.Count == 0 && Cabinets.Count == 0;

    /// <summary>What was added, with reasons; one piece for each part number and stage.</summary>
    public required IReadOnlyList<MissingPiece> Added { get; init; }

    /// <summary>The cabinets that were added.</summary>
    public required IReadOnlyList<Product> Cabinets { get; init; }
}

/// <summary>Completes a basket and plans the completed basket again, until that lacks nothing.</summary>
internal static class BasketCompleter
{
    // The second pass confirms the first, as a rule. Each further one has fewer warnings, for a PDU or two that share the load; six were needed at most.
    private const int MostPasses = 12;

    // Work after which no pass begins. A usual basket takes an eighth of it, random ones of 60 pieces most of it.
    private const double MostWork = 700;

    /// <summary>Completes a basket.</summary>
    /// <param name="request">The basket.</param>
    /// <param name="products">The products of its lines.</param>
    /// <param name="offered">The products that may be added.</param>
    /// <param name="most">The most faults that the racks may have; null without a bound.</param>
    /// <param name="checker">Checks the racks.</param>
    /// <param name="layouts">The layouts solved so far for the basket.</param>
    /// <param name="cancellation">Stops between two racks.</param>
    /// <returns>The completed order; null if there is no cabinet, or the racks have more faults or are not searched, as the work is spent.</returns>
    public static CompletedOrder? Run(
        BasketRequest request,
        IReadOnlyDictionary<string, Product> products,
        IReadOnlyList<Product> offered,
        (int Errors, int Unmet, int Warnings)? most,
        RackChecker checker,
        SolvedLayouts layouts,
        CancellationToken cancellation)
    {
        var order = Run(request, products, offered, most, checker, layouts, mayExchangeUps: true, cancellation);

        // A larger UPS is sold only where it feeds everything that is to be on it.
        return order is not null && order.Replaced.Any(r => r.Product.Kind != ProductKind.Cabinet) && UpsShortfall.Of(order.Lines, order.Final).Length > 0
            ? Run(request, products, offered, most, checker, layouts, mayExchangeUps: false, cancellation) ?? order
            : order;
    }

    private static CompletedOrder? Run(
        BasketRequest request,
        IReadOnlyDictionary<string, Product> products,
        IReadOnlyList<Product> offered,
        (int Errors, int Unmet, int Warnings)? most,
        RackChecker checker,
        SolvedLayouts layouts,
        bool mayExchangeUps,
        CancellationToken cancellation)
    {
        var all = new Dictionary<string, Product>(products, StringComparer.Ordinal);
        var search = new BasketSearch(offered, checker, layouts, cancellation);
        var lines = new BasketLines(request, products);
        if ((most is not null && layouts.Work >= MostWork)
            || search.Find(lines) is not { } plan
            || (most is { } faults && plan.Faults.CompareTo(faults) > 0))
        {
            return null;
        }

        var (basket, final) = (request, plan);
        var changes = new List<BasketChange>();
        List<BasketLine[]> seen = [InOrder(basket)];
        for (var pass = 0; pass < MostPasses && layouts.Work < MostWork; pass++)
        {
            var now = new BasketLines(basket, all);
            var change = mayExchangeUps && pass == 0 && UpsShortfall.Remedy(now, final, offered) is { } ups
                ? BasketChange.Of(ups)
                : BasketChange.Of(now, final).Repacked(lines, now, final, offered);
            if (change.IsEmpty)
            {
                break;
            }

            // Where two baskets lead to each other, as one has a part that no rack of it uses and the other's racks want, the one that lacks nothing stays.
            var changed = change.Apply(basket);
            var isSeen = seen.Exists(s => s.SequenceEqual(InOrder(changed)));
            if (isSeen && !change.Lacks)
            {
                break;
            }

            changes.Add(change);
            foreach (var product in change.Added.Select(p => p.Product).Concat(change.Replaced.Select(r => r.Product))
                .Concat(final.Racks.Select(r => r.Trial.Offer.Product)))
            {
                all[product.PartNumber] = product;
            }

            basket = changed;
            final = search.Find(new BasketLines(basket, all)) ?? final;
            if (isSeen)
            {
                break;
            }

            seen.Add(InOrder(basket));
        }

        var net = new NetChange(lines, basket, changes, all);
        return new CompletedOrder
        {
            Lines = lines,
            Plan = plan,
            Basket = basket,
            Final = final,
            Mounted = new BasketLines(basket, all).Mounted,
            IsCut = layouts.Work >= MostWork && !BasketChange.Of(new BasketLines(basket, all), final).IsEmpty,
            Replaced = net.Replaced,
            Excess = net.Excess,
            Added = net.Added,
            Cabinets = net.Cabinets,
        };
    }

    private static BasketLine[] InOrder(BasketRequest basket) => [.. basket.Lines.OrderBy(l => l.PartNumber, StringComparer.Ordinal).ThenBy(l => l.Quantity)];
}
