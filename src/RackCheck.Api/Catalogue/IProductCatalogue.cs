using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Api.Catalogue;

/// <summary>Product catalogue.</summary>
public interface IProductCatalogue
{
    /// <summary>Looks part numbers up.</summary>
    /// <param name="partNumbers">The part numbers; duplicates are looked up once.</param>
    /// <param name="cancellation">Cancels the look-up.</param>
    /// <returns>The known products, by part number, and the faults of those whose data is not valid.</returns>
    /// <exception cref="CatalogueUnavailableException">The catalogue does not respond, or its response is invalid.</exception>
    /// <exception cref="OperationCanceledException">The look-up was cancelled.</exception>
    ValueTask<ProductDictionary> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation);

    /// <summary>
    /// The products that may be added to a basket; products whose data is not valid are left out. The list is the same instance until a product of it
    /// changes, also over refreshes, and is never changed itself: what is worked out of it can be kept by instance.
    /// </summary>
    /// <param name="cancellation">Cancels the look-up.</param>
    /// <returns>The products, by part number in ordinal order.</returns>
    /// <exception cref="CatalogueUnavailableException">The catalogue does not respond, or its response is invalid.</exception>
    /// <exception cref="OperationCanceledException">The look-up was cancelled.</exception>
    ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation);
}

/// <summary>The catalogue is unavailable.</summary>
/// <param name="message">The reason, without text of the other party.</param>
/// <param name="retryAfter">Time to wait before a retry.</param>
/// <param name="inner">The inner exception.</param>
public sealed class CatalogueUnavailableException(string message, TimeSpan retryAfter, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>Time to wait before a retry.</summary>
    public TimeSpan RetryAfter { get; } = retryAfter;
}
