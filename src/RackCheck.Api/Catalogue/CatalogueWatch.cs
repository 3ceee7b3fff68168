namespace RackCheck.Api.Catalogue;

/// <summary>
/// Asks the product service for the list on offer, from the start and at an interval, so that the list is there when a request needs it and
/// <c>/health/ready</c> says whether the catalogue answers, though no request needs it.
/// </summary>
/// <param name="catalogue">The catalogue.</param>
/// <param name="state">Whether it answers.</param>
/// <param name="interval">The interval.</param>
/// <param name="time">The clock.</param>
internal sealed class CatalogueWatch(CachingCatalogue catalogue, CatalogueState state, TimeSpan interval, TimeProvider time) : IAsyncDisposable
{
    private readonly CancellationTokenSource stopping = new();
    private Task watching = Task.CompletedTask;

    /// <summary>Begins to watch. The start does not wait for an answer.</summary>
    public void Start() => watching = Task.Run(WatchAsync, CancellationToken.None);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await stopping.CancelAsync();
        await watching.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        stopping.Dispose();
    }

    private async Task WatchAsync()
    {
        using var timer = new PeriodicTimer(interval, time);
        do
        {
            try
            {
                // A list in the cache says nothing about a product service whose last call failed.
                await (state.IsAvailable ? catalogue.OfferedAsync(stopping.Token).AsTask() : catalogue.RefreshOfferedAsync(stopping.Token));
            }
            catch (CatalogueUnavailableException)
            {
                // The client has logged it.
            }
        }
        while (await timer.WaitForNextTickAsync(stopping.Token));
    }
}
