using Microsoft.AspNetCore.Diagnostics;
using RackCheck.Api.Admission;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Http;

namespace RackCheck.Api.Hosting;

/// <summary>Answers unhandled exceptions.</summary>
internal static class FaultHandler
{
    private const int ClientClosedRequest = 499;

    /// <summary>Writes the problem document.</summary>
    public static Task HandleAsync(HttpContext context)
    {
        switch (context.Features.Get<IExceptionHandlerFeature>()?.Error)
        {
            case BadHttpRequestException bad:
                // Limits of the server, and incomplete bodies.
                var detail = bad.StatusCode == StatusCodes.Status413PayloadTooLarge ? null : ClientFaults.Detail;
                return Problems.WriteAsync(context, bad.StatusCode, detail);
            case IOException size when ClientFaults.IsBadChunkSize(size):
                return Problems.WriteAsync(context, StatusCodes.Status400BadRequest, ClientFaults.Detail);
            case OperationCanceledException when context.RequestAborted.IsCancellationRequested:
                context.Response.StatusCode = ClientClosedRequest;
                return Task.CompletedTask;
            case CatalogueUnavailableException down:
                Problems.SetRetryAfter(context, down.RetryAfter);
                return Problems.WriteAsync(
                    context,
                    StatusCodes.Status503ServiceUnavailable,
                    "The product catalogue is unavailable. Requests that do not need it are answered.");
            case OverloadedException busy:
                return Problems.WriteOverloadedAsync(context, busy.Message);
            default:
                return Problems.WriteAsync(context, StatusCodes.Status500InternalServerError, "The error is logged under the trace id.");
        }
    }
}
