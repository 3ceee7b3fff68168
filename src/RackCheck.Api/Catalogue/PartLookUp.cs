using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>Resolves the part numbers of descriptions. A description without part numbers does not use the catalogue.</summary>
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
}
