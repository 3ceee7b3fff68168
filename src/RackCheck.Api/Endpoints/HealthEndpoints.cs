using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;
using RackCheck.Model;

namespace RackCheck.Api.Endpoints;

/// <summary>GET /health/live and /health/ready.</summary>
internal static class HealthEndpoints
{
    private static readonly byte[] Live = "{\"status\":\"live\"}"u8.ToArray();
    private static readonly byte[] Ready = "{\"status\":\"ready\",\"catalogue\":\"available\"}"u8.ToArray();
    private static readonly byte[] ReadyWithoutCatalogue = "{\"status\":\"ready\",\"catalogue\":\"unavailable\"}"u8.ToArray();

    /// <summary>Maps the group.</summary>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", (Delegate)((HttpContext context) => JsonAnswer.WriteAsync(context, Live)))
            .WithName("getLiveness")
            .WithTags("Health")
            .WithSummary("Check liveness")
            .WithDescription("For a probe that restarts a process that does not respond.")
            .Produces<HealthAnswer>(StatusCodes.Status200OK, "application/json");

        routes.MapGet("/health/ready", (HttpContext context, Readiness readiness, CatalogueState catalogue) => readiness.IsReady
                ? JsonAnswer.WriteAsync(context, catalogue.IsAvailable ? Ready : ReadyWithoutCatalogue)
                : WriteNotReadyAsync(context))
            .WithName("getReadiness")
            .WithTags("Health")
            .WithSummary("Check readiness")
            .WithDescription(
                "For a load balancer. The service is not ready during warm-up and shutdown. It is ready without its product catalogue: what needs no "
                + "part numbers is answered; `catalogue` says whether the rest is.")
            .Produces<HealthAnswer>(StatusCodes.Status200OK, "application/json")
            .Produces<Problem>(StatusCodes.Status503ServiceUnavailable, Problems.MediaType);
    }

    private static Task WriteNotReadyAsync(HttpContext context)
    {
        Problems.SetRetryAfter(context, TimeSpan.FromSeconds(1));
        return Problems.WriteAsync(context, StatusCodes.Status503ServiceUnavailable, "The service is starting or stopping.");
    }
}

/// <summary>State of the service.</summary>
/// <param name="Status">"live" or "ready".</param>
/// <param name="Catalogue">When ready: "available", or "unavailable" if the product catalogue has not answered the last call, or none yet.</param>
public sealed record HealthAnswer(string Status, string? Catalogue = null);
