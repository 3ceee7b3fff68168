using System.Diagnostics;
using Microsoft.AspNetCore.Http.Features;
using RackCheck.Rules;

namespace RackCheck.Api.Http;

/// <summary>Headers of every answer, and HEAD wherever there is GET.</summary>
internal static class CommonHeaders
{
    /// <summary>Header with the W3C trace id of the request.</summary>
    public const string TraceId = "Trace-Id";

    /// <summary>Header with the version of the rules.</summary>
    public const string Ruleset = "Ruleset-Version";

    /// <summary>Adds the headers.</summary>
    /// <param name="app">The pipeline.</param>
    /// <param name="stopping">Cancelled when the service stops: connections are then closed, so that a load balancer opens the next one elsewhere.</param>
    public static void UseCommonHeaders(this IApplicationBuilder app, CancellationToken stopping) => app.Use((context, next) =>
    {
        context.Response.OnStarting(
            static state =>
            {
                var (context, stopping) = ((HttpContext, CancellationToken))state;
                var headers = context.Response.Headers;
                headers.XContentTypeOptions = "nosniff";
                headers[Ruleset] = RuleSet.CurrentVersion;
                headers[TraceId] = Activity.Current?.TraceId.ToHexString();
                if (stopping.IsCancellationRequested && HttpProtocol.IsHttp11(context.Request.Protocol))
                {
                    headers.Connection = "close";
                }

                return Task.CompletedTask;
            },
            (context, stopping));
        return next(context);
    });

    /// <summary>Answers HEAD like GET, without the body.</summary>
    public static void UseHead(this IApplicationBuilder app) => app.Use(static async (context, next) =>
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        var answer = context.Features.GetRequiredFeature<IHttpResponseBodyFeature>();
        context.Request.Method = HttpMethods.Get;
        context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(Stream.Null, answer));
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
            context.Features.Set(answer);
        }
    });
}
