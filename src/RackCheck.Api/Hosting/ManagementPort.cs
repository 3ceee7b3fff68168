using Microsoft.Extensions.Options;
using RackCheck.Api.Http;
using RackCheck.Api.Telemetry;

namespace RackCheck.Api.Hosting;

/// <summary>Keeps probes and metrics apart from the rest where they have a port of their own.</summary>
internal static class ManagementPort
{
    /// <summary>Whether a path belongs to probes and scrapers.</summary>
    public static bool Has(PathString path) =>
        path.StartsWithSegments("/health", StringComparison.Ordinal) || path.StartsWithSegments(PrometheusPage.Path, StringComparison.Ordinal);

    /// <summary>Adds the separation to the pipeline. The port of the connection decides, not a header that a caller chooses.</summary>
    public static void UseManagementPort(this WebApplication app)
    {
        var port = app.Services.GetRequiredService<IOptions<ManagementOptions>>().Value.Port;
        if (port > 0)
        {
            app.Use((context, next) => Has(context.Request.Path) == (context.Connection.LocalPort == port)
                ? next(context)
                : Problems.WriteAsync(context, ProblemKind.NotFound));
        }
    }
}
