using RackCheck.Api.Admission;

namespace RackCheck.Api.Http;

/// <summary>The pool in which the answers of an operation are computed.</summary>
/// <param name="Pool">Finds the pool.</param>
internal sealed record ComputedIn(Func<ComputePools, ComputePool> Pool);

/// <summary>
/// Refuses requests while the service is busy. Under overload most requests end here, so it comes before all that costs time: log, access, reading.
/// </summary>
internal static class Door
{
    /// <summary>Names the pool of an operation.</summary>
    public static RouteHandlerBuilder ComputesIn(this RouteHandlerBuilder operation, Func<ComputePools, ComputePool> pool) =>
        operation.WithMetadata(new ComputedIn(pool));

    /// <summary>Adds the door to the pipeline, behind routing.</summary>
    public static void UseDoor(this WebApplication app)
    {
        var pools = app.Services.GetRequiredService<ComputePools>();
        var memory = app.Services.GetRequiredService<MemoryBudget>();
        app.Use((context, next) =>
        {
            if (context.GetEndpoint()?.Metadata.GetMetadata<ComputedIn>()?.Pool(pools) is not { } pool || !(pool.IsFull || memory.IsExhausted))
            {
                return next(context);
            }

            if (memory.IsExhausted)
            {
                pool.Refuse("memory");
            }
            else
            {
                pool.RefuseAsFull();
            }

            return Problems.WriteOverloadedAsync(context);
        });
    }
}
