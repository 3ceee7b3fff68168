using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>Gets what requests need of the catalogue. A description without part numbers does not use it.</summary>
/// <param name="catalogue">The catalogue.</param>
public sealed class PartLookUp(IProductCatalogue catalogue)
{
    /// <summary>A description without part numbers, which needs no look-up.</summary>
    /// <param name="description">A description that is valid as posted.</param>
    /// <returns>The rack; null if there are part numbers.</returns>
    public static ResolvedRack? WithoutParts(RackDescription description) =>
        ResolvedRack.PartNumbers(description).Count == 0 ? ResolvedRack.Plain(description) : null;

    /// <summary>Resolves the part numbers of a description.</summary>
    /// <param name="description">A description that is valid as posted.</param>
    /// <param name="cancellation">Cancels the look-up.</param>
    /// <returns>The rack with its product data.</returns>
    /// <exception cref="CatalogueUnavailableException">The catalogue is needed and does not respond.</exception>
    public async ValueTask<ResolvedRack> ResolveAsync(RackDescription description, CancellationToken cancellation)
    {
        var numbers = ResolvedRack.PartNumbers(description);
        return numbers.Count == 0 ? ResolvedRack.Plain(description) : ResolvedRack.Of(description, await catalogue.FindAsync(numbers, cancellation));
    }

    /// <summary>Gets the products of part numbers and those on offer, for a plan.</summary>
    /// <param name="partNumbers">The part numbers of the request.</param>
    /// <param name="cancellation">Cancels the look-up.</param>
    /// <returns>The products. Where those on offer cannot be had, there are none; see <see cref="PlanParts.Require"/>.</returns>
    /// <exception cref="CatalogueUnavailableException">There are part numbers, and the catalogue does not respond.</exception>
    public async ValueTask<PlanParts> ForPlanAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation)
    {
        // In parallel, so that the wait for both is no longer than for one.
        var offered = OfferAsync(cancellation);
        var found = partNumbers.Count == 0 ? Task.FromResult(ProductDictionary.None) : catalogue.FindAsync(partNumbers, cancellation).AsTask();
        await Task.WhenAll(found, offered);
        var (products, unavailable) = await offered;
        return new PlanParts(await found, products, unavailable);
    }

    private async Task<(IReadOnlyList<Product> Products, CatalogueUnavailableException? Unavailable)> OfferAsync(CancellationToken cancellation)
    {
        try
        {
            return (await catalogue.OfferedAsync(cancellation), null);
        }
        catch (CatalogueUnavailableException fault)
        {
            return ([], fault);
        }
    }
}

/// <summary>Products for a plan.</summary>
/// <param name="Found">The products of the request's part numbers.</param>
/// <param name="Offered">The products on offer; empty if they cannot be had.</param>
/// <param name="Unavailable">Why they cannot be had.</param>
public sealed record PlanParts(ProductDictionary Found, IReadOnlyList<Product> Offered, CatalogueUnavailableException? Unavailable)
{
    /// <summary>
    /// Refuses a plan that was made without the products on offer and is not whole: it could be with them. A whole plan needed none of them.
    /// </summary>
    /// <param name="isWhole">Whether the plan leaves nothing open.</param>
    /// <exception cref="CatalogueUnavailableException">The plan needs products on offer.</exception>
    public void Require(bool isWhole)
    {
        if (!isWhole && Unavailable is { } fault)
        {
            throw new CatalogueUnavailableException(fault.Message, fault.RetryAfter, fault);
        }
    }
}
