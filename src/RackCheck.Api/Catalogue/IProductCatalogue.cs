using RackCheck.Model;

namespace RackCheck.Api.Catalogue;

/// <summary>Where part numbers are looked up.</summary>
public interface IProductCatalogue
{
    /// <summary>Looks part numbers up.</summary>
    /// <param name="partNumbers">The part numbers; each is asked for once, however often it stands there.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The products that are known, by part number.</returns>
    /// <exception cref="CatalogueUnavailableException">The catalogue does not answer, or what it answers cannot be trusted.</exception>
    /// <exception cref="OperationCanceledException">Given up.</exception>
    ValueTask<IReadOnlyDictionary<string, Product>> FindAsync(IReadOnlyCollection<string> partNumbers, CancellationToken cancellation);

    /// <summary>The products that a basket may be completed with.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The products, by part number in ordinal order.</returns>
    /// <exception cref="CatalogueUnavailableException">The catalogue does not answer, or what it answers cannot be trusted.</exception>
    /// <exception cref="OperationCanceledException">Given up.</exception>
    ValueTask<IReadOnlyList<Product>> OfferedAsync(CancellationToken cancellation);
}

/// <summary>The catalogue cannot answer now.</summary>
/// <param name="message">What happened, without the words of the other side.</param>
/// <param name="retryAfter">When to ask again.</param>
/// <param name="inner">What was thrown below.</param>
public sealed class CatalogueUnavailableException(string message, TimeSpan retryAfter, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>When to ask again.</summary>
    public TimeSpan RetryAfter { get; } = retryAfter;
}
