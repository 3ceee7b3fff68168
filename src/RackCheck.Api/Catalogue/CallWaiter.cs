namespace RackCheck.Api.Catalogue;

/// <summary>Waits for calls that are independent of the requests waiting for them.</summary>
/// <param name="options">Total time of a look-up.</param>
/// <param name="time">The clock.</param>
internal sealed class CallWaiter(CatalogueOptions options, TimeProvider time)
{
    private static readonly TimeSpan RetryAfterLateAnswer = TimeSpan.FromSeconds(1);

    /// <summary>A new exception for each waiting request, since a shared one loses its stack trace.</summary>
    public static CatalogueUnavailableException Again(CatalogueUnavailableException fault) => new(fault.Message, fault.RetryAfter, fault);

    /// <summary>Waits for calls, at most for the total time.</summary>
    /// <param name="calls">The calls.</param>
    /// <param name="cancellation">Ends the wait, not the calls.</param>
    /// <returns>The reason if they fail; null if they succeed.</returns>
    /// <exception cref="OperationCanceledException">The wait was cancelled.</exception>
    public async Task<CatalogueUnavailableException?> WaitAsync(Task calls, CancellationToken cancellation)
    {
        try
        {
            await calls.WaitAsync(options.TotalTimeout, time, cancellation);
            return null;
        }
        catch (CatalogueUnavailableException fault)
        {
            return fault;
        }
        catch (TimeoutException fault)
        {
            return new CatalogueUnavailableException("The product service did not respond in time.", RetryAfterLateAnswer, fault);
        }
        catch (OperationCanceledException fault) when (!cancellation.IsCancellationRequested)
        {
            return new CatalogueUnavailableException("The service is stopping.", RetryAfterLateAnswer, fault);
        }
    }
}
