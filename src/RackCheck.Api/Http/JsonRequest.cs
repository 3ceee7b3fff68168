using System.Buffers;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using RackCheck.Api.Admission;
using RackCheck.Model;

namespace RackCheck.Api.Http;

/// <summary>Receives JSON documents and computes the answers, or writes problem documents.</summary>
/// <param name="buffers">Pool of buffers.</param>
/// <param name="memory">Memory of all requests.</param>
/// <param name="time">Measures how long a body takes.</param>
/// <param name="options">Limits.</param>
internal sealed class JsonRequest(ArrayPool<byte> buffers, MemoryBudget memory, TimeProvider time, IOptions<ServiceOptions> options)
{
    // What the service decompresses.
    private const string Encodings = "gzip, br";

    /// <summary>Receives the body of a request.</summary>
    /// <param name="context">The request.</param>
    /// <param name="pool">Where the answer will be computed.</param>
    /// <param name="mediaTypes">Media types of the answer, the preferred first; null for JSON.</param>
    /// <returns>The body; null if a problem document was written.</returns>
    public async ValueTask<RequestBody?> ReceiveAsync(HttpContext context, ComputePool pool, IReadOnlyList<string>? mediaTypes = null)
    {
        var request = context.Request;
        if (mediaTypes is null ? !Negotiation.TakesJson(request) : Negotiation.Choose(request, mediaTypes) is null)
        {
            var offered = string.Join(" or ", mediaTypes ?? ["application/json"]);
            await Problems.WriteAsync(context, StatusCodes.Status406NotAcceptable, $"The response is {offered}.");
            return null;
        }

        if (!Negotiation.SendsJson(request))
        {
            await Problems.WriteAsync(context, ProblemKind.MediaType, "Send the description as application/json in UTF-8.");
            return null;
        }

        // Supported encodings were removed with the header by the framework.
        if (request.Headers.ContentEncoding.Count > 0)
        {
            await RefuseEncodingAsync(context);
            return null;
        }

        var (body, refusal, detail) = await ReadAsync(context);
        if (refusal == ProblemKind.Overloaded)
        {
            pool.Refuse("memory");
            await Problems.WriteOverloadedAsync(context);
        }
        else if (refusal is not null)
        {
            await Problems.WriteAsync(context, refusal, detail);
        }

        return body;
    }

    /// <summary>Refuses a content encoding that the service does not decompress.</summary>
    /// <param name="context">The request.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task RefuseEncodingAsync(HttpContext context)
    {
        context.Response.Headers[HeaderNames.AcceptEncoding] = Encodings;
        return Problems.WriteAsync(context, ProblemKind.MediaType, $"The supported content encodings are {Encodings}, one at a time.");
    }

    private async ValueTask<(RequestBody? Body, ProblemKind? Refusal, string? Detail)> ReadAsync(HttpContext context)
    {
        var mostBytes = options.Value.MaxBodyBytes;
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(options.Value.BodySeconds), time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, context.RequestAborted);
        try
        {
            var (body, refusal) = await RequestBody.ReadAsync(context.Request, buffers, memory, mostBytes, either.Token);
            return (body, refusal, $"The maximum length of a request body is {mostBytes} bytes.");
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested && !context.RequestAborted.IsCancellationRequested)
        {
            context.Response.Headers.Connection = "close";
            return (null, ProblemKind.Timeout, $"The request body did not arrive within {options.Value.BodySeconds} s.");
        }
        catch (Exception fault) when (ClientFaults.IsBadCompression(fault))
        {
            return (null, ProblemKind.NotJson, ClientFaults.CompressionDetail);
        }
    }

    /// <summary>Computes in a pool.</summary>
    /// <typeparam name="T">Type of the result.</typeparam>
    /// <param name="context">The request.</param>
    /// <param name="pool">The pool.</param>
    /// <param name="compute">The computation.</param>
    /// <returns>The result; null if a problem document was written.</returns>
    /// <exception cref="OverloadedException">The computation waited or took too long.</exception>
    public static async ValueTask<T?> ComputeAsync<T>(HttpContext context, ComputePool pool, Func<CancellationToken, T> compute)
        where T : class
    {
        if (pool.TryRun(compute, context.RequestAborted) is { } running)
        {
            return await running;
        }

        await Problems.WriteOverloadedAsync(context);
        return null;
    }

    /// <summary>Sends a computed answer.</summary>
    /// <param name="context">The request.</param>
    /// <param name="reply">The answer.</param>
    /// <returns>Completes when the server has taken the answer.</returns>
    public async Task SendAsync(HttpContext context, Reply reply)
    {
        if (reply.Answer is not { } answer)
        {
            await Problems.WriteAsync(context, reply.Refusal!, reply.Detail, reply.Faults);
            return;
        }

        var length = answer.Written.Length;
        memory.Take(length);
        try
        {
            await JsonAnswer.WriteAsync(context, answer, reply.MediaType);
        }
        finally
        {
            memory.GiveBack(length);
        }
    }
}

/// <summary>A computed answer: a document or a problem.</summary>
/// <param name="Answer">The prepared document; null for a problem.</param>
/// <param name="Refusal">Kind of the problem.</param>
/// <param name="Detail">Details of this occurrence.</param>
/// <param name="Faults">The faults, if any.</param>
internal sealed record Reply(AnswerLease? Answer, ProblemKind? Refusal = null, string? Detail = null, IReadOnlyList<Fault>? Faults = null)
{
    /// <summary>Media type of the document.</summary>
    public string MediaType { get; init; } = JsonAnswer.MediaType;
}
