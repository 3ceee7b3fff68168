using System.Globalization;
using Microsoft.AspNetCore.Diagnostics;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;

namespace RackCheck.Api.Hosting;

/// <summary>Answers what nothing else caught.</summary>
internal static class FaultHandler
{
    private const int ClientClosedRequest = 499;

    /// <summary>Writes the problem.</summary>
    public static Task HandleAsync(HttpContext context)
    {
        switch (context.Features.Get<IExceptionHandlerFeature>()?.Error)
        {
            case BadHttpRequestException bad:
                // The server's own limits and bodies that break off.
                return Problems.WriteAsync(context, bad.StatusCode, bad.StatusCode == StatusCodes.Status413PayloadTooLarge ? null : "The request could not be read to its end.");
            case OperationCanceledException when context.RequestAborted.IsCancellationRequested:
                context.Response.StatusCode = ClientClosedRequest;
                return Task.CompletedTask;
            case CatalogueUnavailableException down:
                context.Response.Headers.RetryAfter = Math.Max(1, Math.Ceiling(down.RetryAfter.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
                return Problems.WriteAsync(context, StatusCodes.Status503ServiceUnavailable, "The product catalogue cannot be asked now; a request that needs nothing of it is answered.");
            default:
                return Problems.WriteAsync(context, StatusCodes.Status500InternalServerError, "The fault is logged under the trace id.");
        }
    }
}
