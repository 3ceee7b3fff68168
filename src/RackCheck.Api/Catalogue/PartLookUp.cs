using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>Fills the part numbers of descriptions in. A description without any never asks the catalogue.</summary>
/// <param name="catalogue">Where they are looked up.</param>
public sealed class PartLookUp(IProductCatalogue catalogue)
{
    /// <summary>Fills a description in.</summary>
    /// <param name="description">A description that is sound as posted.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The rack with its part numbers.</returns>
    /// <exception cref="CatalogueUnavailableException">The catalogue is needed and does not answer.</exception>
    public async ValueTask<ResolvedRack> ResolveAsync(RackDescription description, CancellationToken cancellation)
    {
        var numbers = ResolvedRack.PartNumbers(description);
        return numbers.Count == 0 ? ResolvedRack.Plain(description) : ResolvedRack.Of(description, await catalogue.FindAsync(numbers, cancellation));
    }
}
