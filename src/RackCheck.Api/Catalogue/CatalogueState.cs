namespace RackCheck.Api.Catalogue;

/// <summary>Whether the catalogue answers, as the last call says. A product service that has not answered yet is unavailable.</summary>
internal sealed class CatalogueState
{
    private volatile bool available;

    /// <summary>Creates the state with its gauge.</summary>
    /// <param name="metrics">Metrics of the catalogue.</param>
    public CatalogueState(CatalogueMetrics metrics) => metrics.Observe(this);

    /// <summary>Whether the last call was answered.</summary>
    public bool IsAvailable => available;

    /// <summary>Records the end of a call.</summary>
    public void Set(bool isAvailable) => available = isAvailable;
}
