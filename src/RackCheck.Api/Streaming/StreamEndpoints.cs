using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using Microsoft.Extensions.Options;
using RackCheck.Api.Access;
using RackCheck.Api.Admission;
using RackCheck.Api.Endpoints;
using RackCheck.Api.Http;
using RackCheck.Model;

namespace RackCheck.Api.Streaming;

/// <summary>POST /v1/checks/stream.</summary>
internal static partial class StreamEndpoints
{
    /// <summary>Name of the operation in the contract.</summary>
    public const string CheckRacks = "checkRacks";

    /// <summary>Media type of lines of JSON.</summary>
    public const string Lines = "application/x-ndjson";

    /// <summary>Maps the operation.</summary>
    public static void MapStreams(this IEndpointRouteBuilder routes) => routes
        .MapPost("/v1/checks/stream", StreamAsync)
        .WithName(CheckRacks)
        .WithTags("Checks")
        .WithSummary("Check many racks")
        .WithDescription(
            "Takes one rack description a line and answers one line for each, in the same order, as soon as it is checked: `{\"line\":7,\"report\":{...}}`, "
            + "or `{\"line\":7,\"problem\":{...}}` for a line that a single check would refuse, which does not end the stream. Lines count from 1; blank "
            + "lines count but get no answer. A line has at most the length of a request body; the stream may be of any length. Read the answers while "
            + "sending: the service reads no further than a few lines ahead of what the client has taken, beside what the buffers of the connection hold. "
            + "A client that reads only after it has sent everything sends some dozens of lines in a request. "
            + "A broken stream ends with a problem of `request-timeout`, where nothing arrived for 30 seconds, or of `unavailable` with the detail that the "
            + "service is stopping: its line was not checked, and is the one to go on from. Any other problem belongs to its line. A stream counts as one "
            + "request; the number of streams at a time is limited.")
        .Accepts<RackDescription>(Lines)
        .Produces<StreamedAnswer>(StatusCodes.Status200OK, Lines)
        .RequireScope(Scopes.Check)
        .TakesQuery(ChecksEndpoints.FieldsParameter)
        .RefusesWithProblems();

    private static async Task StreamAsync(
        HttpContext context, Streams streams, RackJudge judge, ComputePools pools, MemoryBudget memory, TimeProvider time,
        IOptions<ServiceOptions> limits, IHostApplicationLifetime life, ILogger<CheckStream> logger)
    {
        if (await Refused(context) || !ReportFields.TryParse(context.Request.Query[ChecksEndpoints.FieldsParameter], out var fields))
        {
            return;
        }

        using var place = streams.TryEnter();
        if (place is null)
        {
            await Problems.WriteOverloadedAsync(context, "As many streams are under way as the service takes. Send the request again later.");
            return;
        }

        // The length of a line is limited instead, and the time without a byte.
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = null;
        }

        if (context.Features.Get<IHttpMinRequestBodyDataRateFeature>() is { } rate)
        {
            rate.MinDataRate = null;
        }

        context.Response.ContentType = Lines;
        var lines = new LineReader(context.Request.BodyReader, limits.Value.MaxBodyBytes, TimeSpan.FromSeconds(limits.Value.BodySeconds), time);
        await new CheckStream(judge, pools, memory, streams.Window, fields, fault => LogFault(logger, fault))
            .RunAsync(lines, context.Response.BodyWriter, life.ApplicationStopping, context.RequestAborted);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A line of a stream failed")]
    private static partial void LogFault(ILogger logger, Exception fault);

    private static async ValueTask<bool> Refused(HttpContext context)
    {
        if (Negotiation.Choose(context.Request, [Lines]) is null)
        {
            await Problems.WriteAsync(context, StatusCodes.Status406NotAcceptable, $"The response is {Lines}.");
        }
        else if (!Negotiation.Sends(context.Request, Lines))
        {
            await Problems.WriteAsync(context, ProblemKind.MediaType, $"Send one description a line as {Lines} in UTF-8.");
        }
        else if (context.Request.Headers.ContentEncoding.Count > 0)
        {
            await JsonRequest.RefuseEncodingAsync(context);
        }
        else if (!ReportFields.TryParse(context.Request.Query[ChecksEndpoints.FieldsParameter], out _))
        {
            await ChecksEndpoints.RefuseFieldsAsync(context);
        }
        else
        {
            return false;
        }

        return true;
    }
}
